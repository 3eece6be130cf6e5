import { describe, expect, it } from "vitest";
import {
  constant,
  derive,
  evaluate,
  leavesOf,
  ONE,
  type Leaf,
  type Quantity,
} from "../../src/numbers/quantity.js";

const humidity: Leaf = {
  kind: "leaf",
  id: "stenter.exhaust-humidity @ machine stenter-1",
  factor: "stenter.exhaust-humidity",
  unit: "kg/kg",
  words: "exhaust humidity",
  spread: { shape: "fixed", value: 0.1 },
  provenance: "plant",
  source: "plant.yaml",
};
const hall = constant("hall", 0.01, "kg/kg");

const rise = derive("rise", "kg/kg", "W₂ − W₁", [humidity, hall], (w2, w1) => w2 - w1);
const air = derive("air", "kg/kg", "1 / (W₂ − W₁)", [rise], (difference) => 1 / difference);

const valueOf = (leaf: Leaf): number =>
  leaf.spread.shape === "fixed" ? leaf.spread.value : Number.NaN;

describe("evaluate", () => {
  it("works a formula out over its leaves, arguments in order", () => {
    expect(evaluate(rise, valueOf)).toBeCloseTo(0.09, 15);
    expect(evaluate(air, valueOf)).toBeCloseTo(100 / 9, 12);
    expect(evaluate(humidity, valueOf)).toBe(0.1);
    expect(evaluate(ONE, valueOf)).toBe(1);
  });

  it("works a shared part out once, also over several calls that share a memo", () => {
    let calls = 0;
    const counted = derive("counted", "1", "counts", [humidity], (w) => {
      calls++;
      return w;
    });
    const twice = derive("twice", "1", "a + b", [counted, counted], (a, b) => a + b);
    const memo = new Map<Quantity, number>();
    expect(evaluate(twice, valueOf, memo)).toBe(0.2);
    expect(evaluate(twice, valueOf, memo)).toBe(0.2);
    expect(calls).toBe(1);
    expect(memo.get(counted)).toBe(0.1);
  });

  it("takes each set of leaf values by itself", () => {
    expect(evaluate(rise, () => 1)).toBe(0);
    expect(evaluate(rise, (leaf) => (leaf === humidity ? 0.2 : 0.05))).toBeCloseTo(0.15, 15);
  });
});

describe("leavesOf", () => {
  it("names each leaf once, in the order first met", () => {
    const both = derive("both", "1", "a + b", [air, humidity, hall], (a, b, c) => a + b + c);
    expect(leavesOf(both)).toEqual([humidity, hall]);
    expect(leavesOf(hall)).toEqual([hall]);
    expect(leavesOf(derive("none", "1", "0", [], () => 0))).toEqual([]);
  });
});

describe("constant", () => {
  it("is a leaf without doubt", () => {
    expect(constant("minutes", 60, "min/h")).toEqual({
      kind: "leaf",
      id: "minutes",
      factor: "minutes",
      unit: "min/h",
      words: "minutes",
      spread: { shape: "fixed", value: 60 },
      provenance: "constant",
      source: "definition",
    });
    expect(constant("a", 1, "1", "a word", "plant.yaml").source).toBe("plant.yaml");
  });
});
