import { describe, expect, it } from "vitest";
import { classesOf, clothOf, coverageOf, routeOf, weightOf } from "../../src/suppliers/cloth.js";
import { packOf } from "./made.js";

describe("classes of cloth", () => {
  it.each([
    ["cotton", "cotton"],
    ["cotton 96 elastane 4", "cotton"],
    ["cotton 60 polyester 40", "cotton blend"],
    ["polyester 65 cotton 35", "polyester blend"],
    ["cotton 50 viscose 50", "cotton blend"],
    ["viscose 50 cotton 50", "cotton blend"],
  ])("take %s for %s", (blend, cloth) => {
    expect(clothOf(blend)).toBe(cloth);
  });

  it.each([
    ["0-50", "0-150"],
    ["100-150", "0-150"],
    ["150-200", "150-250"],
    ["250-300", "250+"],
    ["900-950", "250+"],
    ["other", "?"],
    ["-50-0", "?"],
  ])("take mass %s for %s", (band, weight) => {
    expect(weightOf(band)).toBe(weight);
  });

  it("take coverage by halves", () => {
    expect(["0-25", "25-50", "50-75", "75-100", "?", "other"].map(coverageOf)).toEqual([
      "0-50",
      "0-50",
      "50-100",
      "50-100",
      "?",
      "?",
    ]);
  });

  it("take routes by workflow and dye, whatever a house calls them", () => {
    const { boundary } = packOf();
    expect(routeOf(boundary, "pigment-calender")).toBe("pigment");
    expect(routeOf(boundary, "reactive")).toBe("reactive");
    expect(routeOf(boundary, "nothing")).toBe("?");
    expect(
      classesOf(boundary, {
        blend: "cotton",
        weight: "100-150",
        coverage: "50-75",
        route: "reactive",
      }),
    ).toEqual({
      cloth: "cotton",
      weight: "0-150",
      coverage: "50-100",
      route: "reactive",
    });
  });
});
