/**
 * How a purchase is paid for: a loan with what covers it, and a lease beside buying.
 */

import { type LoanYear, loanSchedule } from "./annuities.js";
import { DOUBLES } from "./arithmetic.js";
import { byHeadingOf } from "./cost.js";
import { gainOf } from "./gain.js";
import { pricePath } from "./price-path.js";
import { timeOf } from "./present-value.js";
import { ratesOfReturn } from "./rates-of-return.js";
import type { Study, StudyOption } from "./study.js";
import { centralWorld } from "./world.js";

/** A year of a loan with what covers it, in money of that year. */
export interface CoveredYear extends LoanYear {
  /** Yearly gains: lower bills, without any capital. */
  readonly own: number;
  /** Yearly gains less what the option itself lays out in the year, over what is paid. */
  readonly cover: number;
  /** The same with what carrying on would have had to lay out, and now need not. */
  readonly coverSpared: number;
}

// What the start asks for.
function startCapital(study: Study, option: StudyOption): number {
  const world = centralWorld();
  return option.capital
    .filter(({ year }) => year === 0)
    .reduce((sum, line) => sum + (pricePath(study, world, line, 0)[0] ?? 0), 0);
}

// Instalments are money of each year; flows may be money of the start.
function ofEachYear(study: Study, year: number): number {
  if (study.money === "nominal") return 1;
  return (1 + (study.inflation?.central ?? 0)) ** timeOf(year, study.timing);
}

/**
 * The loan of an option, year by year.
 *
 * @param study - the study
 * @param option - the option
 * @returns sum and years; undefined without a loan
 */
export function loanOf(
  study: Study,
  option: StudyOption,
): { readonly sum: number; readonly years: readonly CoveredYear[] } | undefined {
  const { loan } = option.text;
  if (loan === undefined) return undefined;
  const sum = loan.share * startCapital(study, option);
  const { flows, byHeading, option: cost } = gainOf(study, option, centralWorld());
  const { life } = option.text;
  const capital = byHeading.get("capital") ?? [];
  const laidOut = byHeadingOf(DOUBLES, cost, life).get("capital") ?? [];
  const years = loanSchedule(sum, loan.rate, loan.years).map((year): CoveredYear => {
    const flow = flows[year.year] ?? 0;
    const scale = ofEachYear(study, year.year);
    const own = (flow - (capital[year.year] ?? 0)) * scale;
    const paid = year.interest.plus(year.repaid).toNumber();
    return {
      ...year,
      own,
      cover: (own - (laidOut[year.year] ?? 0) * scale) / paid,
      coverSpared: (flow * scale) / paid,
    };
  });
  return { sum, years };
}

/** A lease beside buying. Payments are fixed sums of each year, so they are discounted at a nominal rate. */
export interface LeaseBeside {
  /** Price of the machines leased, when bought; less what writing them off spares in tax. */
  readonly bought: number;
  /** Present value of payments and of the sum at the end, and of what the machine would be worth at the end where it goes back. */
  readonly leased: number;
  /** Worth of the option when leased. */
  readonly worth: number;
  /** Nominal rate that both are discounted at, after tax where tax is counted. [-] */
  readonly rate: number;
  /** Whether it is the rate of the option's loan; the study's rate with inflation where there is none. */
  readonly ofLoan: boolean;
  /** Rate that the lease costs before tax, nominal; absent where there is none or several. [-] */
  readonly implied: number | undefined;
}

/**
 * A lease beside buying, at the rate that the mill would borrow at.
 *
 *     leased = Σ (1 − tax) payment / (1 + r)^t + end / (1 + r)^n,  bought = price − tax Σ write-off / (1 + r)^t
 *
 * @param study - the study
 * @param option - the option
 * @returns both; undefined without a lease
 */
export function leaseOf(study: Study, option: StudyOption): LeaseBeside | undefined {
  const { lease, loan, life } = option.text;
  if (lease === undefined) return undefined;
  const world = centralWorld();
  const price = option.capital
    .filter(({ kind, year }) => kind === "machine" && year === 0)
    .reduce((sum, line) => sum + (pricePath(study, world, line, 0)[0] ?? 0), 0);
  const { tax } = study;
  const keeps = 1 - (tax?.rate ?? 0);
  const rate = (loan?.rate ?? nominalRate(study)) * keeps;
  const exchange = (currency: string): number =>
    study.inputs.get(`rates.${currency}`)?.central ?? 1;
  const each = lease.yearly.value * exchange(lease.yearly.currency);
  const end = lease.end === undefined ? 0 : lease.end.value * exchange(lease.end.currency);
  let leased = end / (1 + rate) ** lease.years;
  for (let year = 1; year <= lease.years; year++) leased += (keeps * each) / (1 + rate) ** year;
  if (lease.end === undefined && option.residual !== undefined) {
    const worth = pricePath(study, world, option.residual, life)[life] ?? 0;
    leased += (keeps * worth * ofEachYear(study, life)) / (1 + rate) ** life;
  }
  let bought = price;
  for (let year = 1; year <= (tax?.years ?? 0); year++)
    bought -= ((tax?.rate ?? 0) * price) / (tax?.years ?? 1) / (1 + rate) ** year;
  const [implied, ...others] = ratesOfReturn([
    { at: 0, amount: price },
    ...Array.from({ length: lease.years }, (_, i) => ({ at: i + 1, amount: -each })),
    { at: lease.years, amount: -end },
  ]);
  return {
    bought,
    leased,
    worth: gainOf(study, option, world).worth + bought - leased,
    rate,
    ofLoan: loan !== undefined,
    implied: others.length === 0 ? implied : undefined,
  };
}

function nominalRate({ money, discount, inflation }: Study): number {
  if (money === "nominal") return discount.central;
  return (1 + discount.central) * (1 + (inflation?.central ?? 0)) - 1;
}
