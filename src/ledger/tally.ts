/**
 * What one lot adds to each amount of the list.
 */

import type { Lot } from "../log/lot.js";
import { type Amount, AMOUNTS, FACTOR_UNITS, type FactorName } from "../steps/amounts.js";

const NAMES = Object.keys(FACTOR_UNITS) as FactorName[];
const PLACE = new Map(NAMES.map((name, i) => [name, i]));

interface Plan {
  readonly scale: number;
  readonly factors: readonly { readonly at: number; readonly exponent: number }[];
  readonly logged: readonly number[];
  readonly open: readonly number[];
}

function placeOf(name: FactorName): number {
  return PLACE.get(name) ?? 0;
}

const PLANS: readonly Plan[] = AMOUNTS.map((amount: Amount) => ({
  scale: amount.scale,
  factors: NAMES.filter((name) => amount.product[name] !== undefined).map((name) => ({
    at: placeOf(name),
    exponent: amount.product[name] ?? 0,
  })),
  logged: amount.logged.map(placeOf),
  open: amount.open.map(placeOf),
}));

/** Place of the accepted area in the list of amounts. */
export const ACCEPTED = AMOUNTS.findIndex((amount) => amount.name === "accepted");

/**
 * Amounts of one lot, in the order of the list. Blank columns are not zero: they leave out the amounts
 * that need them. A reprint's accepted area is left at 0 here; the ledger settles it once all lots are in.
 *
 * @param lot - the lot
 * @param printWidth - printed width of its route; the cloth's when absent [m]
 * @param row - written over and returned
 * @returns the amounts
 */
export function tally(
  lot: Lot,
  printWidth: number | undefined,
  row = new Float64Array(AMOUNTS.length),
): Float64Array {
  const values = columnsOf(lot, printWidth);
  for (let i = 0; i < PLANS.length; i++) {
    const plan = PLANS[i];
    if (plan === undefined) continue;
    row[i] =
      plan.logged.every((at) => !Number.isNaN(values[at])) &&
      plan.open.every((at) => Number.isNaN(values[at]))
        ? productOf(plan, values)
        : 0;
  }
  if (lot.kind === "reprint") row[ACCEPTED] = 0;
  return row;
}

/**
 * Accepted area of a lot. [m²]
 *
 * @param lot - the lot
 * @param printWidth - printed width of its route; the cloth's when absent [m]
 * @returns (length − rejected) × printed width; 0 for overhead
 */
export function acceptedArea(lot: Lot, printWidth: number | undefined): number {
  if (lot.kind === "overhead") return 0;
  return (lot.length - (lot.rejected ?? 0)) * Math.min(printWidth ?? lot.width, lot.width);
}

function productOf(plan: Plan, values: Float64Array): number {
  let result = plan.scale;
  for (const { at, exponent } of plan.factors) {
    const value = values[at] ?? NaN;
    result *= exponent === 1 ? value : value ** exponent;
  }
  return result;
}

const scratch = new Float64Array(NAMES.length);

function columnsOf(lot: Lot, printWidth: number | undefined): Float64Array {
  const set = (name: FactorName, value: number | undefined): void => {
    scratch[placeOf(name)] = value ?? NaN;
  };
  set("length", lot.length);
  set("width", lot.width);
  set("printWidth", Math.min(printWidth ?? lot.width, lot.width));
  set("gsm", lot.gsm);
  set("accepted", lot.kind === "overhead" ? 0 : lot.length - (lot.rejected ?? 0));
  set("ink", lot.ink);
  set("coverage", lot.coverage);
  set("pickup", lot.pickup);
  set("fixTemp", lot.fixTemp);
  set("dwell", lot.dwell);
  set("liquorRatio", lot.liquorRatio);
  set("baths", lot.baths);
  set("speed", lot.speed);
  return scratch;
}
