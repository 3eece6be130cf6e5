import { describe, expect, it } from "vitest";
import { REST_FILL } from "../../src/charts/palette.js";
import { stepFills } from "../../src/charts/part-fills.js";
import { type RoutePart, stackedSteps } from "../../src/charts/stacked-steps.js";
import { LONG, totalsOf } from "./sample-data.js";
import { at, bars, sound, texts } from "./sound.js";

const STEPS: readonly RoutePart[] = [
  { name: "pad", dye: 1.9, pigment: 0.8 },
  { name: "stenter", dye: 0.2, pigment: 0.1 },
  { name: "belt washing", dye: 4, pigment: 4 },
  { name: "calender", dye: 0.1, pigment: 0.05 },
  { name: "wash range", dye: 40, pigment: 0 },
  { name: "curing", dye: 0, pigment: 0 },
];

const draw = (steps: readonly RoutePart[]) =>
  sound(() =>
    stackedSteps({
      quantity: "water withdrawn",
      unit: "L/m²",
      digits: 1,
      steps,
      routes: totalsOf(steps),
    }),
  );
const said = (steps: readonly RoutePart[]): readonly string[] =>
  texts(draw(steps)).map(({ text }) => text);

describe("picture by step", () => {
  it("puts small steps together, last, and leaves out those that nobody takes", () => {
    const names = said(STEPS).filter((text) =>
      ["pad", "belt washing", "wash range", "curing", "other, small (2 steps)"].includes(text),
    );
    expect([...new Set(names)]).toEqual([
      "pad",
      "belt washing",
      "wash range",
      "other, small (2 steps)",
    ]);
  });

  it("gives the rest of both routes its length", () => {
    const drawing = draw(STEPS);
    const unit = at(bars(drawing, stepFills(["wash range"])[0]?.colour ?? "")[0], "width") / 40;
    const rest = bars(drawing, REST_FILL.colour).map((bar) => at(bar, "width") / unit);
    expect(rest[0]).toBeCloseTo(0.3, 2);
    expect(rest[1]).toBeCloseTo(0.15, 2);
  });

  it("gives a step the same fill, whatever stands beside it", () => {
    const wash = stepFills(["wash range"])[0]?.colour ?? "";
    for (const steps of [STEPS, STEPS.slice(4), STEPS.toReversed()]) {
      expect(bars(draw(steps), wash)).toHaveLength(1);
    }
  });

  it("keeps the name of a single small step", () => {
    const steps = STEPS.filter(({ name }) => name !== "calender");
    expect(said(steps)).toContain("stenter");
  });

  it("keeps a step that is small on one route only", () => {
    expect(said(STEPS)).toContain("pad");
  });

  it("names both routes and the quantity", () => {
    expect(said(STEPS)).toEqual(expect.arrayContaining(["Pigment, heat fixation"]));
    expect(said(STEPS).some((text) => text.startsWith("water withdrawn, L/m²"))).toBe(true);
  });

  it("holds a route without any of it, many steps and long names", () => {
    draw([{ name: LONG, dye: 30, pigment: 0 }]);
    draw(Array.from({ length: 15 }, (_, n) => ({ name: `step ${n}`, dye: 4, pigment: 2 })));
    draw([]);
  });

  it("is refused when the steps miss the total", () => {
    expect(() =>
      stackedSteps({
        quantity: "water",
        unit: "L/m²",
        digits: 1,
        steps: STEPS,
        routes: totalsOf(STEPS.slice(0, 2)),
      }),
    ).toThrow("picture by step, total of Reactive dye");
  });
});
