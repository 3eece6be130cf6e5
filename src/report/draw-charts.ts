/**
 * Draws the charts of a report.
 */

import { drawChart, drawNarrow } from "../charts/chart.js";
import type { Block, ReportDocument } from "./document.js";

/**
 * The report with its charts drawn.
 *
 * @param document - the report as composed
 * @returns the same report with a picture in every figure that has a chart
 * @throws Error when a chart's data cannot be drawn
 */
export function drawCharts(document: ReportDocument): ReportDocument {
  return { ...document, blocks: document.blocks.map(drawn) };
}

function drawn(block: Block): Block {
  if (block.kind === "box") return { ...block, blocks: block.blocks.map(drawn) };
  if (block.kind !== "figure" || block.chart === undefined) return block;
  const { chart, ...rest } = block;
  const narrow = drawNarrow(chart);
  return { ...rest, drawing: drawChart(chart), ...(narrow === undefined ? {} : { narrow }) };
}
