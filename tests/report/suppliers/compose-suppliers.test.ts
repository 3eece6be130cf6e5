import { describe, expect, it } from "vitest";
import { drawingFaults } from "../../../src/charts/drawing-rules.js";
import { drawCharts } from "../../../src/report/draw-charts.js";
import { composeSuppliers } from "../../../src/report/suppliers/compose-suppliers.js";
import { documentTexts } from "../../../src/report/wording/document-texts.js";
import { judgeWording } from "../../../src/report/wording/judge.js";
import { compareSuppliers } from "../../../src/suppliers/compare-suppliers.js";
import { SHIPPED } from "../../tools/shipped-factors.js";
import { COMPARED, GIVEN, TEMPLATE } from "./whole.js";

const REPORT = { date: "2026-11-25", version: "0.1.0", seed: 1, draws: 200 };
const document = composeSuppliers(COMPARED, REPORT, TEMPLATE);
const text = documentTexts(document).join("\n");
const kinds = document.blocks.map(({ kind }) => kind);

describe("the report on suppliers", () => {
  it("says whether they can be compared before any number of theirs", () => {
    expect(JSON.stringify(document.blocks[1])).toContain("Partly comparable");
    expect(JSON.stringify(document.blocks.slice(0, 2))).not.toContain("figure-ref");
    expect(text).toContain("Supplier Dell counts no washing on reactive routes");
  });

  it("says in one sentence why the order is turned round", () => {
    expect(text).toMatch(
      /As it stands Supplier Ash takes less than Supplier Brook \([\d.]+ and [\d.]+ L\/m²\) because \d+\s% of its cloth is pigment, against \d+\s% there and 40\s% in the mix; at the mix it takes more/,
    );
  });

  it("counts only those who have a value, and says who has none", () => {
    expect(text).toContain("2 suppliers stand on one unit");
    expect(text).toContain("Supplier Dell has no value at the mix");
  });

  it("names the chance it prints, and what error would turn the order", () => {
    expect(text).toMatch(
      /takes less than Supplier \w+ \(chance with unsaid settings at their unfavourable end [^,]+, drawn [^)]+\); a value [\d.]+\s% too low would lose it that/,
    );
  });

  it("says on page one why twins stay out", () => {
    const [given] = GIVEN;
    const both = compareSuppliers([...GIVEN, { ...given!, alias: "Supplier Ford" }], {
      shipped: SHIPPED,
      asOf: "2026-11-25",
      draws: 100,
      seed: 1,
      ids: ["water"],
    });
    const page = JSON.stringify(composeSuppliers(both, REPORT, TEMPLATE).blocks.slice(0, 3));
    expect(page).toContain(
      "Supplier Ash and Supplier Ford stay out, for lots and settings are the same",
    );
    expect(page).not.toContain("did not verify");
  });

  it("begins every caption with a capital", () => {
    const captions = document.blocks.flatMap((block) =>
      block.kind === "table" ? [block.caption] : block.kind === "figure" ? [block.title] : [],
    );
    expect(captions.filter((caption) => !/^(?:Figure \d+\. )?\p{Lu}/u.test(caption))).toEqual([]);
  });

  it("never prints a place without its chance", () => {
    const standing = document.blocks.find(
      (block) => block.kind === "table" && block.id === "standing-water",
    );
    expect(JSON.stringify(standing)).toContain("Takes least");
    expect(text).not.toMatch(/\b(?:winner|best|worst|top|rank(?:ed|ing)? (?:first|no))\b/i);
    expect(text).not.toMatch(/medal|league|grade [A-E]\b/i);
  });

  it("gives no value to a stratum without data, and says which", () => {
    expect(text).toContain("no value: washing is not counted");
    expect(text).not.toMatch(/\bNaN\b|undefined/);
  });

  it("has figures C-F1 to C-F4 with their tables, and all of them can be drawn", () => {
    const figures = drawCharts(document).blocks.filter((block) => block.kind === "figure");
    expect(figures.map(({ id }) => id)).toEqual([
      ...["suppliers-water", "mix-water", "places-water", "places-drawn-water", "stability-water"],
      ...["suppliers-energy", "mix-energy", "places-energy", "places-drawn-energy"],
      "stability-energy",
    ]);
    for (const figure of figures) expect(drawingFaults(figure.drawing!)).toEqual([]);
    for (const id of [
      "conditions",
      "mix",
      "boundary-matrix",
      "cells-water",
      "checks",
      "questions",
      "packs",
      "free-water",
    ])
      expect(
        document.blocks.some((block) => block.kind === "table" && block.id === id),
        id,
      ).toBe(true);
    expect(kinds.indexOf("table")).toBeGreaterThan(0);
  });

  it("says that unchanged and signed is not true, and whom it is for", () => {
    expect(text).toContain("Whole and signed does not mean true");
    expect(text).toContain("do not");
    expect(document.footer).toContain("for the buyer alone");
  });

  it("keeps to the wording of reports", () => {
    const found = documentTexts(document).flatMap((one) => judgeWording(one, ["en"], []).found);
    expect(found.filter(({ level }) => level === "refused")).toEqual([]);
  });

  it("stands where nobody is left", () => {
    const none = composeSuppliers(
      { ...COMPARED, gate: { ...COMPARED.gate, verdict: "not comparable" }, results: [] },
      REPORT,
      TEMPLATE,
    );
    expect(documentTexts(none).join("\n")).toContain("Not comparable");
  });
});
