import { describe, expect, it } from "vitest";
import { slopeLines, type SlopeLine } from "../../src/charts/slope-lines.js";
import { at, elements, sound, texts } from "./sound.js";

const line = (name: string, ...values: readonly (number | null)[]): SlopeLine => ({
  name,
  values,
  printed: values.map((value) => (value === null ? "" : String(value))),
});
const draw = (lines: readonly SlopeLine[], isPlaces = false) =>
  sound(() =>
    slopeLines({ columns: ["as it stands", "at the mix"], lines, isPlaces, note: "water, L/m²" }),
  );

describe("picture of changes", () => {
  it("stands larger values higher, and first places on top", () => {
    const heights = (isPlaces: boolean): readonly number[] =>
      elements(draw([line("A", 1, 3), line("B", 2, 1)], isPlaces), "circle").map((one) =>
        at(one, "cy"),
      );
    const [low = 0, high = 0, middle = 0] = heights(false);
    expect(low).toBeGreaterThan(middle);
    expect(middle).toBeGreaterThan(high);
    const [first = 0, last = 0] = heights(true);
    expect(first).toBeLessThan(last);
  });

  it("leaves out what has no value", () => {
    expect(elements(draw([line("A", 1, 3), line("B", 2, null)]), "circle")).toHaveLength(3);
  });

  it("names both ends, clear of each other, and of fifty lines those that move most", () => {
    const many = Array.from({ length: 50 }, (_, i) => line(`Supplier ${i}`, 100 + i, 100 + 10 * i));
    const names = texts(draw(many)).filter(({ text }) => text.includes("Supplier"));
    expect(names).toHaveLength(24);
    expect(names.some(({ text }) => text.includes("Supplier 49"))).toBe(true);
    expect(names.some(({ text }) => text.endsWith("Supplier 3"))).toBe(false);
    draw([line("A", 2, 2), line("B", 2, 2), line("C", 2, 2)]);
  });
});
