import { IAPWS97_EoS } from "@neutrium/thermo.eos.iapws97";
import { describe, expect, it } from "vitest";
import { liquidWater, type WaterState } from "../../src/physics/if97-region1.js";
import { steam } from "../../src/physics/if97-region2.js";
import { boilingPressure, boilingTemperature } from "../../src/physics/if97-region4.js";

type Row = readonly [p: number, T: number, ...properties: number[]];

const TOLERANCE = 5e-9; // half a unit of the ninth printed digit, at worst

function listed(state: WaterState): number[] {
  return [state.volume, state.enthalpy, state.internalEnergy, state.entropy, state.heatCapacity];
}

function expectPrinted(values: readonly number[], printed: readonly number[]): void {
  expect(values).toHaveLength(printed.length);
  values.forEach((value, i) => {
    expect(Math.abs(value / printed[i]! - 1)).toBeLessThan(TOLERANCE);
  });
}

describe("liquidWater", () => {
  // IAPWS R7-97(2012), table 5: p [MPa], T [K], then v, h, u, s, c_p.
  it.each<Row>([
    [3, 300, 0.100215168e-2, 115.331273, 112.324818, 0.392294792, 4.17301218],
    [80, 300, 0.971180894e-3, 184.142828, 106.448356, 0.368563852, 4.01008987],
    [3, 500, 0.1202418e-2, 975.542239, 971.934985, 2.58041912, 4.65580682],
  ])("[B1] at %d MPa and %d K is as printed", (p, T, ...printed) => {
    expectPrinted(listed(liquidWater(p, T)), printed);
  });
});

describe("steam", () => {
  // IAPWS R7-97(2012), table 15: p [MPa], T [K], then v, h, u, s, c_p.
  it.each<Row>([
    [0.0035, 300, 39.4913866, 2549.91145, 2411.6916, 8.52238967, 1.91300162],
    [0.0035, 700, 92.3015898, 3335.68375, 3012.62819, 10.1749996, 2.08141274],
    [30, 700, 0.542946619e-2, 2631.49474, 2468.61076, 5.17540298, 10.3505092],
  ])("[B2] at %d MPa and %d K is as printed", (p, T, ...printed) => {
    expectPrinted(listed(steam(p, T)), printed);
  });
});

describe("boiling line", () => {
  // IAPWS R7-97(2012), table 35.
  it.each([
    [300, 0.353658941e-2],
    [500, 2.63889776],
    [600, 12.3443146],
  ])("[B3] pressure at %d K is as printed", (T, p) => {
    expect(Math.abs(boilingPressure(T) / p - 1)).toBeLessThan(TOLERANCE);
  });

  // IAPWS R7-97(2012), table 36.
  it.each([
    [0.1, 372.755919],
    [1, 453.035632],
    [10, 584.149488],
  ])("[B3] temperature at %d MPa is as printed", (p, T) => {
    expect(Math.abs(boilingTemperature(p) / T - 1)).toBeLessThan(TOLERANCE);
  });
});

// Another implementation, state by state, with no tolerance for a slip in any coefficient: it would have
// to be the same slip in both. Its own boiling line has one digit too many in n₉ and is not asked.
describe("against another implementation", () => {
  const oracle = new IAPWS97_EoS();

  function expectSame(state: WaterState, p: number, T: number): void {
    const other = oracle.solve({ p: p * 1e6, t: T });
    const others = [other.v, other.h, other.u, other.s, other.cp].map(Number);
    listed(state).forEach((value, i) => {
      expect(Math.abs(value / others[i]! - 1)).toBeLessThan(1e-10);
    });
  }

  it("[B1] liquid water agrees over the region", () => {
    for (let T = 280; T <= 620; T += 17) {
      for (const p of [1, 3, 30, 95]) {
        if (p > boilingPressure(T) * 1.01) expectSame(liquidWater(p, T), p, T);
      }
    }
  });

  it("[B2] steam agrees over the region", () => {
    for (let T = 320; T <= 1060; T += 23) {
      for (const p of [0.001, 0.1, 1, 10, 16]) {
        if (T > 623 || p < boilingPressure(T) * 0.99) expectSame(steam(p, T), p, T);
      }
    }
  });
});
