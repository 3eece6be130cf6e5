import { describe, expect, it } from "vitest";
import { FigureDesk, numberCell, textCell } from "../../src/report/figure-desk.js";

describe("FigureDesk", () => {
  it("notes a median with its interval and prints what it noted", () => {
    const desk = new FigureDesk();
    const noted = desk.range("water.dye", { median: 41.26, low: 33.9, high: 55.2 }, "L/m²");
    expect(noted.run).toEqual({ kind: "figure-ref", figure: "water.dye", text: "41" });
    expect(noted.value).toEqual({ figure: "water.dye", text: "41" });
    expect(noted.interval).toBe("34 to 55");
    expect(desk.figures).toEqual({
      "water.dye": {
        value: 41.26,
        low: 33.9,
        high: 55.2,
        unit: "L/m²",
        digits: 0,
        of: "median",
      },
    });
  });

  it("notes a count without an interval", () => {
    const desk = new FigureDesk();
    const noted = desk.plain("yield", 97.31, "%", { digits: 1, of: "count" });
    expect([noted.run, noted.interval]).toEqual([
      { kind: "figure-ref", figure: "yield", text: "97.3" },
      "",
    ]);
    expect(desk.figures["yield"]).toEqual({ value: 97.31, unit: "%", digits: 1, of: "count" });
  });

  it("keeps provenance where it is given", () => {
    const desk = new FigureDesk();
    const provenance = { measured: 0, allocated: 0, modelled: 0.4, default: 0.6 };
    desk.range("a", { median: 1, low: 1, high: 1 }, "L", { provenance });
    expect(desk.figures["a"]).toMatchObject({ provenance });
  });

  it.each([NaN, Infinity])("takes no %d for a number", (value) => {
    const desk = new FigureDesk();
    expect(() => desk.plain("odd", value, "L", { digits: 1 })).toThrow(
      "Figure odd is not a number.",
    );
    expect(() => desk.plain("odd", value, "L")).toThrow("expected a finite number");
    expect(desk.figures).toEqual({});
  });
});

describe("cells", () => {
  it("sets numbers flush right and texts not", () => {
    expect(numberCell("3").align).toBe("right");
    expect(textCell("three").align).toBeUndefined();
    expect(textCell("three", true)).toEqual({
      runs: [{ kind: "text", text: "three" }],
      strong: true,
    });
    const run = { kind: "figure-ref", figure: "a", text: "3" } as const;
    expect(numberCell(run).runs).toEqual([run]);
  });
});
