import { describe, expect, it } from "vitest";
import { markers } from "../../src/charts/markers.js";

const marks = [
  { x: 10, y: 20, radius: 4 },
  { x: 30.04, y: 20, radius: 2 },
];

describe("marks of lots", () => {
  it.each(["dye", "pigment"] as const)("of the %s route are one element", (route) => {
    const [path, ...more] = markers(route, marks);
    expect(more).toEqual([]);
    expect(path?.attributes["d"]?.split("M")).toHaveLength(3);
  });

  it("tell the routes apart by shape", () => {
    const [dye, pigment] = (["dye", "pigment"] as const).map(
      (route) => markers(route, marks)[0]?.attributes["d"] ?? "",
    );
    expect(dye).toContain("l");
    expect(dye).not.toContain("a");
    expect(pigment).toContain("a");
  });

  // Area of a square on its corner is 2 r², of a disc π r².
  it("look about as large on both routes", () => {
    const [, radius] = /l([\d.]+),/.exec(markers("dye", marks)[0]?.attributes["d"] ?? "") ?? [];
    expect((2 * Number(radius) ** 2) / (Math.PI * 4 ** 2)).toBeCloseTo(1, 1);
  });

  it("have no rim in the colour of the sheet, which would wipe out what lies below", () => {
    for (const route of ["dye", "pigment"] as const) {
      expect(markers(route, marks)[0]?.attributes["stroke"]).not.toBe("#ffffff");
    }
  });

  it("have their rims below them, so that a crowd keeps the colour of its route", () => {
    expect(markers("dye", marks)[0]?.attributes["paint-order"]).toBe("stroke");
  });

  it("share a crowd among few elements and lose none", () => {
    const crowd = Array.from({ length: 2000 }, (_, x) => ({ x, y: 0, radius: 2 }));
    const paths = markers("pigment", crowd).map(({ attributes }) => attributes["d"] ?? "");
    expect(paths.length).toBeGreaterThan(4);
    expect(paths.length).toBeLessThan(10);
    expect(paths.join("").split("M")).toHaveLength(2001);
  });

  it("are nothing without lots", () => {
    expect(markers("dye", [])).toEqual([]);
  });
});
