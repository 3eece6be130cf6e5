/** What the table knows of a lot that is shown to it. */
export type Seen = "new" | "same" | "different";

/**
 * Table of lots seen: 64 bits of hash for the name and 64 for the content, 16 bytes a lot. The only thing
 * that grows with the log. Two of a million names share a hash with a probability of 3 in 10⁸.
 */
export class LotTable {
  #slots = new Uint32Array(4 * 1024);
  #count = 0;

  /**
   * Number of different lots seen.
   *
   * @returns the count
   */
  get size(): number {
    return this.#count;
  }

  /**
   * Notes a lot.
   *
   * @param name - hash of its name
   * @param content - hash of its content
   * @returns whether it is new, was there with the same content, or with another one
   */
  see(name: readonly [number, number], content: readonly [number, number]): Seen {
    // Three quarters full is where open addressing starts to slow down.
    if (this.#count * 16 > this.#slots.length * 3) this.#grow();
    const at = this.#find(name[0] >>> 0, mark(name[1]));
    if (this.#slots[at + 1] === 0) {
      this.#slots.set([name[0] >>> 0, mark(name[1]), content[0] >>> 0, content[1] >>> 0], at);
      this.#count += 1;
      return "new";
    }
    return this.#slots[at + 2] === content[0] >>> 0 && this.#slots[at + 3] === content[1] >>> 0
      ? "same"
      : "different";
  }

  #find(a: number, b: number): number {
    const mask = this.#slots.length / 4 - 1;
    for (let slot = a & mask; ; slot = (slot + 1) & mask) {
      const at = 4 * slot;
      const there = this.#slots[at + 1];
      if (there === 0 || (there === b && this.#slots[at] === a)) return at;
    }
  }

  #grow(): void {
    const old = this.#slots;
    this.#slots = new Uint32Array(old.length * 2);
    for (let at = 0; at < old.length; at += 4) {
      if (old[at + 1] === 0) continue;
      this.#slots.set(old.subarray(at, at + 4), this.#find(old[at] ?? 0, old[at + 1] ?? 0));
    }
  }
}

// Zero marks an empty slot, so no lot may have it.
function mark(hash: number): number {
  return hash >>> 0 === 0 ? 1 : hash >>> 0;
}
