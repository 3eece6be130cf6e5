import { describe, expect, it } from "vitest";
import { leafRange } from "../../src/account/draws.js";
import type { Leaf } from "../../src/numbers/quantity.js";
import type { Spread } from "../../src/numbers/spread.js";
import { isBare, widened } from "../../src/suppliers/bare-numbers.js";
import { SHIPPED } from "../tools/shipped-factors.js";

const spread: Spread = { shape: "normal", value: 20, sd: 0.5, limits: [0, 1000] };
const leaf: Leaf = {
  kind: "leaf",
  id: "wash-range.fresh-water @ machine wash",
  factor: "wash-range.fresh-water",
  unit: "L/kg",
  words: "fresh water",
  spread,
  provenance: "plant",
  source: "plant.yaml, sites.main",
};

describe("bare numbers", () => {
  it("are those with neither interval nor source", () => {
    expect(isBare(leaf)).toBe(true);
    expect(isBare({ ...leaf, source: "flow meter" })).toBe(false);
    expect(isBare({ ...leaf, provenance: "default" })).toBe(false);
    const both: Spread = { shape: "triangular", low: 18, value: 20, high: 22 };
    expect(isBare({ ...leaf, spread: both })).toBe(false);
    expect(isBare({ ...leaf, spread: { shape: "fixed", value: 20 } })).toBe(true);
  });

  it("are drawn as widely as the default they stand in place of", () => {
    const { low, high } = leafRange(widened(leaf, SHIPPED));
    const own = SHIPPED.factors.get("wash-range.fresh-water")!.values[0]!.spread;
    const usual = leafRange({ ...leaf, spread: own });
    // The same ratio of ends, but for the plausible limits.
    expect(high / low).toBeGreaterThan(0.8 * (usual.high / usual.low));
    expect(high / low).toBeGreaterThan(1.5);
  });

  it("never become narrower, and others stay as they are", () => {
    const wide: Leaf = { ...leaf, spread: { shape: "uniform", low: 1, value: 20, high: 900 } };
    expect(widened(wide, SHIPPED)).toBe(wide);
    const sourced: Leaf = { ...leaf, source: "flow meter" };
    expect(widened(sourced, SHIPPED)).toBe(sourced);
  });

  it("take a named ratio where no default is known", () => {
    const { low, high } = leafRange(widened({ ...leaf, factor: "not.known" }, SHIPPED));
    expect(high / low).toBeCloseTo(4, 6);
  });
});
