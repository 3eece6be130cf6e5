import { describe, expect, it } from "vitest";
import { compareArms } from "../../src/compare/compare.js";
import { yieldsOf } from "../../src/compare/yields.js";
import { readPlant } from "../../src/plant/read-plant.js";
import { sentence } from "../../src/problems/sentence.js";
import { inputOf, lotOf, smallMill } from "../report/compose/small-mill.js";
import { inputWithYields, millWithYields, share } from "../report/compose/with-yields.js";
import { SHIPPED } from "../tools/shipped-factors.js";

const { groups } = inputOf();

/** What a plant file with these yields has wrong. */
function faults(yields: unknown): readonly string[] {
  const { text } = smallMill();
  const sites = { main: { ...text.sites["main"], yield: yields } };
  const file = { name: "plant.yaml", text: JSON.stringify({ ...text, sites }) };
  return readPlant(file, SHIPPED).problems.map(sentence);
}

describe("yields of the plant file", () => {
  it("are read with ends and source", () => {
    expect(faults({ pigment: share(0.96, 0.93, 0.98), dye: share(1, 0.9, 1) })).toEqual([]);
  });

  it.each([
    ["a bare number", { pigment: 0.95 }],
    ["no source", { pigment: { value: 0.95, low: 0.9, high: 0.97 } }],
    ["a share above 1", { dye: share(0.95, 0.9, 1.2) }],
    ["a share of zero", { dye: share(0.5, 0, 0.9) }],
    ["ends that do not hold the value", { dye: share(0.95, 0.96, 0.98) }],
    ["a workflow that is none", { ink: share(0.95) }],
  ])("are refused with %s", (_, yields) => {
    expect(faults(yields)[0]).toContain("sites.main.yield");
  });
});

describe("yieldsOf", () => {
  it("is absent without a yield, and where no lot takes the other route", () => {
    expect(yieldsOf(smallMill(), groups, 0, 10, 1)).toBeUndefined();
    const pigment = groups.filter(({ key }) => key.own === "pigment");
    const plant = millWithYields({ pigment: share(0.9) });
    expect(yieldsOf(plant, pigment, 0, 10, 1)).toBeUndefined();
    expect(yieldsOf(plant, groups, 0, 10, 1)).toBeDefined();
  });

  it("keeps what was logged on a lot's own route and takes the yield on the other", () => {
    const found = yieldsOf(millWithYields({ pigment: share(0.9) }), groups, 0, 10, 1);
    // By hand from the six lots, 1.6 m wide. Pigment lots: 400, 250 and 610 m with 4 m rejected each.
    // Dye lots: 700 m with 12 rejected, 400 and 90 m with 4 each.
    const pigment = 1.6 * (396 + 246 + 606) + 0.9 * 1.6 * (700 + 400 + 90);
    const dye = 1.6 * (396 + 246 + 606 + 688 + 396 + 86);
    expect(found?.accepted.pigment[3]).toBeCloseTo(pigment, 6);
    expect(found?.accepted.dye[3]).toBeCloseTo(dye, 6);
    expect(found?.central.pigment).toBeCloseTo(pigment, 6);
    expect(found?.printed).toBeCloseTo(1.6 * (400 + 250 + 610 + 700 + 400 + 90), 6);
  });

  it("gives groups that add up to the arm", () => {
    const found = yieldsOf(
      millWithYields({ pigment: share(0.9), dye: share(0.8, 0.7, 0.85) }),
      groups,
      0,
      400,
      1,
    );
    const total = (arm: "pigment" | "dye"): number =>
      groups.reduce((sum, group) => sum + (found?.areaOf(group, arm) ?? NaN), 0);
    expect(total("pigment")).toBeCloseTo(found?.central.pigment ?? NaN, 6);
    // A harmonic mean of a sum lies a little above the sum of harmonic means.
    expect(total("dye") / (found?.central.dye ?? NaN)).toBeCloseTo(1, 2);
  });

  it("draws inside the ends, and moves no draw when the other yield is given too", () => {
    const one = yieldsOf(millWithYields({ dye: share(0.9, 0.8, 0.95) }), groups, 0, 500, 1);
    const two = yieldsOf(
      millWithYields({ dye: share(0.9, 0.8, 0.95), pigment: share(0.97, 0.9, 0.99) }),
      groups,
      0,
      500,
      1,
    );
    expect(two?.accepted.dye).toEqual(one?.accepted.dye);
    const own = 1.6 * (688 + 396 + 86);
    const shares = [...(one?.accepted.dye ?? [])].map((area) => (area - own) / (1.6 * 1260));
    expect(Math.min(...shares)).toBeGreaterThanOrEqual(0.8);
    expect(Math.max(...shares)).toBeLessThanOrEqual(0.95);
    expect(new Set(shares).size).toBeGreaterThan(400);
  });

  it("takes no area from overhead, and none from reprints that no reject covers", () => {
    const plant = millWithYields({ pigment: share(0.5) });
    const reprint = { kind: "reprint", reprintOf: "R-0", route: "reactive" } as const;
    const areaWith = (...more: Parameters<typeof lotOf>[0][]): number => {
      const { groups: all, uncovered } = inputOf(smallMill(), [
        lotOf({ lot: "R-0", route: "reactive", rejected: 30 }),
        ...more.map(lotOf),
      ]);
      const area = uncovered.reduce((sum, one) => sum + one.area, 0);
      return yieldsOf(plant, all, area, 5, 1)?.accepted.pigment[0] ?? NaN;
    };
    const alone = areaWith();
    expect(alone).toBeCloseTo(0.5 * 1.6 * 400, 9);
    expect(areaWith({ lot: "O-1", kind: "overhead", route: "reactive" })).toBeCloseTo(alone, 9);
    // 30 m replace the 30 m rejected; of 50 m, 20 m replace nothing.
    const covered = { ...reprint, lot: "R-1", length: 30, rejected: 0 };
    expect(areaWith(covered)).toBeCloseTo(alone + 0.5 * 1.6 * 30, 9);
    expect(areaWith({ ...covered, length: 50 })).toBeCloseTo(alone + 0.5 * 1.6 * 30, 9);
  });
});

