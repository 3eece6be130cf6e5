import { describe, expect, it } from "vitest";
import { drawable, printedInterval, whiskerOf } from "../../src/charts/ranged.js";

describe("values with intervals", () => {
  it("have a whisker only where both ends are known and apart", () => {
    expect(whiskerOf({ value: 3, low: 2, high: 5 })).toEqual({ low: 2, high: 5 });
    expect(whiskerOf({ value: 3, low: 3, high: 3 })).toBeUndefined();
    expect(whiskerOf({ value: 3, low: 2 })).toBeUndefined();
    expect(whiskerOf({ value: 3, low: Number.NaN, high: 5 })).toBeUndefined();
  });

  it("print their interval", () => {
    expect(printedInterval({ value: 0, low: -1.25, high: 2 }, 1)).toBe("\u22121.3 to 2.0");
    expect(printedInterval({ value: 0 }, 1)).toBeUndefined();
  });

  it("are finite", () => {
    expect(drawable("picture", 4)).toBe(4);
    expect(() => drawable("picture by step, pad", Number.NaN)).toThrow(
      "picture by step, pad = NaN: expected a finite number",
    );
  });
});
