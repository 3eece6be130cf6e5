/**
 * Money over the years, added up: the picture, and the table behind it.
 */

import type { Block } from "../document.js";
import { type InvestDesk, money, right, span, table } from "./desk.js";

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
          money: `${desk.currency}, ${study.money}, added up by year`,
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
