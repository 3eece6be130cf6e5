import { describe, expect, it } from "vitest";
import { bestTier, tierOf, TIERS } from "../../src/meters/precedence.js";

describe("tierOf", () => {
  it("goes by what a meter covers: one lot, one machine, several, the site", () => {
    expect(tierOf({ machines: ["range"], lots: 40 })).toBe("T1");
    expect(tierOf({ machines: ["range"] })).toBe("T2");
    expect(tierOf({ machines: ["range", "steamer"] })).toBe("T3");
    // Readings of lots that several machines share are shared among them.
    expect(tierOf({ machines: ["range", "steamer"], lots: 40 })).toBe("T3");
    expect(tierOf({})).toBe("T4");
  });
});

describe("bestTier", () => {
  it("takes the highest tier and never one between", () => {
    expect(bestTier(["T7", "T2", "T4"])).toBe("T2");
    expect(bestTier(["T5", "T1"])).toBe("T1");
    expect(bestTier([])).toBeUndefined();
  });

  it("knows seven, best first", () => {
    expect(TIERS.map(({ id }) => id)).toEqual(["T1", "T2", "T3", "T4", "T5", "T6", "T7"]);
  });
});
