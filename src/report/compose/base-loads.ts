/**
 * Base loads of site meters, and what a meter comes to by route: on average, and what would be avoided.
 */

import type { Calibrated, MeterFound } from "../../meters/calibrate.js";
import { byKey, composite, KEYS, type MeterUser } from "../../meters/allocation.js";
import {
  type Allocated,
  allocated,
  type Avoidable,
  avoidable,
  sumOf,
} from "../../meters/average-or-avoidable.js";
import { leafRange } from "../../account/draws.js";
import { quantile } from "../../numbers/quantiles.js";
import { AMOUNTS } from "../../steps/amounts.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import type { ReportDesk } from "./desk.js";

/** Smallest parts told apart when a meter is shared: the unit that is printed. */
const SCALE = { water: 1e-3, electricity: 1, gas: 1, steam: 1 } as const;
const UNIT = { water: "m³", electricity: "kWh", gas: "kWh net", steam: "kg" } as const;

/**
 * Regressions of site meters on what the lots take.
 *
 * @param found - what meters corrected
 * @returns a table, and why there is no base load where there is none
 */
export function baseLoadBlocks(found: Calibrated): readonly Block[] {
  const sites = found.meters.filter(({ use }) => use.machines === undefined);
  const rows = sites.flatMap(({ use }): readonly (readonly Cell[])[] => {
    const fit = use.stream.regression;
    if ("refused" in fit) return [];
    const [base, slope] = fit.coefficients;
    const scale = SCALE[use.quantity];
    const number = (value: number | undefined, digits: number): Cell =>
      numberCell(value === undefined ? "–" : formatNumber(value, digits));
    return [
      [
        textCell(use.name, true),
        numberCell(`${fit.n}, ${fit.p}`),
        numberCell(
          base === undefined
            ? "–"
            : `${formatNumber(scale * base.value, 0)} ± ${formatNumber(scale * base.error, 0)} ${UNIT[use.quantity]}`,
        ),
        number(slope?.value, 2),
        number(slope?.t, 1),
        number(fit.r2, 2),
        numberCell(formatPercent(fit.cv, 1)),
        number(fit.f, 1),
        textCell(
          use.stream.by === "given" ? "no: given" : use.stream.by === "regression" ? "yes" : "no",
        ),
      ],
    ];
  });
  const refused = sites.flatMap(({ use }) => {
    const fit = use.stream.regression;
    return "refused" in fit ? [`${use.name}: ${fit.refused}. ${fit.remedy}`] : [];
  });
  return [
    ...(rows.length === 0
      ? []
      : [
          {
            kind: "table" as const,
            id: "base-loads",
            caption:
              "Base load by regression of each month’s reading on what its lots take by the model. n months, p coefficients; CV(RMSE) = √(Σ(y − ŷ)²/(n − p))/ȳ; NMBE with n − p is 0, as for any fit with an intercept. Used where R² ≥ 0.75, CV(RMSE) ≤ 25 %, F has a chance below 10 % and the slope’s t is 2 or more: then the base is weighed against the wide limits that are taken elsewhere, with the doubt that goods differ from month to month in the model’s draws.",
            head: [
              textCell("Meter"),
              ...["n, p", "Base a month", "Slope", "t", "R²", "CV(RMSE)", "F"].map((text) => ({
                ...textCell(text),
                align: "right" as const,
              })),
              textCell("Used"),
            ],
            rows,
            widths: [1.3, 0.7, 1.8, 0.7, 0.6, 0.6, 1, 0.8, 0.8],
          },
        ]),
    ...sites.flatMap(weatherOf).map((text): Block => ({
      kind: "paragraph",
      tone: "small",
      runs: [{ kind: "text", text }],
    })),
    ...refused.map((text): Block => ({
      kind: "paragraph",
      tone: "small",
      runs: [{ kind: "text", text: `No base load by regression for ${text}` }],
    })),
  ];
}

// Whether degree days pay, by the F test of a fit with them against one without.
function weatherOf({ use }: MeterFound): readonly string[] {
  const fit = use.stream.regression;
  if ("refused" in fit || fit.tested === undefined) return [];
  const { words, f, chance, pays } = fit.tested;
  const by = fit.coefficients.find((one) => one.words === words);
  const unit = UNIT[use.quantity];
  const taken =
    by === undefined
      ? ""
      : `: ${formatNumber(SCALE[use.quantity] * by.value, 1)} ± ${formatNumber(SCALE[use.quantity] * by.error, 1)} ${unit} for each`;
  return [
    `${use.name} and ${words}: F ${formatNumber(f, 1)}, chance ${formatPercent(chance, 1)}; ${pays ? `below 10 %, so they are in the fit${taken}, and count as no lot’s` : "10 % or more, so they are left out"}.`,
  ];
}

