import { describe, expect, it } from "vitest";
import { uniforms } from "../../src/numbers/generator.js";
import { sobolIndices, type SobolIndices } from "../../src/numbers/sobol.js";

const COUNT = 50_000;

// Samples A and B of independent uniform numbers, and f on A, B and A with one input from B.
function indices(inputs: number, f: (x: readonly number[]) => number): readonly SobolIndices[] {
  const sample = (matrix: string): readonly Float64Array[] =>
    Array.from({ length: inputs }, (_, i) => uniforms(1, `x${i}`, COUNT, matrix));
  const [a, b] = [sample(""), sample("B")];
  const on = (columns: readonly Float64Array[]): Float64Array =>
    Float64Array.from({ length: COUNT }, (_, k) => f(columns.map((column) => column[k]!)));
  const [fA, fB] = [on(a), on(b)];
  return a.map((_, i) =>
    sobolIndices(fA, fB, on(a.map((column, j) => (j === i ? b[j]! : column)))),
  );
}

function within({ value, error }: { value: number; error: number }, known: number): void {
  expect(error).toBeLessThan(0.03);
  // Four standard errors, and room for the doubt of the variance.
  expect(Math.abs(value - known)).toBeLessThan(4 * error + 0.01);
}

describe("sobolIndices", () => {
  // T. Ishigami and T. Homma, Proc. ISUMA '90 (1990) 398-403: f = sin x₁ + a sin² x₂ + b x₃⁴ sin x₁ on (−π, π)³.
  // V = a²/8 + bπ⁴/5 + b²π⁸/18 + 1/2; V₁ = (1 + bπ⁴/5)²/2, V₂ = a²/8, V₁₃ = b²π⁸ (1/18 − 1/50).
  it("meets the analytic indices of the Ishigami function, a 7, b 0.1", () => {
    const [a, b] = [7, 0.1];
    const v1 = 0.5 * (1 + (b * Math.PI ** 4) / 5) ** 2;
    const v2 = a ** 2 / 8;
    const v13 = b ** 2 * Math.PI ** 8 * (1 / 18 - 1 / 50);
    const v = v1 + v2 + v13;
    // As printed in textbooks for these constants: 0.3139, 0.4424, 0; totals 0.5576, 0.4424, 0.2437.
    expect([v1 / v, v2 / v, v13 / v].map((share) => share.toFixed(4))).toEqual([
      "0.3139",
      "0.4424",
      "0.2437",
    ]);
    const found = indices(3, (u) => {
      const [x1 = 0, x2 = 0, x3 = 0] = u.map((share) => Math.PI * (2 * share - 1));
      return Math.sin(x1) + a * Math.sin(x2) ** 2 + b * x3 ** 4 * Math.sin(x1);
    });
    [v1 / v, v2 / v, 0].forEach((known, i) => {
      within(found[i]!.first, known);
    });
    [(v1 + v13) / v, v2 / v, v13 / v].forEach((known, i) => {
      within(found[i]!.total, known);
    });
  });

  // A. Saltelli and I. M. Sobol', Reliability Engineering and System Safety 50 (1995) 225-239:
  // g = Π (|4xᵢ − 2| + aᵢ)/(1 + aᵢ), Vᵢ = 1/(3 (1 + aᵢ)²), V = Π (1 + Vᵢ) − 1, total Vᵢ Π_{j≠i} (1 + V_j) / V.
  it("meets the analytic indices of the g-function", () => {
    const a = [0, 1, 4.5, 9];
    const parts = a.map((one) => 1 / (3 * (1 + one) ** 2));
    const all = parts.reduce((product, part) => product * (1 + part), 1);
    const v = all - 1;
    const found = indices(4, (x) =>
      a.reduce((product, one, i) => (product * (Math.abs(4 * x[i]! - 2) + one)) / (1 + one), 1),
    );
    parts.forEach((part, i) => {
      within(found[i]!.first, part / v);
      within(found[i]!.total, (part * all) / (1 + part) / v);
    });
  });

  it("gives one input everything where there is no other", () => {
    const [only] = indices(1, ([x = 0]) => 3 * x + 100);
    within(only!.first, 1);
    within(only!.total, 1);
  });

  it("refuses samples that do not fit", () => {
    const two = new Float64Array(2);
    expect(() => sobolIndices(two, two, new Float64Array(3))).toThrow(
      "expected three of one length",
    );
    expect(() =>
      sobolIndices(new Float64Array(1), new Float64Array(1), new Float64Array(1)),
    ).toThrow("2 or more");
  });
});
