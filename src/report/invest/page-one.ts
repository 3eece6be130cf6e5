/**
 * Page one: the decision line, options side by side, money over the years, what it hangs on, what is guessed.
 */

import type { BreakEven } from "../../invest/drivers.js";
import type { FoundOption } from "../../invest/findings.js";
import type { Block } from "../document.js";
import { spanOf } from "../../invest/doubt.js";
import { formatNumber, formatPercent, formatShareOfDraws } from "../format.js";
import {
  type InvestDesk,
  inputSpan,
  inputValue,
  money,
  paragraph,
  right,
  say,
  span,
  standing,
  table,
} from "./desk.js";

/** Inputs named on page one. */
const NAMED = 3;

/** Guessed inputs listed on page one. */
const GUESSED = 2;

/**
 * The decision line.
 *
 * @param desk - the report
 * @returns one paragraph
 */
export function decisionLine(desk: InvestDesk): Block {
  const { project, study, order } = desk.found;
  const { measures, drawn, option } = project;
  const base = desk.number("npv", measures.gain.worth, desk.currency);
  const worth = desk.worth(drawn);
  const [turn] = turningFirst(desk);
  const sign = measures.gain.worth > 0;
  const best = order.reduce((first, one) =>
    (one.places[0] ?? 0) > (first.places[0] ?? 0) ? one : first,
  );
  const next = nextBest(desk);
  const stops =
    turn?.at === undefined
      ? " No single input of the file turns the sign within its range."
      : ` There it ${sign ? "stops paying" : "would begin to pay"} if ${turn.input.words} passes ${inputValue(turn.input, turn.at)} (${standing(turn.input)} ${inputValue(turn.input, turn.input.central)}).`;
  return paragraph([
    `All doubts drawn, ${option.name} brings a net present value (NPV) of `,
    worth.run,
    ` ${desk.currency} (median; 10 to 90 % of draws ${worth.interval}) at ${formatPercent(study.discount.central, 1)} ${study.money} over ${option.text.life} years: above zero in ${chance(desk, drawn.above)} of draws${next === undefined ? "" : `, better than ${next.name}, the next option, in ${chance(desk, next.ahead)}`}. At the values of the file it is `,
    base.run,
    `.${stops}${best.name === next?.name ? "" : ` Of all options, ${best.name} comes first in ${chance(desk, best.places[0] ?? 0)} of draws.`}`,
  ]);
}

// The best of the others, carrying on among them, by median equal yearly money; and in how many draws it is beaten.
function nextBest(desk: InvestDesk): { readonly name: string; readonly ahead: number } | undefined {
  const { options, project, study } = desk.found;
  const nothing = new Float64Array(project.drawn.even.length);
  const others = [
    { name: study.carryOn.name, even: nothing },
    ...options
      .filter(({ option }) => option.name !== project.option.name)
      .map(({ option, drawn }) => ({ name: option.name, even: drawn.even })),
  ].map((one) => ({ ...one, median: spanOf(one.even).median }));
  const [next] = others.sort((a, b) => b.median - a.median);
  if (next === undefined) return undefined;
  return {
    name: next.name,
    ahead: project.drawn.even.reduce(
      (count, even, at) => count + (even > (next.even[at] ?? 0) ? 1 : 0),
      0,
    ),
  };
}

/**
 * Share of draws in print.
 *
 * @param desk - the report
 * @param count - draws
 * @returns in percent, never 0 or 100
 */
export function chance(desk: InvestDesk, count: number): string {
  return formatShareOfDraws(count, desk.found.study.draws);
}

/**
 * Break-evens that turn the sign, those nearest to the file's value in terms of the input's own doubt first.
 *
 * @param desk - the report
 * @returns those with a value
 */
function turningFirst(desk: InvestDesk): readonly BreakEven[] {
  const far = ({ input, at = NaN }: BreakEven): number => {
    const half = Math.max(1e-12, (input.high - input.low) / 2);
    return input.high > input.low ? Math.abs(at - input.central) / half : Infinity;
  };
  return desk.found.breakEvens
    .filter(({ at, input }) => at !== undefined && input.high > input.low)
    .sort((a, b) => far(a) - far(b));
}

// Rates of return in print: the rate, all where there are several, or none.
function returnWords(rates: readonly number[]): string {
  const shown = rates.map((rate) => formatPercent(rate, 1));
  const [first] = shown;
  if (first === undefined) return "none";
  return shown.length === 1 ? first : `not unique: ${shown.join(", ")}`;
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
  const often = chance(desk, saves);
  return each < 0 ? `saves money in ${often}` : `${money(each)}; saves in ${often}`;
}

