import { describe, expect, it } from "vitest";
import { type Fill, REST_FILL } from "../../src/charts/palette.js";
import {
  carrierFills,
  END_FILLS,
  ROW_FILLS,
  SCOPE_FILLS,
  stepFills,
} from "../../src/charts/part-fills.js";
import { carrierWords, stepWords } from "../../src/report/compose/names.js";
import { contrast, linear, luminance } from "./colour.js";

const ROLES =
  "pretreat pretreat-dry print fix steam wash squeeze dry store finish finish-dry finish-store";
const STEPS = ROLES.split(" ").map(stepWords);
const CARRIERS = ["electricity", "fuel.natural-gas", "steam.bought"].map(carrierWords);
const OTHERS = ["one", "two", "three"];

const steps = stepFills([...STEPS, ...OTHERS]);
const carriers = carrierFills([...CARRIERS, ...OTHERS, "four", "five", "six"]);
const families = [
  [...steps, REST_FILL],
  carriers,
  Object.values(SCOPE_FILLS),
  Object.values(ROW_FILLS),
  Object.values(END_FILLS),
];
const all = families.flat();

// Lightness in three classes, far enough apart to be told apart in grey print.
function grey({ colour }: Fill): string {
  const light = luminance(colour);
  return light < 0.18 ? "dark" : light < 0.45 ? "middling" : "light";
}

describe("fills of parts", () => {
  it("are the same for a step whatever stands beside it", () => {
    expect(STEPS).toHaveLength(12);
    for (const [index, step] of STEPS.entries()) {
      expect(stepFills([step])).toEqual([steps[index]]);
      expect(stepFills([...OTHERS, step]).at(-1)).toEqual(steps[index]);
    }
    for (const [index, carrier] of CARRIERS.entries()) {
      expect(carrierFills(["LPG", carrier])[1]).toEqual(carriers[index]);
    }
  });

  it("are the same for a step that is not listed, as long as it is the only one", () => {
    const [alone] = stepFills(["singeing"]);
    expect(stepFills([...STEPS, "singeing"]).at(-1)).toEqual(alone);
  });

  it("can be told apart in grey print by lightness and pattern", () => {
    for (const family of families) {
      const looks = family.map((fill) => `${grey(fill)} ${fill.pattern}`);
      expect(new Set(looks).size).toBe(family.length);
    }
  });

  it("do not use one colour for two kinds of part", () => {
    const kinds = [steps, carriers, Object.values(SCOPE_FILLS)].map(
      (family) => new Set(family.map(({ colour }) => colour)),
    );
    const sizes = kinds.reduce((sum, { size }) => sum + size, 0);
    expect(new Set(kinds.flatMap((kind) => [...kind])).size).toBe(sizes);
  });

  // Red and green are what most of those who confuse colours confuse: no ground is more than a tint of either.
  it("are neither green nor red", () => {
    for (const { colour } of all) {
      const [red, green, blue] = linear(colour);
      expect(green).toBeLessThanOrEqual(1.02 * Math.max(red, blue));
      expect(red > 2.5 * green && red > 2.5 * blue && green < 1.5 * blue).toBe(false);
    }
  });

  // WCAG 2.2, success criterion 1.4.3: 4.5 to 1 for letters of ordinary size.
  it("let letters be read, and their lines be seen", () => {
    for (const { colour, letters, line, pattern } of all) {
      expect(contrast(colour, letters)).toBeGreaterThanOrEqual(4.5);
      if (pattern !== "plain") expect(contrast(colour, line)).toBeGreaterThan(1.9);
    }
  });

  it("start again when there are more parts than fills", () => {
    const many = stepFills(Array.from({ length: 30 }, (_, index) => `step ${index}`));
    expect(many).toHaveLength(30);
    expect(new Set(many).size).toBe(15);
  });
});
