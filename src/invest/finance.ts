/**
 * How a purchase is paid for: a loan with what covers it, and a lease beside buying.
 */

import { type LoanYear, loanSchedule } from "./annuities.js";
import { gainOf } from "./gain.js";
import { pricePath } from "./price-path.js";
import { timeOf } from "./present-value.js";
import type { Study, StudyOption } from "./study.js";
import { centralWorld } from "./world.js";

/** A year of a loan with what covers it. */
export interface CoveredYear extends LoanYear {
  /** What the option brings in the year, in money of that year. */
  readonly brings: number;
  /** What it brings over what is paid; below 1 the mill pays from elsewhere. */
  readonly cover: number;
  /** Its yearly gains alone, capital spared or renewed left out, in money of that year. */
  readonly own: number;
  /** Yearly gains alone over what is paid. */
  readonly ownCover: number;
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
  const { flows, byHeading } = gainOf(study, option, centralWorld());
  const capital = byHeading.get("capital") ?? [];
  const years = loanSchedule(sum, loan.rate, loan.years).map((year): CoveredYear => {
    const flow = flows[year.year] ?? 0;
    const scale = ofEachYear(study, year.year);
    const [brings, own] = [flow * scale, (flow - (capital[year.year] ?? 0)) * scale];
    const paid = year.interest.plus(year.repaid).toNumber();
    return { ...year, brings, cover: brings / paid, own, ownCover: own / paid };
  });
  return { sum, years };
}

/** A lease beside buying. */
export interface LeaseBeside {
  /** Price of the machines leased, when bought. */
  readonly bought: number;
  /** Present value of payments and of the sum at the end. */
  readonly leased: number;
  /** Worth of the option when leased. */
  readonly worth: number;
}

/**
 * A lease beside buying: payments are fixed sums in money of each year.
 *
 * @param study - the study
 * @param option - the option
 * @returns both; undefined without a lease
 */
export function leaseOf(study: Study, option: StudyOption): LeaseBeside | undefined {
  const { lease } = option.text;
  if (lease === undefined) return undefined;
  const world = centralWorld();
  const bought = option.capital
    .filter(({ kind, year }) => kind === "machine" && year === 0)
    .reduce((sum, line) => sum + (pricePath(study, world, line, 0)[0] ?? 0), 0);
  const present = (money: number, year: number): number =>
    money / ofEachYear(study, year) / (1 + study.discount.central) ** timeOf(year, study.timing);
  const exchange = (currency: string): number =>
    study.inputs.get(`rates.${currency}`)?.central ?? 1;
  const each = lease.yearly.value * exchange(lease.yearly.currency);
  let leased =
    lease.end === undefined
      ? 0
      : present(lease.end.value * exchange(lease.end.currency), lease.years);
  for (let year = 1; year <= lease.years; year++) leased += present(each, year);
  return { bought, leased, worth: gainOf(study, option, world).worth + bought - leased };
}
