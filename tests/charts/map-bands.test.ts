import { describe, expect, it } from "vitest";
import { bandsOf, crossesZero } from "../../src/charts/map-bands.js";
import { luminance } from "./colour.js";

const labels = (...known: readonly number[]) => bandsOf(known).map(({ label }) => label);

describe("bandsOf", () => {
  it("cuts at round shares, at zero where both signs occur", () => {
    expect(labels(-25, 57)).toEqual([
      "below \u221220 %",
      "\u221220 to 0 %",
      "0 to 20 %",
      "20 to 40 %",
      "40 % and more",
    ]);
  });

  it("makes one band where shares hardly differ", () => {
    expect(labels(31, 31.2)).toEqual(["about 31 %"]);
    expect(labels()).toEqual([]);
  });

  it("darkens from band to band, so that it can be read in grey", () => {
    const bands = bandsOf([-30, 80]);
    expect(bands.length).toBeGreaterThan(3);
    bands.forEach(({ tone }, i) => {
      const next = bands[i + 1];
      if (next !== undefined)
        expect(luminance(next.tone.colour)).toBeLessThan(luminance(tone.colour));
    });
  });
});

describe("crossesZero", () => {
  it("asks for shares on both sides", () => {
    expect(crossesZero([-1, 2])).toBe(true);
    expect(crossesZero([0, 2])).toBe(false);
    expect(crossesZero([])).toBe(false);
  });
});
