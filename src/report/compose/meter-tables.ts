/**
 * Tables on meters: what of each quantity is measured, what was corrected, how balances close, and the report
 * without and with meters.
 */

import type { BrokenDown } from "../../account/account.js";
import type { IndicatorId } from "../../account/indicators.js";
import type { Calibrated, MeterFound, StateFound } from "../../meters/calibrate.js";
import { GROSS } from "../../numbers/reconcile.js";
import { quantiles } from "../../numbers/quantiles.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatInterval, formatNumber, formatPercent } from "../format.js";
import { TABLE } from "./answer.js";
import type { ReportDesk } from "./desk.js";

/** Quantities whose coverage is told. */
export const COVERED: readonly (readonly [BrokenDown, string])[] = [
  ["water", "Water withdrawn"],
  ["energy", "Final energy"],
  ["electricity", "Electricity"],
  ["co2-location", "CO₂e, location-based"],
  ["cod", "COD load"],
];

const CARRIERS = {
  water: { words: "water", unit: "m³", scale: 1e-3 },
  electricity: { words: "electricity", unit: "MWh", scale: 1e-3 },
  gas: { words: "gas, net", unit: "MWh", scale: 1e-3 },
  steam: { words: "steam", unit: "t", scale: 1e-3 },
  oil: { words: "oil heat", unit: "MJ", scale: 1 },
  air: { words: "compressed air", unit: "Nm³", scale: 1 },
  boiler: { words: "fuel per steam", unit: "kWh/kg", scale: 1 },
} as const;

/**
 * Share of each quantity by provenance, on both arms.
 *
 * @param desk - the report
 * @returns a table, the arm of lower coverage named
 */
export function coverageTable(desk: ReportDesk): Block {
  const rows = COVERED.flatMap(([id, words]): readonly (readonly Cell[])[] => {
    if (desk.compared(id) === undefined) return [];
    const arms = (["pigment", "dye"] as const).map((arm) => ({
      arm,
      shares: desk.shares(id, arm),
      own: ownMeasured(desk, id, arm),
    }));
    const lower = arms.reduce((a, b) => (known(b.shares) < known(a.shares) ? b : a));
    return arms.map(({ arm, shares, own }) => [
      textCell(words, true),
      textCell(arm === lower.arm ? `${arm}, lower` : arm),
      ...[shares.measured, own, shares.allocated, shares.modelled, shares.default].map((share) =>
        numberCell(formatPercent(share)),
      ),
    ]);
  });
  return {
    kind: "table",
    id: "meter-coverage",
    caption:
      "Coverage by quantity and arm. Measured: the machine has a meter of its own. Its rate holds for all lots; “own lots” is the part of it that lots of this arm really took, the rest are lots of the other route charged at the rate measured. Allocated: from a meter that several machines share. Modelled and default: no meter. The arm with the lower share measured and allocated is marked.",
    head: headOf(
      ["Quantity", "Arm"],
      ["Measured", "of it own lots", "Allocated", "Modelled", "Default"],
    ),
    rows,
    widths: [2, 1.3, 1, 1, 1, 1, 1],
  };
}

function known({
  measured,
  allocated,
}: {
  readonly measured: number;
  readonly allocated: number;
}): number {
  return measured + allocated;
}

function ownMeasured(desk: ReportDesk, id: BrokenDown, arm: "pigment" | "dye"): number {
  const { account } = desk.input;
  let [own, all] = [0, 0];
  for (const { term, mean } of account.parts.get(id) ?? []) {
    if (term.arm !== arm) continue;
    all += Math.abs(mean);
    if (term.known === "measured" && account.program.classes[term.lotClass]?.key.own === arm)
      own += Math.abs(mean);
  }
  return all > 0 ? own / all : 0;
}

/**
 * Savings without and with meters.
 *
 * @param desk - the report
 * @returns a table; nothing where no meter corrected anything
 */
export function sideBySide(desk: ReportDesk): readonly Block[] {
  const { unmetered, comparisons } = desk.input;
  if (unmetered === undefined) return [];
  const rows = TABLE.flatMap(
    ([id, words]: readonly [IndicatorId, string]): readonly (readonly Cell[])[] => {
      const [before, after] = [unmetered.get(id)?.saving, comparisons.get(id)?.saving];
      if (before === undefined || after === undefined) return [];
      const text = ({ median, low, high }: typeof before): string =>
        `${formatPercent(median)} (${formatInterval(100 * low, 100 * high, 0)})`;
      const points = (range: typeof before): string =>
        formatNumber(100 * (range.high - range.low), 0);
      return [
        [
          textCell(words, true),
          numberCell(text(before)),
          numberCell(points(before)),
          numberCell(text(after)),
          numberCell(points(after)),
        ],
      ];
    },
  );
  return [
    {
      kind: "table",
      id: "meters-side-by-side",
      caption:
        "What the report would say without meters, and what it says with them: share saved by pigment with its 95 % interval, and the width of that interval in percentage points.",
      head: headOf(["Saving"], ["Without meters", "Width then", "With meters", "Width now"]),
      rows,
      widths: [2.2, 1.6, 0.7, 1.6, 0.7],
    },
  ];
}

