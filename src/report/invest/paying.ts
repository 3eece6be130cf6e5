/**
 * How the project is paid for: a loan with what covers it, a lease beside buying, and what is left at the end.
 */

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
    const least = loan.years.reduce((worst, year) => (year.cover < worst.cover ? year : worst));
    const { share = 0, rate = 0, tag = "estimate" } = option.text.loan ?? {};
    blocks.push(
      paragraph([
        `A loan of ${money(loan.sum)} ${desk.currency} (${formatPercent(share)} of the start capital, ${formatPercent(rate, 1)} a year nominal, ${tag}). In the leanest year, year ${least.year}, lower bills less what ${option.name} then lays out cover `,
        desk.number("cover", least.cover, "1", 2).run,
        ` times the instalment${least.cover < 1 ? "; the mill pays the rest from elsewhere" : ""}. What ${study.carryOn.name} would have had to lay out and ${option.name} need not is money not spent, no income: with it the cover of that year is ${formatNumber(least.coverSpared, 2)}. Central values; of all money of that year, spared money included, the 10 % end of the draws brings ${money(project.drawn.yearly[least.year]?.low ?? NaN)}.`,
      ]),
      table(
        "loan",
        `Loan of ${option.name} in money of each year, ${desk.currency}, to the cent; cover by lower bills less the option's own capital of the year, without and with money that need not be spent.`,
        ["Year", "Interest", "Repaid", "Left", "Lower bills", "Cover without", "Cover with"],
        loan.years.map(({ year, interest, repaid, left, own, cover, coverSpared }) => [
          String(year),
          right(interest.toFixed(2)),
          right(repaid.toFixed(2)),
          right(left.toFixed(2)),
          right(money(own)),
          right(formatNumber(cover, 2)),
          right(formatNumber(coverSpared, 2)),
        ]),
      ),
    );
  }
  if (lease !== undefined)
    blocks.push(
      paragraph([
        `Leased, the machines cost ${money(lease.leased)} ${desk.currency} in present value against ${money(lease.bought)} bought${study.tax === undefined ? "" : ", after tax"}; the project would be worth ${money(lease.worth)} instead of ${money(project.measures.gain.worth)}. Payments are fixed sums at the end of each year, so both are discounted at ${leaseRate(desk)}. ${lease.implied === undefined ? "The lease has no single rate of its own" : `The lease itself costs ${formatPercent(lease.implied, 2)} a year nominal`}${option.text.loan === undefined ? "" : `, the loan ${formatPercent(option.text.loan.rate, 2)}`}${study.tax === undefined ? "" : ", both before tax"}.`,
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
