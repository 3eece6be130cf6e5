import { describe, expect, it } from "vitest";
import { sheet } from "../../src/charts/nodes.js";
import { upwardScale } from "../../src/charts/upward-scale.js";
import { at, elements, sound, texts } from "./sound.js";

describe("scale upwards", () => {
  it("starts at 0 and keeps equal steps equal", () => {
    const { above } = upwardScale([2, 10], 100);
    expect(above(0)).toBe(0);
    expect(above(8) - above(6)).toBeCloseTo(above(4) - above(2), 10);
    expect(above(10)).toBeLessThan(100);
    expect(above(30)).toBeGreaterThan(100);
    expect(above(-1)).toBeLessThan(0);
  });

  it("keeps equal ratios equal where values lie far apart, and says so", () => {
    const scale = upwardScale([0.1, 1000], 100);
    expect(scale.note).toContain("logarithmic");
    expect(scale.above(100) - scale.above(10)).toBeCloseTo(scale.above(10) - scale.above(1), 10);
    expect(upwardScale([1, 10], 100).note).toBe("");
  });

  it("draws a line at each number, and no two numbers on each other", () => {
    const scale = upwardScale([0.0001, 1000], 84);
    const drawing = sound(() => sheet(110, scale.draw(scale.room, 200, 100), 210));
    const lines = elements(drawing, "line");
    expect(lines.length).toBeGreaterThan(2);
    expect(texts(drawing)).toHaveLength(lines.length);
    texts(drawing).forEach(({ text }, i) => {
      expect(at(lines[i], "y1")).toBeCloseTo(100 - scale.above(Number(text)), 1);
    });
  });

  it("does without values", () => {
    expect(upwardScale([], 84).above(0)).toBe(0);
  });
});
