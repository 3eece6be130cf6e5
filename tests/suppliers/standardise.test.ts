import { describe, expect, it } from "vitest";
import { standardised, standardisedDraws } from "../../src/suppliers/standardise.js";

const draws = (...values: number[]): Float64Array => Float64Array.from(values);

describe("direct standardisation", () => {
  // Malaysian Journal of Medical Sciences 7(1), 2000, table of direct standardisation: rates per 1,000 by age, and
  // a standard population; 1,186.18 expected in 51,000, so 23.258 per 1,000 where the crude rate is 17.44.
  it("[P16] the published table", () => {
    const rates = [1.94, 5.45, 41.11, 83.33];
    const population = [11_000, 17_000, 20_000, 3_000];
    expect(standardised(population, rates)).toBeCloseTo(23.258, 3);
    expect((standardised(population, rates) * 51_000) / 1000).toBeCloseTo(1186.18, 2);
    // The same rates at another population, US 2000 (thousands).
    expect(standardised([353_347, 370_304, 216_000, 60_349], rates)).toBeCloseTo(16.612, 3);
  });

  // Worked by hand: 80 % at 6 and 20 % at 70 is 18.8, 20 % at 5 and 80 % at 60 is 49; at 50/50 38 and 32.5.
  it("turns an order round that was mix alone", () => {
    expect(standardised([80, 20], [6, 70])).toBeCloseTo(18.8, 12);
    expect(standardised([20, 80], [5, 60])).toBeCloseTo(49, 12);
    expect(standardised([50, 50], [6, 70])).toBeCloseTo(38, 12);
    expect(standardised([50, 50], [5, 60])).toBeCloseTo(32.5, 12);
    expect(standardised([80, 20], [5, 60])).toBeCloseTo(16, 12);
  });

  const all = [
    [draws(1, 2), draws(10, 10)],
    [draws(3, 1), undefined],
    [undefined, draws(20, 5)],
  ];

  it("goes draw by draw", () => {
    expect(standardisedDraws([0.25, 0.75], all[0]!, all, "left out")).toEqual(draws(7.75, 8));
  });

  it("never takes a missing stratum for nothing or for the mean", () => {
    expect(standardisedDraws([0.25, 0.75], all[1]!, all, "left out")).toEqual(draws(3, 1));
    expect(standardisedDraws([0.25, 0.75], all[1]!, all, "most")).toEqual(draws(15.75, 7.75));
    expect(standardisedDraws([0.25, 0.75], all[1]!, all, "least")).toEqual(draws(8.25, 4));
    expect(standardisedDraws([0.25, 0.75], all[2]!, all, "most")).toEqual(draws(15.75, 4.25));
    expect(standardisedDraws([1], [undefined], [[undefined]], "most")).toBeUndefined();
    expect(standardisedDraws([0.25, 0.75], all[0]!, all, "left out", (k) => k === 1)).toEqual(
      draws(10, 10),
    );
  });
});
