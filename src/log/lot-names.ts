/**
 * Set of lots known by the hash of their name, 8 bytes each: lots whose rows differ may be as many as the
 * log is long.
 */
export class LotNames {
  #slots = new Uint32Array(2 * 64);
  #count = 0;

  /**
   * Number of lots in the set.
   *
   * @returns the count
   */
  get size(): number {
    return this.#count;
  }

  /**
   * Puts a lot in; one that is there stays.
   *
   * @param name - hash of its name
   */
  add(name: readonly [number, number]): void {
    // Three quarters full is where open addressing starts to slow down.
    if (this.#count * 8 > this.#slots.length * 3) this.#grow();
    const at = this.#find(name[0] >>> 0, mark(name[1]));
    if (this.#slots[at + 1] !== 0) return;
    this.#slots[at] = name[0] >>> 0;
    this.#slots[at + 1] = mark(name[1]);
    this.#count += 1;
  }

  /**
   * Whether a lot is in the set.
   *
   * @param name - hash of its name
   * @returns true when it is
   */
  has(name: readonly [number, number]): boolean {
    return this.#count > 0 && this.#slots[this.#find(name[0] >>> 0, mark(name[1])) + 1] !== 0;
  }

  #find(a: number, b: number): number {
    const mask = this.#slots.length / 2 - 1;
    for (let slot = a & mask; ; slot = (slot + 1) & mask) {
      const at = 2 * slot;
      const there = this.#slots[at + 1];
      if (there === 0 || (there === b && this.#slots[at] === a)) return at;
    }
  }

  #grow(): void {
    const old = this.#slots;
    this.#slots = new Uint32Array(old.length * 2);
    for (let at = 0; at < old.length; at += 2) {
      if (old[at + 1] !== 0) {
        this.#slots.set(old.subarray(at, at + 2), this.#find(old[at] ?? 0, old[at + 1] ?? 0));
      }
    }
  }
}

// Zero marks an empty slot, so no lot may have it.
function mark(hash: number): number {
  return hash >>> 0 === 0 ? 1 : hash >>> 0;
}
