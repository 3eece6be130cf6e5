import { describe, expect, it } from "vitest";
import { type LotDot, lotDots, type LotDotsData } from "../../src/charts/lot-dots.js";
import { chances, LONG, NAMES, UNBROKEN } from "./sample-data.js";
import { at, elements, sound, texts } from "./sound.js";

const lot = (value: number, route: "dye" | "pigment" = "dye", fabric = "linen"): LotDot => ({
  fabric,
  route,
  value,
  area: 500,
});

const data = (lots: readonly LotDot[], classes: readonly string[] = ["linen"]): LotDotsData => ({
  quantity: "water withdrawn",
  unit: "L/m²",
  digits: 1,
  names: NAMES,
  classes,
  lots,
});
const draw = (lots: readonly LotDot[], classes?: readonly string[]) =>
  sound(() => lotDots(data(lots, classes)));
const said = (lots: readonly LotDot[], classes?: readonly string[]): readonly string[] =>
  texts(draw(lots, classes)).map(({ text }) => text);

// Middles of the dots of the pigment route, which are the ones drawn with arcs.
function discs(drawing: ReturnType<typeof draw>): readonly { x: number; y: number; r: number }[] {
  return elements(drawing, "path")
    .map(({ attributes }) => attributes["d"] ?? "")
    .filter((d) => d.includes("a"))
    .flatMap((d) =>
      Array.from(d.matchAll(/M([\d.-]+),([\d.-]+)a([\d.]+),/g), ([, x, y, r]) => ({
        x: Number(x) + Number(r),
        y: Number(y),
        r: Number(r),
      })),
    )
    .slice(1);
}

const CLASSES = ["linen", LONG, UNBROKEN, ...Array.from({ length: 9 }, (_, n) => `cotton ${n}`)];
const MANY: readonly LotDot[] = chances(2000).map((chance, index) => ({
  fabric: CLASSES[index % 12] ?? "linen",
  route: index % 3 === 0 ? "pigment" : "dye",
  value: index % 9 === 0 ? 0 : 10 ** (chance * 4 - 1),
  area: 100 + 5000 * chance,
}));

describe("picture of lots", () => {
  it("prints the median and the number of lots of each class and route", () => {
    const lots = [lot(10), lot(20), lot(60), lot(4, "pigment"), lot(6, "pigment")];
    expect(said(lots)).toEqual(expect.arrayContaining(["20.0, 3 lots", "5.0, 2 lots"]));
    expect(said(lots.slice(0, 1))).toEqual(expect.arrayContaining(["10.0, 1 lot", "no lots"]));
  });

  it("places dots along their axis and says nothing of a logarithm where it has none", () => {
    const drawing = draw([lot(10, "pigment"), lot(20, "pigment"), lot(40, "pigment")]);
    const [a = 0, b = 0, c = 0] = discs(drawing)
      .map(({ x }) => x)
      .sort((one, other) => one - other);
    expect((c - b) / (b - a)).toBeCloseTo(2, 1);
    expect(texts(drawing).map(({ text }) => text)).toContain("water withdrawn, L/m²");
  });

  it("turns to a logarithmic axis beyond two powers of ten, and says so", () => {
    const drawing = draw([lot(0.1, "pigment"), lot(1, "pigment"), lot(100, "pigment")]);
    const [a = 0, b = 0, c = 0] = discs(drawing)
      .map(({ x }) => x)
      .sort((one, other) => one - other);
    expect((c - b) / (b - a)).toBeCloseTo(2, 1);
    expect(texts(drawing).map(({ text }) => text)).toContain(
      "water withdrawn, L/m², logarithmic scale",
    );
  });

  it("draws the area of a dot in proportion to the area printed", () => {
    const drawing = draw([
      { ...lot(10, "pigment"), area: 4000 },
      { ...lot(20, "pigment"), area: 1000 },
    ]);
    const [large = 0, small = 0] = discs(drawing).map(({ r }) => r);
    expect(large / small).toBeCloseTo(2, 1);
  });

  it("keeps each class and route in its own lane", () => {
    const classes = ["linen", "silk"];
    const lots = chances(40).map((chance, index) =>
      lot(10 + chance, "pigment", classes[index % 2]),
    );
    const heights = discs(draw(lots, classes)).map(({ y }) => y);
    const sorted = [...heights].sort((a, b) => a - b);
    const gap = (sorted[20] ?? 0) - (sorted[19] ?? 0);
    expect(gap).toBeGreaterThan(20);
  });

  it("draws two thousand lots of twelve classes with few elements", () => {
    const drawing = draw(MANY, CLASSES);
    expect(elements(drawing, "path").length).toBeLessThan(20);
    expect(elements(drawing, "circle").length).toBeLessThan(4);
    expect(JSON.stringify(drawing).length).toBeLessThan(150_000);
    expect(discs(drawing).length).toBe(MANY.filter(({ route }) => route === "pigment").length);
  });

  it("spreads dots the same way each time, and not all on one line", () => {
    const lots = chances(30).map(() => lot(10, "pigment"));
    expect(new Set(discs(draw(lots)).map(({ y }) => y)).size).toBeGreaterThan(10);
  });

  it("marks a median where there is more than one lot", () => {
    const ticks = (lots: readonly LotDot[]): number =>
      elements(draw(lots), "line").filter((line) => at(line, "stroke-width") === 2).length;
    expect(ticks([lot(10)])).toBe(1);
    expect(ticks([lot(10), lot(20)])).toBe(2);
  });

  it("hides none of a few lots behind the median", () => {
    const order = (count: number): readonly string[] => {
      const lots = Array.from({ length: count }, (_, index) => lot(10 + index, "pigment"));
      const marks = draw(lots).children.flatMap((root) =>
        typeof root === "string" ? [] : root.children,
      );
      return marks.flatMap((mark) => {
        if (typeof mark === "string") return [];
        const { stroke, "stroke-width": width } = mark.attributes;
        if (mark.tag === "line" && width === "2") return ["median"];
        return mark.tag === "path" && stroke === "#9fb0c8" ? ["dots"] : [];
      });
    };
    // The first of each stands in the legend.
    expect(order(3)).toEqual(["dots", "median", "median", "dots"]);
    expect(order(30)).toEqual(["dots", "median", "dots", "median"]);
  });

  it("can be drawn with one lot, with none and with nothing but zeros", () => {
    expect(said([])).toContain("no lots");
    draw([lot(0), lot(0, "pigment")]);
    draw([], []);
  });

  it("refuses lots that cannot be placed", () => {
    expect(() => lotDots(data([lot(1, "dye", "silk")]))).toThrow(
      'a lot has the fabric class "silk"; expected one of linen',
    );
    expect(() => lotDots(data([lot(Number.NaN)]))).toThrow("picture of lots, linen = NaN");
    expect(() => lotDots(data([{ ...lot(1), area: 0 }]))).toThrow("area of linen = 0");
  });
});
