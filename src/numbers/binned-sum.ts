/**
 * Sums that come out the same to the last bit in whatever order the addends arrive, and however they were
 * split over files, workers or sites before they were put together.
 */

import { InputError, within } from "../problems/input-error.js";

// Adding one of these and taking it away again rounds to a multiple of 1, of 2⁻²⁶ and of 2⁻⁵².
const TO_ONES = 1.5 * 2 ** 52;
const TO_MIDDLE = 1.5 * 2 ** 26;
const TO_FINE = 1.5;

const MIDDLE = 2 ** -26;
const FINE = 2 ** -52;

/** A sum beyond this, about 2.25e15, is refused. */
const LARGEST = 2 ** 51;

// A middle limb takes at most ½ per addend and stays exact below 2²⁷: with carries this often it does.
const ADDS_BEFORE_CARRY = 2 ** 26;

/** A set of sums at rest, as it is written to JSON: slot by slot, sum = whole + fraction, exactly. */
export interface SavedSums {
  /** Sums rounded down to whole numbers. */
  readonly whole: readonly number[];
  /** What is left, a multiple of 2⁻⁵² from 0 to below 1. */
  readonly fraction: readonly number[];
}

/**
 * Exact sums in a row of slots.
 *
 * Each addend is cut into three pieces, multiples of 1, of 2⁻²⁶ and of 2⁻⁵², and each piece is added to a
 * limb of its own kind, in which no addition can round. Exact additions may be done in any order.
 *
 * - An addend of 1 or more in size is taken whole, to its last bit. A smaller one is rounded to a multiple
 *   of 2⁻⁵² first, so it may lose up to 2⁻⁵³ = 1.1e-16, in absolute terms, in its unit.
 * - Sums may reach 2⁵¹ = 2.25e15 in size. An addend that leads beyond, or is no finite number, is refused and
 *   leaves the sum as it was.
 * - Read back, a sum is the double nearest to the exact one.
 */
export class BinnedSums {
  // Ones, middle and fine limb of a slot side by side.
  readonly #limbs: Float64Array;
  #rows = 0;

  /** @param slots - number of sums, all 0 to begin with */
  constructor(slots: number) {
    this.#limbs = new Float64Array(3 * slotCount(slots));
  }

  /**
   * How many sums there are.
   *
   * @returns number of slots
   */
  get slots(): number {
    return this.#limbs.length / 3;
  }

  /**
   * Adds to one sum.
   *
   * @param slot - which sum, counted from 0
   * @param value - the addend
   * @throws {@link InputError} when the value is not finite, the sum would leave ±2⁵¹, or there is no such slot
   */
  add(slot: number, value: number): void {
    this.#put(this.#limbs, 3 * slot, value);
    this.#count();
  }

  /**
   * Adds a row of numbers to sums that lie side by side. Zeros cost next to nothing.
   *
   * @param first - slot of the first number
   * @param values - the addends
   * @throws {@link InputError} as {@link BinnedSums.add}; the numbers before the one refused are added
   */
  addRow(first: number, values: Float64Array): void {
    const limbs = this.#limbs;
    for (let k = 0, at = 3 * first; k < values.length; k++, at += 3) {
      const value = values[k]!;
      if (value !== 0) this.#put(limbs, at, value);
    }
    this.#count();
  }

  /**
   * Adds another set of sums, slot by slot.
   *
   * @param other - as many sums; not changed in value
   * @throws {@link InputError} when it has another number of slots, or a sum would leave ±2⁵¹; nothing is added then
   */
  merge(other: BinnedSums): void {
    within("sums to merge", other.slots, this.slots, this.slots, "slots");
    this.mergeRow(0, other);
  }

  /**
   * Adds another set of sums to some of these that lie side by side.
   *
   * @param first - slot that the first sum of the other is added to
   * @param other - the sums; not changed in value
   * @throws {@link InputError} when they do not fit, or a sum would leave ±2⁵¹; nothing is added then
   */
  mergeRow(first: number, other: BinnedSums): void {
    within("slot of a sum", first, 0, this.slots - other.slots, "slots");
    const start = 3 * first;
    const limbs = this.#limbs;
    const more = other.#limbs;
    other.#carry();
    this.#carryFrom(start, start + more.length);
    for (let at = 0; at < more.length; at += 3) {
      if (!(Math.abs(limbs[start + at]! + more[at]!) <= LARGEST))
        throw this.#refusal(start + at, more[at]!);
    }
    for (let at = 0; at < more.length; at++) limbs[start + at] = limbs[start + at]! + more[at]!;
    this.#carryFrom(start, start + more.length);
  }

