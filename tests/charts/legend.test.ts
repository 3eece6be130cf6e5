import { describe, expect, it } from "vitest";
import { fillItem, legend, swatch } from "../../src/charts/legend.js";
import { sheet } from "../../src/charts/nodes.js";
import { fill, WHITE } from "../../src/charts/palette.js";
import { stepFills } from "../../src/charts/part-fills.js";
import { interWidth } from "../../src/charts/text-width.js";
import { LONG } from "./sample-data.js";
import { sound, texts } from "./sound.js";

const laid = (labels: readonly string[], right = 640) =>
  legend(
    labels.map((label, index) => fillItem(label, stepFills(labels)[index] ?? fill(WHITE))),
    0,
    right,
    interWidth,
  );

describe("legend", () => {
  it("reads in order, in rows that end within the sheet", () => {
    const labels = Array.from({ length: 14 }, (_, index) => `step number ${index + 1}`);
    const key = laid(labels);
    const drawing = sound(() => sheet(key.height, key.nodes));
    const read = [...texts(drawing)].sort((a, b) => a.top - b.top || a.left - b.left);
    expect(read.map(({ text }) => text)).toEqual(labels);
  });

  it("breaks a label longer than the sheet", () => {
    const key = laid([`${LONG}, ${LONG}`, "pad"]);
    const lines = texts(sound(() => sheet(key.height, key.nodes)));
    expect(lines.length).toBeGreaterThan(2);
  });

  it("takes no room without entries", () => {
    expect(laid([])).toEqual({ nodes: [], height: 0 });
  });
});

describe("samples", () => {
  it("of a white ground have an outline", () => {
    expect(
      swatch(10, 10, 16, 10, fill(WHITE)).some(({ attributes }) => "stroke" in attributes),
    ).toBe(true);
    const plain = swatch(10, 10, 16, 10, fill("#35719c"));
    expect(plain).toHaveLength(1);
    expect(plain[0]?.attributes).toMatchObject({ x: "2", y: "5", width: "16", height: "10" });
  });
});
