import { describe, expect, it } from "vitest";
import { leastSquares, type LinearFit } from "../../src/numbers/least-squares.js";

// Data and certified values: NIST/ITL Statistical Reference Datasets, linear regression
// (itl.nist.gov/div898/strd), as printed in the data files.
const NORRIS = table(`
  0.1 0.2
  338.8 337.4
  118.1 118.2
  888.0 884.6
  9.2 10.1
  228.1 226.5
  668.5 666.3
  998.5 996.3
  449.1 448.6
  778.9 777.0
  559.2 558.2
  0.3 0.4
  0.1 0.6
  778.1 775.5
  668.8 666.9
  339.3 338.0
  448.9 447.5
  10.8 11.6
  557.7 556.0
  228.3 228.1
  998.0 995.8
  888.8 887.6
  119.6 120.2
  0.3 0.3
  0.6 0.3
  557.6 556.8
  339.3 339.1
  888.0 887.2
  998.5 999.0
  778.9 779.0
  10.2 11.1
  117.6 118.3
  228.9 229.2
  668.4 669.1
  449.2 448.9
  0.2 0.5`);

const LONGLEY = table(`
  60323 83.0 234289 2356 1590 107608 1947
  61122 88.5 259426 2325 1456 108632 1948
  60171 88.2 258054 3682 1616 109773 1949
  61187 89.5 284599 3351 1650 110929 1950
  63221 96.2 328975 2099 3099 112075 1951
  63639 98.1 346999 1932 3594 113270 1952
  64989 99.0 365385 1870 3547 115094 1953
  63761 100.0 363112 3578 3350 116219 1954
  66019 101.2 397469 2904 3048 117388 1955
  67857 104.6 419180 2822 2857 118734 1956
  68169 108.4 442769 2936 2798 120445 1957
  66513 110.8 444546 4681 2637 121950 1958
  68655 112.6 482704 3813 2552 123366 1959
  69564 114.2 502601 3931 2514 125368 1960
  69331 115.7 518173 4806 2572 127852 1961
  70551 116.9 554894 4007 2827 130081 1962`);

function table(text: string): readonly (readonly number[])[] {
  return text
    .trim()
    .split("\n")
    .map((line) => line.trim().split(/\s+/).map(Number));
}

function fitOf(rows: readonly (readonly number[])[], intercept = true): LinearFit {
  const column = (k: number): Float64Array => Float64Array.from(rows, (row) => row[k] ?? NaN);
  const width = rows[0]?.length ?? 0;
  return leastSquares(
    Array.from({ length: width - 1 }, (_, k) => column(k + 1)),
    column(0),
    intercept,
  );
}

function near(value: number | undefined, certified: number, digits: number): void {
  expect(Math.abs((value ?? NaN) / certified - 1)).toBeLessThan(10 ** -digits);
}

describe("leastSquares", () => {
  it("[F1] meets the certified values of Norris to nine digits", () => {
    const fit = fitOf(NORRIS);
    near(fit.coefficients[0], -0.262323073774029, 9);
    near(fit.coefficients[1], 1.00211681802045, 9);
    near(fit.errors[0], 0.232818234301152, 9);
    near(fit.errors[1], 0.429796848199937e-3, 9);
    near(fit.residualSd, 0.884796396144373, 9);
    near(fit.r2, 0.999993745883712, 9);
  });

  it("[F2] meets the certified values of Longley, which is near collinear, to seven digits", () => {
    const fit = fitOf(LONGLEY);
    const certified = [
      [-3482258.63459582, 890420.383607373],
      [15.0618722713733, 84.9149257747669],
      [-0.35819179292591e-1, 0.334910077722432e-1],
      [-2.02022980381683, 0.488399681651699],
      [-1.03322686717359, 0.214274163161675],
      [-0.511041056535807e-1, 0.22607320006937],
      [1829.15146461355, 455.478499142212],
    ] as const;
    certified.forEach(([estimate, error], k) => {
      near(fit.coefficients[k], estimate, 7);
      near(fit.errors[k], error, 7);
    });
    near(fit.residualSd, 304.854073561965, 7);
    near(fit.r2, 0.995479004577296, 7);
  });

  it("[F4] meets the certified values of NoInt1, without an intercept, to twelve digits", () => {
    const fit = fitOf(
      Array.from({ length: 11 }, (_, k) => [130 + k, 60 + k]),
      false,
    );
    near(fit.coefficients[0], 2.07438016528926, 12);
    near(fit.errors[0], 0.165289256198347e-1, 12);
    near(fit.residualSd, 3.56753034006338, 12);
    near(fit.r2, 0.999365492298663, 12);
  });

  it("[F11] leaves residuals that add up to nothing, where there is an intercept", () => {
    for (const rows of [NORRIS, LONGLEY]) {
      const { residuals } = fitOf(rows);
      const size = residuals.reduce((sum, value) => sum + Math.abs(value), 0);
      expect(Math.abs(residuals.reduce((sum, value) => sum + value, 0)) / size).toBeLessThan(1e-8);
    }
  });

  // Certified residual standard deviations over the means of y, 419.802778, 65317 and 135.
  it("[F10] gives the residual spread as a share of the mean", () => {
    near(fitOf(NORRIS).residualSd / 419.8027777777778, 0.00210765, 5);
    near(fitOf(LONGLEY).residualSd / 65317, 0.0046673, 5);
  });

  it("finds a plane again", () => {
    const rows = Array.from({ length: 9 }, (_, k) => {
      const [a, b] = [k % 3, Math.floor(k / 3)];
      return [7 + 2 * a - 5 * b, a, b];
    });
    const fit = fitOf(rows);
    [7, 2, -5].forEach((value, k) => {
      expect(fit.coefficients[k]).toBeCloseTo(value, 12);
    });
    expect(fit.r2).toBeCloseTo(1, 12);
  });

  it("refuses columns that say the same, and more coefficients than numbers", () => {
    expect(() =>
      fitOf([
        [1, 2, 4],
        [2, 3, 6],
        [4, 5, 10],
        [3, 7, 14],
      ]),
    ).toThrow("expected one that those before do not give");
    expect(() =>
      fitOf([
        [1, 2],
        [2, 3],
      ]),
    ).toThrow("expected more than 2");
  });
});
