/**
 * How the project is paid for: a loan with what covers it, a lease beside buying, and what is left at the end.
 */

import type { CoveredYear } from "../../invest/finance.js";
import type { Block } from "../document.js";
import { formatNumber, formatPercent } from "../format.js";
import { type InvestDesk, inputValue, money, paragraph, right, table } from "./desk.js";

/**
 * How the project is paid for.
 *
 * @param desk - the report
 * @returns loan and lease, or what is missing
 */
export function payingBlocks(desk: InvestDesk): readonly Block[] {
  const { loan, lease, project, study } = desk.found;
  const { option } = project;
  const blocks: Block[] = [];
  if (loan === undefined)
    blocks.push(
      paragraph(["No loan is given. Put one under loan of the option to see what covers it."]),
    );
  else {
    const leanest = (of: (year: CoveredYear) => number): CoveredYear =>
      loan.years.reduce((worst, year) => (of(year) < of(worst) ? year : worst));
    const least = leanest(({ cover }) => cover);
    const spared = leanest(({ coverSpared }) => coverSpared);
    const adds = leanest((year) => -year.adds);
    const { share = 0, rate = 0, tag = "estimate" } = option.text.loan ?? {};
    blocks.push(
      paragraph([
        `A loan of ${money(loan.sum)} ${desk.currency} (${formatPercent(share)} of the start capital, ${formatPercent(rate, 1)} a year nominal, ${tag}). In the leanest year, year ${least.year}, lower bills less what ${option.name} then lays out cover `,
        desk.number("cover", least.cover, "1", 2).run,
        ` times the instalment (10 to 90 % of draws ${formatNumber(least.coverDrawn.low, 2)} to ${formatNumber(least.coverDrawn.high, 2)}). What ${study.carryOn.name} would have had to lay out and ${option.name} need not is money not spent, no income: with it the leanest year is year ${spared.year}, with a cover of ${formatNumber(spared.coverSpared, 2)}. Without it the owner adds cash in ${loan.years.filter((year) => year.adds > 0).length} of ${loan.years.length} years, most in year ${adds.year}: ${money(adds.adds)}.`,
      ]),
      table(
        "loan",
        `Loan of ${option.name} in money of each year, ${desk.currency}; interest, repayment and what is left to the cent. Cover is lower bills less the option's own capital of the year over the instalment, without and with money that need not be spent; the owner adds what is missing without it.`,
        [
          "Year",
          "Interest",
          "Repaid",
          "Left",
          "Instalment",
          "Lower bills",
          "Cover",
          "10 to 90 % of draws",
          "Cover with spared",
          "Owner adds",
        ],
        loan.years.map((year) => [
          String(year.year),
          right(year.interest.toFixed(2)),
          right(year.repaid.toFixed(2)),
          right(year.left.toFixed(2)),
          right(money(year.paid)),
          right(money(year.own)),
          right(formatNumber(year.cover, 2)),
          right(
            `${formatNumber(year.coverDrawn.low, 1)} to ${formatNumber(year.coverDrawn.high, 1)}`,
          ),
          right(formatNumber(year.coverSpared, 2)),
          right(money(year.adds)),
        ]),
        { widths: [0.5, 1, 1, 1, 1, 1, 0.7, 1.2, 0.9, 1] },
      ),
    );
  }
  if (lease !== undefined)
    blocks.push(
      paragraph([
        `Leased, the machines cost ${money(lease.leased)} ${desk.currency} in present value against ${money(lease.bought)} bought${study.tax === undefined ? "" : ", after tax"}; the project would be worth ${money(lease.worth)} instead of ${money(project.measures.gain.worth)}. Payments are fixed sums at the end of each year, so both are discounted at ${leaseRate(desk)}; at the house's own rate, ${formatPercent(lease.own.rate, 2)} nominal, they are ${money(lease.own.leased)} leased and ${money(lease.own.bought)} bought. ${lease.implied === undefined ? "The lease has no single rate of its own" : `The two cost the same at ${formatPercent(lease.implied, 2)} a year nominal, ${formatPercent(lease.impliedReal ?? NaN, 1)} in money of the start: who borrows for less does better to buy, who has to earn more on money of its own does better to lease`}${option.text.loan === undefined ? "" : `, the loan ${formatPercent(option.text.loan.rate, 2)}`}${study.tax === undefined ? "" : ", both before tax"}.`,
      ]),
    );
  blocks.push(
    paragraph(
      [
        `What is left at the end: a line with lasts counts back the share of its years not used up, at its price of then; working capital comes back whole; all else is worth nothing but what residual says (${option.residual === undefined ? "none is given" : inputValue(option.residual.price, option.residual.price.central)}), and that only at the end of the life of ${option.name}. A line whose lasts runs out before is bought again.`,
      ],
      "small",
    ),
  );
  return blocks;
}

/**
 * The rate of lease or buy in words.
 *
 * @param desk - the report
 * @returns rate, what it is and whether it is nominal
 */
export function leaseRate(desk: InvestDesk): string {
  const { lease, study } = desk.found;
  if (lease === undefined) return "no rate";
  const what = lease.ofLoan
    ? "the loan's rate"
    : study.money === "nominal"
      ? "the study's rate"
      : "the study's rate with inflation";
  return `${formatPercent(lease.rate, 2)} nominal, ${what}${study.tax === undefined ? "" : " after tax"}`;
}

/**
 * Lease or buy in words.
 *
 * @param desk - the report
 * @returns such as `buy, as the loan costs less`; neither where the project does not pay
 */
export function leaseVerdict(desk: InvestDesk): string {
  const { lease, project } = desk.found;
  if (lease === undefined) return "no lease given";
  const at = ({ leased, bought }: { readonly leased: number; readonly bought: number }): string =>
    leased < bought ? "lease" : "buy";
  const [now, own] = [at(lease), at(lease.own)];
  const turn =
    lease.implied === undefined
      ? ""
      : `; turns at ${formatPercent(lease.implied, 2)} nominal, ${formatPercent(lease.impliedReal ?? NaN, 1)} real`;
  const pays = Math.max(lease.worth, project.measures.gain.worth) > 0;
  const words =
    now === own
      ? now
      : `${now} at ${lease.ofLoan ? "the loan's rate" : "that rate"}, ${own} at the house's own`;
  return `${pays ? "" : "neither, unless the project pays; then "}${words}${turn}`;
}
