/**
 * `millrace invest`: writes the report on a purchase.
 */

import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { buildStudy, daysOf, ruleOf } from "../invest/build-study.js";
import { findingsOf } from "../invest/findings.js";
import { judgeStudy } from "../invest/judge-study.js";
import { scheduleOf } from "../invest/measures.js";
import type { ReadInvest } from "../invest/read-invest.js";
import type { Study } from "../invest/study.js";
import { worthAt } from "../invest/two-files.js";
import type { Group } from "../ledger/ledger.js";
import { sha256Hex } from "../numbers/digest.js";
import { MissingFactor } from "../plant/quantities.js";
import type { Problem } from "../problems/problem.js";
import type { CautionTopic } from "../report/cautions.js";
import { amountPlaces } from "../report/compose/answer.js";
import { inputDigests } from "../report/compose/digests.js";
import { composeInvestment } from "../report/invest/compose.js";
import { cashFlowCsv, inputsCsv, investJson } from "../report/invest/data.js";
import type { InvestInput, PrintedMonth } from "../report/invest/input.js";
import { checkPeriod } from "./arguments.js";
import { EXIT } from "./exit.js";
import { type FileContent, shippedFolder, writeAll } from "./files.js";
import { judgeLots, openInvest } from "./invest-file.js";
import { type Press, startPress } from "./press.js";
import { data, err, out, progress, refuse, tell } from "./say.js";
import { html } from "./page.js";
import { openMill, readMill, type Reading, type Workspace } from "./workspace.js";

/** Options of the command. */
export interface InvestOptions {
  /** Plant file. */
  readonly plant: string;
  /** First day of the log that the year rests on. */
  readonly from?: string;
  /** Last day of it. */
  readonly to?: string;
  /** Folder for the reports. */
  readonly out: string;
  /** Number of draws. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
  /** Date of the report. */
  readonly asOf: string;
  /** What to write. */
  readonly formats: readonly string[];
  /** Whether to print data. */
  readonly json?: boolean;
}

/** Version of the tool, as in package.json. */
const VERSION = "0.1.0";

/** Problems shown before the rest is counted. */
const SHOWN = 8;

/**
 * Runs the command.
 *
 * @param path - path of the investment file; `invest.yaml` beside the plant file when absent
 * @param options - options
 * @returns exit code
 */
export async function invest(path: string | undefined, options: InvestOptions): Promise<number> {
  checkPeriod(options);
  const file = path ?? join(dirname(options.plant), "invest.yaml");
  const press = options.formats.some((format) => format === "html" || format === "pdf")
    ? startPress({ draws: true, pdf: options.formats.includes("pdf") })
    : undefined;
  try {
    const { input, problems } = await investInput(file, options);
    if (input === undefined) return refuse(problems, options.json);
    return await written(input, options, press);
  } finally {
    await press?.stop();
  }
}

async function written(
  input: InvestInput,
  options: InvestOptions,
  press: Press | undefined,
): Promise<number> {
  progress("writing");
  const template = readFileSync(join(shippedFolder("templates"), "invest.md"), "utf8");
  const composed = composeInvestment(input, template);
  const files = new Map<string, FileContent>();
  if (options.formats.includes("json")) files.set("invest.json", investJson(composed, input));
  if (options.formats.includes("csv")) {
    files.set("invest-cash-flows.csv", cashFlowCsv(input.schedules, input.findings.study));
    files.set("invest-inputs.csv", inputsCsv(input));
  }
  const pressed = press?.set(composed, options.formats.includes("pdf"));
  if (pressed !== undefined && options.formats.includes("html"))
    files.set("invest.html", await html({ ...composed, blocks: (await pressed.drawn).blocks }));
  const pdf = await pressed?.pdf;
  if (pdf !== undefined) files.set("invest.pdf", pdf.bytes);
  progress("");
  const paths = writeAll(options.out, files);
  if (options.json === true) {
    data({ written: paths, problems: input.warnings, exit: EXIT.done });
    return EXIT.done;
  }
  tell(input.warnings.slice(0, SHOWN));
  if (input.warnings.length > SHOWN)
    err(`… and ${input.warnings.length - SHOWN} more, in the report.`);
  for (const one of paths) out(one);
  return EXIT.done;
}

