import { describe, expect, it } from "vitest";
import {
  coordinate,
  element,
  LETTER_SIZE,
  lineStack,
  plate,
  sheet,
  SHEET_WIDTH,
  SMALL_SIZE,
  words,
} from "../../src/charts/nodes.js";
import { COLUMN } from "../../src/report/pdf/sheet.js";
import { sound, texts } from "./sound.js";

describe("coordinates", () => {
  it.each([
    [1 / 3, "0.33"],
    [2, "2"],
    [-0.001, "0"],
    [-12.345, "-12.35"],
    [1e-9, "0"],
  ])("write %d as %s", (value, written) => {
    expect(Math.abs(Number(coordinate(value)) - Number(written))).toBeLessThan(0.011);
    expect(coordinate(value)).toMatch(/^(0|-?\d+(\.\d{1,2})?)$/);
  });

  it("are finite", () => {
    expect(() => coordinate(Number.NaN)).toThrow("a picture has a coordinate NaN");
  });
});

describe("letters", () => {
  it("are no smaller than 7.5 pt where a picture fills the column of a page", () => {
    expect((Math.min(SMALL_SIZE, LETTER_SIZE) * COLUMN) / SHEET_WIDTH).toBeGreaterThanOrEqual(7.5);
  });
});

describe("elements", () => {
  it("leave out what is absent", () => {
    expect(element("rect", { x: 1, fill: undefined }, "a")).toEqual({
      tag: "rect",
      attributes: { x: "1" },
      children: ["a"],
    });
  });

  it("set texts around their middle height", () => {
    const drawing = sheet(40, [words(10, 20, "HEAT", { anchor: "middle" })]);
    const [text] = texts(drawing);
    expect(((text?.top ?? 0) + (text?.bottom ?? 0)) / 2).toBeCloseTo(20, 0);
    expect(((text?.left ?? 0) + (text?.right ?? 0)) / 2).toBeCloseTo(10, 6);
  });

  it("stack lines around a height", () => {
    const tops = texts(sheet(80, lineStack(0, 40, ["one", "two", "three"]))).map(({ top }) => top);
    expect(tops).toHaveLength(3);
    const [first = 0, middle = 0, last = 0] = tops;
    expect(middle - first).toBeCloseTo(last - middle, 6);
    expect(middle - first).toBeGreaterThan(11);
  });

  it("lay a ground under the whole of a text", () => {
    const { attributes } = plate(10, 20, 30, "#ffffff");
    expect(Number(attributes["x"])).toBeLessThan(10);
    expect(Number(attributes["x"]) + Number(attributes["width"])).toBeGreaterThan(40);
  });
});

describe("sheets", () => {
  it("are of one width and as high as needed", () => {
    expect(sheet(10.2, [])).toMatchObject({ width: 640, height: 11 });
  });

  // The check that every picture goes through has to see what it is there for.
  it.each([
    ["texts on top of each other", [words(0, 10, "heat"), words(3, 12, "steam")]],
    ["letters beyond the edge", [words(630, 10, "evaporated")]],
    ["letters above the edge", [words(0, 2, "heat")]],
    ["an area beyond the edge", [element("rect", { x: 600, y: 0, width: 60, height: 5 })]],
    ["a colour by name", [element("rect", { fill: "red", width: 5, height: 5 })]],
  ])("are not sound with %s", (_, children) => {
    expect(() => sound(() => sheet(30, children))).toThrow();
  });

  it("are not sound when they ask the machine for its language", () => {
    expect(() => sound(() => sheet(30, [words(0, 10, (1234).toLocaleString())]))).toThrow(
      "asked the machine",
    );
  });
});
