import { describe, expect, it } from "vitest";
import { uniforms } from "../../src/numbers/generator.js";
import { normalQuantile } from "../../src/numbers/normal.js";
import { each } from "../../src/numbers/ranks.js";
import {
  type Argument,
  argumentOf,
  strengthOf,
  type VarianceShare,
  varianceShare,
} from "../../src/numbers/variance-share.js";

const uniform = (name: string, n: number): Float64Array => uniforms(1, name, n);
const normal = (name: string, n: number): Float64Array => each(uniform(name, n), normalQuantile);

function of(value: (i: number) => number, n: number): Float64Array {
  return Float64Array.from({ length: n }, (_, i) => value(i));
}

function ready(draws: Float64Array): Argument {
  const argument = argumentOf(draws);
  if (argument === undefined) throw new Error("the draws do not vary");
  return argument;
}

function share(columns: readonly Float64Array[], y: Float64Array): VarianceShare {
  const found = varianceShare(columns.map(ready), ready(y));
  if (found === undefined) throw new Error("nothing goes along with the result");
  return found;
}

// Four standard errors: one such test in some 16,000 fails by chance.
function near({ share: value, error }: VarianceShare, expected: number): void {
  expect(Math.abs(value - expected)).toBeLessThan(4 * error);
}

describe("varianceShare", () => {
  const N = 20_000;

  // T. Ishigami and T. Homma, ISUMA (1990) 398-403: y = sin x₁ + 7 sin² x₂ + 0.1 x₃⁴ sin x₁ on −π to π, with
  // S₁ = 0.3139, S₂ = 0.4424, S₃ = 0 and S₁₃ = 0.2437 by the formulas of the paper. Of the variance of sin x
  // a polynomial of the third degree holds 6/π² + 14 ((15/π² − 1)/π)² = 0.9912, worked by hand from Legendre.
  it("[E15] finds what a fit can hold of the Ishigami function, and never more than the index", () => {
    const [x1, x2, x3] = ["x1", "x2", "x3"].map((name) =>
      each(uniform(name, N), (u) => Math.PI * (2 * u - 1)),
    ) as [Float64Array, Float64Array, Float64Array];
    const y = of(
      (i) => Math.sin(x1[i]!) + 7 * Math.sin(x2[i]!) ** 2 + 0.1 * x3[i]! ** 4 * Math.sin(x1[i]!),
      N,
    );
    near(share([x1], y), 0.3139 * 0.9912);
    for (const [columns, index] of [
      [[x1], 0.3139],
      [[x2], 0.4424],
      [[x1, x3], 0.3139 + 0.2437],
    ] as const) {
      const found = share(columns, y);
      expect(found.share).toBeLessThan(index + 4 * found.error);
    }
    expect(varianceShare([ready(x3)], ready(y))).toBeUndefined();
  });

  // A. Saltelli and I. M. Sobol', Reliability Engineering and System Safety 50 (1995) 225-239:
  // y = Π (|4 xᵢ − 2| + aᵢ)/(1 + aᵢ) with Vᵢ = 1/(3 (1 + aᵢ)²) and V = Π (1 + Vᵢ) − 1. Of the variance of a
  // kink in the middle a parabola holds 15/16, worked by hand from Legendre.
  it("[E16] finds 15/16 of the indices of the g-function", () => {
    const a = [0, 1, 4.5, 9, 99, 99];
    const x = a.map((_, k) => uniform(`g${k}`, N));
    const y = of(
      (i) =>
        a.reduce((product, ak, k) => product * ((Math.abs(4 * x[k]![i]! - 2) + ak) / (1 + ak)), 1),
      N,
    );
    const parts = a.map((ak) => 1 / (3 * (1 + ak) ** 2));
    const all = parts.reduce((product, part) => product * (1 + part), 1) - 1;
    [0, 1, 2].forEach((k) => {
      near(share([x[k]!], y), (15 / 16) * (parts[k]! / all));
    });
    const both = share([x[0]!, x[1]!], y);
    expect(both.share).toBeLessThan(((1 + parts[0]!) * (1 + parts[1]!) - 1) / all);
    expect(both.share).toBeGreaterThan(
      (15 / 16) * ((parts[0]! + parts[1]!) / all) - 4 * both.error,
    );
  });

  // (2 + a)(2 + b) − 4 = 2a + 2b + ab has the variance 4 + 4 + 1.
  it("counts what two arguments do together only when both are known", () => {
    const [a, b] = [normal("a", N), normal("b", N)];
    const y = of((i) => (2 + a[i]!) * (2 + b[i]!), N);
    near(share([a], y), 4 / 9);
    expect(share([a, b], y).share).toBeCloseTo(1, 3);
  });

  it("gives an error that estimates keep to", () => {
    const [n, repeats] = [500, 100];
    const found = Array.from({ length: repeats }, (_, k) => {
      const [a, b] = [normal(`a${k}`, n), normal(`b${k}`, n)];
      return share(
        [a],
        of((i) => a[i]! + b[i]!, n),
      );
    });
    const mean = found.reduce((sum, { share: value }) => sum + value, 0) / repeats;
    const squares = found.reduce((sum, { share: value }) => sum + (value - mean) ** 2, 0);
    const sd = Math.sqrt(squares / (repeats - 1));
    const error = found.reduce((sum, one) => sum + one.error, 0) / repeats;
    expect(Math.abs(mean - 0.5)).toBeLessThan((4 * error) / Math.sqrt(repeats));
    // The standard deviation of 100 estimates is known to one part in 14; three times that.
    expect(Math.abs(sd / error - 1)).toBeLessThan(0.22);
  });

  it("leaves residuals of the rest of the variance, about zero", () => {
    const [a, b] = [normal("a", N), normal("b", N)];
    const { share: value, residuals } = share(
      [a],
      of((i) => 3 * a[i]! + b[i]!, N),
    );
    expect(residuals.reduce((sum, r) => sum + r, 0) / N).toBeCloseTo(0, 10);
    expect(residuals.reduce((sum, r) => sum + r * r, 0) / N).toBeCloseTo(1 - value, 3);
  });

  it("takes a setting before and after a change, which go together, for one", () => {
    const a = normal("a", N);
    const later = each(a, (value) => 5 + 2 * value);
    const both = share(
      [a, later],
      each(a, (value) => 7 * value),
    );
    expect(both.share).toBeCloseTo(1, 6);
  });

  it("keeps to fewer coefficients than one for twenty draws", () => {
    const n = 60;
    const columns = Array.from({ length: 30 }, (_, k) => normal(`c${k}`, n));
    const y = of((i) => columns.reduce((sum, column) => sum + column[i]!, 0), n);
    const found = varianceShare(columns.map(ready), ready(y));
    expect(found === undefined || found.share < 1).toBe(true);
  });

  it("says nothing of what does not vary or goes its own way", () => {
    expect(argumentOf(new Float64Array(9).fill(0.1))).toBeUndefined();
    expect(varianceShare([ready(normal("a", N))], ready(normal("b", N)))).toBeUndefined();
  });

  it("refuses arguments of another length", () => {
    expect(() => strengthOf(ready(normal("a", 10)), ready(normal("b", 11)))).toThrow(
      "expected 11 numbers",
    );
  });
});
