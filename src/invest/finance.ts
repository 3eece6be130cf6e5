/**
 * How a purchase is paid for: a loan with what covers it, and a lease beside buying.
 */

import { type LoanYear, loanSchedule } from "./annuities.js";
import { DOUBLES } from "./arithmetic.js";
import { byHeadingOf } from "./cost.js";
import { type Span, spanOf } from "./doubt.js";
import { type Gain, gainOf } from "./gain.js";
import { pricePath } from "./price-path.js";
import { timeOf } from "./present-value.js";
import { ratesOfReturn } from "./rates-of-return.js";
import type { Study, StudyOption } from "./study.js";
import { centralWorld, drawnWorld } from "./world.js";

/** A year of a loan with what covers it, in money of that year. */
export interface CoveredYear extends LoanYear {
  /** Yearly gains: lower bills, without any capital. */
  readonly own: number;
  /** Yearly gains less what the option itself lays out in the year, over what is paid. */
  readonly cover: number;
  /** The same with what carrying on would have had to lay out, and now need not. */
  readonly coverSpared: number;
  /** The cover without spared money, in draws. */
  readonly coverDrawn: Span;
  /** Instalment of the year. */
  readonly paid: number;
  /** Cash that has to come from elsewhere: instalment and own capital of the year beyond lower bills. */
  readonly adds: number;
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
 * @param draws - number of worlds for the cover in draws
 * @returns sum and years; undefined without a loan
 */
export function loanOf(
  study: Study,
  option: StudyOption,
  draws: number,
): { readonly sum: number; readonly years: readonly CoveredYear[] } | undefined {
  const { loan } = option.text;
  if (loan === undefined) return undefined;
  const sum = loan.share * startCapital(study, option);
  const middle = gainOf(study, option, centralWorld());
  const worlds = Array.from({ length: draws }, (_, at) =>
    ownCash(gainOf(study, option, drawnWorld(at)), option.text.life),
  );
  const capital = middle.byHeading.get("capital") ?? [];
  const central = ownCash(middle, option.text.life);
  const years = loanSchedule(sum, loan.rate, loan.years).map((year): CoveredYear => {
    const flow = middle.flows[year.year] ?? 0;
    const scale = ofEachYear(study, year.year);
    const own = (flow - (capital[year.year] ?? 0)) * scale;
    const paid = year.interest.plus(year.repaid).toNumber();
    const cash = (central[year.year] ?? 0) * scale;
    return {
      ...year,
      own,
      paid,
      cover: cash / paid,
      coverSpared: (flow * scale) / paid,
      coverDrawn: spanOf(
        Float64Array.from(worlds, (world) => ((world[year.year] ?? 0) * scale) / paid),
      ),
      adds: Math.max(0, paid - cash),
    };
  });
  return { sum, years };
}

// Lower bills less what the option itself lays out, by year.
function ownCash({ flows, byHeading, option }: Gain<number>, life: number): readonly number[] {
  const capital = byHeading.get("capital") ?? [];
  const laidOut = byHeadingOf(DOUBLES, option, life).get("capital") ?? [];
  return flows.map((flow, year) => flow - (capital[year] ?? 0) - (laidOut[year] ?? 0));
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
  /** The same in money of the start; absent where there is none. [-] */
  readonly impliedReal: number | undefined;
  /** The same present values at the rate the study discounts at, nominal. */
  readonly own: {
    /** Nominal rate. [-] */
    readonly rate: number;
    /** Present value of the lease. */
    readonly leased: number;
    /** Present value of buying. */
    readonly bought: number;
  };
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
  const left =
    lease.end === undefined && option.residual !== undefined
      ? (pricePath(study, world, option.residual, life)[life] ?? 0) * ofEachYear(study, life)
      : 0;
  const at = (r: number): { readonly leased: number; readonly bought: number } => {
    let leased = end / (1 + r) ** lease.years + (keeps * left) / (1 + r) ** life;
    for (let year = 1; year <= lease.years; year++) leased += (keeps * each) / (1 + r) ** year;
    let bought = price;
    for (let year = 1; year <= (tax?.years ?? 0); year++)
      bought -= ((tax?.rate ?? 0) * price) / (tax?.years ?? 1) / (1 + r) ** year;
    return { leased, bought };
  };
  const { leased, bought } = at(rate);
  const house = nominalRate(study);
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
    ...costOfLease(study, others.length === 0 ? implied : undefined),
    own: { rate: house, ...at(house) },
  };
}

function costOfLease(
  { inflation }: Study,
  implied: number | undefined,
): Pick<LeaseBeside, "implied" | "impliedReal"> {
  const prices = 1 + (inflation?.central ?? 0);
  return { implied, impliedReal: implied === undefined ? undefined : (1 + implied) / prices - 1 };
}

function nominalRate({ money, discount, inflation }: Study): number {
  if (money === "nominal") return discount.central;
  return (1 + discount.central) * (1 + (inflation?.central ?? 0)) - 1;
}
