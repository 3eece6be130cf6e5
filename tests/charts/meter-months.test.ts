import { describe, expect, it } from "vitest";
import { type MeterMonth, meterMonths } from "../../src/charts/meter-months.js";
import { chances } from "./sample-data.js";
import { at, elements, sound, texts } from "./sound.js";

const draw = (months: readonly MeterMonth[]) =>
  sound(() => meterMonths({ quantity: "town water", unit: "m³", months }));
const said = (months: readonly MeterMonth[]): readonly string[] =>
  texts(draw(months)).map(({ text }) => text);

const YEAR: readonly MeterMonth[] = [
  { month: "2025-01", metered: 2000, modelled: 1500 },
  { month: "2025-02", metered: 1000, modelled: 1100 },
  { month: "2025-04", metered: 500 },
  { month: "2025-05", modelled: 500 },
];

describe("picture of a meter", () => {
  it("prints the gap in percent of the reading, with its sign", () => {
    const figures = said(YEAR).filter((text) => /^([+−]\d+|–)$/.test(text));
    expect(figures).toEqual(["+25", "\u221210", "–", "–", "–"]);
  });

  it("says what the signs and the dash mean", () => {
    expect(said(YEAR).join(" ")).toContain("+ where the meter read more");
    expect(said(YEAR).join(" ")).toContain("–: no reading");
    expect(said(YEAR.slice(0, 2)).join(" ")).not.toContain("–: no reading");
  });

  it("draws the sum of the lots as bars from zero and readings as marks at their height", () => {
    const drawing = draw(YEAR);
    const [january, february, may] = elements(drawing, "rect")
      .filter((rect) => at(rect, "height") > 14)
      .sort((a, b) => at(a, "x") - at(b, "x"));
    expect(at(january, "height") / at(february, "height")).toBeCloseTo(1500 / 1100, 2);
    const zero = at(january, "y") + at(january, "height");
    expect(at(may, "y") + at(may, "height")).toBeCloseTo(zero, 1);
    const readings = elements(drawing, "line")
      .filter((line) => at(line, "stroke-width") === 2.5 && at(line, "x1") > 60)
      .map((line) => ((zero - at(line, "y1")) / at(january, "height")) * 1500)
      .filter((reading) => reading <= 2001);
    expect(readings.map((reading) => Math.round(reading / 10) * 10)).toEqual([2000, 1000, 500]);
  });

  it("has a number on its axis above the highest bar and reading", () => {
    const figures = said([{ month: "2025-01", metered: 317, modelled: 270 }]);
    expect(figures).toContain("350");
  });

  it("has no gap for a reading of 0", () => {
    expect(said([{ month: "2025-01", metered: 0, modelled: 20 }])).toContain("–");
  });

  it("prints no number but 0 along an axis on which everything is 0", () => {
    const months = [{ month: "2025-01", metered: 0, modelled: 0 }];
    expect(said(months).filter((text) => text.startsWith("0"))).toEqual(["0"]);
  });

  it("can be drawn for one month, for three years and for none", () => {
    draw([{ month: "2025-01", metered: 0.4, modelled: 0.9 }]);
    draw(
      chances(36).map((chance, index) => ({
        month: `${2023 + Math.floor(index / 12)}-${String((index % 12) + 1).padStart(2, "0")}`,
        metered: 1e6 * (1 + chance),
        modelled: 1e6,
      })),
    );
    draw([{ month: "2025-01" }]);
    draw([]);
  });

  it("refuses a reading that is no number", () => {
    expect(() => draw([{ month: "2025-01", metered: Infinity }])).toThrow(
      "picture of the meter, 2025-01 = Infinity",
    );
  });
});
