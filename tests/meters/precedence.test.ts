import { describe, expect, it } from "vitest";
import { tierTold, TIERS } from "../../src/meters/precedence.js";

const LOTS = { machines: ["range"], lots: 40 };
const OWN = { machines: ["range"] };
const SHARED = { machines: ["range", "steamer"] };
const SITE = {};

describe("tierTold", () => {
  it("goes by what a meter covers: one lot, one machine, several, the site", () => {
    expect(tierTold([LOTS])).toBe("T1");
    expect(tierTold([OWN])).toBe("T2");
    expect(tierTold([SHARED])).toBe("T3");
    // Readings of lots that several machines share are shared among them.
    expect(tierTold([{ ...SHARED, lots: 40 }])).toBe("T3");
    expect(tierTold([SITE])).toBe("T4");
    expect(tierTold([])).toBeUndefined();
  });

  it("takes the highest tier and never one between", () => {
    expect(tierTold([SITE, OWN, SHARED])).toBe("T2");
    expect(tierTold([SITE, SHARED])).toBe("T3");
    expect(tierTold([SITE, SHARED, LOTS])).toBe("T1");
  });

  it("sets the counter of a machine before readings of some of its lots", () => {
    expect(tierTold([LOTS, OWN])).toBe("T2");
  });

  it("knows seven, best first", () => {
    expect(TIERS.map(({ id }) => id)).toEqual(["T1", "T2", "T3", "T4", "T5", "T6", "T7"]);
  });
});
