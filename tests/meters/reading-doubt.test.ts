import { describe, expect, it } from "vitest";
import { interval95, medianOf } from "../../src/numbers/distributions.js";
import { lotsBehind, readingLeaf, scatterOf } from "../../src/meters/reading-doubt.js";
import { madeMill } from "./made.js";

describe("scatterOf", () => {
  it("falls with the root of the number of lots", () => {
    expect(scatterOf(1) / scatterOf(100)).toBeCloseTo(10, 9);
  });
});

describe("lotsBehind", () => {
  const { program, groups } = madeMill({});
  const all = groups.reduce((sum, { lots }) => sum + lots, 0);

  it("counts all lots of a site, those of the routes that pass a machine, and never fewer than one", () => {
    expect(lotsBehind(program, groups, { site: "main" })).toBe(all);
    expect(lotsBehind(program, groups, { site: "main", machines: ["range"] })).toBe(all / 2);
    expect(lotsBehind(program, groups, { site: "main", machines: ["none"] })).toBe(1);
  });
});

describe("readingLeaf", () => {
  it("is the sum, within its accuracy in 95 of 100 draws", () => {
    const { spread, unit } = readingLeaf("main", 2000, 0.05, "water");
    expect(unit).toBe("L");
    expect(medianOf(spread)).toBeCloseTo(2000, 6);
    const [low, high] = interval95(spread);
    expect(high / 2000).toBeCloseTo(Math.exp(0.05), 6);
    expect(low * high).toBeCloseTo(2000 ** 2, 0);
  });
});
