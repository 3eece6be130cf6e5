/**
 * Options beside each other: all measures, order as chances, payback as chances, how each is paid for, what is to be
 * seen to.
 */

import { DECIMALS, sumOf } from "../../invest/arithmetic.js";
import type { Block, Cell } from "../document.js";
import { formatNumber, formatPercent } from "../format.js";
import {
  type InvestDesk,
  inputSpan,
  inputValue,
  money,
  paragraph,
  right,
  table,
  years,
} from "./desk.js";

/**
 * Order and further measures.
 *
 * @param desk - the report
 * @returns tables
 */
export function orderBlocks(desk: InvestDesk): readonly Block[] {
  const { options, order, orderByWorth, study, unspared } = desk.found;
  const lives = new Set(options.map(({ option }) => option.text.life));
  const last = Math.max(...options.map(({ option }) => option.text.life));
  const columns = [2, 3, 4, 5, 7, 10].filter((year) => year < last);
  return [
    paragraph([
      `Every option is set beside ${study.carryOn.name} over its own life, in the same drawn worlds. ${lives.size > 1 ? "Lives differ, so options are ordered by equal yearly money of the same worth, not by NPV; that assumes each could be bought again on the same terms. " : ""}An order is a chance, not a rank: two options whose chances are close are not told apart by these data.`,
    ]),
    table(
      "order",
      "Share of draws in which each option stands at each place, by equal yearly money.",
      ["Option", ...order.map((_, i) => `place ${i + 1}`)],
      order.map(({ name, places }) => [name, ...places.map((count) => right(desk.chance(count)))]),
    ),
    table(
      "order-npv",
      `The same by NPV over one horizon of ${last} years: once an option has lived, one carries on as before.`,
      ["Option", ...orderByWorth.map((_, i) => `place ${i + 1}`)],
      orderByWorth.map(({ name, places }) => [
        name,
        ...places.map((count) => right(desk.chance(count))),
      ]),
    ),
    table(
      "measures",
      `Further measures, ${desk.currency} (${study.money}), at the values of the file but for the median of the draws. Without spared capital: as if ${study.carryOn.name} had nothing to lay out; MIRR puts income to use at ${formatPercent(study.reinvest, 1)}.`,
      [
        "Option",
        "Life",
        "NPV, to the cent",
        "NPV median",
        "MIRR",
        "Worth per money laid out",
        "Equal money a year",
        "NPV without spared capital",
      ],
      options.map(({ option, measures, drawn }) => [
        option.name,
        right(`${option.text.life}\u00a0a`),
        right(measures.exact),
        right(desk.worth(drawn).run),
        right(measures.modified === undefined ? "none" : formatPercent(measures.modified, 1)),
        right(measures.index === undefined ? "–" : formatNumber(measures.index, 2)),
        right(money(measures.yearly)),
        right(money(unspared.get(option.name) ?? NaN)),
      ]),
      { widths: [1.8, 0.6, 1.2, 1, 0.8, 1.1, 1.1, 1.2] },
    ),
    table(
      "paybacks",
      "Share of draws in which the discounted money is back by the end of a year.",
      ["Option", ...columns.map((year) => `year ${year}`), "never in its life"],
      options.map(({ option, drawn: { paybacks } }) => {
        const by = (year: number): number =>
          paybacks
            .slice(0, Math.min(year, option.text.life) + 1)
            .reduce((sum, count) => sum + count, 0);
        return [
          option.name,
          ...columns.map((year) => right(desk.chance(by(year)))),
          right(desk.chance(paybacks.at(-1) ?? 0)),
        ];
      }),
    ),
    ...curve(desk),
  ];
}

function curve(desk: InvestDesk): readonly Block[] {
  const { options } = desk.found;
  const odd = options.filter(({ measures }) => measures.rates.length !== 1);
  const [none, several] = [
    odd.filter(({ measures }) => measures.rates.length === 0),
    odd.filter(({ measures }) => measures.rates.length > 1),
  ];
  const named = ({ option, measures }: (typeof options)[number]): string =>
    `${option.name} (${measures.rates.map((rate) => formatPercent(rate, 1)).join(", ")})`;
  const said =
    odd.length === 0
      ? "Each option has one rate of return."
      : [
          ...(none.length === 0
            ? []
            : [
                `No rate of return between −99 and 100,000 %: ${none.map(({ option }) => option.name).join(", ")}; the worth does not change sign, or never reaches zero.`,
              ]),
          ...(several.length === 0
            ? []
            : [
                `The rate of return is not unique for ${several.map(named).join(", ")}, as money changes its sign more than once; the one printed on page one is the highest at which the NPV falls to 0 as the rate rises. Read the NPV at your own rate instead.`,
              ]),
        ].join(" ");
  const rates =
    options[0]?.measures.curve.filter((_, i) => i % 2 === 0).map(({ rate }) => rate) ?? [];
  return [
    paragraph([said]),
    table(
      "npv-curve",
      `Net present value at other discount rates, ${desk.currency}.`,
      ["Option", ...rates.map((rate) => formatPercent(rate))],
      options.map(({ option, measures }) => [
        option.name,
        ...measures.curve.filter((_, i) => i % 2 === 0).map(({ worth }) => right(money(worth))),
      ]),
    ),
  ];
}

/**
 * Risks and one-offs.
 *
 * @param desk - the report
 * @returns the checklist
 */