async function investInput(
  path: string,
  options: InvestOptions,
): Promise<{ readonly input?: InvestInput; readonly problems: readonly Problem[] }> {
  const opened = openMill(options);
  if (opened.mill === undefined) return { problems: opened.problems };
  const { mill } = opened;
  if (!existsSync(path)) return { problems: [absent(path)] };
  const { opened: file, problems } = openInvest(path, options.plant, mill);
  if (file === undefined) return { problems };
  const { read, houses, plantFile, differences } = file;
  const { text } = read;
  progress("reading the log");
  const { reading, problems: logged } = await readMill(mill, [], {
    today: options.asOf,
    from: options.from,
    to: options.to,
  });
  if (reading === undefined || reading.account.refused) return { problems: logged };
  const { groups } = reading.ledger.settled();
  const names = judgeLots(read, mill, groups);
  const days = periodOf(options, reading);
  if (names.length > 0) return { problems: names };
  if (days === undefined || !groups.some(({ key }) => key.own === "dye" && key.pigment !== ""))
    return { problems: [nothingToMove()] };
  progress("working out options");
  let study: Study;
  try {
    study = buildStudy({
      text,
      plant: mill.plant,
      houses,
      factors: mill.factors,
      groups,
      period: days,
      asOf: options.asOf,
      draws: options.draws,
      seed: options.seed,
    });
  } catch (error) {
    if (error instanceof MissingFactor) return { problems: [noFactor(error)] };
    throw error;
  }
  const judged = judgeStudy(read, study);
  if (judged.some(({ severity }) => severity === "refused"))
    return { problems: judged.filter(({ severity }) => severity === "refused") };
  progress("drawing");
  const findings = findingsOf(study);
  return {
    input: {
      house: mill.plant.house,
      file: text,
      findings,
      differences: differences.map((one) => ({ ...one, worth: worthAt(study, one) })),
      plantFile: plantFile.name,
      ...ofLots(text, study, groups),
      days,
      schedules: new Map(study.options.map((one) => [one.name, scheduleOf(study, one)])),
      warnings: [...problems, ...judged, ...shortPeriod(days)],
      topics: topicsOf(study),
      digests: digestsOf(file.written, mill, reading),
      date: options.asOf,
      seed: options.seed,
      version: VERSION,
    },
    problems: [],
  };
}

function ofLots(
  text: ReadInvest["text"],
  study: Study,
  groups: readonly Group[],
): Pick<InvestInput, "lots" | "leftOut" | "months"> {
  const places = amountPlaces();
  const months = new Map<string, { dye: number; pigment: number; mayMove: number }>();
  let [lots, all, left] = [0, 0, 0];
  for (const { key, amounts } of groups) {
    const area = amounts[places.accepted] ?? 0;
    lots += amounts[places.lots] ?? 0;
    all += area;
    if (key.pigment === "") left += area;
    const month = months.get(key.month) ?? { dye: 0, pigment: 0, mayMove: 0 };
    month[key.own] += area;
    const rule = key.own === "dye" && key.pigment !== "" ? ruleOf(text.moves, key) : undefined;
    const share = rule === undefined ? 0 : (study.project.moving[rule]?.share.central ?? 0);
    month.mayMove += share * area;
    months.set(key.month, month);
  }
  const sorted = [...months].sort(([a], [b]) => (a < b ? -1 : 1));
  return {
    lots,
    leftOut: all > 0 ? left / all : 0,
    months: sorted.map(([month, sums]): PrintedMonth => ({ month, ...sums })),
  };
}

// The days that the year rests on: those asked for, where they are, and those of the log else.
function periodOf(
  { from, to }: InvestOptions,
  { days }: Reading,
): readonly [string, string] | undefined {
  return days === undefined ? undefined : [from ?? days[0], to ?? days[1]];
}

function topicsOf({ project, carryOn }: Study): readonly CautionTopic[] {
  const { kind, removes = [] } = project.text;
  return [
    "pigment-curing",
    "effluent",
    "energy-change",
    "finished-goods-eu",
    ...(kind === "pigment-calender" ? (["calender"] as const) : []),
    ...(kind === "outsource" ? [] : (["stenter"] as const)),
    ...(removes.length > 0 || carryOn.all.size > 0 ? (["steam"] as const) : []),
    "urea",
  ];
}

function digestsOf(
  text: string,
  mill: Workspace,
  reading: Reading,
): Readonly<Record<string, string>> {
  const { logs, plant } = inputDigests({ log: reading.account, plant: mill.plant });
  return { invest: sha256Hex(text), logs, plant, factors: mill.factors.digest };
}

/** Days below which a log is no year. */
const NEARLY_A_YEAR = 330;

function shortPeriod([from, to]: readonly [string, string]): readonly Problem[] {
  const days = daysOf([from, to]);
  if (days >= NEARLY_A_YEAR && days <= 2 * 365 - NEARLY_A_YEAR + 365) return [];
  return [
    {
      code: "log-not-a-year",
      severity: "warning",
      value: `${from} to ${to}`,
      expected: "a log of about a year, as seasons differ",
      remedy: `It is counted as ${Math.round(days)} days and brought to 365; give a whole year where you can.`,
    },
  ];
}

function absent(path: string): Problem {
  return {
    code: "file-missing",
    severity: "refused",
    file: path,
    expected: "an investment file",
    remedy: "Run `millrace start DIR` for one to begin with, or name yours after the command.",
  };
}

function nothingToMove(): Problem {
  return {
    code: "nothing-to-move",
    severity: "refused",
    expected: "lots on dye routes with a pigment counterpart in the log",
    remedy: "Log dye lots, or add the pigment route to plant.yaml.",
  };
}

function noFactor(error: MissingFactor): Problem {
  return {
    code: "factor-missing",
    severity: "refused",
    value: error.id,
    expected: `a factor in force (${error.message})`,
    remedy: "Put a value into `factors/` beside the plant file, or choose a later --as-of.",
  };
}
