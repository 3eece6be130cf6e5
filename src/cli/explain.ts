/**
 * `millrace explain`: how a figure came about, down to the rows.
 */

import { leafRange } from "../account/draws.js";
import { INDICATOR_IDS, type IndicatorId } from "../account/indicators.js";
import { withParts } from "../account/parts.js";
import { traceOf } from "../account/trace.js";
import { nearest } from "../factors/nearest.js";
import type { LedgerKey } from "../ledger/key.js";
import { type TierId, TIERS } from "../meters/precedence.js";
import { datedStream } from "../plant/dated.js";
import type { Problem } from "../problems/problem.js";
import { tierShares } from "../report/compose/tier-table.js";
import { checkPeriod, WrongWord } from "./arguments.js";
import { asideCode, asideLimit } from "./aside.js";
import { type Assessment, assess, type AssessOptions } from "./assess.js";
import { printDoubt, printExplanation } from "./explanation.js";
import { printTurning, turningValues, type TurningValues } from "./turning.js";
import { foldersAmong } from "./paths.js";
import { type Rows, rowsBehind } from "./rows.js";
import { data, progress, refuse } from "./say.js";
import { breakEvensOf } from "../compare/break-even.js";
import { doubtShares, type DoubtShare } from "../compare/doubt-shares.js";
import { swingsOf } from "../account/swings.js";
import { whyEmpty } from "./scope.js";

/** Options of the command. */
export interface ExplainOptions extends AssessOptions {
  /** Only lots that took this route. */
  readonly route?: string;
  /** Terms shown. */
  readonly terms: number;
  /** Rows shown. */
  readonly rows: number;
  /** Factors of which Sobol' indices are shown; none when undefined. */
  readonly doubt?: number;
  /** Whether to list the values of all settings and factors at which nothing would be saved. */
  readonly breakEvens?: boolean;
  /** Whether to print data. */
  readonly json?: boolean;
}

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
  const id = indicatorFrom(indicator);
  checkPeriod(options);
  const folders = foldersAmong(options.plant, logs);
  if (folders.length > 0) return refuse(folders, options.json);
  const only = ({ key }: { readonly key: LedgerKey }): boolean =>
    options.route === undefined || key.route === options.route;
  const { assessment, problems } = await assess(logs, options, only);
  if (assessment === undefined) return refuse(whyEmpty(problems, options), options.json);
  if (!assessment.input.comparisons.has(id)) return refuse([notWorkedOut(id)], options.json);
  progress("looking up the rows");
  const account = withParts(assessment.input.account, id);
  const read = { ...options, today: options.asOf };
  const rows = await rowsBehind(assessment.mill, account, id, logs, read, {
    only,
    most: options.rows,
  });
  const explained = explanation(assessment, account, id, options.terms, rows);
  const doubt = options.doubt === undefined ? undefined : doubtOf(account, id, options.doubt);
  const turning = options.breakEvens === true ? turningOf(assessment, account, id) : undefined;
  if (options.json === true) {
    data({
      ...explained,
      ...(doubt === undefined ? {} : { doubt }),
      ...(turning === undefined ? {} : { breakEvens: turning }),
    });
  } else {
    printExplanation(explained);
    if (doubt !== undefined) printDoubt(doubt);
    if (turning !== undefined) printTurning(turning);
  }
  return asideCode(assessment.reading.account.files, asideLimit(options.maxAside));
}

/** Draws on which every break-even is refined. */
const TURNED_DRAWS = 500;

function turningOf(
  { input }: Assessment,
  { program }: Assessment["input"]["account"],
  id: IndicatorId,
): TurningValues {
  const today = input.comparisons.get(id)?.saving?.median;
  const areas = input.yields?.accepted.dye.map(
    (area, i) => area / (input.yields?.accepted.pigment[i] ?? NaN),
  );
  progress("looking for break-evens");
  const search = {
    program,
    factors: input.factors,
    ...(areas === undefined ? {} : { areas }),
    draws: TURNED_DRAWS,
    seed: input.seed,
    refined: Infinity,
  };
  const [answer] =
    today === undefined ? [] : breakEvensOf(search, [{ id, quantile: 0.5, level: 0, today }]);
  return turningValues(answer);
}

/** Draws in each of the sets that indices are estimated from. */
const INDEX_DRAWS = 2000;

