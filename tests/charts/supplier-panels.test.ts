import { describe, expect, it } from "vitest";
import {
  type PanelPart,
  type SupplierPanel,
  supplierPanels,
} from "../../src/charts/supplier-panels.js";
import { at, elements, sound, texts } from "./sound.js";

const panel = (name: string, change: Partial<SupplierPanel> = {}): SupplierPanel => ({
  name,
  value: { median: 4, low: 2, high: 6, printed: "4.0" },
  crude: 3,
  isHollow: false,
  ...change,
});
const part = (words: string, ...panels: readonly SupplierPanel[]): PanelPart => ({ words, panels });
const draw = (parts: readonly PanelPart[], held: readonly number[] = [0, 8], width = 640) =>
  sound(() => supplierPanels({ quantity: "water", unit: "L/m²", held, parts }, undefined, width));
const many = (count: number): readonly SupplierPanel[] =>
  Array.from({ length: count }, (_, i) => panel(`S ${i + 1}`));
const INK = "#1e2733";
const GRID = "#d9dde3";

/** Middle of the hollow mark of what a supplier takes as it stands: its path starts at its upper corner. */
function corners(drawing: Parameters<typeof elements>[0]): readonly [number, number][] {
  return elements(drawing, "path")
    .filter(({ attributes }) => attributes["d"]?.endsWith("z") === true)
    .map(({ attributes }) => {
      const [x = 0, y = 0] = (attributes["d"] ?? "").slice(1).split("l")[0]!.split(",").map(Number);
      return [x, y + 5];
    });
}

describe("panels of suppliers", () => {
  it("place value, ends and what is taken as it stands on one scale", () => {
    const drawing = draw([part("told apart", panel("Brook"))]);
    const circle = elements(drawing, "circle").at(-1);
    const interval = elements(drawing, "line").find(
      (one) => at(one, "x1") === at(circle, "cx") && at(one, "x2") === at(circle, "cx"),
    );
    const [low, high] = [at(interval, "y1"), at(interval, "y2")];
    // 4 lies midway between 2 and 6, and 3 a quarter of the way; the more the higher.
    expect(high).toBeLessThan(low);
    expect(at(circle, "cy")).toBeCloseTo((low + high) / 2, 1);
    const [x, y] = corners(drawing).at(-1)!;
    expect(y).toBeCloseTo(low + 0.25 * (high - low), 1);
    expect(x).toBeLessThan(at(circle, "cx"));
  });

  it("have the same scale in all rows, whatever stands in them, and its numbers once a row", () => {
    const drawing = draw([part("told apart", ...many(20))]);
    const rows = texts(drawing).filter(({ text }) => text === "0");
    expect(rows).toHaveLength(3);
    const lefts = elements(drawing, "line").filter(
      ({ attributes }) => attributes["stroke"] === GRID,
    );
    expect(new Set(lefts.map((line) => at(line, "x1"))).size).toBe(1);
    const height = (held: readonly number[], median: number): number => {
      const one = draw(
        [part("a", panel("S", { value: { median, low: median, high: median, printed: "" } }))],
        held,
      );
      return at(elements(one, "circle").at(-1), "cy");
    };
    expect(height([0, 8], 4)).toBe(height([0, 8, 4, 2], 4));
    expect(height([0, 16], 4)).toBeGreaterThan(height([0, 8], 4));
  });

  it("hold each part under a rule as long as its panels, and say where it goes on", () => {
    const drawing = draw([part("told apart", ...many(3)), part("not told apart", ...many(7))]);
    const rules = elements(drawing, "line").filter(
      (line) => line.attributes["stroke"] === INK && at(line, "y1") === at(line, "y2"),
    );
    const [first, second, third] = rules.map((line) => at(line, "x2") - at(line, "x1") + 6);
    expect([second! / first!, third! / first!]).toEqual([
      expect.closeTo(5 / 3, 2),
      expect.closeTo(2 / 3, 2),
    ]);
    const said = texts(drawing).map(({ text }) => text);
    expect(said.filter((text) => text.startsWith("not told apart"))).toHaveLength(2);
    expect(said.join(" ")).toContain("not told apart, continued");
    expect(
      texts(draw([{ ...part("no place", panel("S")), isContinued: true }])).map(({ text }) => text),
    ).toEqual(expect.arrayContaining([expect.stringMatching(/^(?:no place, )?continued$/)]));
  });

  it("say in numbers which upper end lies beyond the scale", () => {
    const value = { median: 4, low: 2, high: 480, printed: "4.0" };
    const said = texts(draw([part("a", panel("Eyot", { value }))])).map(({ text }) => text);
    expect(said).toEqual(expect.arrayContaining(["up to 480", "beyond the scale"]));
    expect(texts(draw([part("a", panel("Eyot"))])).map(({ text }) => text)).not.toContain(
      "beyond the scale",
    );
  });

  it("are hollow where little is the supplier's own, and bare where it has no value", () => {
    const bare: SupplierPanel = { name: "Dell", isHollow: false, note: "no washing" };
    const drawing = draw([part("a", panel("Ash", { isHollow: true }), bare)]);
    const circles = elements(drawing, "circle");
    // One in the legend, one in the panel.
    expect(circles.map(({ attributes }) => attributes["fill"])).toEqual(["#ffffff", "#ffffff"]);
    const said = texts(drawing).map(({ text }) => text);
    expect(said).toEqual(expect.arrayContaining(["no washing", "no value"]));
    // Hatched, for an empty panel could be read as 0.
    const areas = elements(drawing, "rect").filter((one) => at(one, "height") > 14);
    expect(areas).toHaveLength(1);
    expect(at(areas[0], "x")).toBeGreaterThan(at(circles.at(-1), "cx"));
  });

  it("take long names, notes and values far apart on both widths", () => {
    const panels = Array.from({ length: 24 }, (_, i) =>
      panel(`Supplier ${i} of a long street in a town`, {
        value: { median: 2 ** (i / 2), low: 1, high: 9000, printed: "4.0" },
        crude: 5000,
        note: "covers 62 %; no washing and steaming at all",
      }),
    );
    const held = [1, 5000];
    for (const width of [640, 360])
      draw([part("told apart from all others", ...panels)], held, width);
  });

  it("refuse what is no number, or would be drawn outside its panel", () => {
    const draws =
      (change: Partial<SupplierPanel>, held: readonly number[] = [0, 8]) =>
      () =>
        supplierPanels({
          quantity: "water",
          unit: "L",
          held,
          parts: [part("a", panel("Ash", change))],
        });
    expect(draws({ crude: Number.NaN })).toThrow("picture of suppliers, Ash");
    expect(draws({ crude: 9 })).toThrow("within those that the scale holds");
    const value = { median: 4, low: -2, high: 6, printed: "" };
    expect(draws({ value })).toThrow("within those that the scale holds");
    expect(draws({ value: { ...value, low: 2, high: Infinity } })).toThrow("finite");
    expect(draws({}, [0, Number.NaN])).toThrow("its scale");
  });
});
