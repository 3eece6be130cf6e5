import { describe, expect, it } from "vitest";
import { type IntervalRow, intervalRows } from "../../src/charts/interval-rows.js";
import { LONG, UNBROKEN } from "./sample-data.js";
import { at, bars, elements, sound, texts } from "./sound.js";

const ROW: IntervalRow = {
  name: "dry after printing",
  published: { low: 2, high: 6 },
  poor: 8,
  usual: 4,
  well: 3,
  low: 2.5,
  high: 7,
  verdict: "partly inside",
};

const draw = (...rows: readonly IntervalRow[]) =>
  sound(() =>
    intervalRows({ quantity: "energy", unit: "kWh/kg", reach: "95 % interval as usual", rows }),
  );

const PUBLISHED = "#e4e9ef";

const lines = (drawing: ReturnType<typeof draw>, width: string) =>
  elements(drawing, "line").filter(
    ({ attributes }) =>
      attributes["stroke-width"] === width &&
      attributes["y1"] === attributes["y2"] &&
      // That of the legend stands above the rows.
      Number(attributes["y1"]) > 40,
  );

describe("picture of published ranges", () => {
  it("draws band, reach and span to one scale", () => {
    const drawing = draw(ROW);
    const [band] = bars(drawing, PUBLISHED);
    const [reach] = lines(drawing, "1");
    const [span] = lines(drawing, "3");
    const [from, to] = [at(band, "x"), at(band, "x") + at(band, "width")];
    const x = (value: number): number => from + ((value - 2) / (6 - 2)) * (to - from);
    expect(at(reach, "x1")).toBeCloseTo(x(2.5), 1);
    expect(at(reach, "x2")).toBeCloseTo(x(7), 1);
    const ends = elements(drawing, "line").filter(
      (line) => at(line, "y2") - at(line, "y1") === 8 && at(line, "y1") > 30,
    );
    expect(ends.map((line) => at(line, "x1"))).toEqual([at(reach, "x1"), at(reach, "x2")]);
    expect(at(span, "x1")).toBeCloseTo(x(3), 1);
    expect(at(span, "x2")).toBeCloseTo(x(8), 1);
    const usual = elements(drawing, "circle").find((circle) => at(circle, "cy") > 40);
    expect(at(usual, "cx")).toBeCloseTo(x(4), 1);
  });

  it("tells the ways of running by shape, and the published range by its edges", () => {
    const drawing = draw(ROW);
    // One in the legend, one in the row.
    expect(elements(drawing, "circle")).toHaveLength(2);
    const squares = elements(drawing, "rect").filter(
      (rect) => rect.attributes["fill"] === "#ffffff",
    );
    expect(squares).toHaveLength(2);
    const [band] = bars(drawing, PUBLISHED);
    const upright = elements(drawing, "line").filter((line) => at(line, "x1") === at(line, "x2"));
    expect(upright.map((line) => at(line, "x1"))).toEqual(
      expect.arrayContaining([at(band, "x"), at(band, "x") + at(band, "width")]),
    );
    expect(texts(drawing).map(({ text }) => text)).toEqual(
      expect.arrayContaining([
        "published range",
        "poorly run",
        "as usual",
        "well run",
        "95 % interval as usual",
        "partly inside",
        "energy, kWh/kg",
      ]),
    );
  });

  it("lets a ceiling begin at the left edge without asking for a zero", () => {
    const drawing = draw(
      { ...ROW, published: { low: 0, high: 600 }, name: "ceiling" },
      { ...ROW, published: { low: 2, high: 6 } },
    );
    const [upper, lower] = bars(drawing, PUBLISHED);
    expect(at(upper, "x")).toBeLessThan(at(lower, "x"));
    const said = texts(drawing).map(({ text }) => text);
    expect(said).toContain("energy, kWh/kg, logarithmic scale");
    expect(said).not.toContain("0");
  });

  it("keeps a single published value in sight", () => {
    const [band] = bars(draw({ ...ROW, published: { low: 5, high: 5 } }), PUBLISHED);
    expect(at(band, "width")).toBeGreaterThanOrEqual(2);
  });

  it("holds long names and verdicts, many rows, zeros and none", () => {
    draw({ ...ROW, name: LONG, note: LONG, verdict: LONG }, { ...ROW, name: UNBROKEN });
    draw(...Array.from({ length: 15 }, (_, n) => ({ ...ROW, name: `fabric ${n}` })));
    draw({ ...ROW, poor: 0, usual: 0, well: 0, low: 0, high: 0 });
    draw();
  });

  it.each([
    [{ ...ROW, usual: Number.NaN }, "picture of published ranges, dry after printing = NaN"],
    [{ ...ROW, well: -1 }, "expected 0 or more"],
    [{ ...ROW, published: { low: 6, high: 2 } }, "expected at most 2"],
    [{ ...ROW, low: 9 }, "expected at most 7"],
  ])("refuses %j", (row, complaint) => {
    expect(() => draw(row)).toThrow(complaint);
  });
});