function doubtOf(
  { program }: Assessment["input"]["account"],
  id: IndicatorId,
  most: number,
): readonly DoubtShare[] {
  const swings = swingsOf(program, [id]).get(id);
  if (swings === undefined) return [];
  return doubtShares(
    program,
    id,
    swings,
    { factors: most, draws: INDEX_DRAWS, seed: 1 },
    (done, of) => {
      progress(`what the doubt rests on, ${done} of ${of}`);
    },
  );
}

function indicatorFrom(word: string): IndicatorId {
  const known = INDICATOR_IDS.find((id) => id === word);
  if (known !== undefined) return known;
  const plain = word.toLowerCase();
  const near = nearest(plain, INDICATOR_IDS);
  // Half a name, such as `co2`, is far from any whole one by its letters.
  const meant =
    plain.length > 1 ? INDICATOR_IDS.filter((id) => id.includes(plain) || plain.includes(id)) : [];
  const close = meant.length > 0 ? meant : near === undefined ? [] : [near];
  throw new WrongWord(
    "explain",
    `one of ${INDICATOR_IDS.join(", ")}`,
    word,
    close.length === 0 ? "" : `Did you mean ${close.join(" or ")}?`,
  );
}

function notWorkedOut(id: IndicatorId): Problem {
  return {
    code: "indicator-absent",
    severity: "refused",
    value: id,
    expected: "an indicator that this mill's plant file gives numbers for",
    remedy:
      id === "cost"
        ? "Give prices under `tariffs` of the site in plant.yaml."
        : "Give the machines and settings it rests on in plant.yaml.",
  };
}

function evidenceFor(
  input: Assessment["input"],
  id: IndicatorId,
  arm: "pigment" | "dye",
): readonly { readonly tier: TierId; readonly words: string; readonly share: number }[] {
  const shares = tierShares(input, id, arm);
  return TIERS.flatMap(({ id: tier, words }) => {
    const share = shares.get(tier) ?? 0;
    return share > 0 ? [{ tier, words, share }] : [];
  });
}

/** An explanation as plain data. */
export type Explanation = ReturnType<typeof explanation>;

function explanation(
  { input, mill, reading }: Assessment,
  account: Assessment["input"]["account"],
  id: IndicatorId,
  terms: number,
  rows: Rows,
) {
  const comparison = input.comparisons.get(id);
  const { units, byArm, suffix, words } = input.reference;
  const leaves = account.program.nodes.leaves().map(({ leaf }) => leaf);
  const arms = (["pigment", "dye"] as const).map((arm) => ({
    arm,
    total: comparison?.[arm],
    units: byArm?.[arm] ?? units,
    sum: rows[arm],
    terms: traceOf(account, id, arm, terms),
    evidence: evidenceFor({ ...input, account }, id, arm),
  }));
  const read = new Set(arms.flatMap(({ terms: lines }) => lines.flatMap(({ reads }) => reads)));
  return {
    indicator: id,
    words: comparison?.words ?? "",
    unit: `${comparison?.unit ?? ""}${suffix === "" ? "" : ` per ${words}`}`,
    totalUnit: comparison?.unit ?? "",
    per: words,
    arms,
    saving: comparison?.saving ?? null,
    // What-ifs beside the mill; all else here is the mill's.
    scenarios: (input.scenarios?.played ?? []).map(({ scenario, comparisons, changes }) => ({
      name: scenario.name,
      asked: scenario.asked,
      differs: scenario.differs,
      pigment: comparisons.get(id)?.pigment,
      dye: comparisons.get(id)?.dye,
      saving: comparisons.get(id)?.saving ?? null,
      change: changes.get(id) ?? null,
    })),
    // A setting that the plant file changes by date is there once for each of its values.
    settings: [...read].sort().flatMap((stream) =>
      leaves
        .filter((leaf) => datedStream(leaf) === stream)
        .map((leaf) => {
          const source = mill.factors.sources.get(leaf.source);
          return {
            stream,
            words: leaf.words,
            unit: leaf.unit,
            ...leafRange(leaf),
            given: leaf.provenance,
            source:
              source === undefined
                ? leaf.source
                : `${source.author}: ${source.title} (read: ${source.read})`,
          };
        }),
    ),
    rows: rows.largest,
    rowCount: rows.count,
    files: reading.account.files.map(({ name, rows: count, setAside, sha256 }) => ({
      name,
      rows: count,
      setAside,
      sha256,
    })),
  };
}
