import { describe, expect, it } from "vitest";
import { FigureDesk } from "../../../src/report/figure-desk.js";
import { meterWords, standingTable } from "../../../src/report/suppliers/standing-table.js";
import { COMPARED } from "./whole.js";

const [water] = COMPARED.results;

describe("the table of page one", () => {
  it("has the same number of cells in every row", () => {
    const desk = new FigureDesk();
    const table = standingTable(COMPARED, water!, desk);
    if (table.kind !== "table") throw new Error(table.kind);
    for (const row of table.rows) expect(row).toHaveLength(table.head.length);
    expect(Object.keys(desk.figures)).toContain("water.Supplier Ash.crude");
  });

  it("shows values as they stand beside those at the mix, and none where a step is left out", () => {
    const desk = new FigureDesk();
    const table = JSON.stringify(standingTable(COMPARED, water!, desk));
    expect(desk.figures["water.Supplier Ash.value"]!.value).toBe(
      water!.standings.ranked.find(({ alias }) => alias === "Supplier Ash")!.value!.median,
    );
    expect(desk.figures).not.toHaveProperty(["water.Supplier Dell.value"]);
    expect(desk.figures).not.toHaveProperty(["water.Supplier Dell.crude"]);
    expect(table).toContain("–, washing not counted");
  });

  it("sets the site meter beside it", () => {
    const [ash] = COMPARED.candidates;
    expect(meterWords(ash!, { id: "water" })).toMatch(/^[\d.]+ L\/m², 1\.3×$/);
    expect(meterWords(ash!, { id: "salt" })).toBe("–");
    const bare = { ...ash!, given: { ...ash!.given, pack: { ...ash!.given.pack, meters: [] } } };
    expect(meterWords(bare, { id: "water" })).toBe("no readings");
  });
});
