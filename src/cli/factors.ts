/**
 * `millrace factors`: lists factors in force.
 */

import { dirname } from "node:path";
import type { Factor, FactorSet } from "../factors/factor.js";
import { valueInForce } from "../factors/in-force.js";
import { interval95, medianOf } from "../numbers/distributions.js";
import { EXIT } from "./exit.js";
import { out, tell } from "./say.js";
import { openFactors } from "./workspace.js";

/** Options of the command. */
export interface FactorsOptions {
  /** Plant file; its folder may hold own factors. */
  readonly plant: string;
  /** Day of the report. */
  readonly asOf: string;
  /** Whether to print data. */
  readonly json?: boolean;
}

/**
 * Runs the command.
 *
 * @param text - part of an id or of the words; all when undefined
 * @param options - options
 * @returns exit code
 */
export function factors(text: string | undefined, options: FactorsOptions): number {
  const opened = openFactors(dirname(options.plant));
  if (opened.factors === undefined) {
    tell(opened.problems);
    return EXIT.refused;
  }
  const set = opened.factors;
  const wanted = (text ?? "").toLowerCase();
  const found = [...set.factors.values()].filter(
    (factor) =>
      factor.id.toLowerCase().includes(wanted) || factor.words.toLowerCase().includes(wanted),
  );
  const rows = found.flatMap((factor) => row(factor, set, options.asOf));
  if (options.json === true) out(JSON.stringify(rows, null, 2));
  else for (const entry of rows) printRow(entry);
  if (rows.length === 0 && options.json !== true)
    out(`No factor has "${text ?? ""}" in its id or words.`);
  return EXIT.done;
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
