import { describe, expect, it } from "vitest";
import { monthLines, type ProductionMonth } from "../../src/charts/month-lines.js";
import { chances, NAMES } from "./sample-data.js";
import { elements, sound, texts } from "./sound.js";

const draw = (months: readonly ProductionMonth[], digits = 1) =>
  sound(() =>
    monthLines({ quantity: "water withdrawn", unit: "L/m²", digits, names: NAMES, months }),
  );
const said = (months: readonly ProductionMonth[]): readonly string[] =>
  texts(draw(months)).map(({ text }) => text);

const month = (number: number, year = 2025): string => `${year}-${String(number).padStart(2, "0")}`;
const YEAR: readonly ProductionMonth[] = [1, 2, 3, 5, 6].map((number) => ({
  month: month(number),
  dye: { value: 40 + number, low: 38, high: 50, lots: 100 + number },
  ...(number > 1 ? { pigment: { value: 8, lots: 10 } } : {}),
}));

// Path of the line of a route: the last group that is stroked in its colour.
function line(months: readonly ProductionMonth[], colour: string): string {
  const group = elements(draw(months), "g")
    .filter(({ attributes }) => attributes["stroke"] === colour)
    .at(-1);
  const [path] = group?.children ?? [];
  return typeof path === "object" ? (path.attributes["d"] ?? "") : "";
}

describe("picture by month", () => {
  it("breaks the line where nothing was printed", () => {
    expect(line(YEAR, "#f2c647").match(/M/g)).toHaveLength(2);
    const whole = YEAR.filter(({ month: name }) => name < "2025-04");
    expect(line(whole, "#f2c647").match(/M/g)).toHaveLength(1);
  });

  it("prints values, months and how many lots they rest on", () => {
    expect(said(YEAR)).toEqual(
      expect.arrayContaining(["41.0", "8.0", "Jan", "Apr", "2025", "lots, dye", "101", "–"]),
    );
  });

  it("has a number on its axis above the highest value", () => {
    const numbers = said(YEAR).filter((text) => /^\d+$/.test(text) && Number(text) < 100);
    expect(Math.max(...numbers.map(Number))).toBeGreaterThanOrEqual(50);
  });

  it("stands on zero", () => {
    const numbers = said(YEAR).filter((text) => /^\d+$/.test(text));
    expect(numbers).toContain("0");
  });

  it("speaks of intervals only where there are some", () => {
    expect(said(YEAR)).toContain("water withdrawn, L/m²; thin upright: 95\u00a0% interval");
    expect(said([{ month: "2025-03", pigment: { value: 7, lots: 1 } }])).toContain(
      "water withdrawn, L/m²",
    );
  });

  it("prints the highest and lowest alone where months are narrow", () => {
    const months = chances(36).map((chance, index) => ({
      month: month((index % 12) + 1, 2023 + Math.floor(index / 12)),
      dye: { value: 100 + index, lots: Math.round(chance * 1000) },
      pigment: { value: 10 + index / 10, lots: 1234 },
    }));
    const values = said(months).filter((text) => /^\d+\.\d$/.test(text));
    expect(values).toEqual(["100.0", "135.0", "10.0", "13.5"]);
  });

  it("keeps its values apart where the routes meet and near zero", () => {
    draw(
      chances(8).map((chance, index) => ({
        month: month(index + 1),
        dye: { value: 0.3 + 0.05 * chance, low: 0.25, high: 0.4, lots: 4 },
        pigment: { value: 0.32, lots: 3 },
      })),
      3,
    );
    draw(
      [1, 2].map((n) => ({
        month: month(n),
        dye: { value: 40, lots: 4 },
        pigment: { value: 0, lots: 3 },
      })),
    );
    draw(
      [1, 2].map((n) => ({
        month: month(n),
        dye: { value: 0, lots: 4 },
        pigment: { value: 0, lots: 3 },
      })),
    );
    draw([
      { month: month(1), dye: { value: 50, lots: 4 }, pigment: { value: 0.5, lots: 3 } },
      { month: month(2), dye: { value: 3, lots: 4 }, pigment: { value: 0.5, lots: 3 } },
    ]);
    draw([1, 2].map((n) => ({ month: month(n), dye: { value: -4 * n, lots: 4 } })));
  });

  it("prints no number but 0 along an axis on which everything is 0", () => {
    const months = [{ month: "2025-03", dye: { value: 0, lots: 3 } }];
    expect(said(months).filter((text) => text.startsWith("0"))).toEqual(["0", "0.0"]);
  });

  it("can be drawn with one month and with none", () => {
    draw([{ month: "2025-03", pigment: { value: 7, lots: 1 } }]);
    draw([{ month: "2025-03" }]);
    draw([]);
  });

  it("refuses a value that is no number", () => {
    const months = [{ month: "2025-03", dye: { value: Number.NaN, lots: 1 } }];
    expect(() => draw(months)).toThrow("picture by month, dye in 2025-03 = NaN");
  });
});