export function riskBlocks(desk: InvestDesk): readonly Block[] {
  const { project, study } = desk.found;
  const { option } = project;
  const asked: readonly (readonly [string, readonly string[], string])[] = [
    ["Permit or notice", ["permit"], "ask the authority before the process changes"],
    ["Electrical supply", ["electrical"], "have the load checked"],
    ["Exhaust treatment", ["exhaust"], "curing gives off substances that need measuring"],
    ["Floor, ventilation, building", ["building"], "have floor load and air checked"],
    ["Freight, fitting, start-up", ["installation"], "ask for a quote"],
    ["Trial cloth and ink, approvals", ["trial"], "clients approve hand and fastness again"],
    ["Training", ["training"], "plan it before the start"],
    ["Stock of old dyes", ["stock"], "count what would be written off"],
    ["Ink stock, working capital", ["working-capital"], "money that lies in stock"],
    ["Removal, cleaning, asbestos", ["removal"], "have lagging of old steamers looked at"],
    ["Resale of old machines", ["resale"], "count nothing without an offer"],
    ["Repairs that come anyway", ["repair"], "see what the mill would have to pay without it"],
  ];
  const rows: (readonly (Cell | string)[])[] = asked.map(
    ([what, kinds, remark]): readonly (Cell | string)[] => {
      const lines = option.capital.filter(({ kind }) => kinds.includes(kind));
      if (lines.length === 0) return [what, right("not given"), "", "", remark];
      return [
        what,
        right(money(lines.reduce((sum, { price }) => sum + price.central, 0))),
        [...new Set(lines.map(({ price }) => price.tag))].join(", "),
        [
          ...new Set(
            lines.map(({ owner, due }) => [owner, due].filter((part) => part !== "").join(", ")),
          ),
        ]
          .filter((part) => part !== "")
          .join("; "),
        lines.map(({ what: words, year }) => `${words} (year ${year})`).join("; "),
      ];
    },
  );
  rows.push(drainRow(desk));
  const others = study.options.filter((one) => one !== option).length;
  return [
    table(
      "risks",
      `Risks and one-offs of ${option.name}, ${desk.currency}: what the file gives, who sees to it and by when. “Not given” is not nought.`,
      ["What", "Money", "From", "Who, by when", "Remark"],
      rows,
      { widths: [1.6, 0.8, 0.9, 1.4, 2.6] },
    ),
    paragraph(
      [
        `Not in money: downtime while machines are fitted, clients lost or won by hand and look, what a supplier of ink does once nobody else can supply, wear of nozzles by pigment, ${others} other options not chosen. Put a line under capex or yearly to count one.`,
      ],
      "small",
    ),
  ];
}

// What treating the effluent would cost is no line of the file; how often it would be asked for is known.
function drainRow(desk: InvestDesk): readonly (Cell | string)[] {
  const { strengths, study, project } = desk.found;
  const { codLimit } = study.effluent;
  const words = strengths
    .flatMap(({ name, above }) =>
      above === undefined || (name !== project.option.name && name !== study.carryOn.name)
        ? []
        : [`${name} ${desk.chance(above.count, above.of)}`],
    )
    .join(", ");
  return [
    "COD at the drain",
    right("not given"),
    "",
    "",
    codLimit === undefined
      ? "limit of the permit not given: look it up"
      : `treatment: not given; draws above the limit of ${inputValue(codLimit, codLimit.central)}: ${words}`,
  ];
}

/**
 * All inputs with what they are from.
 *
 * @param desk - the report
 * @returns the table
 */
export function inputTable(desk: InvestDesk): Block {
  return table(
    "inputs",
    "All inputs as drawn: value, 10 to 90 % of the draws, what it is from; the CSV has the key of each. The discount rate is fixed in draws; its ends serve as sensitivity.",
    ["Input", "Value", "10 to 90 %", "From", "Source"],
    [...desk.found.study.inputs.values()]
      .filter(({ id }) => !id.startsWith("rates.") || id !== `rates.${desk.currency}`)
      .map((input) => [
        input.words,
        right(inputValue(input, input.central)),
        right(inputSpan(input)),
        input.id === "moves.all" || input.id === "outlay" ? "fixed" : input.tag,
        input.source,
      ]),
    { behind: true, widths: [2.6, 1.2, 1.8, 0.7, 1.8] },
  );
}

/**
 * The schedule of the project to the cent, and how long money takes to come back.
 *
 * @param desk - the report
 * @returns the table
 */
export function scheduleTable(desk: InvestDesk): Block {
  const { project, study } = desk.found;
  const schedule = desk.input.schedules.get(project.option.name) ?? [];
  const total = sumOf(
    DECIMALS,
    schedule.map(({ present }) => DECIMALS.of(Number(present))),
  );
  return table(
    "schedule",
    `Gains of ${project.option.name} against ${study.carryOn.name} by year, ${desk.currency} to the cent, reckoned in decimals (by heading in the CSV); discounted column rounded line by line adds up to ${total.toFixed(2)}, the NPV reckoned unrounded is ${project.measures.exact}. The running sum, not discounted, ${project.measures.payback === undefined ? "is not above zero for good within its life" : `is above zero for good after ${years(project.measures.payback)}`}.`,
    [
      "Year",
      "Capital",
      "Yearly gains",
      ...(study.tax === undefined ? [] : ["Tax"]),
      "Money",
      "Discounted",
    ],
    schedule.map(({ year, byHeading, tax, flow, present }) => {
      const capital = DECIMALS.of(Number(byHeading.get("capital") ?? 0));
      const gains = DECIMALS.of(Number(flow)).plus(tax).minus(capital);
      return [
        String(year),
        right(capital.toFixed(2)),
        right(gains.toFixed(2)),
        ...(study.tax === undefined ? [] : [right(tax)]),
        right(flow),
        right(present),
      ];
    }),
    { behind: true },
  );
}
