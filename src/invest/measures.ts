/**
 * Measures of an option in the world of central values.
 */

import { DECIMALS, toCent } from "./arithmetic.js";
import type { Heading } from "./cost.js";
import { discounted, type Gain, gainOf } from "./gain.js";
import {
  equivalentAnnual,
  modifiedReturn,
  paybackOf,
  presentValue,
  profitabilityIndex,
  timeOf,
} from "./present-value.js";
import { ratesOfReturn } from "./rates-of-return.js";
import type { Study, StudyOption } from "./study.js";
import { centralWorld, exactWorld } from "./world.js";
import { DOUBLES } from "./arithmetic.js";

/** Headings that count as utilities. */
const UTILITIES: ReadonlySet<Heading> = new Set(["water", "effluent", "heat", "electricity"]);

/** Measures of an option. */
export interface Measures {
  /** What it brings. */
  readonly gain: Gain<number>;
  /** Net present value to the cent, reckoned in decimals. */
  readonly exact: string;
  /** Money laid out at the start beyond what carrying on asks for. */
  readonly outlay: number;
  /** What it brings in the first year in which all have moved, capital left out. */
  readonly steady: { readonly year: number; readonly money: number };
  /** All rates of return. */
  readonly rates: readonly number[];
  /** Of them the highest one at which the worth falls to 0 as the rate rises; absent where there is none. */
  readonly mainRate: number | undefined;
  /** Modified rate of return; absent where nothing goes out or comes in. */
  readonly modified: number | undefined;
  /** Outlay over what it brings a year once all have moved; capital that need not be spent later does not help. */
  readonly simplePayback: number | undefined;
  /** Years until the running sum of all money stays at or above zero. */
  readonly payback: number | undefined;
  /** The same, discounted. */
  readonly discountedPayback: number | undefined;
  /** Outlay over what water, effluent, heat and electricity bring a year once all have moved. */
  readonly utilitiesPayback: number | undefined;
  /** Profitability index; absent where nothing is laid out at the start. */
  readonly index: number | undefined;
  /** Equal yearly money of the same worth. */
  readonly yearly: number;
  /** Tonnes of CO2e less over its life, not discounted. */
  readonly tonnes: number;
  /** Money per tonne less, below 0 where it brings money; absent where there are no tonnes less. */
  readonly perTonne: number | undefined;
  /** Water withdrawn less over its life. [m³] */
  readonly water: number;
  /** Money per m³ less; absent where no water is saved. */
  readonly perCubicMetre: number | undefined;
  /** Worth at some rates, for a curve. */
  readonly curve: readonly { readonly rate: number; readonly worth: number }[];
}

/** How far beside a rate the worth is looked at to see whether it falls there. [-] */
const BESIDE = 1e-4;

/** Rates of the curve: 0 to 40 % by steps of 4 points. */
const CURVE = Array.from({ length: 11 }, (_, i) => i * 0.04);

/**
 * Works measures out.
 *
 * @param study - the study
 * @param option - the option
 * @returns its measures
 */
export function measuresOf(study: Study, option: StudyOption): Measures {
  const gain = gainOf(study, option, centralWorld());
  const { flows, worth } = gain;
  const rate = study.discount.central;
  const { life } = option.text;
  const outlay = -(flows[0] ?? 0);
  const tonnes = total(gain.tonnesLess);
  const withdrawn = ({ quantities }: Gain<number>["option"]): number =>
    total(quantities.get("water.withdrawn") ?? []) / 1000;
  const water = withdrawn(gain.carryOn) - withdrawn(gain.option);
  const at = Math.min(life, Math.max(1, option.rampup.length));
  const steady = (flows[at] ?? 0) - (gain.byHeading.get("capital")?.[at] ?? 0);
  const utilities = [...UTILITIES].reduce(
    (sum, heading) => sum + (gain.byHeading.get(heading)?.[at] ?? 0),
    0,
  );
  const worthAt = (each: number): number => presentValue(DOUBLES, each, flows, study.timing);
  const rates = ratesOfReturn(
    flows.map((amount, year) => ({ at: timeOf(year, study.timing), amount })),
  );
  return {
    gain,
    exact: toCent(gainOf(study, option, exactWorld()).worth).toFixed(2),
    outlay,
    steady: { year: at, money: steady },
    rates,
    mainRate: rates.filter((each) => worthAt(each - BESIDE) > worthAt(each + BESIDE)).at(-1),
    modified: modifiedReturn(flows, rate, study.reinvest),
    simplePayback: yearsToPay(outlay, steady),
    payback: paybackOf(flows),
    discountedPayback: paybackOf(discounted(study, rate, flows)),
    utilitiesPayback: yearsToPay(outlay, utilities),
    index: outlay > 0 ? profitabilityIndex(DOUBLES, outlay, worth) : undefined,
    yearly: equivalentAnnual(DOUBLES, rate, worth, life, study.timing),
    tonnes,
    perTonne: tonnes > 0 ? -worth / tonnes : undefined,
    water,
    perCubicMetre: water > 0 ? -worth / water : undefined,
    curve: CURVE.map((each) => ({ rate: each, worth: worthAt(each) })),
  };
}

function yearsToPay(outlay: number, yearly: number): number | undefined {
  if (!(outlay > 0)) return 0;
  return yearly > 0 ? outlay / yearly : undefined;
}

function total(row: readonly number[]): number {
  return row.reduce((sum, each) => sum + each, 0);
}

/** A year of the schedule, to the cent. */
export interface ScheduleYear {
  /** Number of the year. */
  readonly year: number;
  /** Money by heading, above 0 where the option is better. */
  readonly byHeading: ReadonlyMap<Heading, string>;
  /** Tax. */
  readonly tax: string;
  /** Money of the year after tax. */
  readonly flow: string;
  /** Its present value. */
  readonly present: string;
}

/**
 * Schedule of what an option brings, reckoned in decimals and rounded when printed.
 *
 * @param study - the study
 * @param option - the option
 * @returns years from 0 on
 */
export function scheduleOf(study: Study, option: StudyOption): readonly ScheduleYear[] {
  const world = exactWorld();
  const gain = gainOf(study, option, world);
  const base = DECIMALS.plus(DECIMALS.of(1), world.of(study.discount));
  return gain.flows.map((flow, year) => ({
    year,
    byHeading: new Map(
      [...gain.byHeading].map(([heading, money]) => [
        heading,
        toCent(money[year] ?? DECIMALS.of(0)).toFixed(2),
      ]),
    ),
    tax: toCent(gain.tax[year] ?? DECIMALS.of(0)).toFixed(2),
    flow: toCent(flow).toFixed(2),
    present: toCent(flow.div(base.pow(timeOf(year, study.timing)))).toFixed(2),
  }));
}
