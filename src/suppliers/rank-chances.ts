/**
 * Places as chances: how often each supplier takes each place over the draws, and which of them can be told
 * apart at all.
 */

/** Chance at which two suppliers next to each other are told apart. [-] */
const APART = 0.9;

/** Relative difference below which two values are one, as of one pack given twice. */
const EQUAL = 1e-12;

/**
 * Chance of each place; the least value has the first. Equal values share their places alike.
 *
 * @param draws - values of each supplier, draw by draw
 * @returns chances by supplier and place; every row and every column adds up to 1
 */
export function rankChances(draws: readonly Float64Array[]): readonly Float64Array[] {
  const n = draws.length;
  const count = draws[0]?.length ?? 0;
  const chances = draws.map(() => new Float64Array(n));
  const order = draws.map((_, s) => s);
  for (let i = 0; i < count; i++) {
    order.sort((a, b) => draws[a]![i]! - draws[b]![i]! || a - b);
    for (let start = 0; start < n;) {
      const first = draws[order[start]!]![i]!;
      let end = start + 1;
      while (end < n && same(first, draws[order[end]!]![i]!)) end += 1;
      const part = 1 / (end - start);
      for (let s = start; s < end; s++)
        for (let place = start; place < end; place++) {
          const row = chances[order[s]!]!;
          row[place] = row[place]! + part;
        }
      start = end;
    }
  }
  for (const row of chances) row.forEach((times, place) => (row[place] = times / count));
  return chances;
}

function same(a: number, b: number): boolean {
  return Math.abs(a - b) <= EQUAL * Math.max(Math.abs(a), Math.abs(b));
}

/**
 * Chance that one takes less than another; equal draws count half.
 *
 * @param a - draws of the one
 * @param b - draws of the other
 * @returns share from 0 to 1
 */
export function chanceLess(a: Float64Array, b: Float64Array): number {
  let less = 0;
  for (let i = 0; i < a.length; i++) {
    if (same(a[i]!, b[i]!)) less += 0.5;
    else if (a[i]! < b[i]!) less += 1;
  }
  return less / a.length;
}

/**
 * Mean place.
 *
 * @param chances - chances of each place
 * @returns from 1 on
 */
export function expectedRank(chances: Float64Array): number {
  return chances.reduce((sum, chance, place) => sum + chance * (place + 1), 0);
}

/**
 * Groups of suppliers that cannot be told apart: a new one begins where the next takes more with a chance of
 * at least 0.90.
 *
 * @param draws - values of each supplier in the order of their medians
 * @returns number of the group of each, from 1 on
 */
export function groupsApart(draws: readonly Float64Array[]): readonly number[] {
  let group = 1;
  return draws.map((own, i) => {
    const before = draws[i - 1];
    if (before !== undefined && chanceLess(before, own) >= APART) group += 1;
    return group;
  });
}
