import { describe, expect, it } from "vitest";
import { importBars, type ImportBarsData } from "../../src/charts/import-bars.js";
import { at, elements, sound, texts } from "./sound.js";

const data = (accepted: number, corrected: number, setAside: number, outside: number) => ({
  accepted,
  corrected,
  setAside,
  outside,
});
const draw = (rows: ImportBarsData) => sound(() => importBars(rows));
const said = (rows: ImportBarsData): readonly string[] => texts(draw(rows)).map(({ text }) => text);
const wide = (rows: ImportBarsData): readonly number[] =>
  elements(draw(rows), "rect")
    .filter((rect) => at(rect, "height") === 18 && rect.attributes["fill"] !== "none")
    .sort((a, b) => at(a, "x") - at(b, "x"))
    .map((rect) => at(rect, "width"));

describe("picture of an import", () => {
  it("prints counts and shares", () => {
    expect(said(data(9812, 140, 37, 2))).toEqual([
      "accepted: 9\u202f812 (98.2\u00a0%)",
      "corrected: 140 (1.4\u00a0%)",
      "set aside: 37 (0.4\u00a0%)",
      "outside: 2 (<\u00a00.1\u00a0%)",
    ]);
  });

  it("says neither all nor nothing where it is not so", () => {
    expect(said(data(99999, 0, 1, 0))).toEqual([
      "accepted: 99\u202f999 (>\u00a099.9\u00a0%)",
      "corrected: 0 (0\u00a0%)",
      "set aside: 1 (<\u00a00.1\u00a0%)",
      "outside: 0 (0\u00a0%)",
    ]);
    expect(said(data(7, 0, 0, 0))[0]).toBe("accepted: 7 (100\u00a0%)");
  });

  it("gives each part its share of the bar", () => {
    const [accepted = 0, aside = 0] = wide(data(300, 0, 100, 0));
    expect((accepted - 3) / (aside - 3)).toBeCloseTo(3, 1);
  });

  it("keeps the smallest part in sight and none that is empty", () => {
    const parts = wide(data(1000000, 0, 1, 0));
    expect(parts).toHaveLength(2);
    expect(parts[1]).toBeGreaterThanOrEqual(3);
  });

  it("says so when nothing was read", () => {
    expect(said(data(0, 0, 0, 0))).toContain("no rows read");
  });

  it.each([-1, 1.5, Number.NaN])("refuses %d rows", (rows) => {
    expect(() => importBars(data(5, rows, 0, 0))).toThrow("picture of the import, corrected");
  });
});
