import { describe, expect, it } from "vitest";
import { FigureDesk } from "../../../src/report/figure-desk.js";
import {
  cellTable,
  chancePair,
  freeTable,
  orderTable,
  printed,
  printingOf,
  sameAs,
  scaled,
} from "../../../src/report/suppliers/supplier-tables.js";
import { COMPARED } from "./whole.js";

const [water] = COMPARED.results;

describe("tables of suppliers", () => {
  it("have the same number of cells in every row", () => {
    const desk = new FigureDesk();
    for (const table of [
      cellTable(COMPARED, water!, desk),
      ...freeTable(water!, desk),
      orderTable(COMPARED, water!, desk),
    ]) {
      if (table.kind !== "table") throw new Error(table.kind);
      for (const row of table.rows) expect(row).toHaveLength(table.head.length);
    }
  });

  it("print a value with the digits its interval carries, wherever it stands", () => {
    expect(printed({ median: 3.3281, low: 2.9, high: 3.8 })).toBe("3.3");
    expect(printed({ median: 1.7321, low: 1.58, high: 1.91 })).toBe("1.73");
  });

  it("withhold chances where meters do not bear a house out, and say what a place rests on", () => {
    const [one] = water!.standings.ranked;
    expect(chancePair({ ...one!, unborne: true })).toBe("withheld");
    expect(chancePair({ ...one!, chances: [0.96], chancesDrawn: [0.4] })).toBe(
      "40\u00a0% / 96\u00a0%",
    );
    expect(sameAs({ ...one!, unborne: true }, water!.standings.ranked)).toContain("not borne out");
    const value = { median: 1, low: 0.5, high: 2 };
    const counted = { median: 9, low: 8, high: 10 };
    expect(sameAs({ ...one!, value, counted }, [])).toContain("place by unsaid settings");
  });

  it("print in the units of reports", () => {
    expect(printingOf(water!).unit).toBe("L/m²");
    expect(scaled({ median: 1, low: 0.5, high: 2 }, 10)).toEqual({ median: 10, low: 5, high: 20 });
    expect(freeTable({ ...water!, free: undefined } as never, new FigureDesk())).toEqual([]);
  });
});
