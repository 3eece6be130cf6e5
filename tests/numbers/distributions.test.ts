import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, it } from "vitest";
import {
  draw,
  interval95,
  lognormalFromInterval,
  meanOf,
  medianOf,
  quantileOf,
  tailBeyond,
} from "../../src/numbers/distributions.js";
import { ranksFrom, ranksOf } from "../../src/numbers/ranks.js";
import { mean, quantile } from "../../src/numbers/quantiles.js";
import type { Spread } from "../../src/numbers/spread.js";

const WIDE: readonly [number, number] = [0, 1e9];

const CUT_NORMAL: Spread = { shape: "normal", value: 1, sd: 0.5, limits: [0.2, 1.4] };
const CUT_LOGNORMAL: Spread = { shape: "lognormal", value: 2, gsd: 1.5, limits: [1, 5] };

const EVERY_SHAPE: readonly Spread[] = [
  { shape: "fixed", value: 3 },
  CUT_NORMAL,
  CUT_LOGNORMAL,
  { shape: "triangular", low: -1, value: 0.5, high: 4 },
  { shape: "triangular", low: 0, value: 0, high: 1 },
  { shape: "triangular", low: 0, value: 1, high: 1 },
  { shape: "uniform", low: -1, value: 0, high: 4 },
  { shape: "pert", low: 0.6, value: 0.85, high: 0.9 },
];

