import { describe, expect, it } from "vitest";
import { savingDistribution, type SavingDraws } from "../../src/charts/saving-distribution.js";
import { chances, LONG } from "./sample-data.js";
import { at, elements, sound, texts } from "./sound.js";

const panel = (indicator: string, low: number, high: number, unit = "%"): SavingDraws => ({
  indicator,
  unit,
  digits: 0,
  draws: Float64Array.from(chances(4000), (chance) => low + (high - low) * chance),
  median: (low + high) / 2,
  low: low + (high - low) * 0.025,
  high: high - (high - low) * 0.025,
});

const draw = (...panels: readonly SavingDraws[]) => sound(() => savingDistribution({ panels }));
const said = (...panels: readonly SavingDraws[]): readonly string[] =>
  texts(draw(...panels)).map(({ text }) => text);

// Zero lines and medians are the only upright lines in ink beside the sample in the legend.
function upright(drawing: ReturnType<typeof draw>, weight: number): readonly number[] {
  return elements(drawing, "line")
    .filter(
      (line) =>
        line.attributes["stroke"] === "#1e2733" &&
        at(line, "stroke-width") === weight &&
        at(line, "x1") === at(line, "x2"),
    )
    .map((line) => at(line, "x1"));
}

describe("picture of savings", () => {
  it("labels the median with its interval", () => {
    expect(said(panel("water", 40, 80))).toEqual(
      expect.arrayContaining(["water", "60 %", "95\u00a0%: 41 to 79"]),
    );
  });

  it("says on which side of zero something is saved", () => {
    expect(said(panel("water", -40, 80))).toEqual(expect.arrayContaining(["more used", "saved"]));
    expect(said(panel("water", 40, 80))).not.toContain("more used");
    expect(said(panel("electricity", -40, -10))).toContain("more used");
  });

  it("shares an axis between panels of one unit, and only between them", () => {
    const drawing = draw(
      panel("water", 40, 80),
      panel("energy", -20, 30),
      panel("cost", 0.02, 0.05, "EUR/m²"),
    );
    const zeros = upright(drawing, 1);
    expect(zeros[0]).toBe(zeros[1]);
    expect(zeros[2]).not.toBe(zeros[0]);
    const medians = upright(drawing, 2).slice(1);
    const unit = ((medians[0] ?? 0) - (zeros[0] ?? 0)) / 60;
    expect(((medians[1] ?? 0) - (zeros[0] ?? 0)) / unit).toBeCloseTo(5, 1);
  });

  it("cuts the heap at the ends of the interval", () => {
    const one = panel("water", 40, 80);
    const drawing = draw(one);
    const [zero = 0] = upright(drawing, 1);
    const unit = ((upright(drawing, 2)[1] ?? 0) - zero) / 60;
    const heap = elements(drawing, "g")
      .find(({ attributes }) => attributes["fill"] === "#9aa5b3")
      ?.children.find((child) => typeof child !== "string");
    const d = typeof heap === "object" ? (heap.attributes["d"] ?? "") : "";
    const across = Array.from(d.matchAll(/[ML]([\d.]+),/g), ([, x]) => Number(x));
    expect((Math.min(...across) - zero) / unit).toBeCloseTo(one.low, 1);
    expect((Math.max(...across) - zero) / unit).toBeCloseTo(one.high, 1);
  });

  it("can be drawn for one draw, for draws that are all alike and for none", () => {
    draw({ ...panel(LONG, 0, 0), draws: new Float64Array(1) });
    draw({ ...panel("yield", 5, 5), draws: new Float64Array(50).fill(5) }, panel(LONG, -90, -80));
    draw();
  });

  it("refuses what cannot be heaped up", () => {
    const one = panel("water", 1, 2);
    const broken = (over: Partial<SavingDraws>) => () =>
      savingDistribution({ panels: [{ ...one, ...over }] });
    expect(broken({ draws: new Float64Array(0) })).toThrow("picture of savings, water = 0");
    expect(broken({ draws: Float64Array.from([1, Number.NaN]) })).toThrow("water = NaN");
    expect(broken({ median: Infinity })).toThrow("water = Infinity");
  });
});
