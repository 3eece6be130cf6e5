/**
 * Draws kept from one supplier to the next: what is the same for all of them is drawn once.
 */

import type { DrawKeep } from "../account/draws.js";

/**
 * A shelf for draws of leaves. What hangs on neither supplier nor machine is on it once, whatever the number of
 * suppliers; the oldest goes when it is full.
 *
 * @param most - most leaves kept, of some 16 kB each at 2,000 draws
 * @param under - shelf that is asked for leaves this one is not for
 * @param isFor - whether a leaf is kept here; all when left out
 * @returns the shelf
 */
export function drawShelf(
  most: number,
  under?: DrawKeep,
  isFor: (id: string) => boolean = () => true,
): DrawKeep {
  const kept = new Map<string, Float64Array>();
  return (leaf, seed, count, make) => {
    if (under !== undefined && !isFor(leaf.id)) return under(leaf, seed, count, make);
    const { id, common = "", bond, spread } = leaf;
    const tied = bond === undefined ? "" : `${bond.stream} ${bond.weight}`;
    const key = [seed, count, id, common, tied, JSON.stringify(spread)].join("\u001f");
    let found = kept.get(key);
    if (found !== undefined) return found;
    found = make();
    if (kept.size >= most) {
      const [oldest] = kept.keys();
      if (oldest !== undefined) kept.delete(oldest);
    }
    kept.set(key, found);
    return found;
  };
}
