/**
 * Areas rejected, by lot. Which of them matter is known only once all reprints are in, perhaps those of
 * another ledger too, so all are kept, in as little room as can be.
 */

import { hash64 } from "../numbers/digest.js";

/** Entries of a block. Blocks are added one by one, so that growing copies nothing. */
const BLOCK = 4096;

/** Rejects as saved. */
export interface SavedRejects {
  /** Hashes of the names of lots, two whole numbers each. */
  readonly lots: readonly number[];
  /** Areas not of first quality, in the order of the lots. [m²] */
  readonly areas: readonly number[];
}

interface Block {
  readonly lots: Uint32Array;
  readonly areas: Float64Array;
}

interface Asked {
  readonly name: string;
  readonly hash: readonly [number, number];
  readonly areas: number[];
}

/**
 * Rejected areas by the 64-bit hash of the lot's name: 16 bytes a lot with rejects. Two names that share a
 * hash would cover each other's reprints; of a million lots that happens with a probability of 3 in 10⁸.
 */
export class Rejects {
  readonly #blocks: Block[] = [];
  #count = 0;

  /**
   * Notes a lot with rejects.
   *
   * @param lot - hash of its name, as `hash64` gives it
   * @param area - area not of first quality [m²]
   */
  add(lot: readonly [number, number], area: number): void {
    this.#put(lot[0], lot[1], area);
  }

  /**
   * Takes other rejects in.
   *
   * @param other - rejects; not changed
   */
  merge(other: Rejects): void {
    // Counted first, as the other may be this one.
    const count = other.#count;
    for (let i = 0; i < count; i++) {
      const { lots, areas } = other.#blocks[Math.floor(i / BLOCK)]!;
      const at = i % BLOCK;
      this.#put(lots[2 * at]!, lots[2 * at + 1]!, areas[at]!);
    }
  }

  /**
   * Rejected area of some lots. A name that stands in several ledgers has the sum of its areas, added in
   * order of size, so that the order in which they came cannot matter.
   *
   * @param names - names of the lots asked for
   * @returns area by name, of those with rejects [m²]
   */
  areasOf(names: Iterable<string>): ReadonlyMap<string, number> {
    const byHash = new Map<number, Asked[]>();
    const asked = [...new Set(names)].map((name): Asked => ({
      name,
      hash: hash64(name),
      areas: [],
    }));
    for (const one of asked) {
      const same = byHash.get(one.hash[0]);
      if (same === undefined) byHash.set(one.hash[0], [one]);
      else same.push(one);
    }
    for (const [b, { lots, areas }] of this.#blocks.entries()) {
      for (let at = 0; at < this.#entries(b); at++) {
        for (const one of byHash.get(lots[2 * at]!) ?? []) {
          if (one.hash[1] === lots[2 * at + 1]) one.areas.push(areas[at]!);
        }
      }
    }
    return new Map(
      asked
        .filter((one) => one.areas.length > 0)
        .map((one) => [one.name, one.areas.sort((x, y) => x - y).reduce((sum, x) => sum + x, 0)]),
    );
  }

  /**
   * The rejects as plain data.
   *
   * @returns what `Rejects.fromJSON` reads
   */
  toJSON(): SavedRejects {
    const lots: number[] = [];
    const areas: number[] = [];
    for (const [b, block] of this.#blocks.entries()) {
      for (let at = 0; at < this.#entries(b); at++) {
        lots.push(block.lots[2 * at]!, block.lots[2 * at + 1]!);
        areas.push(block.areas[at]!);
      }
    }
    return { lots, areas };
  }

  /**
   * Takes saved rejects up again.
   *
   * @param saved - what `Rejects.toJSON` gave
   * @returns the same rejects
   * @throws Error when lots and areas do not pair
   */
  static fromJSON(saved: SavedRejects): Rejects {
    const { lots, areas } = saved;
    if (lots.length !== 2 * areas.length || !areas.every((area) => area >= 0)) {
      throw new Error("Rejects of the ledger are not as they were saved; make it anew.");
    }
    const rejects = new Rejects();
    for (const [i, area] of areas.entries()) rejects.#put(lots[2 * i]!, lots[2 * i + 1]!, area);
    return rejects;
  }

  #entries(block: number): number {
    return Math.min(BLOCK, this.#count - block * BLOCK);
  }

  #put(first: number, second: number, area: number): void {
    const at = this.#count % BLOCK;
    if (at === 0) {
      this.#blocks.push({
        lots: new Uint32Array(2 * BLOCK),
        areas: new Float64Array(BLOCK),
      });
    }
    const { lots, areas } = this.#blocks[this.#blocks.length - 1]!;
    lots[2 * at] = first;
    lots[2 * at + 1] = second;
    areas[at] = area;
    this.#count += 1;
  }
}
