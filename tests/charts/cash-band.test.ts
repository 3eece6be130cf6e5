import { describe, expect, it } from "vitest";
import { cashBand, type CashBandData } from "../../src/charts/cash-band.js";
import { at, elements, sound, texts } from "./sound.js";

const points = [-100, -40, 10, 60].map((base, year) => ({
  year,
  base,
  low: base - 30,
  high: base + 40,
}));
const draw = (more: Partial<CashBandData> = {}) =>
  sound(() => cashBand({ money: "EUR, real", points, payback: 1.8, ...more }));

describe("picture of money over the years", () => {
  it("marks where the money is back, between the years it lies between", () => {
    const [legend, dot] = elements(draw(), "circle");
    expect(legend).toBeDefined();
    const years = texts(draw()).filter(({ text }) => /^[0-3]$/.test(text));
    const middle = (text: string): number => {
      const found = years.find((year) => year.text === text);
      return ((found?.left ?? NaN) + (found?.right ?? NaN)) / 2;
    };
    expect(at(dot, "cx")).toBeGreaterThan(middle("1"));
    expect(at(dot, "cx")).toBeLessThan(middle("2"));
  });

  it("has no mark where it never is", () => {
    const { payback: _, ...rest } = { payback: 1, money: "EUR", points };
    expect(
      elements(
        sound(() => cashBand(rest)),
        "circle",
      ),
    ).toEqual([]);
  });

  it("refuses what is no number", () => {
    expect(() =>
      cashBand({ money: "EUR", points: [{ year: 0, base: NaN, low: 0, high: 1 }] }),
    ).toThrow("money over years");
  });
});
