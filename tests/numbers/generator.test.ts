import { createHash } from "node:crypto";
import { xoroshiro128plusFromState } from "pure-rand/generator/xoroshiro128plus";
import { describe, expect, it } from "vitest";
import { uniforms } from "../../src/numbers/generator.js";
import { mean } from "../../src/numbers/quantiles.js";

const WORD = (1n << 64n) - 1n;

// The generator as its authors define it, on 64-bit integers.
function* xoroshiro128plus(first: bigint, second: bigint): Generator<bigint> {
  const rotated = (x: bigint, by: bigint): bigint => ((x << by) | (x >> (64n - by))) & WORD;
  let [s0, s1] = [first, second];
  for (;;) {
    yield (s0 + s1) & WORD;
    s1 ^= s0;
    s0 = rotated(s0, 24n) ^ s1 ^ ((s1 << 16n) & WORD);
    s1 = rotated(s1, 37n);
  }
}

function first(count: number, numbers: Generator<bigint>): bigint[] {
  return Array.from({ length: count }, () => numbers.next().value as bigint);
}

describe("uniforms", () => {
  // Output of the authors' C program, version of 2018, from the state 1, 2 (prng.di.unimi.it), as
  // reproduced in the test vectors of public ports.
  it("[E13] rests on the published generator", () => {
    const published = [
      3n,
      412333834243n,
      2360170716294286339n,
      9295852285959843169n,
      2797080929874688578n,
      6019711933173041966n,
      3076529664176959358n,
      3521761819100106140n,
    ];
    expect(first(published.length, xoroshiro128plus(1n, 2n))).toEqual(published);
    const generator = xoroshiro128plusFromState([0, 1, 0, 2]);
    const lower = published.map((sum) => Number(BigInt.asIntN(32, sum)));
    expect(lower.map(() => generator.next())).toEqual(lower);
  });

  it("can be made again from its description alone", () => {
    const digest = createHash("sha256").update('["7","boiler.efficiency @ site",""]').digest();
    const sums = first(
      2000,
      xoroshiro128plus(digest.readBigUInt64BE(0), digest.readBigUInt64BE(8)),
    ).map((sum) => Number((sum >> 6n) & ((1n << 26n) - 1n)));
    const expected = Array.from(
      { length: 1000 },
      (_, i) => (2 ** 26 * (sums[2 * i] ?? 0) + (sums[2 * i + 1] ?? 0) + 0.5) / 2 ** 52,
    );
    expect([...uniforms(7, "boiler.efficiency @ site", 1000)]).toEqual(expected);
  });

  it("gives the same numbers for a seed as number and as text, and begins a longer draw with a shorter", () => {
    const long = uniforms(7, "hall", 100);
    expect(uniforms("7", "hall", 100)).toEqual(long);
    expect(uniforms(7, "hall", 10)).toEqual(long.slice(0, 10));
  });

  it("tells seeds, streams and matrices apart, however their names are cut", () => {
    const starts = [
      uniforms(7, "hall", 1),
      uniforms(8, "hall", 1),
      uniforms(7, "halls", 1),
      uniforms(7, "hall", 1, "B"),
      uniforms("7,", "hall", 1),
      uniforms(7, "hall,B", 1),
      uniforms(7, 'hall","B', 1),
      uniforms(7, "", 1),
    ].map((numbers) => numbers[0]);
    expect(new Set(starts).size).toBe(starts.length);
  });

  it("lies strictly between 0 and 1 on odd multiples of 2⁻⁵³", () => {
    for (const u of uniforms(1, "grid", 10_000)) {
      expect(u > 0 && u < 1 && (u * 2 ** 53) % 2 === 1).toBe(true);
    }
  });

  // For n uniform numbers: mean ½ ± √(1/12n), share per tenth 0.1 ± √(0.09/n), correlation of two
  // streams and of neighbours 0 ± 1/√n; four standard errors each.
  it("is even, and streams are not correlated", () => {
    const n = 100_000;
    const a = uniforms(1, "a", n);
    const b = uniforms(1, "b", n);
    expect(Math.abs(mean(a) - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / n));
    const tenths = new Array<number>(10).fill(0);
    for (const u of a) tenths[Math.floor(10 * u)]! += 1 / n;
    for (const share of tenths) {
      expect(Math.abs(share - 0.1)).toBeLessThan(4 * Math.sqrt(0.09 / n));
    }
    const correlation = (x: (i: number) => number, y: (i: number) => number): number =>
      12 * mean(Float64Array.from({ length: n - 1 }, (_, i) => (x(i) - 0.5) * (y(i) - 0.5)));
    const bound = 4 / Math.sqrt(n);
    expect(
      Math.abs(
        correlation(
          (i) => a[i]!,
          (i) => b[i]!,
        ),
      ),
    ).toBeLessThan(bound);
    expect(
      Math.abs(
        correlation(
          (i) => a[i]!,
          (i) => a[i + 1]!,
        ),
      ),
    ).toBeLessThan(bound);
  });

  it("refuses a count or seed that makes no sense", () => {
    expect(() => uniforms(1, "a", -1)).toThrow("number of draws = -1: expected a whole number");
    expect(() => uniforms(1, "a", 1.5)).toThrow("number of draws = 1.5");
    expect(() => uniforms(Number.NaN, "a", 1)).toThrow("seed = NaN");
    expect(uniforms(1, "a", 0)).toHaveLength(0);
  });
});
