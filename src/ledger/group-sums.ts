/**
 * Exact sums of rows of amounts by key.
 */

import { ownText } from "../log/own-text.js";
import { BinnedSums, type SavedSums } from "../numbers/binned-sum.js";
import { AMOUNTS } from "../steps/amounts.js";

/** Amounts of a row. */
const WIDTH = AMOUNTS.length;

/** Groups of a block. Blocks are added one by one, so that growing copies nothing. */
const BLOCK = 256;

/** Sums as saved: keys, and the sums of their rows one behind the other. */
export interface SavedGroups {
  /** Keys in the order of the sums. */
  readonly keys: readonly string[];
  /** Sums. */
  readonly sums: SavedSums;
}

/**
 * Sums by key. They grow with the number of different keys: 24 bytes an amount and key, 0.7 kB a key with its
 * name, so that a log of 100,000 clients with a group each takes about 70 MB.
 */
export class GroupSums {
  readonly #places = new Map<string, number>();
  readonly #keys: string[] = [];
  readonly #blocks: BinnedSums[] = [];

  /**
   * Adds a row.
   *
   * @param key - key of its group
   * @param row - amounts in the order of the list
   */
  add(key: string, row: Float64Array): void {
    const place = this.#place(key);
    this.#blockOf(place).addRow(slotOf(place), row);
  }

  /**
   * A key as it is kept here, for those who keep it too: one text for all.
   *
   * @param key - key of a group that is there
   * @returns an equal text
   */
  kept(key: string): string {
    return this.#keys[this.#place(key)]!;
  }

  /**
   * Rows by key, sorted by key, each sum rounded once. A row is made when it is asked for.
   *
   * @yields key and amounts; the caller may write into them
   * @returns keys and amounts
   */
  *rows(): Generator<readonly [string, Float64Array]> {
    for (const key of this.#keys.toSorted()) {
      const place = this.#place(key);
      yield [key, this.#blockOf(place).values(slotOf(place), WIDTH)];
    }
  }

  /**
   * Takes other sums in.
   *
   * @param saved - sums as `save` gives them
   * @throws Error when they are not as they were saved
   */
  take(saved: SavedGroups): void {
    const { whole, fraction } = saved.sums;
    if (whole.length !== saved.keys.length * WIDTH) {
      throw new Error("Sums of the ledger are not as they were saved; make it anew.");
    }
    // All are read before one is added, so that a fault leaves these sums as they were.
    const rows = saved.keys.map((_, i) => {
      const [from, to] = [i * WIDTH, (i + 1) * WIDTH];
      return BinnedSums.fromJSON({
        whole: whole.slice(from, to),
        fraction: fraction.slice(from, to),
      });
    });
    for (const [i, key] of saved.keys.entries()) {
      const place = this.#place(key);
      this.#blockOf(place).mergeRow(slotOf(place), rows[i]!);
    }
  }

  /**
   * The sums as plain data.
   *
   * @returns what `take` reads
   */
  save(): SavedGroups {
    const keys = [...this.#keys];
    const saved = this.#blocks.map((block) => block.toJSON());
    const used = keys.length * WIDTH;
    return {
      keys,
      sums: {
        whole: saved.flatMap(({ whole }) => whole).slice(0, used),
        fraction: saved.flatMap(({ fraction }) => fraction).slice(0, used),
      },
    };
  }

  #place(key: string): number {
    const known = this.#places.get(key);
    if (known !== undefined) return known;
    const place = this.#keys.length;
    const own = ownText(key);
    this.#keys.push(own);
    this.#places.set(own, place);
    if (place % BLOCK === 0) this.#blocks.push(new BinnedSums(BLOCK * WIDTH));
    return place;
  }

  #blockOf(place: number): BinnedSums {
    return this.#blocks[Math.floor(place / BLOCK)]!;
  }
}

function slotOf(place: number): number {
  return (place % BLOCK) * WIDTH;
}
