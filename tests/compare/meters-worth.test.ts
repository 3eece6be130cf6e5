import { describe, expect, it } from "vitest";
import type { Account } from "../../src/account/account.js";
import { drawsOf } from "../../src/account/draws.js";
import type { IndicatorId } from "../../src/account/indicators.js";
import { Nodes } from "../../src/account/nodes.js";
import type { Comparison } from "../../src/compare/compare.js";
import { metersWorth, type SavingDoubt, type Worth } from "../../src/compare/meters-worth.js";
import type { Leaf } from "../../src/numbers/quantity.js";

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

const add = (...numbers: readonly number[]): number => numbers.reduce((sum, x) => sum + x, 0);

// A saving, and a total really made, that hang on independent settings of standard deviation 1.
function doubt(
  factors: readonly string[],
  saving: (...numbers: readonly number[]) => number,
  total = saving,
): SavingDoubt | undefined {
  const nodes = new Nodes();
  for (const factor of factors) nodes.number(leaf(factor));
  const draws = drawsOf(nodes, COUNT, 1);
  const columns = factors.map((_, at) => draws.of(at));
  const over = (of: typeof saving): Float64Array =>
    Float64Array.from({ length: COUNT }, (_, i) => of(...columns.map((column) => column[i]!)));
  const account = {
    draws,
    program: { nodes },
    indicators: { actual: new Map([["water", over(total)]]) },
  } as unknown as Account;
  const comparisons = new Map<IndicatorId, Comparison>([
    ["water", { draws: over(saving) } as unknown as Comparison],
  ]);
  return metersWorth(account, comparisons, ["water"]).get("water");
}

const byId = (found: SavingDoubt | undefined): ReadonlyMap<string, Worth> =>
  new Map((found?.worths ?? []).map((one) => [one.measurement.id, one]));

describe("metersWorth", () => {
  // Of S = 3 a + b the first carries 9/10 of the variance; what stays without it has standard deviation 1.
  it("gives each measurement the variance of what it shows", () => {
    const list = byId(
      doubt(["wash-range.fresh-water", "printer.belt-water"], (a = 0, b = 0) => 3 * a + b),
    );
    expect([...list.keys()]).toEqual(["wash-water", "printer-water"]);
    const wash = list.get("wash-water");
    expect(Math.abs((wash?.share ?? NaN) - 0.9)).toBeLessThan(4 * (wash?.error ?? NaN));
    expect(list.get("printer-water")?.share).toBeCloseTo(0.1, 1);
    const { low = NaN, high = NaN } = wash?.after ?? {};
    // Width of a 95 % interval of the normal law, 2 × 1.96; four standard errors of 2500 draws are 0.3.
    expect(Math.abs(high - low - 3.92)).toBeLessThan(0.3);
  });

  // S = (2 + a)(2 + b) has variance 9: 4 hang on each alone and 1 on both together.
  it("holds the share between what it is alone and what it is when all else is known", () => {
    const found = doubt(
      ["steamer.flush", "printer.belt-water"],
      (a = 0, b = 0) => (2 + a) * (2 + b),
    );
    for (const { share, most } of found?.worths ?? []) {
      expect(share).toBeCloseTo(4 / 9, 1);
      expect(most).toBeCloseTo(5 / 9, 1);
    }
    expect(found?.together).toBeCloseTo(1 / 9, 1);
  });

  it("adds up the settings that one measurement shows together, and leaves fuels to sources", () => {
    const found = doubt(
      ["steamer.flush", "steamer.idle-steam", "fuel.natural-gas.co2"],
      (a = 0, b = 0, c = 0) => a + 2 * b + c,
    );
    expect([...byId(found).keys()]).toEqual(["steamer"]);
    expect(byId(found).get("steamer")?.share).toBeCloseTo(5 / 6, 1);
    expect(found?.sources).toBeCloseTo(1 / 6, 1);
  });

  it("tells settings that no measurement shows from factors that rest on sources", () => {
    const found = doubt(["pad.solids", "grid.PRT.intensity"], add);
    expect(found?.worths).toEqual([]);
    expect(found?.unlisted).toBeCloseTo(1 / 2, 1);
    expect(found?.sources).toBeCloseTo(1 / 2, 1);
  });

  it("has a best measurement of its own for what the mill really did", () => {
    const found = doubt(
      ["wash-range.fresh-water", "printer.belt-water"],
      (a = 0, b = 0) => 3 * a + b,
      (a = 0, b = 0) => a + 3 * b,
    );
    expect(found?.actual?.measurement.id).toBe("printer-water");
    expect(found?.actual?.share).toBeCloseTo(0.9, 1);
  });

  it("gives each factor its squared correlation", () => {
    const found = doubt(["steamer.flush", "pad.solids"], (a = 0, b = 0) => 3 * a + b);
    expect(found?.alone.get("steamer.flush")).toBeCloseTo(0.9, 1);
    expect(found?.alone.get("pad.solids")).toBeCloseTo(0.1, 1);
  });

  it("says nothing of a saving that is the same in every draw", () => {
    expect(doubt(["boiler.efficiency"], () => 0.5)).toBeUndefined();
  });
});
