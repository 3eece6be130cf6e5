/**
 * Share of first quality on both routes: as logged, or drawn where the plant file gives yield by workflow.
 */

import { rangeOf } from "../../compare/compare.js";
import { AMOUNTS } from "../../steps/amounts.js";
import type { Cell, Run } from "../document.js";
import { type Noted, numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent, formatShareOfDraws } from "../format.js";
import type { ReportDesk } from "./desk.js";

/** Decimals of a yield that was counted, so that the difference of two can be followed. */
const LOGGED_DIGITS = 2;

/** Shares of first quality in percent. */
interface FirstQuality {
  /** Pigment; absent when no lot took it and no yield is given. */
  readonly pigment?: Noted;
  /** Dye; absent when no lot took it and no yield is given. */
  readonly dye?: Noted;
  /** Dye minus pigment in percentage points; NaN where one is absent. */
  readonly difference: number;
}

/**
 * Row of the table on page one.
 *
 * @param desk - the report
 * @returns cells in the order of the table
 */
export function yieldRow(desk: ReportDesk): readonly Cell[] {
  const { pigment, dye, difference } = firstQuality(desk);
  const shown = (noted: Noted | undefined): Cell => numberCell(noted?.run ?? "no lots");
  return [
    textCell("First-quality yield, %", true),
    shown(pigment),
    shown(dye),
    ...(drawn(desk) ?? [
      numberCell(Number.isFinite(difference) ? formatNumber(difference, LOGGED_DIGITS) : "–"),
      numberCell("–"),
      numberCell("–"),
      numberCell("logged"),
      textCell("–"),
    ]),
  ];
}

// Cells behind the two yields where they are drawn: half of both arms is logged, each on its own lots.
function drawn(desk: ReportDesk): readonly Cell[] | undefined {
  const { yields } = desk.input;
  if (yields === undefined) return undefined;
  const { pigment, dye } = yields.accepted;
  const points = dye.map((area, i) => (100 * (area - (pigment[i] ?? NaN))) / yields.printed);
  const range = rangeOf(points);
  const noted = desk.figures.range("yield.difference", range, "points", { digits: 1 });
  const less = points.reduce((count, value) => count + (value > 0 ? 1 : 0), 0);
  return [
    numberCell(noted.run),
    numberCell(noted.interval),
    numberCell(formatShareOfDraws(less, points.length)),
    numberCell(formatPercent(0.5)),
    textCell(range.low > 0 || range.high < 0 ? "yes" : "no"),
  ];
}

/**
 * Words for a yield that is lower on the pigment route.
 *
 * @param desk - the report
 * @returns runs without a full stop; empty when it is not lower
 */
export function yieldFall(desk: ReportDesk): readonly Run[] {
  const { pigment, dye, difference } = firstQuality(desk);
  if (pigment === undefined || dye === undefined || !(difference > 0)) return [];
  return [
    { kind: "text", text: "first-quality yield falls from " },
    dye.run,
    { kind: "text", text: " to " },
    pigment.run,
    {
      kind: "text",
      text:
        desk.input.yields === undefined
          ? " % (as logged, on the lots that took each route)"
          : " % (with the yields of the plant file)",
    },
  ];
}

function firstQuality(desk: ReportDesk): FirstQuality {
  const noted = (arm: "pigment" | "dye"): { noted?: Noted; value: number } => {
    const { yields } = desk.input;
    if (yields !== undefined) {
      const range = rangeOf(yields.accepted[arm].map((area) => (100 * area) / yields.printed));
      return {
        noted: desk.figures.range(`yield.${arm}`, range, "%", { digits: 1 }),
        value: range.median,
      };
    }
    const value = loggedYield(desk, arm);
    return Number.isFinite(value)
      ? {
          noted: desk.figures.plain(`yield.${arm}`, value, "%", {
            digits: LOGGED_DIGITS,
            of: "count",
          }),
          value,
        }
      : { value };
  };
  const [p, d] = [noted("pigment"), noted("dye")];
  return {
    ...(p.noted === undefined ? {} : { pigment: p.noted }),
    ...(d.noted === undefined ? {} : { dye: d.noted }),
    difference: d.value - p.value,
  };
}

// What the mill itself logged on the lots of a route; not a matter of draws.
function loggedYield(desk: ReportDesk, arm: "pigment" | "dye"): number {
  const [printedAt, acceptedAt] = ["printed", "accepted"].map((name) =>
    AMOUNTS.findIndex((amount) => amount.name === name),
  );
  let [printed, accepted] = [0, 0];
  for (const { key, amounts } of desk.input.groups) {
    if (key.kind === "overhead" || key.own !== arm) continue;
    printed += amounts[printedAt ?? -1] ?? 0;
    accepted += amounts[acceptedAt ?? -1] ?? 0;
  }
  return printed > 0 ? (100 * accepted) / printed : NaN;
}
