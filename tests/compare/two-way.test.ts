import { describe, expect, it } from "vitest";
import { type MapAsked, twoWayMaps } from "../../src/compare/two-way.js";
import { factorsOf, programOf, setting } from "./made-program.js";

const fixed = (value: number) => ({ shape: "fixed", value }) as const;
const program = programOf(setting("a", fixed(3)), setting("b", fixed(5)));
const factors = factorsOf({ a: [1, 9], b: [2, 10] });
const whole = (_: number, range: readonly [number, number]) => range;
const asked: MapAsked = {
  id: "energy",
  across: { factors: [/^none$/, /^a$/], range: whole },
  up: { factors: [/^b$/], range: whole },
};

describe("twoWayMaps", () => {
  const [map] = twoWayMaps(program, factors, [asked]);

  it("works the share saved out at even steps from end to end", () => {
    // S = 1 − a/b.
    expect(map?.rows).toHaveLength(21);
    map?.rows.forEach((row, j) => {
      row.forEach((saving, i) => {
        expect(saving).toBeCloseTo(1 - (1 + (8 * i) / 20) / (2 + (8 * j) / 20), 12);
      });
    });
  });

  it("works it out at today's values", () => {
    expect(map?.today).toBeCloseTo(0.4, 12);
    const [yielding] = twoWayMaps(program, factors, [asked], 0.9);
    expect(yielding?.today).toBeCloseTo(1 - 0.6 * 0.9, 12);
  });

  it("answers with nothing where the mill lacks a side, or today's value lies outside", () => {
    const lacking = { ...asked, up: { factors: [/^none$/], range: whole } };
    const outside = { ...asked, across: { factors: [/^a$/], range: () => [4, 9] as const } };
    expect(twoWayMaps(program, factors, [lacking, outside])).toEqual([undefined, undefined]);
  });
});
