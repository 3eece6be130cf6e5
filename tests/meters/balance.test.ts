import { describe, expect, it } from "vitest";
import { type Balance, correctionsOf, solveBalances } from "../../src/meters/balance.js";
import { drawInto, type Drawn, workedOut } from "../../src/meters/drawn.js";
import { logCovariance, logMean } from "../../src/meters/states.js";
import type { Leaf } from "../../src/numbers/quantity.js";
import { madeMill } from "./made.js";

const leaf = (id: string, value: number, gsd: number): Leaf => ({
  kind: "leaf",
  id,
  factor: id,
  unit: "1",
  words: id,
  spread: { shape: "lognormal", value, gsd, limits: [0, Infinity] },
  provenance: "plant",
  source: "made up",
});

const A = leaf("a", 60, 1.3);
const B = leaf("b", 30, 1.3);
const REST = leaf("rest", 5, 2);
const MAIN = leaf("main", 120, 1.01);
const SUB = leaf("sub", 45, 1.01);
const LEAVES = [A, B, REST, MAIN, SUB];
const BALANCES: readonly Balance[] = [
  {
    name: "main",
    parts: [
      { amount: A, states: [0] },
      { amount: B, states: [1] },
      { amount: REST, states: [2] },
    ],
    reading: MAIN,
    readingState: 3,
  },
  { name: "sub", parts: [{ amount: B, states: [1] }], reading: SUB, readingState: 4 },
];

describe("balances", () => {
  const drawn: Drawn = new Map();
  drawInto(drawn, madeMill({}).program, LEAVES, 1000, 1);
  const columns = LEAVES.map((one) => drawn.get(one)!);
  const means = Float64Array.from(columns, logMean);
  const solved = solveBalances(BALANCES, { means, covariance: logCovariance(columns, means) }, [
    { parts: Float64Array.of(60, 30, 5), reading: 120 },
    { parts: Float64Array.of(30), reading: 45 },
  ]);

  it("close in the middle", () => {
    const [a = NaN, b = NaN, rest = NaN, main = NaN, sub = NaN] = solved.corrections;
    expect((60 * a + 30 * b + 5 * rest) / (120 * main)).toBeCloseTo(1, 8);
    expect((30 * b) / (45 * sub)).toBeCloseTo(1, 8);
    expect(b).toBeGreaterThan(1.45);
    expect(a).toBeGreaterThan(1);
  });

  it("close in every draw to half a per cent, with nothing below 0", () => {
    const of = correctionsOf(BALANCES, solved.gain, "test");
    const by = LEAVES.map((_, state) => workedOut(drawn, of(state, `by ${state}`, []), 1000));
    for (let i = 0; i < 1000; i++) {
      const value = (at: number): number => columns[at]![i]! * by[at]![i]!;
      expect(value(0)).toBeGreaterThan(0);
      expect(Math.abs((value(0) + value(1) + value(2)) / value(3) - 1)).toBeLessThan(5e-3);
      expect(Math.abs(value(1) / value(4) - 1)).toBeLessThan(5e-3);
    }
  });
});
