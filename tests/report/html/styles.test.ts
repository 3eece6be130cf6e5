import { describe, expect, it } from "vitest";
import { COLOURS, styleSheet } from "../../../src/report/html/styles.js";

/** Relative luminance: WCAG 2.2, definition of the term. */
function luminance(colour: string): number {
  const parts = [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255);
  const [r = 0, g = 0, b = 0] = parts.map((c) =>
    c <= 0.040_45 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (light + 0.05) / (dark + 0.05);
}

describe("styleSheet", () => {
  const css = styleSheet({ regular: "AAAA", semibold: "BBBB", italic: "CCCC" });

  it("holds the three faces and asks for nothing from outside", () => {
    const addresses = [...css.matchAll(/url\(([^)]*)\)/g)].map(([, address]) => address);
    expect(addresses).toEqual([
      "data:font/woff2;base64,AAAA",
      "data:font/woff2;base64,BBBB",
      "data:font/woff2;base64,CCCC",
    ]);
    expect(css).not.toMatch(/@import|<\/|\r/);
  });

  it("closes every brace it opens", () => {
    expect(css.split("{").length).toBe(css.split("}").length);
  });

  // WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for text.
  it.each(["ink", "soft", "link"] as const)("sets %s so that it can be read", (name) => {
    for (const ground of ["white", "ground", "mark"] as const) {
      expect(contrast(COLOURS[name], COLOURS[ground])).toBeGreaterThan(4.5);
    }
  });
});
