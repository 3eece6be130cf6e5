/**
 * Chapters on lots, months, fabrics, clients and what the mill really did.
 */

import { byGroup, type GroupMean } from "../../account/breakdown.js";
import { type BrokenDown, coefficientsOf } from "../../account/account.js";
import { dot } from "../../account/breakdown.js";
import { boundaryStrip } from "../../charts/boundary-strip.js";
import { lotDots } from "../../charts/lot-dots.js";
import { monthLines } from "../../charts/month-lines.js";
import type { LedgerKey } from "../../ledger/key.js";
import { mean } from "../../numbers/quantiles.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatNumber, formatPercent } from "../format.js";
import { amountPlaces } from "./answer.js";
import type { ReportDesk } from "./desk.js";
import { printUnit, stepWords } from "./names.js";
import { ROUTE_NAMES } from "./quantities.js";

/** Classes of fabric shown before the rest is folded. */
const MOST_CLASSES = 12;

/**
 * Fabric as shown in a class: its name, or its fibres when it has none.
 *
 * @param key - key of a group
 * @returns the class
 */
export function fabricClass(key: LedgerKey): string {
  return key.fabric === "" ? key.blend : key.fabric;
}

/**
 * Lots as dots by fabric class, each on the route it took.
 *
 * @param desk - the report
 * @param id - the indicator
 * @param words - what it is
 * @returns blocks
 */
export function lotBlocks(desk: ReportDesk, id: BrokenDown, words: string): readonly Block[] {
  const { account, sample } = desk.input;
  const of = coefficientsOf(account, id);
  const places = amountPlaces();
  const { unit, scale } = printUnit(id, account.program.indicators.get(id)?.unit ?? "", "m²");
  const lots = sample.flatMap(({ key, amounts }) => {
    const lotClass = account.program.classOf(key);
    const area = amounts[places.printed] ?? 0;
    if (lotClass === undefined || !(area > 0)) return [];
    const value = (scale * dot(of(lotClass, key.own), amounts)) / area;
    return value > 0 ? [{ fabric: fabricClass(key), route: key.own, value, area }] : [];
  });
  if (lots.length === 0)
    return [
      desk.gap(`${id}-lots`, `${words} lot by lot`, "No lot has a counterpart, so none is drawn."),
    ];
  const areas = new Map<string, number>();
  for (const lot of lots) areas.set(lot.fabric, (areas.get(lot.fabric) ?? 0) + lot.area);
  const classes = [...areas]
    .sort(([, a], [, b]) => b - a)
    .slice(0, MOST_CLASSES)
    .map(([name]) => name);
  const shown = lots.filter((lot) => classes.includes(lot.fabric));
  const middle =
    shown.map((lot) => lot.value).sort((a, b) => a - b)[Math.floor(shown.length / 2)] ?? 1;
  return [
    desk.figure(
      `${id}-lots`,
      `${words} lot by lot, ${unit} printed, means of draws, ${formatNumber(shown.length, 0)} lots`,
      `Each dot is a lot on the route it took, by fabric; the size is its printed area.`,
      lotDots({
        quantity: `${words}, per printed m²`,
        unit,
        digits: digitsFor(middle, 0.9 * middle, 1.1 * middle),
        names: ROUTE_NAMES,
        classes,
        lots: shown,
      }),
    ),
  ];
}

/**
 * Month by month, each workflow on the lots that took it.
 *
 * @param desk - the report
 * @param id - the indicator
 * @param words - what it is
 * @returns blocks
 */
export function monthBlocks(desk: ReportDesk, id: BrokenDown, words: string): readonly Block[] {
  const { account, groups } = desk.input;
  const places = amountPlaces();
  const { unit, scale } = printUnit(id, account.program.indicators.get(id)?.unit ?? "", "m²");
  const months = byGroup(account, groups, id, (key) => key.month, places.accepted);
  const point = (
    entry: GroupMean,
    own: "pigment" | "dye",
  ): { value: number; lots: number } | undefined =>
    entry.actualArea[own] > 0
      ? { value: (scale * entry.actual[own]) / entry.actualArea[own], lots: entry.actualLots[own] }
      : undefined;
  const data = [...months].map(([month, entry]) => {
    const pigment = point(entry, "pigment");
    const dye = point(entry, "dye");
    return {
      month,
      ...(pigment === undefined ? {} : { pigment }),
      ...(dye === undefined ? {} : { dye }),
    };
  });
  if (data.length < 2)
    return [
      desk.gap(
        `${id}-months`,
        `${words} month by month`,
        "The log holds one month only; give a longer period.",
      ),
    ];
  const digits = id === "energy" ? 2 : 1;
  return [
    desk.figure(
      `${id}-months`,
      `${words} month by month, ${unit} accepted, lots on the route they took, means of draws`,
      "Lines for both routes by month, with the number of lots below.",
      monthLines({ quantity: words, unit, digits, names: ROUTE_NAMES, months: data }),
    ),
    {
      kind: "table",
      id: `${id}-month-table`,
      caption: `${words} month by month, ${unit} accepted, on the route the lots took. Means of draws.`,
      behind: true,
      head: ["Month", "Pigment", "Lots", "Dye", "Lots"].map((text, i) =>
        i === 0 ? textCell(text) : { ...textCell(text), align: "right" as const },
      ),
      rows: data.map(({ month, pigment, dye }) => [
        textCell(month, true),
        numberCell(pigment === undefined ? "–" : formatNumber(pigment.value, digits)),
        numberCell(String(pigment?.lots ?? 0)),
        numberCell(dye === undefined ? "–" : formatNumber(dye.value, digits)),
        numberCell(String(dye?.lots ?? 0)),
      ]),
    },
  ];
}

