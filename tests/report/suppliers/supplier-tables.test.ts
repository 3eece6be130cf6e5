import { describe, expect, it } from "vitest";
import { FigureDesk } from "../../../src/report/figure-desk.js";
import {
  cellTable,
  freeTable,
  orderTable,
  printingOf,
  scaled,
  standingTable,
} from "../../../src/report/suppliers/supplier-tables.js";
import { COMPARED } from "./whole.js";

const [water] = COMPARED.results;

describe("tables of suppliers", () => {
  it("have the same number of cells in every row", () => {
    const desk = new FigureDesk();
    for (const table of [
      standingTable(COMPARED, water!, desk),
      cellTable(COMPARED, water!, desk),
      ...freeTable(water!, desk),
      orderTable(water!, desk),
    ]) {
      if (table.kind !== "table") throw new Error(table.kind);
      for (const row of table.rows) expect(row).toHaveLength(table.head.length);
    }
    expect(Object.keys(desk.figures)).toContain("water.Supplier Ash.crude");
  });

  it("show values as they stand beside those at the mix, and no value at a mix of its own", () => {
    const desk = new FigureDesk();
    standingTable(COMPARED, water!, desk);
    expect(desk.figures["water.Supplier Ash.value"]!.value).toBe(
      water!.standings.ranked.find(({ alias }) => alias === "Supplier Ash")!.value!.median,
    );
    expect(desk.figures).not.toHaveProperty(["water.Supplier Dell.value"]);
    expect(desk.figures).toHaveProperty(["water.Supplier Dell.crude"]);
  });

  it("print in the units of reports", () => {
    expect(printingOf(water!).unit).toBe("L/m²");
    expect(scaled({ median: 1, low: 0.5, high: 2 }, 10)).toEqual({ median: 10, low: 5, high: 20 });
    expect(freeTable({ ...water!, free: undefined } as never, new FigureDesk())).toEqual([]);
  });
});
