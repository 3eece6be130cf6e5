import { composeReport } from "../../../src/report/compose/compose.js";
import type { ReportInput } from "../../../src/report/compose/input.js";
import { traced } from "../../../src/report/compose/traced.js";
import type { ReportDocument } from "../../../src/report/document.js";
import { drawCharts } from "../../../src/report/draw-charts.js";

/**
 * The report with everything in it that a reader meets.
 *
 * @param input - what it is made of
 * @param template - text of the template
 * @returns the report, traced and drawn
 */
export function wholeReport(input: ReportInput, template: string): ReportDocument {
  return drawCharts(traced(composeReport(input, template), input));
}
