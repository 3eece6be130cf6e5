import { describe, expect, it } from "vitest";
import { fill, WHITE } from "../../src/charts/palette.js";
import { stackedBars, type StackedBars } from "../../src/charts/stacked-bars.js";
import { interWidth } from "../../src/charts/text-width.js";
import { LONG, UNBROKEN } from "./sample-data.js";
import { at, bars, elements, sound, texts } from "./sound.js";

const FIRST = fill("#35719c", "plain", WHITE, WHITE);
const SECOND = fill("#d5e6f3", "level", "#4d7f9f");
const THIRD = fill("#e39a4f");

function sample(over: Partial<StackedBars> = {}): StackedBars {
  return {
    where: "picture",
    rows: [
      {
        label: { name: "Dye", route: "dye" },
        segments: [
          { name: "washing", value: 30, fill: FIRST },
          { name: "steaming", value: 10, fill: SECOND },
        ],
        total: { value: 40, low: 35, high: 50 },
      },
      {
        label: { name: "Pigment", route: "pigment" },
        segments: [
          { name: "washing", value: 0, fill: FIRST },
          { name: "steaming", value: 10, fill: SECOND },
        ],
        total: { value: 10 },
      },
    ],
    barHeight: 42,
    legend: [
      { name: "washing", fill: FIRST },
      { name: "steaming", fill: SECOND },
    ],
    axis: "water, L/m²",
    digits: 1,
    ...over,
  };
}

const draw = (over: Partial<StackedBars> = {}) =>
  sound(() => stackedBars(sample(over), interWidth));
const said = (over: Partial<StackedBars> = {}): readonly string[] =>
  texts(draw(over)).map(({ text }) => text);

describe("stacked bars", () => {
  it("are as long as their values, from zero, end to end", () => {
    const drawing = draw();
    const [washing] = bars(drawing, FIRST.colour);
    const [steaming, other] = bars(drawing, SECOND.colour);
    expect(at(washing, "width") / at(steaming, "width")).toBeCloseTo(3, 2);
    expect(at(steaming, "width")).toBeCloseTo(at(other, "width"), 1);
    expect(at(other, "x")).toBe(at(washing, "x"));
    expect(at(washing, "x") + at(washing, "width")).toBeCloseTo(at(steaming, "x"), 1);
    expect(bars(drawing, FIRST.colour)).toHaveLength(1);
  });

  it("print their parts, their total and its interval", () => {
    expect(said()).toEqual(
      expect.arrayContaining(["washing", "30.0", "40.0", "35.0 to 50.0", "10.0"]),
    );
    expect(said()).toContain("water, L/m²; whisker: 95\u00a0% interval of the total");
  });

  it("speak of no whisker where there is none", () => {
    const rows = sample().rows.map((row) => ({ ...row, total: { value: row.total.value } }));
    expect(said({ rows })).toContain("water, L/m²");
  });

  it("hang the whisker from the low to the high end, with a tick at the total", () => {
    const drawing = draw();
    const [washing] = bars(drawing, FIRST.colour);
    const unit = at(washing, "width") / 30;
    const zero = at(washing, "x");
    const path = elements(drawing, "path").find(({ attributes }) =>
      attributes["d"]?.includes("v10"),
    );
    const across = (path?.attributes["d"] ?? "").match(/(?<=[MH])[\d.]+/g)?.map(Number) ?? [];
    expect(Math.min(...across)).toBeCloseTo(zero + 35 * unit, 0);
    expect(Math.max(...across)).toBeCloseTo(zero + 50 * unit, 0);
    expect(across.at(-1)).toBeCloseTo(zero + 40 * unit, 0);
  });

  it("grow to the left below zero", () => {
    const rows = [
      {
        label: { name: "Dye" },
        segments: [
          { name: "drawn", value: 30, fill: FIRST },
          { name: "recovered", value: -10, fill: SECOND },
        ],
        total: { value: 20, low: 15, high: 25 },
      },
    ];
    const drawing = draw({ rows });
    const [drawn] = bars(drawing, FIRST.colour);
    const [recovered] = bars(drawing, SECOND.colour);
    expect(at(recovered, "x") + at(recovered, "width")).toBeCloseTo(at(drawn, "x"), 1);
    expect(said({ rows })).toContain("\u221210.0");
  });

  it("print no numbers but 0 where everything is 0", () => {
    const rows = sample().rows.map((row) => ({ ...row, segments: [], total: { value: 0 } }));
    const numbers = said({ rows, legend: [] }).filter((text) => /^\d/.test(text));
    expect(numbers).toEqual(["0", "0.0", "0.0"]);
  });

  it("hold long names and large numbers", () => {
    const rows = [
      {
        label: { name: UNBROKEN, note: LONG, route: "dye" as const },
        segments: [{ name: LONG, value: 12345678, fill: THIRD }],
        total: { value: 12345678, low: 2, high: 22345678 },
      },
    ];
    const legend = [{ name: `${LONG} ${LONG}`, fill: THIRD }];
    expect(said({ rows, legend, axis: `${LONG}, m³` })).toContain("12\u202f345\u202f678.0");
  });

  it("leave out a part's number where it does not fit", () => {
    const rows = [
      {
        label: { name: "Dye" },
        segments: [
          { name: "washing", value: 99, fill: FIRST },
          { name: "steaming", value: 1, fill: SECOND },
        ],
        total: { value: 100 },
      },
    ];
    expect(said({ rows })).not.toContain("1.0");
  });

  it("are refused when the parts miss the total", () => {
    const [row] = sample().rows;
    const rows = row === undefined ? [] : [{ ...row, total: { value: 44 } }];
    expect(() => stackedBars(sample({ rows }), interWidth)).toThrow(
      "picture, total of Dye = 44: expected the sum of its parts, 40",
    );
  });

  it("are refused when a part is no number", () => {
    const segments = [{ name: "washing", value: Number.NaN, fill: FIRST }];
    const rows = [{ label: { name: "Dye" }, segments, total: { value: 1 } }];
    expect(() => stackedBars(sample({ rows }), interWidth)).toThrow("picture, washing = NaN");
  });
});
