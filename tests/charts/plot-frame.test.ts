import * as Plot from "@observablehq/plot";
import { describe, expect, it } from "vitest";
import { sheet } from "../../src/charts/nodes.js";
import {
  acrossAxis,
  acrossName,
  plotted,
  tickCount,
  upwardAxis,
} from "../../src/charts/plot-frame.js";
import { interWidth } from "../../src/charts/text-width.js";
import { LONG } from "./sample-data.js";
import { at, elements, sound, texts } from "./sound.js";

const frame = { left: 100, right: 600, top: 10, bottom: 60 };
const ticks = { values: [0, 2000, 4000], digits: 0 };

describe("plots", () => {
  it("place values on their scales", () => {
    const plot = plotted(frame, { domain: [0, 5000] }, { domain: [0, 10] }, []);
    expect([0, 2500, 5000].map(plot.x)).toEqual([100, 350, 600]);
    expect([0, 10].map(plot.y)).toEqual([60, 10]);
  });

  it("take heights on the sheet as they are when they have no scale for them", () => {
    const plot = plotted(frame, { domain: [0, 1] }, undefined, [
      Plot.rect([1], { x1: 0, x2: 0.5, y1: 20, y2: 40 }),
    ]);
    const [rect] = elements(sheet(80, [plot.node]), "rect");
    expect(rect?.attributes).toMatchObject({ x: "100", y: "20", width: "250", height: "20" });
  });

  it("print round numbers below their lines", () => {
    const drawing = sound(() =>
      sheet(80, [plotted(frame, { domain: [0, 5000] }, undefined, acrossAxis(ticks)).node]),
    );
    expect(texts(drawing).map(({ text }) => text)).toEqual(["0", "2\u202f000", "4\u202f000"]);
    expect(elements(drawing, "line").map((line) => at(line, "x1"))).toEqual([100, 300, 500]);
    const [first] = texts(drawing);
    expect(((first?.left ?? 0) + (first?.right ?? 0)) / 2).toBeCloseTo(100, 1);
    expect(first?.top).toBeGreaterThan(60);
  });

  it("print them left of their lines on an upward axis", () => {
    const drawing = sound(() =>
      sheet(80, [
        plotted(frame, { domain: [0, 1] }, { domain: [0, 4000] }, upwardAxis(ticks)).node,
      ]),
    );
    for (const { right } of texts(drawing)) expect(right).toBeLessThan(100);
    expect(elements(drawing, "line").map((line) => at(line, "y1"))).toEqual([60, 35, 10]);
  });
});

describe("axes", () => {
  it("have as many numbers as fit", () => {
    expect(tickCount(frame)).toBe(7);
    expect(tickCount({ ...frame, right: 320 })).toBe(3);
    expect(tickCount({ ...frame, right: 110 })).toBe(2);
  });

  it("are named below their numbers, flush right, in lines", () => {
    const short = acrossName("water, L/m²", frame, interWidth);
    const long = acrossName(`${LONG}, ${LONG}, g/m²`, frame, interWidth);
    const drawing = sheet(160, long.nodes);
    expect(long.height).toBeGreaterThan(short.height);
    for (const { left, right } of texts(drawing)) {
      expect(left).toBeGreaterThanOrEqual(0);
      expect(right).toBeCloseTo(600, 6);
    }
  });
});
