/**
 * What is paid today and by the project: lines with quantity and price, and the way from one cost to the other.
 */

import { byHeadingOf, type Heading, HEADINGS, type LineMoney } from "../../invest/cost.js";
import { DOUBLES } from "../../invest/arithmetic.js";
import { pricePath } from "../../invest/price-path.js";
import { centralWorld } from "../../invest/world.js";
import type { Block, Cell } from "../document.js";
import { formatChange } from "../../charts/number-format.js";
import { digitsFor, formatNumber } from "../format.js";
import { type InvestDesk, inputValue, money, paragraph, right, span, table } from "./desk.js";

/** Flows with what their quantities are divided by to be printed, and the unit then. */
const UNITS: readonly (readonly [RegExp, number, string])[] = [
  [/^fuel\.|^steam\.bought$/, 1 / 3.6, "kWh"],
  [/^water\.withdrawn$/, 1e-3, "m³"],
  [/^electricity$/, 1, "kWh"],
  [/^ink\./, 1, "L"],
  [/^machine\.hours$/, 1, "h"],
  [/^paper$|^undone-m2$/, 1, "m²"],
  [/^standby\./, 1, "kWh"],
];

/**
 * Lines of cost in the first year in which all have moved, and the steps from one cost to the other.
 *
 * @param desk - the report
 * @returns a sentence, the figure, its table and the table of lines
 */
export function costBlocks(desk: InvestDesk): readonly Block[] {
  const { project, study } = desk.found;
  const { measures, option, drawn } = project;
  const { year } = measures.steady;
  const { life } = option.text;
  const now = byHeadingOf(DOUBLES, measures.gain.carryOn, life);
  const then = byHeadingOf(DOUBLES, measures.gain.option, life);
  const area = measures.gain.carryOn.quantities.get("all-m2")?.[year] ?? NaN;
  const at = (map: typeof now, heading: Heading): number => map.get(heading)?.[year] ?? 0;
  const yearly = HEADINGS.filter((heading) => heading !== "capital");
  const total = (map: typeof now): number => yearly.reduce((sum, each) => sum + at(map, each), 0);
  const steps = yearly
    .map((heading) => ({ name: heading, change: (at(then, heading) - at(now, heading)) / area }))
    .filter(({ change }) => Math.abs(change) > 1e-9);
  const per = `${desk.currency}/m²`;
  return [
    paragraph([
      `In year ${year}, when all that may move have moved, a square metre accepted costs `,
      desk.number("cost.now", total(now) / area, per).run,
      ` ${per} if one carries on and `,
      desk.number("cost.then", total(then) / area, per).run,
      ` ${per} with ${option.name}, capital left out. What is priced here is avoidable: standby of machines that stay is not counted as saved, and of what else lots leave behind the shares given in the file are paid for all the same. The report of both routes prints allocated quantities, which are larger.`,
    ]),
    {
      kind: "figure",
      id: "cost-steps",
      title: `From the cost of ${study.carryOn.name} to that of ${option.name}, year ${year}, ${per}`,
      description: steps
        .map(({ name, change }) => `${name} ${formatChange(change, digitsFor(change))}`)
        .join(", "),
      chart: {
        kind: "cost-steps",
        data: {
          cost: `cost per accepted m², ${desk.currency}`,
          from: { name: study.carryOn.name, value: total(now) / area },
          steps,
          to: option.name,
          digits: 4,
        },
      },
    },
    table(
      "cost-steps-table",
      `Money of year ${year} by heading, ${desk.currency}; gains are above 0. The span holds 10 to 90 % of the draws.`,
      ["Heading", study.carryOn.name, option.name, "Gain", "10 to 90 %"],
      yearly
        .filter((heading) => at(now, heading) !== 0 || at(then, heading) !== 0)
        .map((heading) => {
          const band = drawn.steady.get(heading);
          return [
            heading,
            right(money(at(now, heading))),
            right(money(at(then, heading))),
            right(money(at(now, heading) - at(then, heading))),
            right(band === undefined ? "" : span(band.low, band.high)),
          ];
        }),
      { behind: true },
    ),
    lineTable(desk, year),
  ];
}

function lineTable(desk: InvestDesk, year: number): Block {
  const { project, study } = desk.found;
  const { carryOn, option } = project.measures.gain;
  const names = new Map<
    string,
    { readonly now?: LineMoney<number>; readonly then?: LineMoney<number> }
  >();
  for (const line of carryOn.lines) names.set(line.what, { now: line });
  for (const line of option.lines) names.set(line.what, { ...names.get(line.what), then: line });
  const rows = [...names].flatMap(
    ([what, { now, then }]): readonly (readonly (Cell | string)[])[] => {
      const line = now ?? then;
      if (line === undefined || line.heading === "capital") return [];
      const price = study.inputs.get((then ?? now)?.input ?? "");
      const unit = UNITS.find(([pattern]) => pattern.test(what));
      const quantity = (of: typeof option): string => {
        const size = of.quantities.get(what)?.[year];
        return unit === undefined || size === undefined
          ? "–"
          : `${money(size * unit[1])}\u00a0${unit[2]}`;
      };
      return [
        [
          flowWords(what),
          right(quantity(carryOn)),
          right(quantity(option)),
          right(
            price === undefined || what === "effluent"
              ? "tariff"
              : inputValue(price, price.central).replace(`${desk.currency}/`, "per\u00a0"),
          ),
          right(priceIn(desk, what, year)),
          price === undefined ? "" : what === "effluent" ? tariffTags(desk) : price.tag,
          right(money(now?.money[year] ?? 0)),
          right(money(then?.money[year] ?? 0)),
        ],
      ];
    },
  );
  return table(
    "cost-lines",
    `Lines of cost in year ${year}: quantities that are avoidable, price at its date and as it has become in that year, what the price is from, ${desk.currency} a year.`,
    [
      "Line",
      study.carryOn.name,
      project.option.name,
      "Price",
      `Year ${year}`,
      "From",
      "Now",
      "Then",
    ],
    rows,
    { widths: [2.4, 1.1, 1.1, 1.3, 0.75, 0.8, 0.85, 0.85] },
  );
}

// A price as it has become in a year; empty where a line has none of its own.
function priceIn(desk: InvestDesk, what: string, year: number): string {
  const { study, project } = desk.found;
  const line =
    study.prices.get(what) ??
    [...project.option.yearly, ...study.carryOn.yearly].find((one) => one.what === what);
  if (line === undefined) return "";
  const then = pricePath(study, centralWorld(), line, year)[year] ?? NaN;
  return formatNumber(then, digitsFor(then));
}

function tariffTags(desk: InvestDesk): string {
  return [...new Set(desk.found.study.effluent.tariffs.map(({ tag }) => tag))].join(", ");
}

/**
 * A flow in words.
 *
 * @param what - name of a flow, or words of a line
 * @returns words
 */
export function flowWords(what: string): string {
  if (what.startsWith("ink.")) return `${what.slice(4)} ink`;
  if (what.startsWith("standby.")) return `standby of the ${what.slice(8)} added`;
  if (what.startsWith("fuel.")) return what.slice(5).replaceAll("-", " ");
  const known: Readonly<Record<string, string>> = {
    "steam.bought": "bought steam",
    "water.withdrawn": "water",
    "machine.hours": "labour by machine hours",
    cloth: "cloth rejected beyond the logged share",
    demand: "peak demand beyond that of carrying on",
    carbon: "carbon paid for",
    paper: "protecting paper",
    cod: "COD to the drain",
    "undone-m2": "orders beyond the hours of machines",
  };
  return known[what] ?? what;
}
