import { describe, expect, it } from "vitest";
import {
  type BoundaryStep,
  boundaryStrip,
  type Standing,
} from "../../src/charts/boundary-strip.js";
import { LONG, NAMES, UNBROKEN } from "./sample-data.js";
import { at, elements, sound, texts } from "./sound.js";

const step = (name: string, dye: Standing, pigment: Standing): BoundaryStep => ({
  name,
  dye,
  pigment,
});
const draw = (steps: readonly BoundaryStep[]) =>
  sound(() => boundaryStrip({ names: NAMES, steps }));
const said = (steps: readonly BoundaryStep[]): readonly string[] =>
  texts(draw(steps)).map(({ text }) => text);
const boxes = (steps: readonly BoundaryStep[]) =>
  elements(draw(steps), "rect").filter((rect) => at(rect, "height") > 14);

const STEPS = [
  step("pad", "counted", "counted"),
  step("steaming", "counted", "not present"),
  step("make-up", "not counted", "not counted"),
];

describe("strip of the boundary", () => {
  it("draws each step of each route in order, the same step below itself", () => {
    const all = boxes(STEPS);
    expect(all).toHaveLength(6);
    const across = all.map((box) => at(box, "x"));
    expect(across.slice(0, 3)).toEqual(across.slice(3));
    expect(across.slice(0, 3)).toEqual([...across.slice(0, 3)].sort((a, b) => a - b));
  });

  it("tells by outline and by words what is not present and what is not counted", () => {
    const dashed = boxes(STEPS).filter(({ attributes }) => "stroke-dasharray" in attributes);
    expect(dashed).toHaveLength(1);
    const notes = said(STEPS).filter((text) => text.startsWith("not "));
    expect(notes).toEqual([
      "not counted",
      "not present",
      "not counted",
      "not present",
      "not counted",
    ]);
  });

  it("leads the way of the cloth past a step that the route does not have", () => {
    const way = (dye: Standing): readonly string[] =>
      elements(
        draw([
          step("pad", "counted", "counted"),
          step("steam", dye, "counted"),
          step("wash", "counted", "counted"),
        ]),
        "path",
      ).flatMap(({ attributes }) =>
        attributes["stroke"] === "#5b6675" ? [attributes["d"] ?? ""] : [],
      );
    // Straight from box to box, or once round below.
    expect(way("counted").map((d) => d.split("V").length)).toEqual([1, 1]);
    expect(way("not present").map((d) => d.split("V").length)).toEqual([3, 1]);
    expect(way("not present")[0]?.split("M")).toHaveLength(2);
  });

  it("has no colour but greys", () => {
    for (const { attributes } of boxes(STEPS)) {
      for (const colour of [attributes["fill"], attributes["stroke"]]) {
        expect(["#ffffff", "#e4e9ef", "#1e2733", "#5b6675"]).toContain(colour);
      }
    }
  });

  it("goes on in the next row", () => {
    const many = Array.from({ length: 14 }, (_, n) => step(`step ${n + 1}`, "counted", "counted"));
    const heights = new Set(boxes(many).map((box) => at(box, "y")));
    expect(boxes(many)).toHaveLength(28);
    expect(heights.size).toBe(6);
  });

  it("explains only what it shows", () => {
    expect(said([step("pad", "counted", "counted")])).not.toContain("not present");
  });

  it("holds long names, one step and none", () => {
    draw([step(LONG, "not present", "counted"), step(UNBROKEN, "counted", "not counted")]);
    draw([step("printing", "counted", "counted")]);
    draw([]);
  });
});
