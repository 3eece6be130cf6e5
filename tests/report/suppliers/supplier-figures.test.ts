import { describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import {
  mixFigure,
  placeFigure,
  stabilityBlocks,
  standingFigure,
} from "../../../src/report/suppliers/supplier-figures.js";
import { COMPARED } from "./whole.js";

const [water] = COMPARED.results;

function chartOf(block: Block): unknown {
  if (block.kind !== "figure") throw new Error(block.kind);
  return block.chart?.data;
}

describe("figures of suppliers", () => {
  it("leave out who has no place", () => {
    expect(chartOf(standingFigure(COMPARED, water!))).toMatchObject({
      rows: [{ name: "Supplier Brook" }, { name: "Supplier Ash" }],
    });
    expect(chartOf(mixFigure(water!))).toMatchObject({
      lines: [{}, {}, { name: "Supplier Dell", values: [expect.any(Number), null] }],
    });
  });

  it("gather places once there are many", () => {
    const one = water!.standings.ranked[0]!;
    const ranked = Array.from({ length: 50 }, (_, i) => ({
      ...one,
      alias: `S ${i}`,
      chances: Array.from({ length: 50 }, (_, k) => (k === i ? 1 : 0)),
    }));
    const data = chartOf(placeFigure({ ...water!, standings: { ...water!.standings, ranked } }));
    expect(data).toMatchObject({
      columns: ["1 to 10", "11 to 20", "21 to 30", "31 to 40", "41 to 50"],
    });
    // Those of one group stand by name, numbers in the order of counting.
    expect(data).toHaveProperty("rows.12.chances", [0, 1, 0, 0, 0]);
    expect(data).toHaveProperty("rows.12.name", "S 12");
  });

  it("show orders under other assumptions with their table", () => {
    expect(stabilityBlocks(water!).map(({ kind }) => kind)).toEqual(["figure", "table"]);
    expect(
      stabilityBlocks({ ...water!, standings: { ranked: [], unranked: [], others: [] } }),
    ).toEqual([]);
  });
});
