/**
 * Meters of a mill folder: readings, what they correct, and what is wrong with them.
 */

import { existsSync } from "node:fs";
import { join } from "node:path";
import { accountOf } from "../account/account.js";
import type { DrawnCorrection } from "../account/calibration.js";
import { leafRange } from "../account/draws.js";
import type { IndicatorId } from "../account/indicators.js";
import { type Program, writeProgram } from "../account/program.js";
import { compareArms, type Comparison } from "../compare/compare.js";
import { SCENARIO_DRAWS } from "../compare/scenarios.js";
import type { ArmUnits } from "../compare/yields.js";
import { valueInForce } from "../factors/in-force.js";
import type { Group } from "../ledger/ledger.js";
import { type Calibrated, calibrate } from "../meters/calibrate.js";
import { type DegreeDaysRead, readDegreeDays } from "../meters/degree-days.js";
import { lotsAboveMeter, meterFaults, monthsInPart } from "../meters/faults.js";
import { metersInUse } from "../meters/in-use.js";
import { lotMeters } from "../meters/lot-meters.js";
import type { ReadLots } from "../meters/lot-readings.js";
import type { MeterConditions } from "../meters/reading-amount.js";
import { type Outflow, outflowsOf } from "../meters/outflow.js";
import { readMeters } from "../meters/read-meters.js";
import type { Reading } from "../meters/reading.js";
import { wholeMonths } from "../meters/whole-months.js";
import { sha256Hex } from "../numbers/digest.js";
import { medianOf } from "../numbers/distributions.js";
import { evaluate } from "../numbers/quantity.js";
import { vapourEnthalpy } from "../physics/steam.js";
import { lookupIn } from "../plant/quantities.js";
import { buildSite } from "../plant/site.js";
import type { Problem } from "../problems/problem.js";
import { logFile } from "./files.js";
import type { Workspace } from "./workspace.js";

/** Readings of a mill. */
export interface MeterFile {
  /** Readings. */
  readonly readings: readonly Reading[];
  /** Of gas and steam. */
  readonly conditions: MeterConditions;
  /** What is wrong with rows. */
  readonly problems: readonly Problem[];
}

/**
 * Reads meters.csv beside the plant file.
 *
 * @param mill - the mill
 * @param asOf - day of the report
 * @returns readings; undefined when there is no file or the plant file names no meters
 */
export async function meterFileOf(mill: Workspace, asOf: string): Promise<MeterFile | undefined> {
  const path = join(mill.folder, "meters.csv");
  if (!existsSync(path) || mill.plant.text.meters === undefined) return undefined;
  const conditions = conditionsOf(mill, asOf);
  const read = await readMeters("meters.csv", logFile(path).open(), mill.plant, conditions);
  return { ...read, conditions };
}

async function degreeDaysOf(mill: Workspace): Promise<DegreeDaysRead> {
  const path = join(mill.folder, "degree_days.csv");
  return existsSync(path)
    ? readDegreeDays("degree_days.csv", logFile(path).open())
    : { problems: [] };
}

// Steam of the first site, where meters of steam that count heat do not say theirs.
function conditionsOf(mill: Workspace, asOf: string): MeterConditions {
  const factor = mill.factors.factors.get("fuel.natural-gas.gross-to-net");
  const value = factor === undefined ? undefined : valueInForce(factor, asOf.slice(0, 7), asOf);
  const [first] = Object.entries(mill.plant.sites);
  const steam =
    first === undefined
      ? vapourEnthalpy(8)
      : evaluate(
          buildSite(first[0], first[1], lookupIn(mill.factors, asOf.slice(0, 7), asOf))
            .steamEnthalpy,
          (leaf) => leafRange(leaf).median,
        );
  return {
    netPerGross: value === undefined ? 0.9 : medianOf(value.value.spread),
    steamEnthalpy: steam,
  };
}

/**
 * Readings of a mill judged by themselves.
 *
 * @param mill - the mill
 * @param asOf - day of the report
 * @returns number of readings and what is wrong with them; undefined where there are none to read
 */
export async function meterCheck(
  mill: Workspace,
  asOf: string,
): Promise<{ readonly readings: number; readonly problems: readonly Problem[] } | undefined> {
  const file = await meterFileOf(mill, asOf);
  if (file === undefined) return undefined;
  const { readings, problems } = file;
  return {
    readings: readings.length,
    problems: [
      ...problems,
      ...(await degreeDaysOf(mill)).problems,
      ...meterFaults(mill.plant, readings, []),
    ],
  };
}

/** Lots of a whole house. */
export interface HouseLots {
  /** The lots. */
  readonly groups: readonly Group[];
  /** First and last day with a lot. */
  readonly days?: readonly [string, string] | undefined;
  /** Readings of lots. */
  readonly readLots: readonly ReadLots[];
}

