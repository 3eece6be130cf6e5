import { describe, expect, it } from "vitest";
import { pertCdf, pertExponent, pertQuantile } from "../../src/numbers/pert.js";

// Worked with 40 digits (mpmath 1.3: bisection on betainc(1 + 4m, 5 − 4m, 0, x, regularized=True)).
const WORKED: readonly [mode: number, u: number, x: number][] = [
  [0.1, 1e-6, 1.262053600173544e-5],
  [0.1, 0.025, 0.01795474577924944],
  [0.1, 0.5, 0.2026648503614662],
  [0.1, 0.975, 0.6090572216666851],
  [0.1, 0.999999, 0.9580572865962568],
  [0.3, 1e-6, 0.0006425812390762542],
  [0.3, 0.025, 0.0680956639218361],
  [0.3, 0.5, 0.350999484949118],
  [0.3, 0.975, 0.7475513729654873],
  [0.3, 0.999999, 0.9835533430184972],
  [0.62, 1e-6, 0.01047127196650014],
  [0.62, 0.025, 0.2066958754920943],
  [0.62, 0.5, 0.5894302151313116],
  [0.62, 0.975, 0.9037205187233117],
  [0.62, 0.999999, 0.9983839955374999],
  [0.95, 1e-6, 0.05158511124984134],
  [0.95, 0.025, 0.4325698494383606],
  [0.95, 0.5, 0.8340972980898198],
  [0.95, 0.975, 0.9895769259203645],
  [0.95, 0.999999, 0.9999977857699168],
];

const TAILS = [1e-15, 1e-12, 1e-9, 1e-6, 1e-3];
const RANKS = [...TAILS, 0.1, 0.3, 0.4999999, 0.5, 0.5000001, 0.8, ...TAILS.map((u) => 1 - u)];

describe("pert", () => {
  it.each(WORKED)("mode %d: quantile of %d, and back", (mode, u, x) => {
    expect(Math.abs(pertQuantile(mode)(u) - x)).toBeLessThan(2e-10);
    expect(Math.abs(pertCdf(mode, x) / u - 1)).toBeLessThan(1e-13);
  });

  // At mode ½ both exponents are 3 and the incomplete beta function is a polynomial: DLMF 8.17.5.
  it("is the known polynomial at mode ½", () => {
    for (let x = 0; x <= 1; x += 1 / 64) {
      expect(pertCdf(0.5, x)).toBeCloseTo(x ** 3 * (10 - 15 * x + 6 * x * x), 14);
    }
  });

  // At mode 0 and 1 the exponents are 1 and 5 and the quantile is a fifth root.
  it("is a power at either end", () => {
    for (const u of RANKS) {
      expect(Math.abs(pertQuantile(1)(u) - u ** 0.2)).toBeLessThan(1e-10);
      expect(Math.abs(pertQuantile(0)(u) - -Math.expm1(0.2 * Math.log1p(-u)))).toBeLessThan(1e-10);
    }
  });

  it("comes back from x to u for every mode, far into both tails", () => {
    for (let mode = 0; mode <= 1; mode += 1 / 16) {
      const quantile = pertQuantile(mode);
      for (const u of RANKS) {
        const x = quantile(u);
        const width = 1e-7;
        const slope =
          (pertCdf(mode, Math.min(1, x + width)) - pertCdf(mode, Math.max(0, x - width))) /
          (Math.min(1, x + width) - Math.max(0, x - width));
        expect(Math.abs(pertCdf(mode, x) - u)).toBeLessThan(3e-10 * slope + 1e-14);
      }
    }
  });

  it("rises everywhere and mirrors with its mode", () => {
    const quantile = pertQuantile(0.2);
    const mirrored = pertQuantile(0.8);
    let last = 0;
    for (let i = 1; i < 4096; i++) {
      const x = quantile(i / 4096);
      expect(x).toBeGreaterThan(last);
      expect(Math.abs(x - (1 - mirrored(1 - i / 4096)))).toBeLessThan(1e-15);
      last = x;
    }
  });

  it("has the exponents that give the classical mean", () => {
    for (const mode of [0, 0.25, 1]) {
      expect(pertExponent(mode) / 6).toBeCloseTo((0 + 4 * mode + 1) / 6, 15);
    }
  });
});
