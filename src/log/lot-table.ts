/** What the table knows of a lot that is shown to it. */
export type Seen = "new" | "same" | "different";

/** Bits of a name's hash that choose the part, and with them the number of parts. */
const PART_BITS = 6;

/** Numbers a slot is made of: two of the name, two of the content. */
const SLOT = 4;

/** Slots of a part to begin with. */
const FIRST_SLOTS = 16;

/**
 * Table of lots seen: 64 bits of hash for the name and 64 for the content, 16 bytes a lot, in slots of which
 * half to three quarters are filled. It is cut into parts that grow one by one, so that never more than a
 * part is there twice. Two of a million names share a hash with a probability of 3 in 10⁸.
 */
export class LotTable {
  readonly #parts = Array.from({ length: 1 << PART_BITS }, () => new Part());

  /**
   * Number of different lots seen.
   *
   * @returns the count
   */
  get size(): number {
    return this.#parts.reduce((sum, { count }) => sum + count, 0);
  }

  /**
   * Notes a lot.
   *
   * @param name - hash of its name
   * @param content - hash of its content
   * @returns whether it is new, was there with the same content, or with another one
   */
  see(name: readonly [number, number], content: readonly [number, number]): Seen {
    const part = this.#parts[name[0] >>> (32 - PART_BITS)]!;
    return part.see(name[0] >>> 0, mark(name[1]), content[0] >>> 0, content[1] >>> 0);
  }
}

class Part {
  count = 0;
  #slots = new Uint32Array(SLOT * FIRST_SLOTS);

  see(a: number, b: number, c: number, d: number): Seen {
    // Three quarters full is where open addressing starts to slow down.
    if (this.count * SLOT * 4 > this.#slots.length * 3) this.#grow();
    const slots = this.#slots;
    const at = this.#find(a, b);
    if (slots[at + 1] === 0) {
      slots[at] = a;
      slots[at + 1] = b;
      slots[at + 2] = c;
      slots[at + 3] = d;
      this.count += 1;
      return "new";
    }
    return slots[at + 2] === c && slots[at + 3] === d ? "same" : "different";
  }

  #find(a: number, b: number): number {
    const slots = this.#slots;
    const size = slots.length;
    // The bits that chose the part are the same in all of it; the others say where in the part to begin.
    const share = ((a << PART_BITS) >>> 0) / 2 ** 32;
    for (let at = SLOT * Math.floor((share * size) / SLOT); ; at += SLOT) {
      if (at === size) at = 0;
      const there = slots[at + 1];
      if (there === 0 || (there === b && slots[at] === a)) return at;
    }
  }

  #grow(): void {
    const old = this.#slots;
    this.#slots = new Uint32Array(SLOT * Math.ceil((1.5 * old.length) / SLOT));
    for (let at = 0; at < old.length; at += SLOT) {
      if (old[at + 1] !== 0) {
        this.#slots.set(old.subarray(at, at + SLOT), this.#find(old[at]!, old[at + 1]!));
      }
    }
  }
}

// Zero marks an empty slot, so no lot may have it.
function mark(hash: number): number {
  return hash >>> 0 === 0 ? 1 : hash >>> 0;
}
