/**
 * Reprints joined to the lots they replace. A reprint's resources always count; its accepted area counts
 * as far as the original's rejected length covers it, and the rest counts nothing and is reported.
 */

import type { Rejects } from "./rejects.js";

/** A reprint. */
export interface Reprint {
  /** Its name. */
  readonly lot: string;
  /** The lot it replaces. */
  readonly of: string;
  /** Area of first quality it gave. [m²] */
  readonly area: number;
  /** Group it belongs to. */
  readonly key: string;
}

/** Outcome of the join. */
export interface Settled {
  /** Area to add, by group. [m²] */
  readonly byKey: ReadonlyMap<string, number>;
  /** Reprints whose area is not covered by rejects of the original, with the part that counts nothing. [m²] */
  readonly uncovered: readonly {
    readonly lot: string;
    readonly of: string;
    readonly area: number;
  }[];
}

/**
 * Joins reprints and rejects. Several reprints of one lot share its rejected area in proportion, so that
 * the order of rows cannot matter.
 *
 * @param rejects - areas of lots with rejects
 * @param reprints - reprints
 * @returns areas to count, and what is not covered
 */
export function settle(rejects: Rejects, reprints: readonly Reprint[]): Settled {
  const cover = rejects.areasOf(reprints.map(({ of }) => of));
  // Sorted before anything is added, so that every order gives the same last bit.
  const sorted = [...reprints].sort(
    (a, b) => byText(a.lot, b.lot) || byText(a.of, b.of) || byText(a.key, b.key) || a.area - b.area,
  );
  const claimed = new Map<string, number>();
  for (const { of, area } of sorted) claimed.set(of, (claimed.get(of) ?? 0) + area);
  const byKey = new Map<string, number>();
  const uncovered: { lot: string; of: string; area: number }[] = [];
  for (const { lot, of, area, key } of sorted) {
    const all = claimed.get(of) ?? 0;
    const share = all > 0 ? Math.min(1, (cover.get(of) ?? 0) / all) : 0;
    byKey.set(key, (byKey.get(key) ?? 0) + share * area);
    if (share < 1 && area > 0) uncovered.push({ lot, of, area: (1 - share) * area });
  }
  return { byKey, uncovered };
}

function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