/**
 * Corrections of machines and boilers.
 *
 * @param desk - the report
 * @param found - what meters corrected
 * @returns a table
 */
export function correctionTable(desk: ReportDesk, found: Calibrated): Block {
  const several = Object.keys(desk.input.plant.sites).length > 1;
  return {
    kind: "table",
    id: "meter-corrections",
    caption:
      "Corrections by meters, medians with 95 % intervals: meter that tells of it (own, shared by several machines, or of the site) with its tier, what settings and defaults give over the lots as printed, what that comes to with meters, and the factor by which the rates of the machine are multiplied on both routes. A factor above 1 means that the settings asked for too little. It is worked out in each draw, so it is as wide as the doubt that it takes back; how well the machine is known now stands in the column before it.",
    head: headOf(["Machine", "Quantity", "Meter"], ["Model alone", "With meters", "Factor"]),
    rows: found.states.map((state) => stateCells(state, several)),
    widths: [1.1, 1.5, 1.3, 1.6, 1.7, 1.9],
  };
}

const KNOWN_BY: Readonly<Record<string, string>> = {
  T1: "lots",
  T2: "own",
  T3: "shared",
  T4: "site",
};

function stateCells(state: StateFound, several: boolean): readonly Cell[] {
  const { words, unit, scale } = CARRIERS[state.carrier];
  return [
    textCell(several ? `${state.site}, ${state.machine}` : state.machine, true),
    textCell(`${words}, ${unit}`),
    textCell(`${KNOWN_BY[state.tier] ?? "model"}, ${state.tier}`),
    numberCell(rangeText(state.before, scale)),
    numberCell(
      rangeText(
        state.before.map((value, i) => value * state.corrections[i]!),
        scale,
      ),
    ),
    numberCell(rangeText(state.corrections)),
  ];
}

/**
 * Balances of meters with their tests.
 *
 * @param found - what meters corrected
 * @returns a table and what it says of gross errors
 */
export function balanceBlocks(found: Calibrated): readonly Block[] {
  const gross = found.meters.filter(({ score }) => Math.abs(score) > GROSS);
  const { sum, chance } = found.test;
  const named = gross.map(({ use, score }) => `${use.name} (${formatNumber(score, 1)})`).join(", ");
  return [
    {
      kind: "table",
      id: "meter-balances",
      caption:
        "Balances of meters over the months that have both readings and lots, medians with 95 % intervals: reading, what lots take by the model before and after reconciliation, and what the meter counts that no lot asks for (base load, leaks, work that is not logged). Residual: how far the reading itself was moved, in standard deviations; beyond ± 1.96 one of the two, meter or model, says more than its doubt allows.",
      head: headOf(
        ["Meter", "Unit"],
        ["Reading", "Lots, before", "Lots, after", "No lot", "Residual"],
      ),
      rows: found.meters.map(meterCells),
      widths: [1.5, 0.6, 0.8, 2, 2, 1.7, 0.9],
    },
    {
      kind: "paragraph",
      runs: [
        {
          kind: "text",
          text: `All ${formatNumber(found.meters.length, 0)} balances together: sum of squared moves ${formatNumber(sum, 1)}, and by chance as large a sum comes in ${formatPercent(chance)} of cases where all doubts are right. ${
            gross.length === 0
              ? "No reading stands out by itself."
              : `Readings that stand out: ${named}. Look at their multiplier, unit and machines first; nothing was left out for it.`
          }`,
        },
      ],
    },
  ];
}

function meterCells({ use, reading, before, after, stream, score }: MeterFound): readonly Cell[] {
  const { unit, scale } = CARRIERS[use.quantity];
  return [
    textCell(use.name, true),
    textCell(unit),
    numberCell(readingText(scale * (quantiles(reading, [0.5])[0] ?? NaN))),
    numberCell(rangeText(before, scale)),
    numberCell(rangeText(after, scale)),
    numberCell(stream === undefined ? "none, as given" : rangeText(stream.after, scale)),
    numberCell(formatNumber(score, 1)),
  ];
}

function readingText(value: number): string {
  return formatNumber(value, value < 100 ? 1 : 0);
}

function rangeText(draws: Float64Array, scale = 1): string {
  const [low = NaN, median = NaN, high = NaN] = quantiles(draws, [0.025, 0.5, 0.975]).map(
    (value) => value * scale,
  );
  const digits = Math.max(0, digitsFor(median, low, high));
  return `${formatNumber(median, digits)} (${formatInterval(low, high, digits)})`;
}

function headOf(texts: readonly string[], numbers: readonly string[]): readonly Cell[] {
  return [
    ...texts.map((text) => textCell(text)),
    ...numbers.map((text) => ({ ...textCell(text), align: "right" as const })),
  ];
}
