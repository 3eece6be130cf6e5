/**
 * `millrace factors`: lists factors in force.
 */

import { existsSync } from "node:fs";
import { dirname } from "node:path";
import type { Factor, FactorSet } from "../factors/factor.js";
import { valueInForce } from "../factors/in-force.js";
import { nearest } from "../factors/nearest.js";
import { interval95, medianOf } from "../numbers/distributions.js";
import { EXIT } from "./exit.js";
import { data, out, refuse } from "./say.js";
import { openFactors } from "./workspace.js";

/** Options of the command. */
export interface FactorsOptions {
  /** Plant file; its folder may hold own factors. */
  readonly plant: string;
  /** Day of the report. */
  readonly asOf: string;
  /** Whether to write a page on each instead of listing them. */
  readonly dossier?: boolean;
  /** Folder for that page. */
  readonly out: string;
  /** Whether to print data. */
  readonly json?: boolean;
}

/** Where a plant file is looked for when none is named. */
const USUAL_PLANT = "plant.yaml";

/**
 * Runs the command.
 *
 * @param text - part of an id or of the words; all when undefined
 * @param options - options
 * @returns exit code
 */
export async function factors(text: string | undefined, options: FactorsOptions): Promise<number> {
  // The usual name need not be there, but a path somebody wrote down is meant.
  if (options.plant !== USUAL_PLANT && !existsSync(options.plant)) {
    return refuse(
      [
        {
          code: "file-missing",
          severity: "refused",
          file: options.plant,
          expected: "a plant file, beside which own factors may lie",
          remedy: "Check the path, or leave --plant out for the shipped factors.",
        },
      ],
      options.json,
    );
  }
  const opened = openFactors(dirname(options.plant));
  if (opened.factors === undefined) return refuse(opened.problems, options.json);
  const set = opened.factors;
  const wanted = (text ?? "").toLowerCase();
  const found = [...set.factors.values()].filter(
    ({ id, words }) => id.toLowerCase().includes(wanted) || words.toLowerCase().includes(wanted),
  );
  if (options.dossier === true && found.length > 0) {
    return (await import("./dossier.js")).dossier(set, found, options);
  }
  const rows = found.flatMap((factor) => row(factor, set, options.asOf));
  if (options.json === true) data(rows);
  else for (const entry of rows) printRow(entry);
  if (rows.length === 0 && options.json !== true) {
    if (found.length > 0)
      out(`${found.length} factors are found, but no value was entered by ${options.asOf}.`);
    else out(`No factor has "${text ?? ""}" in its id or words.${meant(wanted, set)}`);
  }
  return EXIT.done;
}

// Ids are made of words with dots and dashes between; a slip is mostly in one of them.
function meant(wanted: string, set: FactorSet): string {
  const known = new Set([...set.factors.keys()].flatMap((id) => [id, ...id.split(/[.-]/)]));
  const near = nearest(wanted, known);
  return near === undefined ? "" : ` Did you mean ${near}?`;
}

interface Row {
  readonly id: string;
  readonly words: string;
  readonly unit: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly shape: string;
  readonly place: string;
  readonly year: number;
  readonly source: string;
  readonly read: string;
  readonly quality: string;
  readonly overruled: boolean;
  readonly note: string;
}

function row(factor: Factor, set: FactorSet, asOf: string): readonly Row[] {
  const inForce = valueInForce(factor, asOf.slice(0, 7), asOf);
  if (inForce === undefined) return [];
  const { value } = inForce;
  const [low, high] = interval95(value.spread);
  const source = set.sources.get(value.source);
  const q = value.quality;
  return [
    {
      id: factor.id,
      words: factor.words,
      unit: factor.unit,
      value: medianOf(value.spread),
      low,
      high,
      shape: value.spread.shape,
      place: value.region,
      year: value.year,
      source: `${source?.author ?? ""}: ${source?.title ?? value.source}${value.page === undefined ? "" : `, ${value.page}`}`,
      read: source?.read ?? "",
      quality: [q.reliability, q.completeness, q.time, q.place, q.technology].join(" "),
      overruled: factor.overruled,
      note: value.note ?? "",
    },
  ];
}

function printRow(entry: Row): void {
  const round = (value: number): string => String(Number(value.toPrecision(4)));
  const unit = entry.unit === "1" ? "" : ` ${entry.unit}`;
  const spread =
    entry.low === entry.high
      ? "no doubt"
      : `95 % ${round(entry.low)} to ${round(entry.high)}, ${entry.shape}`;
  out(
    `${entry.id} = ${round(entry.value)}${unit} (${spread})${entry.overruled ? "  [overruled by the mill]" : ""}`,
  );
  out(`    ${entry.words}; ${entry.place}, ${entry.year}; quality ${entry.quality}`);
  out(`    ${entry.source} (read: ${entry.read})`);
}
