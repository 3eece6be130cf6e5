import { describe, expect, it } from "vitest";
import {
  factorAnchor,
  full,
  indicatorWords,
  printedShare,
  short,
  unitOf,
} from "../../../src/report/dossier/printed.js";
import { SHIPPED, shippedFactor } from "../../tools/shipped-factors.js";

describe("prints of a dossier", () => {
  it("name every shipped factor's page differently, with plain letters", () => {
    const anchors = [...SHIPPED.factors.keys()].map(factorAnchor);
    expect(new Set(anchors).size).toBe(anchors.length);
    expect(anchors.filter((anchor) => !/^factor-[A-Za-z0-9-]+$/.test(anchor))).toEqual([]);
  });

  it("give shares with a decimal where they are small, and a dash where there is next to nothing", () => {
    expect(printedShare(0.412)).toMatch(/^41\D*%$/);
    expect(printedShare(0.0523)).toMatch(/^5\.2\D*%$/);
    expect(printedShare(0.0996)).toMatch(/^10\D*%$/);
    expect(printedShare(0.0004)).toBe("–");
  });

  it("keep a stated value whole and round one that was worked out", () => {
    expect(full(0.16555)).toBe("0.16555");
    expect(full(0.1 + 0.2)).toBe("0.3");
    expect(full(-5)).toBe("−5");
    expect(short(0.123456)).toBe("0.123");
  });

  it("leave out the unit of a bare ratio", () => {
    expect(unitOf(shippedFactor("substance.reactive-dye.fixed"))).toBe("");
    expect(unitOf(shippedFactor("wash-range.fresh-water"))).toBe("L/kg");
  });

  it("take the id for an indicator that the mill has not", () => {
    expect(indicatorWords("cost", new Map())).toBe("cost");
  });
});
