/**
 * A document as one page of HTML, with its typeface inside.
 */

import { readFileSync } from "node:fs";
import type { ReportDocument } from "../report/document.js";
import { builtFile } from "./files.js";

/**
 * Writes a page. What it needs is loaded when it is called.
 *
 * @param document - the document with its charts drawn
 * @returns HTML
 */
export async function html(document: ReportDocument): Promise<string> {
  const [{ writeHtml }, { svgText }] = await Promise.all([
    import("../report/html/write-html.js"),
    import("../charts/svg.js"),
  ]);
  const font = (face: string): string =>
    readFileSync(builtFile(`fonts/inter-${face}.woff2`)).toString("base64");
  return writeHtml(document, {
    fonts: { regular: font("regular"), semibold: font("semibold"), italic: font("italic") },
    drawingSvg: svgText,
  });
}
