import { describe, expect, it } from "vitest";
import { importBars } from "../../src/charts/import-bars.js";
import type { Block, ReportDocument } from "../../src/report/document.js";
import { drawCharts, type Pictures } from "../../src/report/draw-charts.js";

const ROWS = { accepted: 90, corrected: 6, setAside: 4, outside: 0 };

const figure: Block = {
  kind: "figure",
  id: "import",
  title: "Figure 1. Rows",
  description: "Rows read.",
  chart: { kind: "import-bars", data: ROWS },
};
const text: Block = { kind: "paragraph", runs: [{ kind: "text", text: "No picture." }] };
const gap: Block = { ...figure, id: "gap", missing: "No readings." };

function document(...blocks: readonly Block[]): ReportDocument {
  return {
    title: "T",
    author: "A",
    language: "en",
    date: "2026-01-31",
    footer: "",
    blocks,
    figures: {},
  };
}

describe("drawCharts", () => {
  it("puts the picture in the place of the chart, in boxes too", () => {
    const box: Block = { kind: "box", title: "B", tone: "plain", blocks: [figure] };
    const { blocks } = drawCharts(document(figure, box));
    const { chart: _chart, ...rest } = figure;
    const drawn = { ...rest, drawing: importBars(ROWS), narrow: expect.anything() as unknown };
    expect(blocks).toEqual([drawn, { ...box, blocks: [drawn] }]);
  });

  it("leaves all else as it is", () => {
    const { chart: _chart, ...missing } = gap as Block & { readonly chart?: unknown };
    expect(drawCharts(document(text, missing)).blocks).toEqual([text, missing]);
  });

  it("draws a chart once for as long as its data are the same", () => {
    const pictures: Pictures = new Map();
    const first = drawCharts(document(figure), pictures).blocks[0];
    const again = { ...figure, id: "again", title: "Figure 2. Rows" };
    const [same, other] = drawCharts(
      document(again, { ...figure, chart: { kind: "import-bars", data: { ...ROWS, outside: 1 } } }),
      pictures,
    ).blocks;
    const drawing = (block: Block | undefined) =>
      block?.kind === "figure" ? block.drawing : undefined;
    expect(drawing(same)).toBe(drawing(first));
    expect(same).toMatchObject({ id: "again", title: "Figure 2. Rows" });
    expect(drawing(other)).not.toEqual(drawing(first));
    expect(pictures.size).toBe(2);
  });

  it("passes on what a chart complains of", () => {
    const spoilt = { ...figure, chart: { kind: "import-bars", data: { ...ROWS, accepted: -1 } } };
    expect(() => drawCharts(document(spoilt as Block))).toThrow(/./);
  });
});