/** What a calibration is made of beside the mill. */
export interface MeteringAsked {
  /** Program of the model over the lots of the report. */
  readonly model: Program;
  /** Lots of the report. */
  readonly groups: readonly Group[];
  /** First and last day with a lot. */
  readonly days?: readonly [string, string] | undefined;
  /** Readings of lots. */
  readonly readLots: readonly ReadLots[];
  /** All lots of the house in the period, where the report is of part of them. */
  readonly all?: () => Promise<HouseLots | undefined>;
  /** First and last day of the period, where they were asked for. */
  readonly period: { readonly from?: string | undefined; readonly to?: string | undefined };
  /** Day of the report. */
  readonly asOf: string;
  /** Number of draws. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
}

/** What meters of a mill come to. */
export interface Metering {
  /** Corrections; absent where no meter counts what lots take. */
  readonly calibrated?: Calibrated;
  /** What leaves by site, in months with lots. */
  readonly outflows: readonly Outflow[];
  /** SHA-256 of the readings as read, written as JSON. */
  readonly digest: string;
  /** Faults of rows, and between meters. */
  readonly problems: readonly Problem[];
}

/**
 * Corrects a model by the meters of a mill. They count the whole house, so its lots are read again where a report
 * is of part of them.
 *
 * @param mill - the mill
 * @param asked - model and lots
 * @returns what the meters come to; undefined where there are none
 */
export async function meteringOf(
  mill: Workspace,
  asked: MeteringAsked,
): Promise<Metering | undefined> {
  const { model, groups, all, period, asOf, draws, seed } = asked;
  const file =
    (await meterFileOf(mill, asOf)) ??
    (asked.readLots.length > 0
      ? { readings: [], conditions: conditionsOf(mill, asOf), problems: [] }
      : undefined);
  if (file === undefined) return undefined;
  const { plant, factors } = mill;
  const lots =
    all === undefined ? { groups, days: asked.days, readLots: asked.readLots } : await all();
  const digest = sha256Hex(JSON.stringify(file.readings));
  if (lots === undefined) return { digest, outflows: [], problems: file.problems };
  const house = lots.groups;
  const program = all === undefined ? model : writeProgram(plant, factors, house, asOf);
  const isWhole = wholeMonths({ ...period, days: lots.days });
  const { readings, conditions } = file;
  const printed = new Set(house.map(({ key }) => key.month));
  const weather = await degreeDaysOf(mill);
  const meters = metersInUse({
    plant,
    program,
    groups: house,
    readings,
    conditions,
    degreeDays: weather.degreeDays,
    isWhole,
  });
  const { netPerGross } = conditions;
  const own = lotMeters({ plant, program, read: lots.readLots, netPerGross });
  const found = calibrate({ program, groups: house, meters: [...meters, ...own], draws, seed });
  return {
    ...(found === undefined ? {} : { calibrated: found }),
    digest,
    outflows: outflowsOf(plant, readings, (month) => printed.has(month) && isWhole(month)),
    problems: [
      ...file.problems,
      ...weather.problems,
      ...meterFaults(plant, readings, meters),
      ...monthsInPart(house, readings, isWhole),
      ...lotsAboveMeter(meters, own),
    ],
  };
}

/**
 * Corrections as plain data, for what works scenarios out beside the account.
 *
 * @param found - what meters correct; nothing when absent
 * @returns them with their draws
 */
export function correctionsOf(found: Calibrated | undefined): {
  readonly corrections?: readonly DrawnCorrection[];
} {
  if (found === undefined) return {};
  const corrections = found.states.map(
    ({ site, machine, carrier, by, factor, corrections: draws }) => ({
      site,
      machine,
      carrier,
      by,
      name: factor.id,
      draws,
    }),
  );
  return { corrections };
}

type DrawsAsked = Pick<MeteringAsked, "draws" | "seed">;

/**
 * Savings as the model alone has them, on the draws that scenarios take.
 *
 * @param model - program not corrected
 * @param ids - indicators
 * @param units - reference units
 * @param asked - number of draws and seed
 * @returns comparisons by indicator
 */
export function withoutMeters(
  model: Program,
  ids: readonly IndicatorId[],
  units: number | ArmUnits,
  asked: DrawsAsked,
): ReadonlyMap<IndicatorId, Comparison> {
  const account = accountOf(model, Math.min(asked.draws, SCENARIO_DRAWS), asked.seed);
  const count = account.draws.count;
  const fewer =
    typeof units === "number"
      ? units
      : { pigment: units.pigment.subarray(0, count), dye: units.dye.subarray(0, count) };
  return new Map(ids.map((id) => [id, compareArms(account, id, fewer)]));
}
