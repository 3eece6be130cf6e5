import { describe, expect, it } from "vitest";
import { type Swing, swingBars } from "../../src/charts/swing-bars.js";
import { LONG, UNBROKEN } from "./sample-data.js";
import { at, bars, elements, sound, texts } from "./sound.js";

const swing = (factor: string, low: number, high: number, labels = ["2", "8"]): Swing => ({
  factor,
  low: { label: labels[0] ?? "", change: low },
  high: { label: labels[1] ?? "", change: high },
});

const draw = (...factors: readonly Swing[]) =>
  sound(() => swingBars({ saving: "saving of water withdrawn (41 %)", digits: 1, factors }));
const said = (...factors: readonly Swing[]): readonly string[] =>
  texts(draw(...factors)).map(({ text }) => text);

const LOW = "#5b6675";
const HIGH = "#cdd5df";

describe("picture of swings", () => {
  it("puts the largest first, whatever its direction", () => {
    const factors = [swing("speed", -1, 1), swing("liquor", 5, -4), swing("rejects", -0.5, 2)];
    const names = said(...factors).filter((text) => factors.some(({ factor }) => factor === text));
    expect(names).toEqual(["liquor", "rejects", "speed"]);
  });

  it("labels both ends with the value and the change, and the directions with words", () => {
    expect(said(swing("liquor", -7.4, 4.1, ["4 L/kg", "12 L/kg"]))).toEqual(
      expect.arrayContaining([
        "4 L/kg:\u00a0\u22127.4",
        "12 L/kg:\u00a0+4.1",
        "saving falls",
        "saving rises",
        "change of the saving of water withdrawn (41 %), percentage points",
      ]),
    );
  });

  it("draws bars as long as their changes, from zero", () => {
    const drawing = draw(swing("liquor", -6, 3));
    const [low] = bars(drawing, LOW);
    const [high] = bars(drawing, HIGH);
    expect(at(low, "width") / at(high, "width")).toBeCloseTo(2, 2);
    expect(at(low, "x") + at(low, "width")).toBeCloseTo(at(high, "x"), 1);
    expect(at(low, "y")).toBe(at(high, "y"));
  });

  it("tells low from high by pattern as well", () => {
    const drawing = draw(swing("liquor", -6, 3));
    const hatched = elements(drawing, "path").filter(
      ({ attributes }) => attributes["stroke"] === LOW,
    );
    expect(hatched.length).toBeGreaterThanOrEqual(2);
  });

  it("has numbers on both sides of zero where the saving both falls and rises", () => {
    const numbers = said(swing("liquor", -1.4, 7.8)).filter((text) => /^[−]?\d+$/.test(text));
    expect(numbers.some((text) => text.startsWith("−"))).toBe(true);
    expect(Math.max(...numbers.map((text) => Number(text.replace("−", "-"))))).toBeGreaterThan(7.8);
  });

  it("keeps a change with the end of its value, on a ground of its own", () => {
    const drawing = draw(swing("grid", -2, 3, ["0.140 kg CO₂e/kWh", "0.083 kg CO₂e/kWh"]));
    expect(texts(drawing).map(({ text }) => text)).toContain("0.140 kg CO₂e/kWh:\u00a0−2.0");
    const grounds = elements(drawing, "rect").filter(
      ({ attributes }) => attributes["fill"] === "#ffffff",
    );
    expect(grounds).toHaveLength(2);
  });

  it("draws bars on one side below each other", () => {
    const drawing = draw(swing("liquor", 2, 3));
    const thin = elements(drawing, "rect").filter(
      (rect) => at(rect, "height") < 13 && at(rect, "width") > 40,
    );
    expect(thin).toHaveLength(2);
    const [upper, lower] = thin;
    expect(at(upper, "y") + at(upper, "height")).toBeLessThan(at(lower, "y"));
    expect(at(upper, "x")).toBe(at(lower, "x"));
  });

  it("holds long names and values, no change at all, one factor and none", () => {
    draw(swing(LONG, -3, 3, [LONG, UNBROKEN]), swing(UNBROKEN, 1, 2, [LONG, LONG]));
    draw(swing("nothing", 0, 0));
    draw(swing("speed", -6, -1));
    draw(swing("speed", 6, 1));
    draw();
  });

  it("refuses a change that is no number", () => {
    expect(() => draw(swing("speed", Number.NaN, 1))).toThrow("picture of swings, speed = NaN");
  });
});
