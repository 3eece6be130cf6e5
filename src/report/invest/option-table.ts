/**
 * Options side by side, and how their measures are printed.
 */

import type { FoundOption } from "../../invest/findings.js";
import type { Measures } from "../../invest/measures.js";
import type { Block } from "../document.js";
import { formatNumber, formatPercent } from "../format.js";
import { type InvestDesk, money, right, table } from "./desk.js";

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
 * Options side by side: rows at the values of the file, and rows of the draws.
 *
 * @param desk - the report
 * @returns a table, a row for each measure
 */
export function optionTable(desk: InvestDesk): Block {
  const { options, study, order } = desk.found;
  const row = (
    words: string,
    of: (found: FoundOption) => string,
  ): readonly (string | ReturnType<typeof right>)[] => [
    words,
    ...options.map((found) => right(of(found))),
  ];
  const first = (name: string): string =>
    desk.chance(order.find((one) => one.name === name)?.places[0] ?? 0);
  const several = options.some(({ measures }) => measures.rates.length > 1);
  return table(
    "options",
    `Against ${study.carryOn.name}, ${desk.currency} ${study.money}; ${study.carryOn.name} comes first in ${first(study.carryOn.name)} of draws. Rows marked F are at the values of the file, rows marked D from the draws. Payback in years: by yearly gains / by all money, discounted / by utilities alone; per tonne in brackets the draws (D) that bring money and less CO₂e.${several ? " * Not unique, see below; this is the rate at which the NPV falls to 0." : ""}`,
    ["", ...options.map(({ option }) => option.name)],
    [
      row("F outlay at start", ({ measures }) => money(measures.outlay)),
      row("F NPV", ({ measures }) => money(measures.gain.worth)),
      row("D NPV, median", ({ drawn }) => desk.worth(drawn).value.text),
      row("D NPV, 10 % below", ({ drawn }) => desk.worth(drawn).low),
      row("D NPV, 90 % below", ({ drawn }) => desk.worth(drawn).high),
      row("D P(NPV above 0)", ({ drawn }) => desk.chance(drawn.above)),
      row("F IRR", ({ measures }) => returnWords(measures)),
      row("F payback", ({ measures: { simplePayback, discountedPayback, utilitiesPayback } }) =>
        [simplePayback, discountedPayback, utilitiesPayback].map(short).join(" / "),
      ),
      row("F per t CO₂e", ({ measures: { perTonne }, drawn }) =>
        perTonne === undefined
          ? "none less"
          : `${perTonne < 0 ? "saves" : money(perTonne)} (${desk.chance(drawn.saves)})`,
      ),
      row("D comes first", ({ option }) => first(option.name)),
    ],
    { widths: [1.52, ...options.map(() => 1.35)] },
  );
}

function short(value: number | undefined): string {
  return value === undefined ? "never" : formatNumber(value, value < 9.95 ? 1 : 0);
}
