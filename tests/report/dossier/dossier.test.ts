import { describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import { composeDossier } from "../../../src/report/dossier/dossier.js";
import { SHIPPED, shippedFactor } from "../../tools/shipped-factors.js";
import { dossierWith, rowsOf, WHOLE } from "./whole.js";

describe("composeDossier", () => {
  const document = composeDossier(WHOLE);
  const headings = document.blocks.flatMap((block) => (block.kind === "heading" ? [block] : []));

  it("has a page with a picture and three tables for every factor", () => {
    const count = SHIPPED.factors.size;
    const of = (kind: Block["kind"]): number =>
      document.blocks.filter((block) => block.kind === kind).length;
    expect(of("figure")).toBe(count);
    expect(of("table")).toBe(3 * count + 1);
    expect(headings.filter(({ level }) => level === 3).map(({ text }) => text)).toEqual(
      [...SHIPPED.factors.keys()].sort(),
    );
  });

  it("starts a page in print for every factor, and for none twice", () => {
    // The first of a family shares the page that its family starts.
    headings.forEach(({ level, newPage, text }, i) => {
      if (level !== 3) return;
      expect(newPage === true, text).toBe(headings[i - 1]?.level === 3);
      if (newPage !== true) expect(headings[i - 1]?.newPage, text).toBe(true);
    });
  });

  it("gives every place a name of its own", () => {
    const names = document.blocks.flatMap((block) => ("id" in block ? [block.id] : []));
    expect(new Set(names).size).toBe(names.length);
  });

  it("leads from the index to every page", () => {
    const links = document.blocks.flatMap((block) =>
      block.kind === "list"
        ? block.items.flat().flatMap((run) => (run.kind === "link" ? [run.href] : []))
        : [],
    );
    expect(links).toEqual(headings.flatMap(({ level, id }) => (level === 3 ? [`#${id}`] : [])));
  });

  it("lists what carries most of the doubt, largest first", () => {
    const rows = rowsOf(document.blocks, "most-doubt");
    expect(rows).toHaveLength(15);
    const largest = rows.map((cells) =>
      Math.max(...cells.slice(1).map((cell) => parseFloat(cell) || 0)),
    );
    expect(largest).toEqual([...largest].sort((a, b) => b - a));
    expect(largest[0]).toBeGreaterThan(20);
  });

  it("shows what it is asked for alone", () => {
    const some = dossierWith({ shown: [shippedFactor("grid.PRT.intensity")] });
    const pages = some.blocks.filter((block) => block.kind === "heading" && block.level === 3);
    expect(pages).toMatchObject([{ text: "grid.PRT.intensity" }]);
    expect(rowsOf(some.blocks, "most-doubt").map(([factor]) => factor)).toEqual([
      "grid.PRT.intensity",
    ]);
    const idle = dossierWith({ shown: [shippedFactor("tumbler.load")] });
    expect(rowsOf(idle.blocks, "most-doubt")).toEqual([]);
  });
});
