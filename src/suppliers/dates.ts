/**
 * Days of a pack that cannot be: made before its lots or after today, or a period that is not that of its months.
 */

import type { Pack } from "./schema.js";
import type { SumFault } from "./sums.js";

/**
 * Finds days that do not fit each other.
 *
 * @param pack - the pack
 * @param today - day of who reads it; made after today is not judged when left out
 * @returns faults with their places
 */
export function dateFaults(pack: Pack, today: string | undefined): readonly SumFault[] {
  const { made, period, months, strata } = pack;
  const faults: SumFault[] = [];
  const must = (holds: boolean, place: string, found: string): void => {
    if (!holds) faults.push({ place, found });
  };
  must(
    today === undefined || made <= today,
    "/pack/made",
    `${made} is after today, ${today ?? ""}`,
  );
  must(period.from <= period.to, "/pack/period", `${period.from} is after ${period.to}`);
  must(period.to <= made, "/pack/made", `${made} is before the last lot, ${period.to}`);
  const named = months.map(({ month }) => month);
  const [first, last] = [named[0], named.at(-1)];
  must(
    first === undefined || first === period.from.slice(0, 7),
    "/pack/period/from",
    `${period.from}, and the first month is ${first ?? ""}`,
  );
  must(
    last === undefined || last === period.to.slice(0, 7),
    "/pack/period/to",
    `${period.to}, and the last month is ${last ?? ""}`,
  );
  months.forEach(({ month }, i) => {
    const before = named[i - 1];
    must(before === undefined || before < month, `/pack/months/${i}`, `${month} is out of order`);
  });
  strata.forEach(({ from, settings }, i) => {
    must(named.includes(from), `/pack/strata/${i}/from`, `${from} is no month of the pack`);
    must(
      settings === "" || settings <= period.to,
      `/pack/strata/${i}/settings`,
      `${settings} is after the period`,
    );
  });
  return faults;
}
