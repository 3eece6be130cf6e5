import { describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import {
  mixFigure,
  placeFigures,
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
      rows: [{ name: "Supplier Ash" }, { name: "Supplier Brook" }],
    });
    // Dell leaves washing out: its number would stand lowest, and be of another thing.
    expect(chartOf(mixFigure(water!))).toMatchObject({
      lines: [{ name: "Supplier Brook" }, { name: "Supplier Ash" }],
      note: expect.stringContaining("Supplier Dell counts no washing") as string,
    });
  });

  it("show whiskers in both columns, and both chances of places", () => {
    expect(chartOf(mixFigure(water!))).toHaveProperty("lines.0.whiskers.1.0", expect.any(Number));
    expect(placeFigures(water!).map((one) => (one.kind === "figure" ? one.title : ""))).toEqual([
      expect.stringContaining("at their unfavourable end"),
      expect.stringContaining("drawn from their defaults"),
    ]);
  });

  it("have the most on top, in figures of values and of places", () => {
    const [figure] = stabilityBlocks(water!);
    const values = (chartOf(figure!) as { lines: { name: string; values: number[] }[] }).lines;
    // Places stand with 1 on top: the house that takes most has it.
    expect(values.find(({ name }) => name === "Supplier Ash")!.values[0]).toBe(1);
  });

  it("have no row of places for who is not borne out by meters", () => {
    const ranked = water!.standings.ranked.map((one, i) =>
      i === 0 ? { ...one, unborne: true as const } : one,
    );
    const [end] = placeFigures({ ...water!, standings: { ...water!.standings, ranked } });
    expect(chartOf(end!)).toMatchObject({ rows: [{ name: ranked[1]!.alias }] });
  });

  it("gather places once there are many", () => {
    const one = water!.standings.ranked[0]!;
    const ranked = Array.from({ length: 50 }, (_, i) => ({
      ...one,
      alias: `S ${i}`,
      chances: Array.from({ length: 50 }, (_, k) => (k === i ? 1 : 0)),
    }));
    const [end] = placeFigures({ ...water!, standings: { ...water!.standings, ranked } });
    const data = chartOf(end!);
    expect(data).toMatchObject({
      columns: ["41 to 50", "31 to 40", "21 to 30", "11 to 20", "1 to 10"],
    });
    // Those of one group stand by name, numbers in the order of counting.
    expect(data).toHaveProperty("rows.12.chances", [0, 0, 0, 1, 0]);
    expect(data).toHaveProperty("rows.12.name", "S 12");
  });

  it("show orders under other assumptions with their table", () => {
    expect(stabilityBlocks(water!).map(({ kind }) => kind)).toEqual(["figure", "table"]);
    expect(
      stabilityBlocks({ ...water!, standings: { ranked: [], unranked: [], others: [] } }),
    ).toEqual([]);
  });
});
