/**
 * Uniform random numbers, one independent stream per name.
 */

import { sha256 } from "@noble/hashes/sha2.js";
import { utf8ToBytes } from "@noble/hashes/utils.js";
import { xoroshiro128plusFromState } from "pure-rand/generator/xoroshiro128plus";
import { InputError } from "../problems/input-error.js";

const STEP = 2 ** -52;
const UPPER = 2 ** 26;

/**
 * Draws from the stream of that name. Each stream is seeded by itself, so a stream added, left out or
 * asked for earlier moves no number of any other, and a longer draw begins with the shorter one.
 *
 * How a number is made, so that anyone can make it again:
 * 1. SHA-256 of the UTF-8 text of the JSON array `[seed, stream, matrix]`, all three as strings
 * 2. the first 16 bytes, big-endian, are the state s₀, s₁ of xoroshiro128+ (shifts 24, 16, 37)
 * 3. two steps give two sums; of the lower 32 bits of each the upper 26 are kept, which leaves out
 *    the lowest bits, the weakest of this generator
 * 4. u = (2²⁶ · first + second + ½) / 2⁵²
 *
 * The half step keeps u off both ends and makes the grid symmetric about ½.
 *
 * @param seed - seed of the report; `7` and `"7"` are the same seed
 * @param stream - name of the stream, such as `boiler.efficiency @ site`
 * @param count - how many numbers [-]
 * @param matrix - a second, independent set under the same name; empty for the first
 * @returns numbers above 0 and below 1
 * @throws {@link InputError} when `count` is not a whole number from 0 on, or the seed is not finite
 * @see D. Blackman and S. Vigna, Scrambled linear pseudorandom number generators, ACM TOMS 47 (2021) 36
 */
export function uniforms(
  seed: number | string,
  stream: string,
  count: number,
  matrix = "",
): Float64Array {
  if (!(Number.isInteger(count) && count >= 0)) {
    throw new InputError("number of draws", count, "expected a whole number, 0 or more");
  }
  if (typeof seed === "number" && !Number.isFinite(seed)) {
    throw new InputError("seed", seed, "expected a finite number or a text");
  }
  const generator = xoroshiro128plusFromState(
    stateOf(JSON.stringify([String(seed), stream, matrix])),
  );
  const numbers = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const first = generator.next() >>> 6;
    const second = generator.next() >>> 6;
    numbers[i] = (first * UPPER + second + 0.5) * STEP;
  }
  return numbers;
}

// The generator stays at zero when its whole state is zero; a hash of that form is not expected to exist.
function stateOf(name: string): readonly number[] {
  const digest = sha256(utf8ToBytes(name));
  const view = new DataView(digest.buffer, digest.byteOffset, digest.byteLength);
  return [view.getInt32(0), view.getInt32(4), view.getInt32(8), view.getInt32(12)];
}