/**
 * Options side by side.
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
    chance(desk, order.find((one) => one.name === name)?.places[0] ?? 0);
  return table(
    "options",
    `Against ${study.carryOn.name}, ${desk.currency} ${study.money}: it comes first in ${first(study.carryOn.name)} of draws. Payback in years by yearly gains / by all money, discounted / by utilities alone; in brackets the draws that save money and CO₂e.`,
    ["", ...options.map(({ option }) => option.name)],
    [
      row("Outlay at start", ({ measures }) => money(measures.outlay)),
      row("A year, all moved", ({ measures }) => money(measures.steady.money)),
      row("NPV, 10 % below", ({ drawn }) => desk.worth(drawn).low),
      row("NPV, median", ({ drawn }) => desk.worth(drawn).value.text),
      row("NPV, 90 % below", ({ drawn }) => desk.worth(drawn).high),
      row("P(NPV above 0)", ({ drawn }) => chance(desk, drawn.above)),
      row("IRR", ({ measures }) =>
        measures.rates.length > 1 ? "not unique" : returnWords(measures.rates),
      ),
      row("Payback", ({ measures: { simplePayback, discountedPayback, utilitiesPayback } }) =>
        [simplePayback, discountedPayback, utilitiesPayback].map(short).join(" / "),
      ),
      row("Per t CO₂e", ({ measures: { perTonne }, drawn }) =>
        perTonne === undefined
          ? "none less"
          : `${perTonne < 0 ? "saves" : money(perTonne)} (${chance(desk, drawn.saves)})`,
      ),
      row("Comes first", ({ option }) => first(option.name)),
    ],
    { widths: [1.52, ...options.map(() => 1.35)] },
  );
}

function short(value: number | undefined): string {
  return value === undefined ? "never" : formatNumber(value, value < 9.95 ? 1 : 0);
}

/**
 * Money over the years as a chart.
 *
 * @param desk - the report
 * @returns figure and the table behind it
 */
export function cashBlocks(desk: InvestDesk): readonly Block[] {
  const { project, study } = desk.found;
  const { drawn, measures, option } = project;
  let sum = 0;
  const rate = study.discount.central;
  const points = measures.gain.flows.map((flow, year) => {
    sum += flow / (1 + rate) ** (study.timing === "mid-year" && year > 0 ? year - 0.5 : year);
    const band = drawn.cumulative[year];
    return { year, base: sum, low: band?.low ?? sum, high: band?.high ?? sum };
  });
  const kind = study.money === "real" ? "money of the start" : "money of each year";
  return [
    {
      kind: "figure",
      id: "cash",
      title: `Discounted money of ${option.name} against ${study.carryOn.name}, added up, ${desk.currency} in ${kind}`,
      description: `Steps fall to ${money(Math.min(...points.map(({ base }) => base)))} ${desk.currency} and end at ${money(sum)} after ${option.text.life} years; the band holds 10 to 90 % of the draws.`,
      chart: {
        kind: "cash-band",
        data: {
          money: `${desk.currency}, ${study.money}, added up`,
          points,
          ...(measures.discountedPayback === undefined || measures.discountedPayback === 0
            ? {}
            : { payback: measures.discountedPayback }),
        },
      },
    },
  ];
}

/**
 * The table behind the chart of money, with the years' own money.
 *
 * @param desk - the report
 * @returns the table
 */
export function cashTable(desk: InvestDesk): Block {
  const { project, study } = desk.found;
  const { drawn, measures } = project;
  let sum = 0;
  return table(
    "cash-table",
    `Money of each year and added up, ${desk.currency}: at the values of the file, and 10 to 90 % of the draws.`,
    ["Year", "Money of the year", "10 to 90 %", "Discounted, added up", "10 to 90 %"],
    measures.gain.flows.map((flow, year) => {
      const time = study.timing === "mid-year" && year > 0 ? year - 0.5 : year;
      sum += flow / (1 + study.discount.central) ** time;
      const [own, all] = [drawn.yearly[year], drawn.cumulative[year]];
      return [
        String(year),
        right(money(flow)),
        right(own === undefined ? "" : span(own.low, own.high)),
        right(money(sum)),
        right(all === undefined ? "" : span(all.low, all.high)),
      ];
    }),
    { behind: true },
  );
}

/**
 * The inputs that could turn the answer first, and those that are still guessed.
 *
 * @param desk - the report
 * @returns two short paragraphs
 */
export function hangsOn(desk: InvestDesk): readonly Block[] {
  const { swings, project, breakEvens, modelParts } = desk.found;
  const widest = swings.slice(0, NAMED).map(({ input, low, high }) => {
    const worth = `NPV ${span(Math.min(low, high), Math.max(low, high))}`;
    if (input === undefined) {
      const [part] = modelParts;
      return `the model of the hall (${worth}${part === undefined ? "" : `, mostly ${part.heading}`})`;
    }
    const at = breakEvens.find((one) => one.input.id === input.id)?.at;
    return `${input.words} (${inputSpan(input)}: ${worth}; 0 at ${at === undefined ? "no value" : inputValue(input, at)})`;
  });
  const guessed = swings
    .flatMap(({ input }) => (input === undefined ? [] : [input]))
    .filter(({ tag }) => tag === "estimate" || tag === "default");
  const more = guessed.length - GUESSED;
  const resting = (project.tags.get("estimate") ?? 0) + (project.tags.get("default") ?? 0);
  return [
    paragraph(
      [
        say("Widest doubts: ", "bold"),
        `${widest.join("; ")}. `,
        say("Still guessed: ", "bold"),
        `${guessed
          .slice(0, GUESSED)
          .map(({ words }) => words)
          .join("; ")}${more > 0 ? `; and ${formatNumber(more, 0)} more` : ""}. `,
        `${formatPercent(resting)} of the present value it changes rests on estimates; quantities are modelled. `,
        say("Internal, forecast: ", "bold"),
        "not for clients or advertising; no financial, tax, legal or engineering advice.",
      ],
      "small",
    ),
  ];
}
