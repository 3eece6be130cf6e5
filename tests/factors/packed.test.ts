import { describe, expect, it } from "vitest";
import type { FactorSet } from "../../src/factors/factor.js";
import { packFactors, unpackFactors } from "../../src/factors/packed.js";

const SET: FactorSet = {
  factors: new Map([
    [
      "boiler.efficiency",
      {
        id: "boiler.efficiency",
        unit: "1",
        words: "steam heat per fuel heat",
        basis: undefined,
        plausible: [0.5, 1],
        values: [
          {
            from: "2015-01-01",
            entered: "2026-11-25",
            spread: { shape: "normal", value: 0.1 + 0.2, sd: 1 / 3, limits: [0, 1] },
            source: "own-estimate",
            page: undefined,
            year: 2026,
            region: "Türkiye",
            quality: { reliability: 5, completeness: 5, time: 4, place: 5, technology: 4 },
            note: undefined,
          },
        ],
        overruled: false,
      },
    ],
  ]),
  sources: new Map([
    [
      "own-estimate",
      {
        author: "Millrace",
        title: "Estimate",
        publisher: undefined,
        year: undefined,
        where: undefined,
        read: "own estimate",
        licence: undefined,
      },
    ],
  ]),
  digest: "abc",
};

describe("pack of factors", () => {
  it("gives back what went in, to the last digit", () => {
    expect(unpackFactors(packFactors(SET), "abc")).toEqual(SET);
  });

  it("is of no use for other files", () => {
    expect(unpackFactors(packFactors(SET), "abd")).toBeUndefined();
  });
});
