/**
 * Totals of a pack that must add up, and amounts that cannot be.
 */

import { pointerPart } from "./canonical.js";
import { AMOUNTS } from "../steps/amounts.js";
import type { Pack } from "./schema.js";
import { identityText, placeOf } from "./strata.js";

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
 * stratum from their own amount, amounts that a list does not know or that are below 0, strata out of order or in
 * a band that their mass is not of, and reasons that do not add up to rows.
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
  if (pack.plant.house !== pack.alias)
    faults.push({
      place: "/pack/plant/house",
      found: `${pack.plant.house}, and the pack is of ${pack.alias}`,
    });
  if (totals.uncovered > totals.printed)
    faults.push({
      place: "/pack/totals/uncovered",
      found: `${totals.uncovered} m², more than was printed`,
    });
  return [...faults, ...strataFaults(strata), ...reasonFaults(pack)];
}

// Order, bands and sizes that `seal` would never have written.
function strataFaults(strata: Pack["strata"]): readonly SumFault[] {
  return strata.flatMap((stratum, i): readonly SumFault[] => {
    const place = `/pack/strata/${i}`;
    const before = strata[i - 1];
    const faults: SumFault[] = [];
    if (before !== undefined && !(identityText(before) < identityText(stratum)))
      faults.push({ place, found: "out of order, or there twice" });
    const [, low, high] = /^(\d+)-(\d+)$/.exec(stratum.weight) ?? [];
    const { mass = 0, printed = 0 } = stratum.amounts;
    const weighs = (1000 * mass) / printed;
    if (low !== undefined && printed > 0) {
      const slack = 1e-6 * weighs;
      if (!(weighs >= Number(low) - slack && weighs <= Number(high) + slack))
        faults.push({
          place: `${place}/weight`,
          found: `${stratum.weight} g/m², and mass over area is ${weighs.toFixed(0)} g/m²`,
        });
    }
    return faults;
  });
}

// Each row set aside or corrected has a reason; rows that were neither have none.
function reasonFaults({ reasons, counts }: Pack): readonly SumFault[] {
  const given = sum(Object.values(reasons));
  const needed = counts.aside + counts.corrected;
  const none = Object.entries(reasons).flatMap(([code, count]): readonly SumFault[] =>
    count > 0 ? [] : [{ place: `/pack/reasons/${pointerPart(code)}`, found: "a reason of no row" }],
  );
  return given < needed || (needed === 0 && given > 0)
    ? [
        ...none,
        {
          place: "/pack/reasons",
          found: `${given} reasons for ${needed} rows set aside or corrected`,
        },
      ]
    : none;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
