import { describe, expect, it } from "vitest";
import { dotAxis } from "../../src/charts/dot-axis.js";

describe("axis of dots", () => {
  it("starts at 0 where the values lie within two powers of ten", () => {
    const axis = dotAxis([0.5, 20, 50]);
    expect(axis).toMatchObject({ isLog: false, note: "" });
    expect(axis.domain[0]).toBe(0);
    expect(axis.domain[1]).toBeGreaterThan(50);
    expect(axis.ticks.map(axis.print)).toEqual(["0", "10", "20", "30", "40", "50"]);
  });

  it("is logarithmic beyond that, and says so", () => {
    const axis = dotAxis([0.5, 50.5]);
    expect(axis).toMatchObject({ isLog: true, note: ", logarithmic scale" });
    expect(axis.breakAt).toBeUndefined();
    expect(axis.ticks.map(axis.print)).toContain("0.5");
    expect(axis.place(3)).toBe(3);
  });

  it("sets 0 apart on a logarithmic scale", () => {
    const axis = dotAxis([0, 0.1, 100]);
    const zero = axis.place(0);
    expect(axis.note).toContain("0 set apart");
    expect(axis.print(zero)).toBe("0");
    expect(zero).toBeGreaterThan(axis.domain[0]);
    expect(zero).toBeLessThan(axis.breakAt ?? 0);
    expect(axis.breakAt).toBeLessThan(0.1);
  });

  it("is not logarithmic with values below 0", () => {
    const axis = dotAxis([-1, 0.001, 100]);
    expect(axis.isLog).toBe(false);
    expect(axis.domain[0]).toBeLessThan(-1);
  });

  it.each([[[]], [[0, 0]]])("prints no number but 0 for %j", (values: readonly number[]) => {
    const axis = dotAxis(values);
    expect(axis.ticks.map(axis.print)).toEqual(["0"]);
    expect(axis.domain[1]).toBeGreaterThan(axis.domain[0]);
  });
});
