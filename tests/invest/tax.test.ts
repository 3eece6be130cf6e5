import { describe, expect, it } from "vitest";
import { taxOf } from "../../src/invest/tax.js";

describe("tax", () => {
  // By hand: 25 % of 40 − 100/4.
  it("writes machines off in equal parts", () => {
    const tax = taxOf({ rate: 0.25, years: 4, erosion: 0 }, [0, 40, 40, 40, 40, 40], [100]);
    expect(tax).toEqual([0, 3.75, 3.75, 3.75, 3.75, 10]);
  });

  it("writes off at the end what is left, so that a whole life is taxed on profit alone", () => {
    const tax = taxOf({ rate: 0.3, years: 8, erosion: 0 }, [0, 60, 60, 60], [100]);
    expect(tax.reduce((sum, each) => sum + each, 0)).toBeCloseTo(0.3 * (180 - 100), 12);
  });

  it("takes a loss off other tax", () => {
    expect(taxOf({ rate: 0.2, years: 1, erosion: 0 }, [0, 10], [100])[1]).toBe(-18);
  });

  it("lets inflation eat into the write-off of old money", () => {
    const [, , late = 0] = taxOf({ rate: 0.5, years: 2, erosion: 0.1 }, [0, 0, 0], [121]);
    expect(late).toBeCloseTo(-0.5 * (60.5 / 1.21), 12);
  });
});
