/**
 * Chapters on lots and months.
 */

import { byGroup, type GroupMean } from "../../account/breakdown.js";
import { type BrokenDown, coefficientsOf } from "../../account/account.js";
import { dot } from "../../account/breakdown.js";
import type { LedgerKey } from "../../ledger/key.js";
import { quantiles } from "../../numbers/quantiles.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatNumber } from "../format.js";
import { amountPlaces } from "./answer.js";
import type { ReportDesk } from "./desk.js";
import { printUnit } from "./names.js";
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
    lotFinding(words, unit, shown),
    desk.figure(
      `${id}-lots`,
      `${words} lot by lot, ${unit} printed, means of draws, ${lotsWords(desk, shown.length)}`,
      `Each dot is a lot on the route it took, by fabric; the size is its printed area.`,
      {
        kind: "lot-dots",
        data: {
          quantity: `${words}, per printed m²`,
          unit,
          digits: digitsFor(middle, 0.9 * middle, 1.1 * middle),
          names: ROUTE_NAMES,
          classes,
          lots: shown,
        },
      },
    ),
    lotTable(
      desk,
      `${id}-lot-table`,
      `${words} lot by lot, ${unit} printed, on the route the lots took. Means of draws; ${lotsWords(desk, shown.length)}.`,
      classes,
      shown,
    ),
  ];
}

// Many lots are thinned by a hash of their names, which neither order nor size can sway.
function lotsWords(desk: ReportDesk, shown: number): string {
  const all = desk.input.groups.reduce(
    (sum, { key, lots }) => sum + (key.pigment === "" ? 0 : lots),
    0,
  );
  return shown === all
    ? `${formatNumber(all, 0)} lots`
    : `${formatNumber(shown, 0)} of ${formatNumber(all, 0)} lots, drawn by hash of the lot’s name`;
}

function lotFinding(
  words: string,
  unit: string,
  shown: readonly { readonly route: "pigment" | "dye"; readonly value: number }[],
): Block {
  const of = (route: "pigment" | "dye"): string => {
    const values = Float64Array.from(
      shown.filter((lot) => lot.route === route).map(({ value }) => value),
    );
    if (values.length === 0) return `no lot took the ${route} route`;
    const [low = NaN, middle = NaN, high = NaN] = quantiles(values, [0.1, 0.5, 0.9]);
    const digits = digitsFor(middle, 0.9 * middle, 1.1 * middle);
    return `the middle ${route} lot takes ${formatNumber(middle, digits)} ${unit} printed and four in five take ${formatNumber(low, digits)} to ${formatNumber(high, digits)}`;
  };
  return {
    kind: "paragraph",
    runs: [
      { kind: "text", text: `${words}: `, style: "bold" },
      { kind: "text", text: `${of("pigment")}; ${of("dye")}.` },
    ],
  };
}

function lotTable(
  desk: ReportDesk,
  id: string,
  caption: string,
  classes: readonly string[],
  lots: readonly {
    readonly fabric: string;
    readonly route: "pigment" | "dye";
    readonly value: number;
  }[],
): Block {
  const rows = classes.flatMap((fabric) =>
    (["dye", "pigment"] as const).flatMap((route): (readonly Cell[])[] => {
      const values = Float64Array.from(
        lots
          .filter((lot) => lot.fabric === fabric && lot.route === route)
          .map(({ value }) => value),
      );
      if (values.length === 0) return [];
      const [low = NaN, quarter = NaN, middle = NaN, upper = NaN, high = NaN] = quantiles(
        values,
        [0, 0.25, 0.5, 0.75, 1],
      );
      const digits = digitsFor(middle, 0.9 * middle, 1.1 * middle);
      return [
        [
          textCell(fabric, true),
          textCell(ROUTE_NAMES[route]),
          numberCell(String(values.length)),
          numberCell(formatNumber(allLots(desk, fabric, route), 0)),
          ...[low, quarter, middle, upper, high].map((value) =>
            numberCell(formatNumber(value, digits)),
          ),
        ],
      ];
    }),
  );
  return {
    kind: "table",
    id,
    caption,
    behind: true,
    head: [
      textCell("Fabric"),
      textCell("Route"),
      ...["Shown", "All lots", "Lowest", "Quarter", "Median", "Three quarters", "Highest"].map(
        (text) => ({
          ...textCell(text),
          align: "right" as const,
        }),
      ),
    ],
    rows,
  };
}

function allLots(desk: ReportDesk, fabric: string, route: "pigment" | "dye"): number {
  return desk.input.groups.reduce(
    (sum, { key, lots }) =>
      sum + (key.pigment !== "" && key.own === route && fabricClass(key) === fabric ? lots : 0),
    0,
  );
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
    monthFinding(words, unit, digits, data),
    desk.figure(
      `${id}-months`,
      `${words} month by month, ${unit} accepted, lots on the route they took, means of draws`,
      "Lines for both routes by month, with the number of lots below.",
      {
        kind: "month-lines",
        data: { quantity: words, unit, digits, names: ROUTE_NAMES, months: data },
      },
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

function monthFinding(
  words: string,
  unit: string,
  digits: number,
  data: readonly {
    readonly month: string;
    readonly pigment?: { readonly value: number };
    readonly dye?: { readonly value: number };
  }[],
): Block {
  const of = (route: "pigment" | "dye"): string => {
    const values = data.flatMap((month) => month[route]?.value ?? []);
    if (values.length === 0) return `no lot took the ${route} route`;
    const [least, most] = [Math.min(...values), Math.max(...values)];
    return `${formatNumber(least, digits)} to ${formatNumber(most, digits)} ${unit} on the ${route} route`;
  };
  return {
    kind: "paragraph",
    runs: [
      { kind: "text", text: `${words} by month: `, style: "bold" },
      {
        kind: "text",
        text: `${of("pigment")}, ${of("dye")}. Each month has its own lots, so part of the difference is what was printed.`,
      },
    ],
  };
}
