import { describe, expect, it } from "vitest";
import { costSteps, type CostStep } from "../../src/charts/cost-steps.js";
import { LONG } from "./sample-data.js";
import { at, elements, sound, texts } from "./sound.js";

const draw = (steps: readonly CostStep[], value = 0.58) =>
  sound(() =>
    costSteps({ cost: "cost, EUR/m²", from: { name: "now", value }, steps, to: "then", digits: 2 }),
  );

describe("picture of cost steps", () => {
  it("ends where the steps lead, and says so", () => {
    const said = texts(
      draw([
        { name: "ink", change: 0.03 },
        { name: LONG, change: -0.08 },
      ]),
    ).map(({ text }) => text);
    expect(said).toEqual(expect.arrayContaining(["0.58", "+0.03", "−0.08", "0.53"]));
  });

  it("begins each step where the one before ended", () => {
    const drawing = draw([
      { name: "ink", change: 0.3 },
      { name: "water", change: -0.4 },
    ]);
    const bars = elements(drawing, "rect").filter(
      (bar) => bar.attributes["stroke-width"] === "0.75",
    );
    const right = (i: number): number => at(bars[i], "x") + at(bars[i], "width");
    expect(at(bars[1], "x")).toBeCloseTo(right(0), 1);
    expect(right(2)).toBeCloseTo(right(1), 1);
    expect(right(3)).toBeCloseTo(at(bars[2], "x"), 1);
  });

  it("says when its axis does not begin at nought", () => {
    const words = (value: number): string =>
      texts(draw([{ name: "ink", change: 0.01 }], value))
        .map(({ text }) => text)
        .join(" ");
    expect(words(0.58)).toContain("does not begin at 0");
    expect(words(0.005)).not.toContain("does not begin at 0");
  });
});
