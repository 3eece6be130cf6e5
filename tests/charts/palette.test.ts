import { describe, expect, it } from "vitest";
import { INK, REST_FILL, ROUTE_FILLS, SOFT, WHITE } from "../../src/charts/palette.js";
import { carrierFills, stepFills } from "../../src/charts/part-fills.js";
import { contrast } from "./colour.js";

const ALL = [REST_FILL, ROUTE_FILLS.dye, ROUTE_FILLS.pigment];

describe("colours", () => {
  // WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for letters of ordinary size.
  it("let letters on every fill be read", () => {
    for (const { colour, letters } of ALL) {
      expect(contrast(colour, letters)).toBeGreaterThanOrEqual(4.5);
    }
    for (const letters of [INK, SOFT]) expect(contrast(letters, WHITE)).toBeGreaterThan(4.5);
  });

  it("let the lines of a pattern be seen on its ground", () => {
    for (const { colour, line, pattern } of ALL) {
      if (pattern !== "plain") expect(contrast(colour, line)).toBeGreaterThan(1.9);
    }
  });

  it("of the routes are kept for the routes, and differ in pattern too", () => {
    const routes = [ROUTE_FILLS.dye.colour, ROUTE_FILLS.pigment.colour];
    const names = Array.from({ length: 20 }, (_, index) => `part ${index}`);
    for (const { colour } of [...stepFills(names), ...carrierFills(names), REST_FILL]) {
      expect(routes).not.toContain(colour);
    }
    expect(routes).toEqual(["#f2c647", "#2a3f5e"]);
    expect(ROUTE_FILLS.dye.pattern).not.toBe(ROUTE_FILLS.pigment.pattern);
  });
});
