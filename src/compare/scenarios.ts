/**
 * What-ifs beside the mill, on the same lots and the same draws: what both share cancels in the change.
 *
 *     change = S of the scenario − S of the mill, draw by draw
 */

import { type Account, accountsOf } from "../account/account.js";
import { type Calibration, calibrated } from "../account/calibration.js";
import { INDICATOR_IDS, type IndicatorId } from "../account/indicators.js";
import { writeProgram } from "../account/program.js";
import { Workshop } from "../account/workshop.js";
import type { FactorSet } from "../factors/factor.js";
import type { Group } from "../ledger/ledger.js";
import type { Plant, Scenario } from "../plant/plant.js";
import { compareArms, type Comparison, type Range, rangeOf } from "./compare.js";
import { acceptedOf, armsUnder, rejectsUnder } from "./scenario-groups.js";
import { type ArmUnits, yieldsOf } from "./yields.js";

/** Draws of scenarios and of the mill beside them, unless the report has fewer. */
export const SCENARIO_DRAWS = 2000;

/** What all scenarios of a report have in common. */
export interface Stage {
  /** The mill. */
  readonly plant: Plant;
  /** Factors in force. */
  readonly factors: FactorSet;
  /** Groups of lots. */
  readonly groups: readonly Group[];
  /** Corrections by meters; none when absent. */
  readonly calibration?: Calibration;
  /** Area of reprints that no reject covers. [m²] */
  readonly uncovered: number;
  /** Reference units; per accepted m² when absent. */
  readonly units?: number;
  /** Day of the report. */
  readonly asOf: string;
  /** Number of draws. */
  readonly draws: number;
  /** Seed of the draws. */
  readonly seed: number;
}

/** A scenario worked out. */
export interface PlayedScenario {
  /** The scenario. */
  readonly scenario: Scenario;
  /** Both arms under it. */
  readonly comparisons: ReadonlyMap<IndicatorId, Comparison>;
  /** Change of the share saved; only where both have one. */
  readonly changes: ReadonlyMap<IndicatorId, Range>;
}

/** The mill and its scenarios side by side. */
export interface Scenarios {
  /** Number of draws. */
  readonly draws: number;
  /** The mill at these draws. */
  readonly base: ReadonlyMap<IndicatorId, Comparison>;
  /** Scenarios in the order of the plant file. */
  readonly played: readonly PlayedScenario[];
}

/**
 * Works scenarios out.
 *
 * @param stage - what they have in common
 * @param scenarios - the scenarios
 * @returns the mill and its scenarios; or the one that leaves no accepted area
 * @throws {@link MissingFactor} when one asks for a factor without a value in force
 */
export function playScenarios(
  stage: Stage,
  scenarios: readonly Scenario[],
): Scenarios | { readonly without: Scenario } {
  const { plant, factors, calibration, asOf } = stage;
  const mill = { plant, instead: {}, rejects: { pigment: 1, dye: 1 } };
  // What the mill and its scenarios have in common, nearly all, is drawn and worked out once.
  const workshop = new Workshop();
  const casts = [mill, ...scenarios].map((cast) => {
    const groups = cast === mill ? stage.groups : armsUnder(cast, stage.groups);
    const model = writeProgram(cast.plant, factors, groups, asOf, workshop);
    const program = calibration === undefined ? model : calibrated(model, calibration);
    return { program, units: stage.units ?? areaUnder(stage, cast, groups) };
  });
  const accounts = accountsOf(
    casts.map(({ program }) => program),
    stage.draws,
    stage.seed,
  );
  const [base, ...others] = casts.map(({ units }, i) => compared(accounts[i]!, units));
  const played: PlayedScenario[] = [];
  for (const [i, scenario] of scenarios.entries()) {
    const comparisons = others[i];
    if (base === undefined || comparisons === undefined) return { without: scenario };
    const changes = new Map(
      [...comparisons].flatMap(([id, now]) => {
        const change = changeOf(base.get(id), now);
        return change === undefined ? [] : [[id, change] as const];
      }),
    );
    played.push({ scenario, comparisons, changes });
  }
  return { draws: stage.draws, base: base ?? new Map(), played };
}

function compared(
  account: Account,
  units: number | ArmUnits | undefined,
): ReadonlyMap<IndicatorId, Comparison> | undefined {
  if (units === undefined) return undefined;
  const ids = INDICATOR_IDS.filter((id) => account.program.indicators.has(id));
  return new Map(ids.map((id) => [id, compareArms(account, id, units)]));
}

// Accepted area of each arm, with its own rejects; one number where both are the same in every draw.
function areaUnder(
  { uncovered, draws, seed }: Stage,
  { plant, rejects }: Pick<Scenario, "plant" | "rejects">,
  groups: readonly Group[],
): number | ArmUnits | undefined {
  const of = (arm: "pigment" | "dye"): number | Float64Array => {
    const under = rejectsUnder(groups, rejects[arm]);
    return yieldsOf(plant, under, uncovered, draws, seed)?.accepted[arm] ?? acceptedOf(under);
  };
  const area = { pigment: of("pigment"), dye: of("dye") };
  const least = (one: number | Float64Array): number =>
    typeof one === "number" ? one : one.reduce((low, value) => Math.min(low, value), Infinity);
  if (!(least(area.pigment) > 0) || !(least(area.dye) > 0)) return undefined;
  if (typeof area.pigment === "number" && area.pigment === area.dye) return area.pigment;
  const drawn = (one: number | Float64Array): Float64Array =>
    typeof one === "number" ? new Float64Array(draws).fill(one) : one;
  return { pigment: drawn(area.pigment), dye: drawn(area.dye) };
}

function changeOf(base: Comparison | undefined, now: Comparison): Range | undefined {
  const before = base?.draws;
  if (before === undefined || now.draws === undefined) return undefined;
  return rangeOf(now.draws.map((saving, i) => saving - (before[i] ?? NaN)));
}
