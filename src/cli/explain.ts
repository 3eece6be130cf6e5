/**
 * `millrace explain`: how a figure came about, down to the rows.
 */

import { BROKEN_DOWN, type BrokenDown, coefficientsOf } from "../account/account.js";
import { dot } from "../account/breakdown.js";
import { leafRange } from "../account/draws.js";
import { INDICATOR_IDS, type IndicatorId } from "../account/indicators.js";
import { traceOf } from "../account/trace.js";
import { nearest } from "../factors/nearest.js";
import { formatNumber, formatPercent } from "../report/format.js";
import { type Assessment, assess, type AssessOptions } from "./assess.js";
import { EXIT } from "./exit.js";
import { err, out, progress, tell } from "./say.js";

/** Options of the command. */
export interface ExplainOptions extends AssessOptions {
  /** Only lots that took this route. */
  readonly route?: string;
  /** Terms shown. */
  readonly terms: number;
  /** Whether to print data. */
  readonly json?: boolean;
}

/** Rows shown. */
const MOST_ROWS = 8;

/**
 * Runs the command.
 *
 * @param indicator - id of the indicator
 * @param logs - paths of logs
 * @param options - options
 * @returns exit code
 */
export async function explain(
  indicator: string,
  logs: readonly string[],
  options: ExplainOptions,
): Promise<number> {
  const id = INDICATOR_IDS.find((known) => known === indicator);
  if (id === undefined) {
    const near = nearest(indicator, INDICATOR_IDS);
    err(
      `There is no indicator ${indicator}${near === undefined ? "" : `; did you mean ${near}`}? Known: ${INDICATOR_IDS.join(", ")}.`,
    );
    return EXIT.usage;
  }
  const { assessment, problems } = await assess(
    logs,
    options,
    ({ key }) => options.route === undefined || key.route === options.route,
  );
  progress("");
  if (assessment === undefined) {
    tell(problems);
    return EXIT.refused;
  }
  const data = explanation(assessment, id, options.terms);
  if (options.json === true) out(JSON.stringify(data, null, 2));
  else print(data, id);
  return EXIT.done;
}

type Explanation = ReturnType<typeof explanation>;

function explanation(assessment: Assessment, id: IndicatorId, terms: number) {
  const { input, mill, reading } = assessment;
  const comparison = input.comparisons.get(id);
  const broken = (BROKEN_DOWN as readonly string[]).includes(id) ? (id as BrokenDown) : undefined;
  const leaves = new Map(input.account.program.nodes.leaves().map(({ leaf }) => [leaf.id, leaf]));
  const arms = (["pigment", "dye"] as const).map((arm) => ({
    arm,
    total: comparison?.[arm],
    terms: broken === undefined ? [] : traceOf(input.account, broken, arm, terms),
  }));
  const read = new Set(arms.flatMap(({ terms: lines }) => lines.flatMap(({ reads }) => reads)));
  return {
    indicator: id,
    words: comparison?.words ?? "",
    unit: `${comparison?.unit ?? ""}${input.reference.suffix === "" ? "" : ` per ${input.reference.words}`}`,
    totalUnit: comparison?.unit ?? "",
    arms,
    saving: comparison?.saving ?? null,
    settings: [...read].sort().flatMap((stream) => {
      const leaf = leaves.get(stream);
      if (leaf === undefined) return [];
      const source = mill.factors.sources.get(leaf.source);
      return [
        {
          stream,
          words: leaf.words,
          unit: leaf.unit,
          ...leafRange(leaf),
          given: leaf.provenance,
          source:
            source === undefined
              ? leaf.source
              : `${source.author}: ${source.title} (read: ${source.read})`,
        },
      ];
    }),
    rows: broken === undefined ? [] : largestLots(assessment, broken),
    files: reading.account.files.map(({ name, rows, sha256 }) => ({ name, rows, sha256 })),
  };
}

// The lots of the sample that weigh most, on the route they took.
function largestLots(assessment: Assessment, id: BrokenDown) {
  const { account } = assessment.input;
  const of = coefficientsOf(account, id);
  return assessment.input.sample
    .flatMap(({ lot, key, amounts }) => {
      const lotClass = account.program.classOf(key);
      return lotClass === undefined
        ? []
        : [{ lot, route: key.route, month: key.month, mean: dot(of(lotClass, key.own), amounts) }];
    })
    .sort((a, b) => b.mean - a.mean)
    .slice(0, MOST_ROWS);
}

function print(data: Explanation, id: IndicatorId): void {
  const digits = (value: number): string =>
    formatNumber(value, Math.max(0, Math.min(6, 3 - Math.floor(Math.log10(Math.abs(value) || 1)))));
  out(`${data.words} (${id}), ${data.unit}`);
  for (const { arm, total, terms } of data.arms) {
    if (total !== undefined)
      out(
        `\n${arm} route: ${digits(total.median)} (95 % interval ${digits(total.low)} to ${digits(total.high)})`,
      );
    for (const line of terms) {
      out(
        `  ${formatPercent(line.share).padStart(5)}  ${line.route} · ${line.step} · ${line.flow}`,
      );
      out(
        `         ${digits(line.sum)} ${line.unit} of ${line.amount} × ${digits(line.median)} ${data.totalUnit} (${digits(line.low)} to ${digits(line.high)})`,
      );
      out(`         rate: ${line.rate}`);
    }
  }
  if (data.arms.every(({ terms }) => terms.length === 0))
    out(`\nTerms are kept for ${BROKEN_DOWN.join(", ")}.`);
  if (data.saving !== null)
    out(
      `\nshare saved by pigment: ${formatPercent(data.saving.median)} (95 % interval ${formatPercent(data.saving.low)} to ${formatPercent(data.saving.high)})`,
    );
  if (data.settings.length > 0) out("\nSettings and factors read:");
  for (const setting of data.settings) {
    out(
      `  ${setting.stream} = ${digits(setting.median)} ${setting.unit} (${digits(setting.low)} to ${digits(setting.high)}; ${setting.given})`,
    );
    out(`      ${setting.words}; ${setting.source}`);
  }
  if (data.rows.length > 0) out("\nRows that weigh most, of the sample, on the route they took:");
  for (const row of data.rows)
    out(`  lot ${row.lot}, ${row.route}, ${row.month}: ${digits(row.mean)} ${data.totalUnit}`);
  for (const file of data.files)
    out(`file ${file.name}: ${file.rows} rows, SHA-256 ${file.sha256.slice(0, 16)}`);
}
