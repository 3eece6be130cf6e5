import { describe, expect, it } from "vitest";
import { type TwoWayMapData, twoWayMap } from "../../src/charts/two-way-map.js";
import { luminance } from "./colour.js";
import { LONG, UNBROKEN } from "./sample-data.js";
import { at, elements, sound, texts } from "./sound.js";

const POINTS = 21;

function rowsOf(of: (x: number, y: number) => number | null): TwoWayMapData["rows"] {
  const steps = Array.from({ length: POINTS }, (_, i) => i / (POINTS - 1));
  return steps.map((y) => steps.map((x) => of(x, y)));
}

const DATA: TwoWayMapData = {
  quantity: "final energy",
  across: { name: "fresh water of the wash, L/kg", low: 10, high: 60, today: 35 },
  up: { name: "exhaust air, kg/h", low: 1000, high: 5000, today: 2000 },
  // A plane: nothing is saved where x = 0.5, whatever y is.
  rows: rowsOf((x) => 80 * (x - 0.5)),
  today: 0,
};

const draw = (change: Partial<TwoWayMapData> = {}, width?: number) =>
  sound(() => twoWayMap({ ...DATA, ...change }, undefined, width));

describe("picture of two settings", () => {
  it("draws the line of nothing saved where it lies", () => {
    const drawing = draw();
    const group = elements(drawing, "g").find(
      ({ attributes }) => attributes["stroke-width"] === "2",
    );
    const [line] = group === undefined ? [] : elements({ ...drawing, children: [group] }, "path");
    const across = [...(line?.attributes["d"] ?? "").matchAll(/(-?[\d.]+),/g)].map((match) =>
      Number(match[1]),
    );
    const ring = elements(drawing, "circle").at(-1);
    // Today's value lies at the middle of the side, and so does the line.
    const there = across.filter((x) => Math.abs(x - at(ring, "cx")) < 0.5);
    expect(there.length).toBeGreaterThanOrEqual(POINTS);
  });

  it("says the shares of its bands in words, zero among the edges, and today's share", () => {
    const said = texts(draw({ today: 12 })).map(({ text }) => text);
    expect(said).toEqual(
      expect.arrayContaining([
        "below \u221220 %",
        "\u221220 to 0 %",
        "0 to 20 %",
        "20 % and more",
        "nothing saved",
        "today",
        "today 12 %",
        "fresh water of the wash, L/kg",
        "exhaust air, kg/h",
      ]),
    );
  });

  it("is darker the more is saved, so that it can be read in grey", () => {
    const fills = elements(draw(), "rect")
      .map(({ attributes }) => attributes["fill"] ?? "")
      .filter((colour) => /^#[0-9a-f]{6}$/.test(colour) && colour !== "#ffffff");
    const tones = [...new Set(fills)].map((colour) => luminance(colour));
    expect(tones.length).toBeGreaterThan(3);
    tones.slice(1).forEach((tone, i) => {
      expect(tone).toBeLessThan((tones[i] ?? NaN) + 1e-9);
    });
  });

  it("leaves the line out where all is saved or nothing", () => {
    const said = texts(draw({ rows: rowsOf((x) => 20 + 30 * x), today: 35 }));
    expect(said.map(({ text }) => text)).not.toContain("nothing saved");
  });

  it("marks cells of which no share is formed", () => {
    const gap = draw({ rows: rowsOf((x, y) => (x > 0.9 && y > 0.9 ? null : 10 * x)) });
    expect(texts(gap).map(({ text }) => text)).toContain("no share is formed");
    draw({ rows: rowsOf(() => null) });
  });

  it("sets names beside the side that runs upwards clear of each other", () => {
    const marks = ["wood", "coal", "fuel oil", "diesel", "gas"].map((label, i) => ({
      label,
      value: 3000 + 10 * i,
    }));
    const drawing = draw({ up: { ...DATA.up, marks } });
    expect(texts(drawing).map(({ text }) => text)).toEqual(
      expect.arrayContaining(["wood", "coal", "fuel oil", "diesel", "gas"]),
    );
  });

  it("holds long names, a level map, and a narrow sheet", () => {
    draw({ across: { ...DATA.across, name: LONG }, up: { ...DATA.up, name: UNBROKEN } });
    draw({ rows: rowsOf(() => 31), today: 31 });
    draw({ up: { ...DATA.up, today: 5000 }, across: { ...DATA.across, today: 60 } }, 360);
  });

  it("refuses a share that is no number", () => {
    expect(() => draw({ rows: rowsOf(() => NaN) })).toThrow(
      "picture of two settings, final energy = NaN",
    );
  });
});
