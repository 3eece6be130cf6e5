import { sampleCorrelation } from "simple-statistics";
import { describe, expect, it } from "vitest";
import { interval95 } from "../../src/numbers/distributions.js";
import type { Leaf } from "../../src/numbers/quantity.js";
import type { Spread } from "../../src/numbers/spread.js";
import { AS_DRAWN } from "./worlds-natures.js";
import {
  machineOf,
  type Nature,
  reshaped,
  scoresOfWorlds,
  truthOf,
  widened,
} from "./worlds-truth.js";

const WORLDS = 4000;
const scores = scoresOfWorlds(WORLDS);

function leaf(id: string, spread: Spread, common?: string): Leaf {
  return {
    kind: "leaf",
    id,
    factor: id.split(" @ ")[0] ?? id,
    ...(common === undefined ? {} : { common }),
    unit: "1",
    words: id,
    spread,
    provenance: "default",
    source: "invented",
  };
}

const NORMAL: Spread = { shape: "normal", value: 10, sd: 1, limits: [0, 100] };
const dump = [1, 2].map((pad) => leaf(`pad.dump @ machine main/pad-${pad}`, NORMAL, "pad.dump"));
const wash = leaf("pad.trough-wash @ machine main/pad-1", NORMAL, "pad.trough-wash");
const dwell = [1, 2].map((oven) => ({
  ...leaf(`oven.dwell @ role main/oven-${oven}/fix`, NORMAL, "oven.dwell"),
  bond: { stream: `dry fixation @ role main/oven-${oven}/fix`, weight: -Math.SQRT1_2 },
}));
const hot = {
  ...leaf("oven.fix-temperature @ role main/oven-1/fix", NORMAL, "oven.fix-temperature"),
  bond: { stream: "dry fixation @ role main/oven-1/fix", weight: Math.SQRT1_2 },
};
const power = leaf("pad.power @ machine main/pad-1", NORMAL);

function valuesOf(
  found: Leaf | undefined,
  nature: Nature,
  side: (stream: string) => number = () => 1,
): number[] {
  if (found === undefined) throw new Error("no such leaf");
  return Array.from({ length: WORLDS }, (_, world) => truthOf(nature, world, scores, side)(found));
}

function correlation(a: Leaf | undefined, b: Leaf | undefined, nature: Nature): number {
  return sampleCorrelation(valuesOf(a, nature), valuesOf(b, nature));
}

const alike: Nature = { ...AS_DRAWN, byMachine: "alike" };

describe("truthOf", () => {
  // Four standard errors of a correlation of ½ in 4000 worlds: 4 × 0.75 / √4000 = 0.047.
  it.each([
    ["a default on two machines is half common", dump[0], dump[1], AS_DRAWN, 0.5],
    ["two settings of a machine have nothing in common", dump[0], wash, AS_DRAWN, 0],
    [
      "settings that go by machine keep the half common to two machines",
      dump[0],
      dump[1],
      alike,
      0.5,
    ],
    ["two defaults of a machine that go together", dump[0], wash, alike, 0.5],
    ["a default and a number of the plant file that go together", dump[0], power, alike, 0.5],
    ["settings of two machines stay apart", dump[1], wash, alike, 0],
    ["what is drawn together goes together", hot, dwell[0], AS_DRAWN, -0.5],
    ["a bond of another oven has nothing to say", hot, dwell[1], AS_DRAWN, 0],
    // ½ of the default that both share, times ½ that the bonds leave of each.
    ["bonds dilute what two machines have in common", dwell[0], dwell[1], AS_DRAWN, 0.25],
    ["settings that go by machine go without bonds", hot, dwell[0], alike, 0.5],
  ])("%s", (_, a, b, nature, expected) => {
    expect(Math.abs(correlation(a, b, nature) - expected)).toBeLessThan(0.064);
  });

  it("turns a setting towards its wasteful side", () => {
    const side = (stream: string): number => (stream === wash.id ? -1 : 1);
    const nature: Nature = { ...AS_DRAWN, byMachine: "wasteful" };
    const turned = sampleCorrelation(valuesOf(dump[0], nature, side), valuesOf(wash, nature, side));
    expect(Math.abs(turned + 0.5)).toBeLessThan(0.064);
  });

  it.each([AS_DRAWN, alike])("keeps the spread of each leaf: $byMachine", (nature) => {
    for (const one of [dump[0], power, hot]) {
      const values = valuesOf(one, nature);
      const mean = values.reduce((sum, value) => sum + value, 0) / WORLDS;
      const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / WORLDS;
      // Four standard errors: 4 / √4000, and 4 √(2 / 4000) of the variance.
      expect(Math.abs(mean - 10)).toBeLessThan(0.064);
      expect(Math.abs(variance - 1)).toBeLessThan(0.09);
    }
  });

  it("leaves what is fixed as it is", () => {
    const fixed = leaf("share", { shape: "fixed", value: 0.4 });
    expect(truthOf(alike, 0, scores, () => 1)(fixed)).toBe(0.4);
  });
});

describe("machineOf", () => {
  it.each([
    ["pad.dump @ machine main/pad-1", "main/pad-1"],
    ["pad.pickup @ role main/pad-1/pretreat", "main/pad-1"],
    ["steamer.temperature @ role main/steamer/steam (shipped route)", "main/steamer"],
    ["boiler.efficiency @ site main", undefined],
    ["substance.binder.cod", undefined],
  ])("finds that %s belongs to %s", (id, machine) => {
    expect(machineOf(leaf(id, NORMAL))).toBe(machine);
  });
});

describe("widened", () => {
  it("multiplies standard deviations, and the way to both ends", () => {
    expect(widened(power, 1.5)).toEqual({ ...NORMAL, sd: 1.5 });
    const gsd = widened(
      leaf("pad.dump", { shape: "lognormal", value: 10, gsd: 4, limits: [0, 500] }),
      1.5,
    );
    expect(gsd).toHaveProperty("gsd", 8);
    const triangle: Spread = { shape: "triangular", low: 0.6, value: 0.7, high: 0.9 };
    const wide = widened(leaf("pad.pickup", triangle), 1.5);
    expect(wide).toHaveProperty("low", expect.closeTo(0.55, 12));
    expect(wide).toHaveProperty("high", expect.closeTo(1, 12));
  });

  it("ends where a value is not possible", () => {
    const share: Spread = { shape: "triangular", low: 0.1, value: 0.8, high: 0.95 };
    const wide = widened(leaf("pad.dump-to-drain", share), 1.5);
    expect(wide).toHaveProperty("low", 0);
    expect(wide).toHaveProperty("high", 1);
  });
});

describe("reshaped", () => {
  it.each<Spread>([
    NORMAL,
    { shape: "lognormal", value: 25, gsd: 2, limits: [1, 400] },
    { shape: "triangular", low: 0.6, value: 0.75, high: 0.9 },
    { shape: "pert", low: 2, value: 3, high: 8 },
    { shape: "uniform", low: 0, value: 1, high: 2 },
  ])("keeps the 95 %% interval and changes the shape of a $shape spread", (spread) => {
    const other = reshaped(leaf("invented", spread));
    expect(other.shape).not.toBe(spread.shape);
    const [low, high] = interval95(spread);
    const [otherLow, otherHigh] = interval95(other);
    expect(otherLow).toBeCloseTo(low, 2);
    expect(otherHigh).toBeCloseTo(high, 2);
  });
});
