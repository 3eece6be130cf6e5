/**
 * `millrace report`: writes the report of both routes.
 */

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { setAsideCsv } from "../log/setaside.js";
import { composeReport } from "../report/compose/compose.js";
import type { ReportDocument } from "../report/document.js";
import { reportJson } from "../report/json.js";
import { type AssessOptions, assess } from "./assess.js";
import { asideCode, asideLimit } from "./aside.js";
import { EXIT } from "./exit.js";
import { builtFile, shippedFolder, writeAll } from "./files.js";
import { err, out, progress, tell } from "./say.js";
import { separatorOf } from "./workspace.js";

/** Problems shown before the rest is counted. */
const SHOWN = 3;

/** Options of the command. */
export interface ReportOptions extends AssessOptions {
  /** Folder for the reports. */
  readonly out: string;
  /** What to write. */
  readonly formats: readonly string[];
  /** Whether to print data. */
  readonly json?: boolean;
}

/**
 * Runs the command.
 *
 * @param logs - paths of logs
 * @param options - options
 * @returns exit code
 */
export async function report(logs: readonly string[], options: ReportOptions): Promise<number> {
  const limit = asideLimit(options.maxAside);
  const { assessment, problems } = await assess(logs, options);
  progress("");
  if (assessment === undefined) {
    if (options.json === true) out(JSON.stringify({ problems }, null, 2));
    else tell(problems);
    return EXIT.refused;
  }
  const { mill, reading, input } = assessment;
  const template = readFileSync(join(shippedFolder("templates"), "report.md"), "utf8");
  const document = composeReport(input, template);
  const files = new Map<string, string | Uint8Array>();
  const json = reportJson(document, input);
  if (options.formats.includes("json")) files.set("report.json", json);
  if (options.formats.includes("html")) files.set("report.html", await html(document));
  if (options.formats.includes("pdf")) files.set("report.pdf", await pdf(document));
  // Rows of other clients must not travel with the report of one.
  if (reading.aside.length > 0 && input.scope.client === "" && input.scope.order === "") {
    files.set("setaside.csv", setAsideCsv(reading.aside, separatorOf(mill.dialect)));
  }
  progress("");
  const written = writeAll(options.out, files);
  const code = asideCode(reading.account.files, limit);
  if (options.json === true) {
    out(JSON.stringify({ written, exit: code }, null, 2));
    return code;
  }
  const bad = problems.filter(({ severity }) => severity !== "corrected");
  tell(bad.slice(0, SHOWN));
  if (bad.length > SHOWN) {
    err(`… and ${bad.length - SHOWN} more; \`millrace check\` lists them all.`);
  }
  for (const path of written) out(path);
  if (code === EXIT.aside)
    err(`More rows were set aside than --max-aside ${options.maxAside ?? ""} allows.`);
  return code;
}

async function html(document: ReportDocument): Promise<string> {
  progress("writing HTML");
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

async function pdf(document: ReportDocument): Promise<Uint8Array> {
  progress("writing PDF");
  const { setPdf } = await import("../report/pdf/write-pdf.js");
  const font = (face: string): Uint8Array => readFileSync(builtFile(`fonts/inter-${face}.ttf`));
  const { bytes, replaced, dead } = await setPdf(document, {
    regular: font("regular"),
    semibold: font("semibold"),
    italic: font("italic"),
  });
  for (const [sign, times] of replaced)
    err(`warning: ${sign} is not in the typeface; shown as a square ${times} times.`);
  for (const link of dead) err(`warning: ${link} leads nowhere in the PDF.`);
  return bytes;
}
