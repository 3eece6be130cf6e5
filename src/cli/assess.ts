/**
 * From a mill folder to an account: what `report` and `explain` share.
 */

import { accountOf } from "../account/account.js";
import { calibrated } from "../account/calibration.js";
import { INDICATOR_IDS, type IndicatorId } from "../account/indicators.js";
import { type Program, writeProgram } from "../account/program.js";
import { swingsOf } from "../account/swings.js";
import type { Audience } from "../compare/claims/gates.js";
import { compareArms } from "../compare/compare.js";
import { swingsWithYields } from "../compare/yield-swings.js";
import { SCENARIO_DRAWS } from "../compare/scenarios.js";
import { metersWorth } from "../compare/meters-worth.js";
import { yieldsOf } from "../compare/yields.js";
import type { Group, Ledger } from "../ledger/ledger.js";
import { blindness } from "../meters/blindness.js";
import { seriesOf } from "../meters/series.js";
import { MissingFactor } from "../plant/quantities.js";
import type { Problem } from "../problems/problem.js";
import type { Reference, ReportInput } from "../report/compose/input.js";
import { amountPlaces } from "../report/compose/answer.js";
import { openAsked } from "./asked-mill.js";
import { audienceProblems, namesFor } from "./audience.js";
import { claimsOf } from "./claims.js";
import {
  correctionsOf,
  type HouseLots,
  type Metering,
  meteringOf,
  withoutMeters,
} from "./metering.js";
import { progress } from "./say.js";
import { scenariosOf } from "./scenarios.js";
import type { Understudy } from "./understudy.js";
import { readMill, type Reading, type Workspace } from "./workspace.js";

/** Options of commands that work figures out. */
export interface AssessOptions {
  /** Plant file. */
  readonly plant: string;
  /** First day. */
  readonly from?: string;
  /** Last day. */
  readonly to?: string;
  /** Date of the report. */
  readonly asOf: string;
  /** Most rows set aside. */
  readonly maxAside?: string;
  /** Client. */
  readonly client?: string;
  /** Site. */
  readonly site?: string;
  /** Order. */
  readonly order?: string;
  /** Reference unit. */
  readonly per: Reference["per"];
  /** Number of draws. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
  /** For whom; the mill itself when absent. */
  readonly audience?: Audience;
  /** Keys of the plant file set otherwise in a what-if, each as KEY=VALUE. */
  readonly set?: readonly string[];
}

/** Version of the tool, as in package.json. */
const VERSION = "0.1.0";

/** What a mill adds up to. */
export interface Assessment {
  /** The mill. */
  readonly mill: Workspace;
  /** Its logs. */
  readonly reading: Settled["reading"];
  /** Everything a report says. */
  readonly input: ReportInput;
}

/**
 * Reads, charges and draws.
 *
 * @param logs - paths of logs
 * @param options - what to work out
 * @param only - keeps a lot or not, beside the options
 * @param understudy - works scenarios out at the same time; here and now when absent
 * @returns the assessment, or the problems that stand in its way
 */
