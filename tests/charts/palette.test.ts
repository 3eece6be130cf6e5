import { describe, expect, it } from "vitest";
import {
  INK,
  REST_FILL,
  ROUTE_FILLS,
  seriesFill,
  SOFT,
  WHITE,
  type Fill,
} from "../../src/charts/palette.js";

// WCAG 2.2, definitions of relative luminance and contrast ratio.
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((start) => {
    const part = parseInt(colour.slice(start, start + 2), 16) / 255;
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function contrast(one: string, other: string): number {
  const [dark = 0, light = 0] = [luminance(one), luminance(other)].sort((a, b) => a - b);
  return (light + 0.05) / (dark + 0.05);
}

const SERIES: readonly Fill[] = Array.from({ length: 14 }, (_, index) => seriesFill(index));
const ALL: readonly Fill[] = [...SERIES, REST_FILL, ROUTE_FILLS.dye, ROUTE_FILLS.pigment];

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
      if (pattern !== "plain") expect(contrast(colour, line)).toBeGreaterThan(2.2);
    }
  });
});

describe("fills", () => {
  // Lightness in three classes, far enough apart to be told apart in grey print.
  const grey = ({ colour }: Fill): string => {
    const light = luminance(colour);
    return light < 0.18 ? "dark" : light < 0.45 ? "middling" : "light";
  };

  it("can be told apart in grey print by lightness and pattern", () => {
    const looks = SERIES.map((fill) => `${grey(fill)} ${fill.pattern}`);
    expect(new Set(looks).size).toBe(SERIES.length);
  });

  it("change ground from one to the next", () => {
    for (const [index, fill] of SERIES.entries()) {
      expect(seriesFill(index + 1).colour).not.toBe(fill.colour);
    }
  });

  it("keep the colours of the routes for the routes", () => {
    const routes = [ROUTE_FILLS.dye.colour, ROUTE_FILLS.pigment.colour];
    for (const { colour } of [...SERIES, REST_FILL]) expect(routes).not.toContain(colour);
    expect(routes).toEqual(["#f2c647", "#2a3f5e"]);
    expect(ROUTE_FILLS.dye.pattern).not.toBe(ROUTE_FILLS.pigment.pattern);
  });

  it("start again after the last", () => {
    expect(seriesFill(14)).toEqual(seriesFill(0));
  });
});
