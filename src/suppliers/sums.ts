/**
 * Totals of a pack that must add up, and amounts that cannot be.
 */

import { AMOUNTS } from "../steps/amounts.js";
import type { Pack } from "./schema.js";
import { placeOf } from "./strata.js";

/** Relative difference at which sums count as the same: they were added in another order. */
const SAME = 1e-9;

/** Something that does not add up. */
export interface SumFault {
  /** Place as a JSON pointer. */
  readonly place: string;
  /** What is there and what should be. */
  readonly found: string;
}

/**
 * Finds what does not add up: totals from strata, totals from months, rows from their fates, lots of each
 * stratum from their own amount, and amounts that a list does not know or that are below 0.
 *
 * @param pack - the pack
 * @returns faults, in the order of the pack
 */
export function sumFaults(pack: Pack): readonly SumFault[] {
  const { totals, strata, months, counts } = pack;
  const faults: SumFault[] = [];
  const must = (place: string, there: number, made: number): void => {
    if (!(Math.abs(there - made) <= SAME * Math.max(1, Math.abs(there), Math.abs(made))))
      faults.push({ place, found: `${there}, and adds up to ${made}` });
  };
  const of = (name: string): number =>
    strata.reduce((sum, { amounts }) => sum + (amounts[name] ?? 0), 0);
  must("/pack/totals/lots", totals.lots, sum(strata.map(({ lots }) => lots)));
  must("/pack/totals/accepted", totals.accepted, of("accepted"));
  must("/pack/totals/printed", totals.printed, of("printed"));
  must("/pack/totals/mass", totals.mass, of("mass"));
  must("/pack/months", sum(months.map(({ lots }) => lots)), totals.lots);
  must("/pack/months", sum(months.map(({ accepted }) => accepted)), totals.accepted);
  must(
    "/pack/counts/rows",
    counts.rows,
    counts.accepted + counts.corrected + counts.aside + counts.outside,
  );
  if (totals.lots > counts.accepted + counts.corrected)
    faults.push({
      place: "/pack/totals/lots",
      found: `${totals.lots}, more than the ${counts.accepted + counts.corrected} rows taken`,
    });
  const { name: first = "lots" } = AMOUNTS[0] ?? {};
  strata.forEach(({ lots, amounts }, i) => {
    must(`/pack/strata/${i}/lots`, lots, amounts[first] ?? 0);
    for (const [name, value] of Object.entries(amounts)) {
      if (placeOf(name) < 0)
        faults.push({
          place: `/pack/strata/${i}/amounts/${name}`,
          found: "no amount of this name",
        });
      else if (!(value >= 0))
        faults.push({ place: `/pack/strata/${i}/amounts/${name}`, found: `${value}, below 0` });
    }
    if ((amounts["accepted"] ?? 0) > (amounts["printed"] ?? 0) * (1 + SAME))
      faults.push({
        place: `/pack/strata/${i}/amounts/accepted`,
        found: `${amounts["accepted"] ?? 0} m², more than was printed`,
      });
  });
  months.forEach(({ month }, i) => {
    if (month < pack.period.from.slice(0, 7) || month > pack.period.to.slice(0, 7))
      faults.push({ place: `/pack/months/${i}`, found: `${month}, outside the period` });
  });
  return faults;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
