/**
 * `millrace report`: writes the report of both routes.
 */

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { composeReport } from "../report/compose/compose.js";
import { traced } from "../report/compose/traced.js";
import { reportJson } from "../report/json.js";
import { type AssessOptions, assess } from "./assess.js";
import { checkPeriod } from "./arguments.js";
import { checkAudience, wordingProblems } from "./audience.js";
import { asideCode, type AsideLimit, asideLimit } from "./aside.js";
import { EXIT } from "./exit.js";
import { type FileContent, shippedFolder, writeAll } from "./files.js";
import { html } from "./page.js";
import { foldersAmong } from "./paths.js";
import { type Press, type PressedPdf, startPress } from "./press.js";
import { data, err, out, progress, refuse, tell } from "./say.js";
import { settingsWarning } from "./scenarios.js";
import { whyEmpty } from "./scope.js";
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
  checkPeriod(options);
  checkAudience(options);
  const limit = asideLimit(options.maxAside);
  const folders = foldersAmong(options.plant, logs);
  if (folders.length > 0) return refuse(folders, options.json);
  // The thread loads what pictures and PDF need while the log is read.
  const { plant, audience, set, formats } = options;
  const press = startPress({
    asked: {
      plant,
      ...(audience === undefined ? {} : { audience }),
      ...(set === undefined ? {} : { set }),
    },
    draws: formats.some((format) => format !== "json"),
    pdf: formats.includes("pdf"),
  });
  try {
    return await reported(logs, options, limit, press);
  } finally {
    await press.stop();
  }
}

async function reported(
  logs: readonly string[],
  options: ReportOptions,
  limit: AsideLimit,
  press: Press,
): Promise<number> {
  const { assessment, problems } = await assess(logs, options, undefined, press);
  if (assessment === undefined) return refuse(whyEmpty(problems, options), options.json);
  const { mill, reading, input } = assessment;
  const template = readFileSync(join(shippedFolder("templates"), "report.md"), "utf8");
  progress("writing");
  const isPressed = options.formats.some((format) => format !== "json");
  const composed = composeReport(input, template, isPressed ? press.proof : undefined);
  const { audience = "internal" } = options;
  const words = wordingProblems(composed, mill.plant.text.wording?.allow ?? [], audience);
  if (audience !== "internal" && words.length > 0) return refuse(words, options.json);
  const pressed = isPressed ? press.set(composed, options.formats.includes("pdf")) : undefined;
  const document = traced(composed, input);
  const files = new Map<string, FileContent>();
  if (options.formats.includes("json")) files.set("report.json", reportJson(document, input));
  if (pressed !== undefined && options.formats.includes("html"))
    files.set("report.html", await html({ ...document, blocks: (await pressed.drawn).blocks }));
  const pdf = await pressed?.pdf;
  if (pdf !== undefined) files.set("report.pdf", pdf.bytes);
  // Rows of other clients must not travel with the report of one.
  if (
    reading.aside.count > 0 &&
    input.scope.client === "" &&
    input.scope.order === "" &&
    audience === "internal"
  ) {
    files.set("setaside.csv", reading.aside.csv(separatorOf(mill.dialect)));
  }
  progress("");
  const written = writeAll(options.out, files);
  const code = asideCode(reading.account.files, limit);
  if (options.json === true) {
    data({ written, exit: code });
    return code;
  }
  const bad = problems.filter(({ severity }) => severity !== "corrected");
  tell(bad.slice(0, SHOWN));
  if (bad.length > SHOWN) {
    err(`… and ${bad.length - SHOWN} more; \`millrace check\` lists them all.`);
  }
  tell(words, SHOWN);
  if (pdf !== undefined) tellLosses(pdf);
  const warning = settingsWarning(input.scenarios?.played ?? []);
  if (warning !== undefined) err(`warning: ${warning}`);
  for (const path of written) out(path);
  if (code === EXIT.aside)
    err(`More rows were set aside than --max-aside ${options.maxAside ?? ""} allows.`);
  return code;
}

function tellLosses({ replaced, dead }: PressedPdf): void {
  for (const [sign, times] of replaced)
    err(`warning: ${sign} is not in the typeface; shown as a square ${times} times.`);
  for (const link of dead) err(`warning: ${link} leads nowhere in the PDF.`);
}
