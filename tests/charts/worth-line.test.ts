import { describe, expect, it } from "vitest";
import { worthLine } from "../../src/charts/worth-line.js";
import { at, elements, sound, texts } from "./sound.js";

const line = (name: string, up: number) => ({
  name,
  points: [0.5, 1, 1.5].map((x) => ({ x, y: x === 0.5 ? undefined : up * x })),
});
const today = { x: [0.9, 1, 1.1], y: [11, 12, 14] } as const;
const draw = (y = today.y as readonly [number, number, number]) =>
  sound(() =>
    worthLine({
      across: "million m²",
      up: "EUR/L",
      lines: [line("NPV 0", 12), line("NPV 50", 9)],
      today: { ...today, y },
    }),
  );

describe("picture of equal worth", () => {
  it("puts today's point on the first line where it breaks even", () => {
    const [, dot] = elements(draw(), "circle");
    const [, lower] = elements(draw([6, 7, 8]), "circle");
    expect(at(lower, "cy")).toBeGreaterThan(at(dot, "cy"));
    expect(texts(draw()).map(({ text }) => text)).toEqual(
      expect.arrayContaining(["NPV 0", "NPV 50", "EUR/L"]),
    );
  });

  it("refuses what is no number", () => {
    expect(() => draw([1, NaN, 2])).toThrow("equal worth");
  });
});
