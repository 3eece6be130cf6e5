/**
 * Draws the charts of a report.
 */

import { drawChart, drawNarrow } from "../charts/chart.js";
import type { Block, ReportDocument } from "./document.js";

/** Pictures by the data they show, so that a chart of a proof is not drawn again. */
export type Pictures = Map<string, Pick<FigureBlock, "drawing" | "narrow">>;

type FigureBlock = Extract<Block, { kind: "figure" }>;

/**
 * The report with its charts drawn.
 *
 * @param document - the report as composed
 * @param pictures - charts drawn before; those drawn now are added
 * @returns the same report with a picture in every figure that has a chart
 * @throws Error when a chart's data cannot be drawn
 */
export function drawCharts(
  document: ReportDocument,
  pictures: Pictures = new Map(),
): ReportDocument {
  return { ...document, blocks: document.blocks.map((block) => drawn(block, pictures)) };
}

function drawn(block: Block, pictures: Pictures): Block {
  if (block.kind === "box")
    return { ...block, blocks: block.blocks.map((inner) => drawn(inner, pictures)) };
  if (block.kind !== "figure" || block.chart === undefined) return block;
  const { chart, ...rest } = block;
  const key = JSON.stringify(chart);
  let picture = pictures.get(key);
  if (picture === undefined) {
    const narrow = drawNarrow(chart);
    picture = { drawing: drawChart(chart), ...(narrow === undefined ? {} : { narrow }) };
    pictures.set(key, picture);
  }
  return { ...rest, ...picture };
}