export async function assess(
  logs: readonly string[],
  options: AssessOptions,
  only: (group: Group) => boolean = () => true,
  understudy?: Understudy,
): Promise<{ readonly assessment?: Assessment; readonly problems: readonly Problem[] }> {
  const { audience = "internal" } = options;
  const { mill, problems: unopened } = openAsked(options);
  if (mill === undefined) return { problems: unopened };
  const unready = audienceProblems(mill.plant, audience);
  if (unready.length > 0) return { problems: unready };
  const wanted = (mill.plant.scenarios ?? []).length > 0;
  if (wanted) understudy?.open();
  progress("reading the log");
  const { settled, problems } = await readSettled(mill, logs, options);
  if (settled === undefined || settled.reading.account.refused) return { problems };
  const { reading, groups: all, uncovered, folded, sample, fastness } = namesFor(settled, audience);
  const groups = all.filter(only);
  const compared = groups.filter(({ key }) => key.pigment !== "");
  const common = referenceOf(options.per, compared);
  if (reading.days === undefined || compared.length === 0 || !(common.units > 0)) {
    return { problems: [nothing(options)] };
  }
  const setting = {
    groups,
    uncovered: areaOf(uncovered),
    ...(options.per === "m2" ? {} : { units: common.units }),
    asOf: options.asOf,
    draws: Math.min(options.draws, SCENARIO_DRAWS),
    seed: options.seed,
  };
  progress("working out both routes");
  const whole =
    options.client === undefined && options.site === undefined && options.order === undefined;
  const readAll = async (): Promise<HouseLots | undefined> => {
    if (whole) return { groups: all, days: reading.days, readLots: reading.readLots };
    const { client: _, site: __, order: ___, ...house } = options;
    const { settled: read } = await readSettled(mill, logs, house);
    if (read === undefined) return undefined;
    const { days, readLots } = read.reading;
    return { groups: read.groups, days, readLots };
  };
  let model: Program;
  let metering: Metering | undefined;
  try {
    model = writeProgram(mill.plant, mill.factors, groups, options.asOf);
    metering = await meteringOf(mill, {
      model,
      groups,
      days: reading.days,
      readLots: reading.readLots,
      ...(whole && groups.length === all.length ? {} : { all: readAll }),
      period: options,
      asOf: options.asOf,
      draws: options.draws,
      seed: options.seed,
    });
  } catch (error) {
    if (error instanceof MissingFactor) return { problems: [noFactor(error)] };
    throw error;
  }
  const found = metering?.calibrated;
  const elsewhere = wanted ? understudy?.play({ ...setting, ...correctionsOf(found) }) : undefined;
  const program = found === undefined ? model : calibrated(model, found.calibration);
  progress("drawing");
  const account = accountOf(program, options.draws, options.seed);
  const ids = INDICATOR_IDS.filter((id) => program.indicators.has(id));
  // Yield is a matter of accepted area; per kg, metre and in all both arms are divided by the same.
  const yields =
    options.per === "m2"
      ? yieldsOf(mill.plant, groups, areaOf(uncovered), options.draws, options.seed)
      : undefined;
  const reference = yields === undefined ? common : { ...common, byArm: yields.central };
  const comparisons = new Map(
    ids.map((id) => [id, compareArms(account, id, yields?.accepted ?? common.units)]),
  );
  const swings = swingsOf(program, ["water", "energy", "co2-location"] satisfies IndicatorId[]);
  const blind = blindness({
    account,
    groups,
    comparisons,
    ids: ["water", "energy", "co2-location"],
    isMeasured: (site, machine, carrier) =>
      found?.calibration.of(site, machine, carrier)?.by === "measured",
    seed: options.seed,
  });
  const worth = metersWorth(account, comparisons, ["water", "cod", "energy", "co2-location"]);
  const unmetered =
    found === undefined
      ? undefined
      : withoutMeters(model, ids, yields?.accepted ?? common.units, options);
  progress("working out scenarios");
  let played: ReturnType<typeof scenariosOf>;
  try {
    const { plant, factors } = mill;
    const corrected = found === undefined ? {} : { calibration: found.calibration };
    played = scenariosOf({ plant, factors, ...corrected, ...setting }, await elsewhere);
  } catch (error) {
    if (error instanceof MissingFactor) return { problems: [noFactor(error)] };
    throw error;
  }
  if (played.problems.length > 0) return { problems: played.problems };
  const input: ReportInput = {
    plant: mill.plant,
    factors: mill.factors,
    groups,
    folded,
    fastness,
    sample,
    uncovered,
    account,
    comparisons,
    blindness: blind,
    ...(metering === undefined ? {} : { readings: metering.digest }),
    ...(whole && metering !== undefined ? { outflows: metering.outflows } : {}),
    worth,
    swings: yields === undefined ? swings : swingsWithYields(swings, yields),
    ...(yields === undefined ? {} : { yields }),
    ...(played.scenarios === undefined ? {} : { scenarios: played.scenarios }),
    log: reading.account,
    filtered: reading.filtered,
    withReadings: reading.withReadings,
    days: reading.days,
    reference,
    scope: {
      client: options.client ?? "",
      site: options.site ?? "",
      order: options.order ?? "",
    },
    audience,
    date: options.asOf,
    seed: options.seed,
    meters: whole ? seriesOf(found?.meters ?? []) : [],
    ...(found === undefined ? {} : { calibrated: found }),
    ...(unmetered === undefined ? {} : { unmetered }),
    metersMissing: whole
      ? "No readings were found. Name meters in plant.yaml and put readings into meters.csv beside it."
      : "Meters count the whole house, so they are shown only in a report on all lots.",
    version: VERSION,
  };
  const { claims, problems: against } = claimsOf(mill, input, audience);
  if (claims === undefined) return { problems: against };
  return {
    assessment: { mill, reading, input: { ...input, claims } },
    problems: [...problems, ...(metering?.problems ?? [])],
  };
}

type Settled = ReturnType<Ledger["settled"]> & {
  readonly reading: Omit<Reading, "ledger">;
  readonly sample: ReturnType<Ledger["sample"]>;
  readonly fastness: ReturnType<Ledger["fastness"]>;
};

// The ledger is left behind here: it holds what grew with the log, and drawing needs room of its own.
async function readSettled(
  mill: Workspace,
  logs: readonly string[],
  options: AssessOptions,
): Promise<{ readonly settled?: Settled; readonly problems: readonly Problem[] }> {
  const { reading, problems } = await readMill(mill, logs, { ...options, today: options.asOf });
  if (reading === undefined) return { problems };
  const { ledger, ...rest } = reading;
  const [sample, fastness] = [ledger.sample(), ledger.fastness()];
  return { settled: { ...ledger.settled(), sample, fastness, reading: rest }, problems };
}

function referenceOf(per: Reference["per"], groups: readonly Group[]): Reference {
  const places = amountPlaces();
  const sum = (place: number): number =>
    groups.reduce((total, { amounts }) => total + (amounts[place] ?? 0), 0);
  switch (per) {
    case "kg":
      return { per, units: sum(places.mass), suffix: "kg", words: "kg of cloth printed" };
    case "m":
      return { per, units: sum(places.length), suffix: "m", words: "metre printed" };
    case "total":
      return { per, units: 1, suffix: "", words: "the whole period" };
    case "m2":
      return { per, units: sum(places.accepted), suffix: "m²", words: "accepted m²" };
  }
}

function areaOf(parts: readonly { readonly area: number }[]): number {
  return parts.reduce((total, { area }) => total + area, 0);
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

function nothing(options: AssessOptions): Problem {
  const scope = [options.client, options.site, options.order]
    .filter((part) => part !== undefined)
    .join(", ");
  return {
    code: "nothing-to-report",
    severity: "refused",
    ...(scope === "" ? {} : { value: scope }),
    expected: "at least one accepted lot with a counterpart route in the period and scope",
    remedy:
      "Widen the period, check the spelling of client, site or order, or add the missing route to plant.yaml.",
  };
}
