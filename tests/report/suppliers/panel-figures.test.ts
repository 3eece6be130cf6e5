import { describe, expect, it } from "vitest";
import type { SupplierPanelsData } from "../../../src/charts/supplier-panels.js";
import type { Block } from "../../../src/report/document.js";
import { drawCharts } from "../../../src/report/draw-charts.js";
import { composeSuppliers } from "../../../src/report/suppliers/compose-suppliers.js";
import { panelFigures } from "../../../src/report/suppliers/panel-figures.js";
import type { SuppliersCompared } from "../../../src/suppliers/compare-suppliers.js";
import type { Standing } from "../../../src/suppliers/standings.js";
import { COMPARED, TEMPLATE } from "./whole.js";

const [water] = COMPARED.results;
const REPORT = { date: "2026-11-25", version: "0.1.0", seed: 1, draws: 200 };
type Change = (i: number) => Partial<Standing> | { readonly group: undefined };

/** As many suppliers as wanted, all like the first but for their place. */
function manyOf(count: number, change: Change): SuppliersCompared {
  const [candidate] = COMPARED.candidates;
  const [one] = water!.suppliers;
  const standing = water!.standings.ranked.find(({ alias }) => alias === one!.alias)!;
  const alias = (i: number): string => `Supplier ${i + 1}`;
  const all = Array.from({ length: count }, (_, i) => i);
  const chances = all.map(() => 1 / count);
  const ranked = all.map((i): Standing => {
    const { group, ...rest } = { ...standing, ...change(i) };
    return {
      ...rest,
      ...(group === undefined ? {} : { group }),
      ...{ chances, chancesDrawn: chances, alias: alias(i) },
    };
  });
  const standings = { ranked, unranked: [], others: [] };
  const suppliers = all.map((i) => ({ ...one!, alias: alias(i) }));
  return {
    ...COMPARED,
    candidates: all.map((i) => ({ ...candidate!, alias: alias(i) })),
    results: [{ ...water!, suppliers, standings }],
  };
}

function dataOf(block: Block | undefined): SupplierPanelsData {
  if (block?.kind !== "figure" || block.chart?.kind !== "supplier-panels") throw new Error("none");
  return block.chart.data;
}
const shown = (data: SupplierPanelsData): readonly (readonly string[])[] =>
  data.parts.map(({ words, panels }) => [words, ...panels.map(({ name }) => name)]);
const figures = (compared: SuppliersCompared): readonly Block[] =>
  panelFigures(compared, compared.results[0]!);

describe("panels of many suppliers", () => {
  it("stand by name among those told apart, then group by group, then what meters do not bear out", () => {
    const compared = manyOf(14, (i) => {
      if (i === 5) return { group: undefined };
      return { group: i < 3 ? 10 + i : i < 9 ? 2 : 3 };
    });
    expect(figures(compared).map((one) => shown(dataOf(one)))).toEqual([
      [
        ["told apart from all others", "Supplier 1", "Supplier 2", "Supplier 3"],
        ["not told apart", ...[4, 5, 7, 8, 9].map((i) => `Supplier ${i}`)],
        ["not told apart", ...[10, 11, 12, 13, 14].map((i) => `Supplier ${i}`)],
        ["not borne out by meters", "Supplier 6"],
      ],
    ]);
  });

  it("print value and what is taken as it stands from the comparison", () => {
    const [supplier] = water!.suppliers;
    const standing = water!.standings.ranked.find(({ alias }) => alias === supplier!.alias)!;
    const data = dataOf(figures(manyOf(13, () => ({ group: 1 })))[0]);
    expect(data.parts[0]!.panels[0]).toMatchObject({
      value: { median: expect.closeTo(standing.value!.median, 9) as number },
      crude: expect.closeTo(supplier!.crude.median, 9) as number,
    });
  });

  it("are shared out to figures of 24 on one scale, and a part that goes on says so", () => {
    const pages = figures(manyOf(50, () => ({ group: 1 })));
    expect(pages.map((one) => (one.kind === "figure" ? one.id : ""))).toEqual([
      "panels-water",
      "panels-water-2",
      "panels-water-3",
    ]);
    const data = pages.map(dataOf);
    expect(data.map(({ parts }) => parts[0]!.panels.length)).toEqual([24, 24, 2]);
    expect(data.map(({ parts }) => parts[0]!.isContinued)).toEqual([undefined, true, true]);
    expect(data[2]!.held).toEqual(data[0]!.held);
  });

  it("keep one upper end far out from squeezing the rest", () => {
    const range = { median: 4, low: 3, high: 5 };
    const compared = manyOf(13, (i) => ({
      group: 1,
      value: i === 4 ? { ...range, high: 5000 } : range,
    }));
    const { held, parts } = dataOf(figures(compared)[0]);
    expect(Math.max(...held)).toBeLessThan(5000);
    expect(parts[0]!.panels[4]!.value!.high).toBe(5000);
  });

  it("show no value of another mix or of another thing", () => {
    const compared = manyOf(13, () => ({ group: 1 }));
    const [result] = compared.results;
    const [none] = result!.standings.ranked;
    const [first, ...rest] = result!.suppliers;
    const [figure] = panelFigures(compared, {
      ...result!,
      suppliers: [{ ...first!, holed: ["washing"] }, ...rest],
      standings: {
        ...result!.standings,
        ranked: result!.standings.ranked.slice(1),
        unranked: [{ alias: none!.alias, covered: 0.4, value: none!.value! }],
      },
    });
    const last = dataOf(figure).parts.at(-1)!;
    expect(last.words).toBe("no place");
    expect(last.panels).toEqual([
      {
        name: "Supplier 1",
        note: expect.stringMatching(/^covers 40\s%; no washing$/) as string,
        isHollow: expect.any(Boolean) as boolean,
      },
    ]);
  });
});

describe("the report", () => {
  const ids = (count: number): readonly string[] =>
    drawCharts(
      composeSuppliers(
        manyOf(count, () => ({ group: 1 })),
        REPORT,
        TEMPLATE,
      ),
    ).blocks.flatMap((block) =>
      block.kind === "figure" && block.drawing !== undefined ? [block.id] : [],
    );

  it("has panels with their table from 13 suppliers on, and rows and slopes below", () => {
    expect(ids(14)).toEqual(["panels-water", "places-water", "places-drawn-water"]);
    expect(ids(12)).toEqual(["suppliers-water", "mix-water", "places-water", "places-drawn-water"]);
    const { blocks } = composeSuppliers(
      manyOf(14, () => ({ group: 1 })),
      REPORT,
      TEMPLATE,
    );
    const at = blocks.findIndex((block) => block.kind === "figure" && block.id === "panels-water");
    const table = blocks[at - 1];
    if (table?.kind !== "table") throw new Error("no table before the panels");
    expect([table.id, table.rows.length]).toEqual(["standing-water", 14]);
  });
});
