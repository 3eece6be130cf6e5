/**
 * Concentration of the effluent on both routes: all load over all discharge of a route, draw by draw.
 */

import { type Range, rangeOf } from "../../compare/compare.js";
import { mean } from "../../numbers/quantiles.js";
import type { Workflow } from "../../plant/shipped-routes.js";
import type { Block, Cell } from "../document.js";
import { type Noted, numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatInterval, formatNumber, formatPercent } from "../format.js";
import type { ReportDesk } from "./desk.js";

/** A load that is looked at as a concentration. */
export type Load = "cod" | "nitrogen" | "salt";

const WORDS: Readonly<Record<Load, string>> = {
  cod: "COD",
  nitrogen: "Nitrogen",
  salt: "Dissolved salts",
};

/**
 * Table of concentrations, and whether each rises or falls from dye to pigment and why.
 *
 * @param desk - the report
 * @returns a table in mg/L
 */
export function concentrations(desk: ReportDesk): Block {
  const rows = (["cod", "nitrogen", "salt"] as const).map((load): readonly Cell[] => {
    const pigment = concentration(desk, load, "pigment");
    const dye = concentration(desk, load, "dye");
    return [
      textCell(WORDS[load], true),
      ...[pigment, dye].flatMap((noted) => [
        numberCell(noted?.run ?? "none"),
        numberCell(noted?.interval ?? "–"),
      ]),
      textCell(why(concentrationRatio(desk, load))),
    ];
  });
  return {
    kind: "table",
    id: "concentrations",
    caption:
      "Concentration at the drain, before treatment, mg/L: all load over all discharge of a route; medians with 95 % intervals. Permits often limit it, whatever the load.",
    head: [
      textCell("Load"),
      ...["Pigment", "95 % interval", "Dye", "95 % interval"].map((text) => ({
        ...textCell(text),
        align: "right" as const,
      })),
      textCell("From dye to pigment"),
    ],
    rows,
    widths: [1.5, 0.9, 1.5, 0.8, 1.5, 3.4],
  };
}

// Less water makes the same load stronger; whether it does is a matter of which falls further.
function why(ratio: Range | undefined): string {
  if (ratio === undefined) return "–";
  const digits = digitsFor(ratio.median, ratio.low, ratio.high);
  const times =
    ratio.median < 1
      ? `to ${formatPercent(ratio.median)} of dye’s (${formatInterval(100 * ratio.low, 100 * ratio.high, 0)})`
      : `${formatNumber(ratio.median, digits)}-fold (${formatInterval(ratio.low, ratio.high, digits)})`;
  if (ratio.low > 1) return `rises because water falls more than the load: ${times}`;
  if (ratio.high < 1) return `falls because the load falls more than water: ${times}`;
  return `may rise or fall: ${times}`;
}

/**
 * Concentration of a load at the drain.
 *
 * @param desk - the report
 * @param load - the load
 * @param arm - the route
 * @returns Σ load / Σ discharge of each draw, noted in mg/L; undefined where nothing is discharged or loaded
 */
export function concentration(desk: ReportDesk, load: Load, arm: Workflow): Noted | undefined {
  const draws = drawsOf(desk, load, arm);
  return draws === undefined
    ? undefined
    : desk.figures.range(`${load}-concentration.${arm}`, rangeOf(draws), "mg/L");
}

/**
 * How many times the concentration of dye that of pigment is.
 *
 * @param desk - the report
 * @param load - the load
 * @returns pigment over dye, draw by draw; undefined where either is nothing
 */
export function concentrationRatio(desk: ReportDesk, load: Load): Range | undefined {
  const pigment = drawsOf(desk, load, "pigment");
  const dye = drawsOf(desk, load, "dye");
  return pigment === undefined || dye === undefined
    ? undefined
    : rangeOf(pigment.map((value, i) => value / (dye[i] ?? NaN)));
}

function drawsOf(desk: ReportDesk, load: Load, arm: Workflow): Float64Array | undefined {
  const fence = desk.input.account.fence[arm];
  const water = fence.get("water.discharged");
  const grams = fence.get(load);
  if (water === undefined || grams === undefined || !(mean(water) > 0 && mean(grams) > 0))
    return undefined;
  const draws = grams.map((value, i) => (1000 * value) / (water[i] ?? NaN));
  return draws.every((value) => Number.isFinite(value)) ? draws : undefined;
}