/**
 * Site meters by route, shared by four keys, with what lots could avoid.
 *
 * @param desk - the report
 * @param found - what meters corrected
 * @returns a table
 */
export function allocationBlocks(desk: ReportDesk, found: Calibrated): readonly Block[] {
  const users = usersOf(desk);
  const sites = found.meters.filter(({ use }) => use.machines === undefined);
  if (users.size === 0 || sites.length === 0) return [];
  const rows = sites.flatMap((meter) => meterRows(meter, users));
  return [
    {
      kind: "table",
      id: "meter-allocation",
      caption:
        "Site meters shared among routes as printed, by four keys; each column adds up to the meter. No key is right for all: by mass suits water and heat of liquor, by area the printer, by machine hours what stands and runs; “base and mass” shares the stream without lots by hours and the rest by mass. Allocated parts are averages with base load in them, for disclosure. Avoidable is what the lots take by the model as corrected, without base load: only that would fall away, and only where machines are switched off.",
      head: [
        textCell("Meter"),
        textCell("Route"),
        ...["By mass", "By area", "By hours", "Base and mass", "Avoidable"].map((text) => ({
          ...textCell(text),
          align: "right" as const,
        })),
      ],
      rows,
      widths: [1.4, 1.5, 1, 1, 1, 1.1, 1],
    },
  ];
}

function meterRows(
  { use, reading, after, stream }: MeterFound,
  users: ReadonlyMap<string, MeterUser>,
): readonly (readonly Cell[])[] {
  const scale = SCALE[use.quantity];
  const total = Math.round(scale * quantile(reading, 0.5));
  const base = Math.min(total, stream === undefined ? 0 : scale * quantile(stream.after, 0.5));
  const all = [...users.values()];
  const shares: readonly (readonly Allocated[])[] = [
    ...KEYS.map((key) => byKey(total, all, key, 1)),
    composite(total, base, all, "kg", 1),
  ];
  const whole = avoidable(scale * quantile(after, 0.5));
  const cells = (
    name: string,
    first: string,
    parts: readonly Allocated[],
    saved?: Avoidable,
  ): readonly Cell[] => [
    textCell(first, true),
    textCell(name),
    ...parts.map((part) => numberCell(formatNumber(part, 0))),
    numberCell(saved === undefined ? "" : formatNumber(saved, 0)),
  ];
  return [
    ...[...users.keys()].map((route, i) =>
      cells(
        route,
        `${use.name}, ${UNIT[use.quantity]}`,
        shares.map((parts) => parts[i] ?? allocated(0)),
      ),
    ),
    cells(
      "all",
      `${use.name}, ${UNIT[use.quantity]}`,
      shares.map((parts): Allocated => sumOf(parts)),
      whole,
    ),
  ];
}

const PLACE = (name: string): number => AMOUNTS.findIndex((amount) => amount.name === name);
const [MASS, AREA] = [PLACE("mass"), PLACE("accepted")];

// Hours of machines are modelled, so that each route has its own; idle ones are in them.
function usersOf(desk: ReportDesk): ReadonlyMap<string, MeterUser> {
  const { account, groups } = desk.input;
  const users = new Map<string, MeterUser>();
  const medians = account.program.nodes.evaluate((leaf) => leafRange(leaf).median);
  const rate = new Map<string, Float64Array>();
  for (const { lotClass, arm, flow, amount, rate: node } of account.program.terms) {
    if (flow !== "machine.hours" || account.program.classes[lotClass]?.key.own !== arm) continue;
    const key = String(lotClass);
    const row = rate.get(key) ?? new Float64Array(AMOUNTS.length);
    row[amount] = row[amount]! + medians[node]!;
    rate.set(key, row);
  }
  for (const { key, amounts } of groups) {
    const at = account.program.classOf(key);
    if (at === undefined) continue;
    const before = users.get(key.route) ?? { kg: 0, m2: 0, hour: 0 };
    const hours = rate.get(String(at));
    users.set(key.route, {
      kg: before.kg + (amounts[MASS] ?? 0),
      m2: before.m2 + (amounts[AREA] ?? 0),
      hour:
        before.hour + (hours?.reduce((sum, value, i) => sum + value * (amounts[i] ?? 0), 0) ?? 0),
    });
  }
  return new Map([...users].sort(([a], [b]) => (a < b ? -1 : 1)));
}
