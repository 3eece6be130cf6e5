/**
 * Options side by side, and how their measures are printed.
 */

import type { FoundOption } from "../../invest/findings.js";
import type { Measures } from "../../invest/measures.js";
import type { Block } from "../document.js";
import { digitsFor, formatNumber, formatPercent } from "../format.js";
import { type InvestDesk, money, right, table } from "./desk.js";

/** Longest name that is kept on one line. */
const ONE_LINE = 17;

// Rate of return in print: of several the one at which the worth falls to 0, with a mark.
function returnWords({ rates, mainRate }: Measures): string {
  if (rates.length === 0) return "none";
  if (mainRate === undefined) return "not unique";
  return `${formatPercent(mainRate, 1)}${rates.length > 1 ? "*" : ""}`;
}

/**
 * Money per tonne or m³ in print; money brought is not a cost and is never ranked. Either way the chance that it
 * brings money stands beside it.
 *
 * @param desk - the report
 * @param each - money per unit, below 0 where it brings money
 * @param saves - draws in which it brings money
 * @returns in print
 */
export function costWords(desk: InvestDesk, each: number | undefined, saves: number): string {
  if (each === undefined) return "nothing saved";
  const often = desk.chance(saves);
  return each < 0 ? `brings money in ${often}` : `${money(each)}; brings money in ${often}`;
}

/**
 * Options side by side, money in thousands: columns at the values of the file, and columns of the draws.
 *
 * @param desk - the report
 * @returns a table, a row for each option
 */
export function optionTable(desk: InvestDesk): Block {
  const { options, study, order } = desk.found;
  const first = (name: string): string =>
    desk.chance(order.find((one) => one.name === name)?.places[0] ?? 0);
  const several = options.some(({ measures }) => measures.rates.length > 1);
  return table(
    "options",
    `Against ${study.carryOn.name}, which comes first in ${first(study.carryOn.name)} of draws. F: at the values of the file; D: of the draws. Payback: years by yearly gains/all money, discounted/utilities. Per t: CO₂e.${several ? " * Not unique: NPV falls to 0 there." : ""}`,
    [
      `Thousand ${desk.currency}, ${study.money}`,
      "Outlay (F)",
      "NPV (F)",
      "Median (D)",
      "10 to 90 % (D)",
      "Above 0 (D)",
      "IRR (F)",
      "Payback (F)",
      "Per t (F)",
      "First (D)",
    ],
    options.map(({ option, measures, drawn }: FoundOption) => {
      const { digits, interval } = desk.worth(drawn);
      const [, low, median, high] = drawn.spread;
      const { perTonne } = measures;
      return [
        short(option.name),
        right(thousands(measures.outlay, digitsFor(measures.outlay))),
        right(thousands(measures.gain.worth, digitsFor(measures.gain.worth))),
        right(thousands(median, digits)),
        right(interval === "" ? "–" : `${thousands(low, digits)} to ${thousands(high, digits)}`),
        right(desk.chance(drawn.above)),
        right(returnWords(measures)),
        right(
          [measures.simplePayback, measures.discountedPayback, measures.utilitiesPayback]
            .map(yearsOf)
            .join("/"),
        ),
        right(perTonne === undefined ? "no less" : perTonne < 0 ? "saves" : money(perTonne)),
        right(first(option.name)),
      ];
    }),
    { widths: [1.9, 0.8, 0.8, 0.95, 1.45, 0.85, 1, 1.35, 0.75, 0.75] },
  );
}

// In thousands, with the same digits as the whole.
function thousands(value: number, digits: number): string {
  return formatNumber(value / 1000, digits + 3);
}

function yearsOf(value: number | undefined): string {
  return value === undefined ? "never" : formatNumber(value, value < 9.95 ? 1 : 0);
}

// A short name stays on one line.
function short(name: string): string {
  return name.length > ONE_LINE ? name : name.replaceAll(" ", "\u00a0");
}