  /**
   * Sums that lie side by side, each rounded once.
   *
   * @param first - slot of the first one
   * @param count - how many; all from the first on when left out
   * @returns a new array, in the order of the slots
   */
  values(first = 0, count = this.slots - first): Float64Array {
    const limbs = this.#limbs;
    this.#carryFrom(3 * first, 3 * (first + count));
    const values = new Float64Array(count);
    for (let k = 0, at = 3 * first; k < count; k++, at += 3) {
      values[k] = limbs[at]! + (limbs[at + 1]! + limbs[at + 2]!);
    }
    return values;
  }

  /**
   * The exact sums in their one canonical form: equal sums give equal text.
   *
   * @returns plain data for JSON
   */
  toJSON(): SavedSums {
    this.#carry();
    const whole: number[] = [];
    const fraction: number[] = [];
    for (let at = 0; at < this.#limbs.length; at += 3) {
      whole.push(this.#limbs[at]!);
      fraction.push(this.#limbs[at + 1]! + this.#limbs[at + 2]!);
    }
    return { whole, fraction };
  }

  /**
   * Takes saved sums up again.
   *
   * @param saved - what {@link BinnedSums.toJSON} gave
   * @returns the same sums, bit for bit
   * @throws {@link InputError} when the data are not such sums
   */
  static fromJSON(saved: SavedSums): BinnedSums {
    const { whole, fraction } = saved;
    within("saved sums, fractions", fraction.length, whole.length, whole.length, "slots");
    const sums = new BinnedSums(whole.length);
    for (let slot = 0; slot < whole.length; slot++) {
      const ones = whole[slot]!;
      const rest = fraction[slot]!;
      const canonical = rest >= 0 && rest < 1 && Number.isInteger(rest / FINE);
      if (!(Number.isInteger(ones) && Math.abs(ones) <= LARGEST && canonical)) {
        throw new InputError(
          `saved sum ${slot}`,
          ones + rest,
          "is not as it was saved; save it anew",
        );
      }
      sums.#limbs[3 * slot] = ones;
      sums.#limbs[3 * slot + 2] = rest;
    }
    sums.#carry();
    return sums;
  }

  #put(limbs: Float64Array, at: number, value: number): void {
    const ones = value + TO_ONES - TO_ONES;
    const sum = limbs[at]! + ones;
    // A slot that is not there reads as undefined and fails this as NaN does.
    if (!(sum <= LARGEST && sum >= -LARGEST)) throw this.#refusal(at, value);
    const rest = value - ones;
    const middle = rest + TO_MIDDLE - TO_MIDDLE;
    limbs[at] = sum;
    limbs[at + 1] = limbs[at + 1]! + middle;
    limbs[at + 2] = limbs[at + 2]! + (rest - middle + TO_FINE - TO_FINE);
  }

  #count(): void {
    this.#rows += 1;
    if (this.#rows >= ADDS_BEFORE_CARRY) this.#carry();
  }

  #carry(): void {
    this.#carryFrom(0, this.#limbs.length);
    this.#rows = 0;
  }

  // Rounding down makes the limbs of a given sum unique: 0 ≤ fine < 2⁻²⁶ and 0 ≤ middle < 1.
  #carryFrom(start: number, end: number): void {
    const limbs = this.#limbs;
    for (let at = start; at < end; at += 3) {
      const up = Math.floor(limbs[at + 2]! / MIDDLE) * MIDDLE;
      limbs[at + 2] = limbs[at + 2]! - up;
      const middle = limbs[at + 1]! + up;
      const over = Math.floor(middle);
      limbs[at + 1] = middle - over;
      limbs[at] = limbs[at]! + over;
    }
  }

  #refusal(at: number, value: number): InputError {
    return at in this.#limbs
      ? new InputError(
          `sum ${at / 3}`,
          value,
          `expected finite numbers and a total within ±${LARGEST}; check the unit of the rows added`,
        )
      : new InputError(
          "slot of a sum",
          at / 3,
          `expected a whole number from 0 to ${this.slots - 1}`,
        );
  }
}

function slotCount(slots: number): number {
  within("number of sums", slots, 0, 2 ** 31, "slots");
  if (Number.isInteger(slots)) return slots;
  throw new InputError("number of sums", slots, "expected a whole number");
}
