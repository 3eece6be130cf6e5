import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BinnedSums } from "../../src/numbers/binned-sum.js";
import { uniforms } from "../../src/numbers/generator.js";

const FINE = 2 ** -52;
const amount = fc.double({ min: -1e9, max: 1e9, noNaN: true });

function summed(values: readonly number[]): BinnedSums {
  const sums = new BinnedSums(1);
  for (const value of values) sums.add(0, value);
  return sums;
}

// The exact sum of the addends, each rounded half to even at 2⁻⁵², as a whole number of 2⁻⁵².
function exact(values: readonly number[]): bigint {
  return values.reduce((sum, value) => {
    const whole = Math.trunc(value);
    const scaled = Math.abs(value - whole) / FINE;
    const down = Math.floor(scaled);
    const half = scaled - down;
    const up = half > 0.5 || (half === 0.5 && down % 2 === 1) ? 1 : 0;
    return sum + (BigInt(whole) << 52n) + BigInt(Math.sign(value)) * BigInt(down + up);
  }, 0n);
}

function asWhole(sums: BinnedSums): bigint {
  const { whole, fraction } = sums.toJSON();
  return (BigInt(whole[0]!) << 52n) + BigInt(fraction[0]! / FINE);
}

describe("BinnedSums", () => {
  it("is the exact sum in integer arithmetic, rounded once when read", () => {
    fc.assert(
      fc.property(fc.array(amount, { maxLength: 200 }), (values) => {
        const sum = exact(values);
        expect(asWhole(summed(values))).toBe(sum);
        expect(summed(values).values()[0]).toBe(Number(sum) * FINE);
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it("gives the same bits in any order and however it is split and merged", () => {
    const shuffled = fc
      .array(amount, { minLength: 1, maxLength: 200 })
      .chain((values) =>
        fc.tuple(
          fc.constant(values),
          fc.shuffledSubarray(values, { minLength: values.length }),
          fc.array(fc.nat(values.length), { maxLength: 6 }),
        ),
      );
    fc.assert(
      fc.property(shuffled, ([values, other, cuts]) => {
        const edges = [0, ...cuts.sort((a, b) => a - b), other.length];
        const merged = new BinnedSums(1);
        for (let i = edges.length - 1; i > 0; i--) {
          merged.merge(summed(other.slice(edges[i - 1], edges[i])));
        }
        expect(JSON.stringify(merged)).toBe(JSON.stringify(summed(values)));
        expect(merged.values()).toEqual(summed(values).values());
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it("holds where plain addition drifts", () => {
    const values = [...uniforms(1, "drift", 100_000)].map((u) => 10 ** (9 * u));
    const plain = (list: readonly number[]): number => list.reduce((sum, value) => sum + value, 0);
    const orders = [values, values.toSorted((a, b) => a - b), values.toSorted((a, b) => b - a)];
    expect(new Set(orders.map(plain)).size).toBeGreaterThan(1);
    expect(new Set(orders.map((order) => summed(order).values()[0])).size).toBe(1);
  });

  it("takes addends of 1 or more whole and small ones to 2⁻⁵³", () => {
    expect(asWhole(summed([1 + FINE]))).toBe((1n << 52n) + 1n);
    expect(summed([1e13, 0.1, -1e13]).values()[0]).toBe(0.1 - ((0.1 / FINE) % 1) * FINE + FINE);
    expect(summed([2 ** -54]).values()[0]).toBe(0);
  });

  it("keeps equal sums in equal form where limbs could tie", () => {
    const half = 2 ** -27;
    expect(JSON.stringify(summed([half, half]))).toBe(JSON.stringify(summed([2 ** -26])));
    expect(JSON.stringify(summed([1, -half]))).toBe(JSON.stringify(summed([0.5, 0.5, -half])));
    expect(JSON.stringify(summed([0.5, 0.5]))).toBe(JSON.stringify(summed([1.5, -0.5])));
    expect(JSON.stringify(summed([-0, 0]))).toBe('{"whole":[0],"fraction":[0]}');
  });

  it("adds rows side by side as it adds single numbers", () => {
    const row = Float64Array.of(1.1, 0, 2.2);
    const byRow = new BinnedSums(5);
    byRow.addRow(1, row);
    byRow.addRow(1, row);
    const single = new BinnedSums(5);
    for (const slot of [3, 1, 1, 3]) single.add(slot, slot === 1 ? 1.1 : 2.2);
    expect([...byRow.values()]).toEqual([0, 2.2, 0, 4.4, 0]);
    expect(JSON.stringify(byRow)).toBe(JSON.stringify(single));
  });

  it("comes back from JSON and goes on adding the same bits", () => {
    fc.assert(
      fc.property(fc.array(amount), fc.array(amount), (before, after) => {
        const text = JSON.stringify(summed(before));
        const resumed = BinnedSums.fromJSON(
          JSON.parse(text) as Parameters<typeof BinnedSums.fromJSON>[0],
        );
        for (const value of after) resumed.add(0, value);
        expect(JSON.stringify(resumed)).toBe(JSON.stringify(summed([...before, ...after])));
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("takes sums in beside others, and leaves those alone", () => {
    fc.assert(
      fc.property(fc.array(amount), fc.array(amount), (before, after) => {
        const beside = new BinnedSums(4);
        beside.add(0, 1.5);
        beside.add(3, 2.5);
        for (const value of before) beside.add(1, value);
        const more = new BinnedSums(2);
        for (const value of after) more.add(0, value);
        more.add(1, 7);
        beside.mergeRow(1, more);
        const { whole, fraction } = beside.toJSON();
        const own = { whole: whole.slice(1, 2), fraction: fraction.slice(1, 2) };
        expect(own).toEqual(summed([...before, ...after]).toJSON());
        expect([...beside.values()].toSpliced(1, 1)).toEqual([1.5, 7, 2.5]);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("refuses sums that do not fit beside others, and adds nothing", () => {
    const sums = new BinnedSums(2);
    sums.add(1, 2 ** 51);
    const two = new BinnedSums(2);
    two.add(0, 5);
    two.add(1, 1);
    expect(() => {
      sums.mergeRow(0, two);
    }).toThrow("sum 1 = 1");
    expect([...sums.values()]).toEqual([0, 2 ** 51]);
    for (const first of [1, -1, Number.NaN]) {
      expect(() => {
        sums.mergeRow(first, two);
      }).toThrow(`slot of a sum = ${first}`);
    }
  });

  it("carries on past the number of additions its limbs can take", () => {
    const sums = new BinnedSums(1);
    const row = Float64Array.of(0.75);
    const rounds = 2 ** 26 + 1000;
    for (let i = 0; i < rounds; i++) sums.addRow(0, row);
    expect(sums.values()[0]).toBe(0.75 * rounds);
  });

  it.each([Number.NaN, Infinity, -Infinity, 2 ** 52, -(2 ** 52), 1e300])(
    "refuses %d and keeps the sum",
    (value) => {
      const sums = summed([2.5]);
      expect(() => {
        sums.add(0, value);
      }).toThrow(`sum 0 = ${value}: expected finite numbers`);
      expect(sums.values()[0]).toBe(2.5);
    },
  );

  it("refuses a total out of range, a slot that is not there, and sets that do not fit", () => {
    const full = summed([2 ** 51]);
    expect(() => {
      full.add(0, 1);
    }).toThrow("total within ±2251799813685248");
    expect(() => {
      full.merge(summed([1]));
    }).toThrow("sum 0 = 1");
    expect(full.values()[0]).toBe(2 ** 51);
    expect(() => {
      full.add(1, 1);
    }).toThrow("slot of a sum = 1: expected a whole number from 0 to 0");
    expect(() => {
      full.addRow(0, Float64Array.of(0, 1));
    }).toThrow("slot of a sum = 1");
    expect(() => {
      full.merge(new BinnedSums(2));
    }).toThrow("sums to merge = 2");
    expect(() => new BinnedSums(1.5)).toThrow("number of sums = 1.5");
    expect(() => BinnedSums.fromJSON({ whole: [1], fraction: [] })).toThrow("fractions = 0");
    expect(() => BinnedSums.fromJSON({ whole: [1.5], fraction: [0] })).toThrow("saved sum 0");
    expect(() => BinnedSums.fromJSON({ whole: [1], fraction: [2 ** -60] })).toThrow("saved sum 0");
    expect(() => BinnedSums.fromJSON({ whole: [1], fraction: [1] })).toThrow("saved sum 0");
  });
});
