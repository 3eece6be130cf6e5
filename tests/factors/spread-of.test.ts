import { describe, expect, it } from "vitest";
import { type StatedDoubt, spreadOf } from "../../src/factors/spread-of.js";

const QUALITY = { reliability: 3, completeness: 3, time: 2, place: 3, technology: 3 };

function doubt(
  value: number,
  spread: StatedDoubt["spread"],
  plausible: readonly [number, number] = [0, 1000],
  unit = "kg/h",
): StatedDoubt {
  return { value, unit, plausible, spread, quality: QUALITY };
}

describe("spreadOf", () => {
  it("keeps a fixed value, and bounds as they are", () => {
    expect(spreadOf(doubt(8, { shape: "fixed" }))).toEqual({
      spread: { shape: "fixed", value: 8 },
    });
    for (const shape of ["triangular", "uniform", "pert"] as const) {
      expect(spreadOf(doubt(8, { shape, low: 5, high: 9 }))).toEqual({
        spread: { shape, low: 5, value: 8, high: 9 },
      });
    }
  });

  // 1.959963985 and 1.644853627: quantiles of the standard normal distribution at 97.5 and 95 %,
  // Handbook of Mathematical Functions, table 26.5.
  it("turns an interval into a standard deviation", () => {
    const at95 = spreadOf(doubt(100, { shape: "normal", low: 90, high: 110 }));
    expect(at95).toMatchObject({ spread: { shape: "normal", value: 100, limits: [0, 1000] } });
    expect("spread" in at95 && "sd" in at95.spread && at95.spread.sd).toBeCloseTo(
      10 / 1.959963985,
      8,
    );
    const at90 = spreadOf(doubt(27, { shape: "normal", low: 16, high: 38, confidence: 0.9 }));
    expect("spread" in at90 && "sd" in at90.spread && at90.spread.sd).toBeCloseTo(
      11 / 1.644853627,
      8,
    );
  });

  // IPCC 2006 Guidelines, vol. 2, table 1.4: natural gas 54,300 to 58,300 kg/TJ (from memory), and the geometric
  // standard deviation that follows by (high / low)^(1 / 3.919928); a span of ten to one gives 1.799313.
  it("turns an interval into a geometric standard deviation", () => {
    const gas = { shape: "lognormal", low: 54300, high: 58300 } as const;
    const gasSpread = spreadOf(doubt(56100, gas, [50000, 62000]));
    expect("spread" in gasSpread && "gsd" in gasSpread.spread && gasSpread.spread.gsd).toBeCloseTo(
      1.018298,
      6,
    );
    const wide = spreadOf(doubt(1, { shape: "lognormal", low: 0.3, high: 3 }, [0.05, 20]));
    expect("spread" in wide && "gsd" in wide.spread && wide.spread.gsd).toBeCloseTo(1.799313, 6);
  });

  it("widens a lognormal whose interval is less sure", () => {
    const spread = { shape: "lognormal", low: 0.5, high: 2 } as const;
    const at95 = spreadOf(doubt(1, spread));
    const at90 = spreadOf(doubt(1, { ...spread, confidence: 0.9 }));
    // ln 4 / (2 × 1.644853627)
    expect("spread" in at90 && "gsd" in at90.spread && Math.log(at90.spread.gsd)).toBeCloseTo(
      Math.log(4) / 3.289707254,
      8,
    );
    expect("spread" in at95 && "gsd" in at95.spread && Math.log(at95.spread.gsd)).toBeCloseTo(
      Math.log(4) / 3.91992797,
      8,
    );
  });

  it("takes a share of the value for the distance of the ends", () => {
    expect(spreadOf(doubt(40, { shape: "uniform", share: 0.25 }))).toEqual({
      spread: { shape: "uniform", low: 30, value: 40, high: 50 },
    });
  });

  // GSD² 1.245941 for these scores: R. Frischknecht et al., Int. J. LCA 10 (2005) 3-9, worked by hand.
  it("makes a lognormal of scores alone", () => {
    const judged = spreadOf(doubt(10, undefined));
    expect(judged).toMatchObject({ spread: { shape: "lognormal", value: 10, limits: [0, 1000] } });
    expect("spread" in judged && "gsd" in judged.spread && judged.spread.gsd ** 2).toBeCloseTo(
      1.245941,
      6,
    );
  });

  // Odds times and over 1.245941: 0.8 has odds 4, so the ends have 4.983764 and 3.210425.
  it("makes a beta-PERT within 0 and 1 of the scores of a share", () => {
    const judged = spreadOf(doubt(0.8, undefined, [0, 1], "1"));
    if (!("spread" in judged) || judged.spread.shape !== "pert") throw new Error("no beta-PERT");
    expect(judged.spread.low).toBeCloseTo(3.210425 / 4.210425, 6);
    expect(judged.spread.high).toBeCloseTo(4.983764 / 5.983764, 6);
    expect(spreadOf(doubt(0.8, undefined, [0.79, 1], "kg/kg"))).toMatchObject({
      spread: { low: 0.79 },
    });
    // A ratio that may exceed 1 is no share.
    expect(spreadOf(doubt(0.8, undefined, [0, 5], "1"))).toMatchObject({
      spread: { shape: "lognormal" },
    });
  });

  it.each<[string, StatedDoubt, string, readonly string[]]>([
    ["a value below what is plausible", doubt(-1, undefined), "factor-implausible", ["value"]],
    ["a value above", doubt(1001, { shape: "fixed" }), "factor-implausible", ["value"]],
    ["no number", doubt(NaN, { shape: "fixed" }), "factor-implausible", ["value"]],
    [
      "an end below what is plausible",
      doubt(5, { shape: "triangular", low: -1, high: 9 }),
      "factor-implausible",
      ["spread", "low"],
    ],
    [
      "an end above",
      doubt(5, { shape: "pert", low: 1, high: 1001 }),
      "factor-implausible",
      ["spread", "high"],
    ],
    [
      "a value below its interval",
      doubt(5, { shape: "normal", low: 6, high: 9 }),
      "factor-spread-order",
      ["spread"],
    ],
    [
      "a value above it",
      doubt(10, { shape: "lognormal", low: 6, high: 9 }),
      "factor-spread-order",
      ["spread"],
    ],
    [
      "ends the wrong way round",
      doubt(7, { shape: "triangular", low: 9, high: 6 }),
      "factor-spread-order",
      ["spread"],
    ],
    ["one end", doubt(7, { shape: "normal", low: 6 }), "factor-spread", ["spread"]],
    ["no end", doubt(7, { shape: "pert" }), "factor-spread", ["spread"]],
    [
      "ends with a fixed value",
      doubt(7, { shape: "fixed", low: 6 }),
      "factor-spread",
      ["spread", "low"],
    ],
    [
      "ends and a share",
      doubt(7, { shape: "normal", low: 6, high: 8, share: 0.1 }),
      "factor-spread",
      ["spread", "share"],
    ],
    [
      "bounds with a confidence",
      doubt(7, { shape: "uniform", low: 6, high: 8, confidence: 0.9 }),
      "factor-spread",
      ["spread", "confidence"],
    ],
    [
      "a lognormal from zero",
      doubt(7, { shape: "lognormal", low: 0, high: 8 }),
      "factor-spread",
      ["spread", "low"],
    ],
    [
      "an interval without width",
      doubt(7, { shape: "normal", low: 7, high: 7 }),
      "factor-spread",
      ["spread", "high"],
    ],
    ["zero with scores alone", doubt(0, undefined), "factor-spread", ["value"]],
    [
      "a temperature with scores alone",
      doubt(26, undefined, [5, 45], "°C"),
      "factor-spread",
      ["value"],
    ],
    [
      "a lognormal that reaches far beyond what is plausible",
      doubt(10, { shape: "lognormal", low: 2, high: 50 }, [1, 60]),
      "factor-tail",
      ["spread"],
    ],
    ["scores that do", doubt(10, undefined, [9, 12]), "factor-tail", ["spread"]],
  ])("refuses %s", (_, stated, code, at) => {
    expect(spreadOf(stated)).toMatchObject({ at, fault: { code } });
  });

  // Upper tail of the standard normal distribution: 0.001 at 3.0902, Handbook of Mathematical Functions,
  // table 26.5. With GSD e the plausible end e^3.0902 lets exactly that pass.
  it("lets a tail of 0.1 % pass, and no more", () => {
    const width = Math.exp(1.959963985);
    const spread = { shape: "lognormal", low: 1 / width, high: width } as const;
    expect(spreadOf(doubt(1, spread, [0, Math.exp(3.0903)]))).toHaveProperty("spread");
    expect(spreadOf(doubt(1, spread, [0, Math.exp(3.0901)]))).toHaveProperty("fault");
  });

  it("says what was expected in the factor's unit", () => {
    const judged = spreadOf(doubt(5000, undefined));
    expect("fault" in judged && judged.fault.expected).toBe("0 to 1000 kg/h");
  });
});
