import { describe, expect, it } from "vitest";
import { stepsOver, turnedOf } from "../../src/compare/turned.js";
import { derive } from "../../src/numbers/quantity.js";
import { factorsOf, programOf, setting } from "./made-program.js";

const fixed = (value: number) => ({ shape: "fixed", value }) as const;

describe("turnedOf", () => {
  const leaves = [
    setting("a @ 1", fixed(1), { factor: "a", common: "a" }),
    setting("a @ 2", fixed(1), { factor: "a", common: "a" }),
    setting("a @ 3", fixed(2), { factor: "a", common: "a" }),
    setting("price", { shape: "normal", value: 4, sd: 1, limits: [0, 1e9] }),
    setting("share", { shape: "normal", value: 0.4, sd: 0.1, limits: [0, 1] }),
    setting("zero", fixed(0)),
    setting("one", fixed(1), { provenance: "constant" }),
  ];
  const sum = derive("sum", "kWh/m2", "all", leaves, (...all) => all.reduce((s, x) => s + x, 0));
  const turned = turnedOf(programOf(sum, setting("b", fixed(9))), factorsOf({ a: [0, 50] }));
  const of = (factor: string) => turned.filter((one) => one.factor === factor);

  it("joins owners that share a default and its value, and no others", () => {
    expect(of("a").map(({ at, today }) => [at.length, today])).toEqual([
      [2, 1],
      [1, 2],
    ]);
  });

  it("takes the plausible range of the factor, then limits, then ten times today's", () => {
    expect(of("a")[0]?.range).toEqual([0, 50]);
    expect(of("share")[0]?.range).toEqual([0, 1]);
    expect(of("price")[0]?.range?.[0]).toBe(0);
    expect(of("price")[0]?.range?.[1]).toBeCloseTo(40, 2);
    expect(of("zero")[0]?.range).toBeUndefined();
  });

  it("leaves constants out", () => {
    expect(of("one")).toEqual([]);
  });
});

describe("stepsOver", () => {
  it("goes from end to end by rising values through today's", () => {
    for (const [low, high, today] of [
      [1, 400, 15],
      [0, 1, 1],
      [0, 1, 0],
      [-20, 60, -5],
    ] as const) {
      const steps = stepsOver([low, high], today, 8);
      expect(steps[0]).toBe(low);
      expect(steps.at(-1)).toBe(high);
      expect(steps).toContain(today);
      expect(steps.length).toBeGreaterThanOrEqual(9);
      steps.slice(1).forEach((step, i) => {
        expect(step).toBeGreaterThan(steps[i] ?? NaN);
      });
    }
  });

  it("grows by equal factors above today's value", () => {
    const steps = stepsOver([1, 400], 25, 4);
    expect(steps.slice(4).map((step) => Math.round(step))).toEqual([25, 50, 100, 200, 400]);
  });
});