/**
 * Both routes by fabric or by client: means and share saved.
 *
 * @param desk - the report
 * @param by - `fabric` or `client`
 * @returns a table
 */
export function breakdownTable(desk: ReportDesk, by: "fabric" | "client"): Block {
  const { account, groups } = desk.input;
  const places = amountPlaces();
  const name = (key: LedgerKey): string =>
    by === "fabric" ? fabricClass(key) : key.client === "" ? "no client logged" : key.client;
  const water = byGroup(account, groups, "water", name, places.accepted);
  const energy = byGroup(account, groups, "energy", name, places.accepted);
  const per = (total: number, area: number): string => {
    if (!(area > 0)) return "–";
    const value = total / area;
    return formatNumber(value, digitsFor(value, 0.9 * value, 1.1 * value));
  };
  const rows: (readonly Cell[])[] = [...water].map(([key, entry]) => {
    const heat = energy.get(key);
    return [
      textCell(key, true),
      numberCell(String(entry.lots)),
      numberCell(formatNumber(entry.accepted, 0)),
      numberCell(per(entry.pigment, entry.accepted)),
      numberCell(per(entry.dye, entry.accepted)),
      numberCell(entry.dye > 0 ? formatPercent(1 - entry.pigment / entry.dye) : "–"),
      numberCell(per(heat?.pigment ?? 0, entry.accepted)),
      numberCell(per(heat?.dye ?? 0, entry.accepted)),
      numberCell(
        heat !== undefined && heat.dye > 0 ? formatPercent(1 - heat.pigment / heat.dye) : "–",
      ),
    ];
  });
  return {
    kind: "table",
    id: `by-${by}`,
    caption: `Both routes by ${by}, per accepted m². Means of draws without interval: for orientation, not for quoting.`,
    head: [
      by === "fabric" ? "Fabric" : "Client",
      "Lots",
      "m² accepted",
      "Water P, L",
      "Water D, L",
      "less",
      "Energy P, kWh",
      "Energy D, kWh",
      "less",
    ].map((text, i) => (i === 0 ? textCell(text) : { ...textCell(text), align: "right" as const })),
    rows,
    widths: [2.4, 0.7, 1.2, 1, 1, 0.8, 1.1, 1.1, 0.8],
  };
}

/**
 * Totals of what the mill really did beside both arms.
 *
 * @param desk - the report
 * @returns a table
 */
export function actualTable(desk: ReportDesk): Block {
  const { account } = desk.input;
  const rows = (["water", "energy", "co2-location", "cod"] as const).map((id) => {
    const { unit, scale } = printUnit(id, account.program.indicators.get(id)?.unit ?? "", "");
    const of = (side: "actual" | "pigment" | "dye"): string => {
      const value = scale * mean(account.indicators[side].get(id) ?? new Float64Array(1));
      return formatNumber(value, digitsFor(value, 0.95 * value, 1.05 * value));
    };
    const words = {
      water: "Water withdrawn",
      energy: "Final energy",
      "co2-location": "CO₂e, location-based",
      cod: "COD load",
    }[id];
    return [
      textCell(`${words}, ${unit}`, true),
      numberCell(of("actual")),
      numberCell(of("pigment")),
      numberCell(of("dye")),
    ];
  });
  return {
    kind: "table",
    id: "as-printed",
    caption:
      "All lots of the period: as they were printed, and had all gone one route. Means of draws. Site overhead is outside.",
    head: ["Quantity", "As printed", "All pigment", "All dye"].map((text, i) =>
      i === 0 ? textCell(text) : { ...textCell(text), align: "right" as const },
    ),
    rows,
    widths: [2.6, 1, 1, 1],
  };
}

/**
 * Steps of both routes: what is counted.
 *
 * @param desk - the report
 * @returns a figure
 */
export function boundaryFigure(desk: ReportDesk): Block {
  const roles = new Map<string, { pigment: boolean; dye: boolean }>();
  const order: string[] = [];
  for (const { arms } of desk.input.account.program.classes) {
    for (const arm of ["dye", "pigment"] as const) {
      let after = -1;
      for (const { role, kind } of arms[arm].steps) {
        if (kind === "stored") continue;
        const at = order.indexOf(role);
        if (at < 0) order.splice(++after, 0, role);
        else after = at;
        const entry = roles.get(role) ?? { pigment: false, dye: false };
        roles.set(role, { ...entry, [arm]: true });
      }
    }
  }
  return desk.figure(
    "boundary",
    "Steps counted on each route",
    "Boxes in the order cloth takes the steps: counted on a route, or not present there.",
    boundaryStrip({
      names: ROUTE_NAMES,
      steps: order.map((role) => ({
        name: stepWords(role),
        dye: roles.get(role)?.dye === true ? "counted" : "not present",
        pigment: roles.get(role)?.pigment === true ? "counted" : "not present",
      })),
    }),
  );
}
