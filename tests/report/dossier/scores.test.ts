import { describe, expect, it } from "vitest";
import type { Factor, FactorValue } from "../../../src/factors/factor.js";
import { loadFactors } from "../../../src/factors/load.js";
import { scoresOf } from "../../../src/report/dossier/scores.js";
import { FACTOR_FILES, shippedFactor } from "../../tools/shipped-factors.js";

// Our own mill's meter, with and without an interval.
function own(spread: string): readonly [Factor, FactorValue] {
  const text = `factors:
  wash-range.fresh-water:
    unit: L/kg
    values:
      - value: 18.5
${spread}        from: 2026-01-01
        entered: 2026-11-01
        year: 2026
        region: here
        source: own-estimate
        quality: { reliability: 1, completeness: 2, time: 1, place: 1, technology: 4 }
`;
  const { value } = loadFactors(FACTOR_FILES, [{ name: "factors/own.yaml", text }]);
  const factor = value?.factors.get("wash-range.fresh-water");
  const newest = factor?.values[0];
  if (factor === undefined || newest === undefined) throw new Error("the file was refused");
  return [factor, newest];
}

describe("scoresOf", () => {
  const { lines, span, inForce, alone } = scoresOf(...own(""));

  it("says what each score means and does", () => {
    // Frischknecht et al. 2005, contributions to the square of the GSD (from memory).
    expect(
      lines.map(({ name, score, factor }) => [name, score, Number(factor.toFixed(6))]),
    ).toEqual([
      ["reliability", 1, 1],
      ["completeness", 2, 1.02],
      ["time", 1, 1],
      ["place", 1, 1],
      ["technology", 4, 1.5],
    ]);
    expect(lines.map(({ means }) => means)).toContain("related process");
  });

  it("adds their logarithms in squares, with 1.05 that no score removes", () => {
    const squares = [1.05, 1.02, 1.5].map((factor) => Math.log(factor) ** 2);
    expect(Math.log(span) ** 2).toBeCloseTo(squares[0]! + squares[1]! + squares[2]!, 12);
  });

  it("tells scores that make the spread from scores that are only shown", () => {
    expect(inForce).toBe(true);
    expect(alone).toMatchObject({ shape: "lognormal", value: 18.5 });
    const stated = scoresOf(...own("        spread: { shape: normal, low: 17, high: 20 }\n"));
    expect(stated.inForce).toBe(false);
    expect(stated.span).toBe(span);
  });

  it("knows values for which scores cannot serve", () => {
    const factor = shippedFactor("wash-range.hot");
    const scores = scoresOf(factor, factor.values[0]!);
    expect(scores.alone).toBeUndefined();
    expect(scores.inForce).toBe(false);
  });
});
