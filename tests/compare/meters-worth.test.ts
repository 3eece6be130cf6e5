import { describe, expect, it } from "vitest";
import type { Account } from "../../src/account/account.js";
import { drawsOf } from "../../src/account/draws.js";
import type { IndicatorId } from "../../src/account/indicators.js";
import { Nodes } from "../../src/account/nodes.js";
import type { Comparison } from "../../src/compare/compare.js";
import { MEASUREMENTS, metersWorth, type Worth } from "../../src/compare/meters-worth.js";
import type { Leaf } from "../../src/numbers/quantity.js";
import { SHIPPED } from "../tools/shipped-factors.js";

const COUNT = 4000;

const leaf = (factor: string): Leaf => ({
  kind: "leaf",
  id: `${factor} @ machine main/one`,
  factor,
  unit: "1",
  words: factor,
  spread: { shape: "normal", value: 0, sd: 1, limits: [-100, 100] },
  provenance: "default",
  source: "own-estimate",
});

// A saving that hangs on three independent settings of standard deviation 1 by known weights.
function worth(weights: Readonly<Record<string, number>>): ReadonlyMap<string, Worth> {
  const nodes = new Nodes();
  for (const factor of Object.keys(weights)) nodes.number(leaf(factor));
  const draws = drawsOf(nodes, COUNT, 1);
  const saving = new Float64Array(COUNT);
  Object.values(weights).forEach((weight, at) => {
    draws.of(at).forEach((value, i) => (saving[i] = saving[i]! + weight * value));
  });
  const account = { draws, program: { nodes } } as unknown as Account;
  const comparisons = new Map<IndicatorId, Comparison>([
    ["water", { draws: saving } as unknown as Comparison],
  ]);
  const list = metersWorth(account, comparisons, ["water"]).get("water") ?? [];
  return new Map(list.map((one) => [one.measurement.id, one]));
}

describe("metersWorth", () => {
  // Of S = 3 a + b the first carries 9/10 of the variance; what stays without it has standard deviation 1.
  it("gives each measurement the variance of what it shows", () => {
    const list = worth({ "wash-range.fresh-water": 3, "printer.belt-water": 1 });
    expect([...list.keys()]).toEqual(["wash-water", "printer-water"]);
    expect(list.get("wash-water")?.share).toBeCloseTo(0.9, 1);
    expect(list.get("printer-water")?.share).toBeCloseTo(0.1, 1);
    const { low = NaN, high = NaN } = list.get("wash-water")?.after ?? {};
    // Width of a 95 % interval of the normal law, 2 × 1.96; four standard errors of 4000 draws are 0.2.
    expect(Math.abs(high - low - 3.92)).toBeLessThan(0.2);
  });

  it("adds up the settings that one measurement shows together", () => {
    const list = worth({ "steamer.flush": 1, "steamer.idle-steam": 2, "fuel.natural-gas.co2": 1 });
    // 5 of 6 parts of the variance; the fuel is a matter of sources, not of meters.
    expect([...list.keys()]).toEqual(["steamer"]);
    expect(list.get("steamer")?.share).toBeCloseTo(5 / 6, 1);
  });

  it("says nothing of what a saving does not hang on", () => {
    expect(worth({ "fuel.natural-gas.co2": 1, "boiler.efficiency": 0 }).size).toBe(0);
  });

  it("knows every start of a factor it names", () => {
    const known = [...SHIPPED.factors.keys()];
    for (const { id, shows } of MEASUREMENTS)
      for (const start of shows)
        expect(
          known.some((factor) => factor.startsWith(start)),
          `${id}: ${start}`,
        ).toBe(true);
  });
});
