import { describe, expect, it } from "vitest";
import type { Cell, Run } from "../../../src/report/document.js";
import { ReportDesk } from "../../../src/report/compose/desk.js";
import { yieldFall, yieldRow } from "../../../src/report/compose/first-quality.js";
import { inputOf, LOTS, lotOf, smallMill } from "./small-mill.js";
import { inputWithYields, share } from "./with-yields.js";

const textOf = (runs: readonly Run[]): string =>
  runs.map((run) => (run.kind === "note-ref" ? "" : run.text)).join("");

const texts = (row: readonly Cell[]): readonly string[] => row.map(({ runs }) => textOf(runs));

describe("the yield on page one", () => {
  it("is what was logged on the lots of each route", () => {
    // Pigment 1,248 of 1,260 m, dye 1,170 of 1,190 m.
    expect(texts(yieldRow(new ReportDesk(inputOf())))).toEqual([
      "First-quality yield, %",
      "99.05",
      "98.32",
      "\u22120.73",
      "–",
      "–",
      "logged",
      "–",
    ]);
  });

  it("has no number for a route without lots", () => {
    const lots = LOTS.filter(({ route }) => route === "reactive");
    const row = texts(yieldRow(new ReportDesk(inputOf(smallMill(), lots))));
    expect(row.slice(1, 4)).toEqual(["no lots", "98.32", "–"]);
  });

  it("is drawn where the plant file gives yields", () => {
    const desk = new ReportDesk(inputWithYields({ pigment: share(0.8, 0.7, 0.9) }));
    const row = texts(yieldRow(desk));
    const figure = desk.figures.figures["yield.pigment"];
    // Half of the cloth is logged at 99.0 %, the rest lies between 70 and 90 %.
    expect(figure?.low).toBeGreaterThan(100 * ((1248 + 0.7 * 1190) / 2450));
    expect(figure?.high).toBeLessThan(100 * ((1248 + 0.9 * 1190) / 2450));
    expect(row[2]).toBe("98.7");
    expect(row[4]).toMatch(/^\d\.\d to \d+\.\d$/);
    expect(row.slice(6)).toEqual(["50\u00a0%", "yes"]);
  });
});

describe("a lower yield of pigment", () => {
  it("is named as something that gets worse", () => {
    const lots = [lotOf({ lot: "1", rejected: 40 }), lotOf({ lot: "2", route: "reactive" })];
    const fall = yieldFall(new ReportDesk(inputOf(smallMill(), lots)));
    expect(textOf(fall)).toBe(
      "first-quality yield falls from 99.00 to 90.00 % (as logged, on the lots that took each route)",
    );
    const given = yieldFall(new ReportDesk(inputWithYields({ pigment: share(0.5) })));
    expect(textOf(given)).toContain("with the yields of the plant file");
  });

  it("goes unsaid where it is not lower", () => {
    expect(yieldFall(new ReportDesk(inputOf()))).toEqual([]);
  });
});