describe("a comparison with yields", () => {
  it("is S = 1 − (P/A_P)/(D/A_D) in every draw", () => {
    const { account, comparisons, yields } = inputWithYields({ pigment: share(0.9, 0.8, 0.97) });
    const of = (arm: "pigment" | "dye"): Float64Array =>
      account.indicators[arm].get("water") ?? new Float64Array(0);
    const { draws } = comparisons.get("water") ?? {};
    expect(draws).toHaveLength(200);
    draws?.forEach((saving, i) => {
      const pigment = (of("pigment")[i] ?? NaN) / (yields?.accepted.pigment[i] ?? NaN);
      const dye = (of("dye")[i] ?? NaN) / (yields?.accepted.dye[i] ?? NaN);
      expect(saving).toBeCloseTo(1 - pigment / dye, 12);
    });
  });

  it("saves less the less pigment yields, and leaves the break-even where it was", () => {
    const plain = inputOf().comparisons.get("energy");
    const at = (value: number) =>
      inputWithYields({ pigment: share(value) }).comparisons.get("energy");
    const savings = [0.5, 0.7, 0.9, 1].map((value) => at(value)?.saving?.median ?? NaN);
    expect([...savings].sort((a, b) => a - b)).toEqual(savings);
    expect(new Set(savings).size).toBe(4);
    expect(at(0.6)?.breakEvenYield).toEqual(plain?.breakEvenYield);
  });

  it("saves nothing at the break-even yield", () => {
    const { account } = inputOf();
    const { breakEvenYield, saving } = compareArms(account, "water", 1000);
    const count = account.draws.count;
    const units = {
      pigment: new Float64Array(count).fill(1000 * (breakEvenYield?.median ?? NaN)),
      dye: new Float64Array(count).fill(1000),
    };
    expect(saving?.median).toBeGreaterThan(0.1);
    expect(compareArms(account, "water", units).saving?.median).toBeCloseTo(0, 9);
  });

  it("gives the same as a number when both arms have it", () => {
    const { account } = inputOf();
    const one = compareArms(account, "cod", 3000);
    const units = new Float64Array(account.draws.count).fill(3000);
    const two = compareArms(account, "cod", { pigment: units, dye: units });
    expect(two.pigment.median).toBeCloseTo(one.pigment.median, 9);
    expect(two.difference.low).toBeCloseTo(one.difference.low, 9);
    expect(two.saving?.high).toBeCloseTo(one.saving?.high ?? NaN, 9);
    expect(two.less).toBe(one.less);
  });
});