describe("quantileOf", () => {
  // Lognormal quantiles as in E. Limpert et al., BioScience 51 (2001): median / GSD^1.96, median · GSD^1.96.
  it.each([
    [1.05, 0.908803, 1.100349],
    [1.2, 0.699532, 1.429527],
    [1.5, 0.451718, 2.21377],
    [2, 0.257035, 3.890523],
  ])("[E4] lognormal of GSD %d", (gsd, low, high) => {
    const spread: Spread = { shape: "lognormal", value: 1, gsd, limits: WIDE };
    expect(interval95(spread)[0]).toBeCloseTo(low, 6);
    expect(interval95(spread)[1]).toBeCloseTo(high, 6);
    expect(medianOf(spread)).toBeCloseTo(1, 12);
  });

  // Worked with 40 digits (mpmath 1.3: u mapped into [Φ(a), Φ(b)], then erfinv).
  it.each([
    [CUT_NORMAL, 0.01, 0.231443192792033],
    [CUT_NORMAL, 0.5, 0.9009353448786367],
    [CUT_NORMAL, 0.99, 1.38746780957078],
    [CUT_LOGNORMAL, 0.01, 1.038935780172931],
    [CUT_LOGNORMAL, 0.5, 2.032552837160328],
    [CUT_LOGNORMAL, 0.99, 4.548521274880168],
  ] as const)("%o cut at its limits, at %d", (spread, u, x) => {
    expect(quantileOf(spread)(u)).toBeCloseTo(x, 12);
  });

  it("agrees with another library on triangular and beta spreads", () => {
    const triangular = quantileOf({ shape: "triangular", low: -1, value: 0.5, high: 4 });
    const pert = quantileOf({ shape: "pert", low: 2, value: 3, high: 6 });
    for (let u = 0.01; u < 1; u += 0.01) {
      expect(triangular(u)).toBeCloseTo(jstat.jStat.triangular.inv(u, -1, 4, 0.5), 12);
      // jstat's incomplete beta function stops at 3e-7.
      expect(pert(u)).toBeCloseTo(2 + 4 * jstat.jStat.beta.inv(u, 2, 4), 5);
    }
  });

  it("heaps nothing on a limit: the mass beyond is spread over the inside", () => {
    const values = draw(CUT_NORMAL, ranksOf(1, "cut", 20_000));
    expect(values.filter((value) => value <= 0.2 || value >= 1.4)).toHaveLength(0);
    expect(values.filter((value) => value > 1.39).length / 20_000).toBeLessThan(0.02);
  });

  it("stays within its ends and never falls, for whatever parameters", () => {
    const parameter = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    const rank = fc.double({ min: 0, max: 1, noNaN: true, minExcluded: true, maxExcluded: true });
    const shape = fc.constantFrom("triangular", "uniform", "pert", "normal");
    fc.assert(
      fc.property(
        shape,
        fc.tuple(parameter, parameter, parameter),
        rank,
        rank,
        (kind, three, p, q) => {
          const [low, value, high] = three.sort((a, b) => a - b);
          fc.pre(high - low > 1e-6);
          const spread: Spread =
            kind === "normal"
              ? { shape: kind, value, sd: (high - low) / 3, limits: [low, high] }
              : { shape: kind, low, value, high };
          const quantileAt = quantileOf(spread);
          const [a, b] = [quantileAt(Math.min(p, q)), quantileAt(Math.max(p, q))];
          const slack = 1e-9 * (high - low) + 1e-15 * Math.abs(low);
          return a >= low - slack && a <= b + slack && b <= high + slack;
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });

  it("takes a bounded spread of no width as held still", () => {
    expect(quantileOf({ shape: "pert", low: 2, value: 2, high: 2 })(0.3)).toBe(2);
  });

  it.each([
    [{ shape: "normal", value: 1, sd: 0, limits: [0, 2] }, "standard deviation = 0"],
    [{ shape: "normal", value: 3, sd: 1, limits: [0, 2] }, "value of a spread = 3"],
    [{ shape: "normal", value: 1, sd: 1, limits: [2, 0] }, "value of a spread = 1"],
    [{ shape: "lognormal", value: 1, gsd: 1, limits: [0, 2] }, "geometric standard deviation = 1"],
    [{ shape: "lognormal", value: 0, gsd: 2, limits: [0, 2] }, "median of a lognormal spread = 0"],
    [{ shape: "pert", low: 0, value: 3, high: 2 }, "most likely value of a pert spread = 3"],
    [{ shape: "uniform", low: 0, value: Number.NaN, high: 2 }, "uniform spread = NaN"],
    [{ shape: "fixed", value: Infinity }, "fixed value = Infinity"],
  ] as readonly [Spread, string][])("refuses %o", (spread, complaint) => {
    expect(() => quantileOf(spread)).toThrow(complaint);
    expect(() => meanOf(spread)).toThrow(complaint);
  });
});

describe("draw", () => {
  it("keeps the order of the uniform numbers", () => {
    const u = Float64Array.of(0.9, 0.1, 0.5);
    expect([...draw({ shape: "uniform", low: 0, value: 1, high: 10 }, ranksFrom(u))]).toEqual([
      9, 1, 5,
    ]);
  });

  // JCGM 101:2008, 9.2: the sum of four uniform quantities of standard deviation 1 has a 95 % interval
  // of ±3.88, in closed form ±2√3 (2 − 0.6^¼) = ±3.8794; of four normal ones ±3.92.
  it("[E1] gives the intervals of the guide's additive model", () => {
    const n = 200_000;
    const half = Math.sqrt(3);
    const sumOf = (spread: Spread): Float64Array => {
      const sum = new Float64Array(n);
      for (const name of ["a", "b", "c", "d"]) {
        draw(spread, ranksOf(1, name, n)).forEach((value, i) => (sum[i]! += value));
      }
      return sum;
    };
    const flat = sumOf({ shape: "uniform", low: -half, value: 0, high: half });
    const bell = sumOf({ shape: "normal", value: 0, sd: 1, limits: [-50, 50] });
    expect(Math.abs(quantile(flat, 0.975) - 3.8794)).toBeLessThan(0.025);
    expect(Math.abs(quantile(flat, 0.025) + 3.8794)).toBeLessThan(0.025);
    expect(Math.abs(quantile(bell, 0.975) - 3.92)).toBeLessThan(0.04);
  });
});

describe("meanOf", () => {
  // E. Limpert et al., BioScience 51 (2001): mean / median = exp(σ² / 2).
  it.each([
    [1.05, 1.001191],
    [1.2, 1.016759],
    [1.5, 1.085674],
    [2, 1.271537],
  ])("[E4] lognormal of GSD %d", (gsd, ratio) => {
    expect(meanOf({ shape: "lognormal", value: 1, gsd, limits: WIDE })).toBeCloseTo(ratio, 6);
  });

  // Worked with 40 digits (mpmath 1.3: integral of the quantile function over u).
  it("of cut spreads", () => {
    expect(meanOf(CUT_NORMAL)).toBeCloseTo(0.8781128646264853, 12);
    expect(meanOf(CUT_LOGNORMAL)).toBeCloseTo(2.186373998352421, 12);
  });

  it.each(EVERY_SHAPE)("is the mean of what is drawn: %o", (spread) => {
    const n = 50_000;
    const quantileAt = quantileOf(spread);
    const even = Float64Array.from({ length: n }, (_, i) => quantileAt((i + 0.5) / n));
    expect(Math.abs(mean(even) - meanOf(spread))).toBeLessThan(1e-5);
  });
});

describe("lognormalFromInterval", () => {
  // IPCC 2006 Guidelines, vol. 2, tables 1.4 and 2.3: carbon dioxide of natural gas 56 100 (54 300 to
  // 58 300) and a methane row 1 (0.3 to 3) in kg/TJ; GSD = (upper / lower)^(1 / 3.919928).
  it("[E11] finds the geometric standard deviation of published bounds", () => {
    expect(lognormalFromInterval(56_100, 54_300, 58_300, [0, 1e6])).toMatchObject({
      shape: "lognormal",
      value: 56_100,
      limits: [0, 1e6],
    });
    expect(lognormalFromInterval(56_100, 54_300, 58_300, [0, 1e6]).gsd).toBeCloseTo(1.018298, 6);
    expect(lognormalFromInterval(1, 0.3, 3, WIDE).gsd).toBeCloseTo(1.799313, 6);
  });

  it("gives the interval back when the value is its geometric middle", () => {
    const [low, high] = interval95(lognormalFromInterval(6, 4, 9, WIDE));
    expect(low).toBeCloseTo(4, 12);
    expect(high).toBeCloseTo(9, 12);
  });

  it("refuses ends out of order and a value outside them", () => {
    expect(() => lognormalFromInterval(1, 0, 2, WIDE)).toThrow("lower end of a 95 % interval = 0");
    expect(() => lognormalFromInterval(1, 2, 2, WIDE)).toThrow("lower end of a 95 % interval = 2");
    expect(() => lognormalFromInterval(3, 1, 2, WIDE)).toThrow("value with a 95 % interval = 3");
  });
});

describe("tailBeyond", () => {
  // Worked with 40 digits (mpmath 1.3: ncdf).
  it("of a lognormal spread", () => {
    expect(tailBeyond({ ...CUT_LOGNORMAL, limits: WIDE }, [1, 5])).toBeCloseTo(
      0.05559339079955036,
      13,
    );
  });

  it("of the other shapes, by hand", () => {
    expect(tailBeyond({ shape: "fixed", value: 1 }, [0, 1])).toBe(0);
    expect(tailBeyond({ shape: "fixed", value: 1.1 }, [0, 1])).toBe(1);
    expect(tailBeyond({ shape: "uniform", low: 0, value: 1, high: 4 }, [1, 3.5])).toBeCloseTo(
      0.375,
      14,
    );
    const triangle: Spread = { shape: "triangular", low: 0, value: 1, high: 3 };
    expect(tailBeyond(triangle, [0.5, 2])).toBeCloseTo(0.25 / 3 + 1 / 6, 14);
    // 1 − (1 − x)⁵ at 0.1, and nothing above 1.
    expect(tailBeyond({ shape: "pert", low: 0, value: 0, high: 1 }, [0.1, 2])).toBeCloseTo(
      0.40951,
      12,
    );
    expect(tailBeyond(triangle, [-1, 4])).toBe(0);
  });

  it("refuses limits in the wrong order", () => {
    expect(() => tailBeyond({ shape: "fixed", value: 1 }, [2, 1])).toThrow("lower limit = 2");
  });
});
