/**
 * What it costs not to see: by how much the interval of a saving would narrow, had one more machine a meter.
 *
 *     share of the variance removed = Cov(S, ln F)² / ((Var ln F + r²) Var S)
 *
 * F is what the machine takes as printed, r the error of the meter. It is the linear update that reconciliation
 * would make, and asks for no reading.
 */

import type { Account } from "../account/account.js";
import type { Carrier } from "../account/calibration.js";
import type { IndicatorId } from "../account/indicators.js";
import type { Comparison } from "../compare/compare.js";
import type { Group } from "../ledger/ledger.js";
import { keyOf } from "./corrected-states.js";
import { drawInto, type Drawn } from "./drawn.js";
import { ACCURACY } from "./reading-doubt.js";
import { machineAmount } from "./machine-amount.js";
import { amountsUnder, machinesTaking } from "./metered-flows.js";
import { type Counted, isCounted } from "./months.js";
import { logMean } from "./states.js";

/** A meter that could be put in. */
export interface Blindness {
  /** Site. */
  readonly site: string;
  /** Machine. */
  readonly machine: string;
  /** What the meter would count. */
  readonly carrier: Counted;
  /** By how much the 95 % interval of each saving would narrow. [percentage points] */
  readonly points: ReadonlyMap<IndicatorId, number>;
}

/** Draws looked at. */
const DRAWS = 2000;

/** What is asked for. */
export interface BlindnessAsked {
  /** The account, corrected by the meters there are. */
  readonly account: Account;
  /** Its lots. */
  readonly groups: readonly Group[];
  /** Comparisons by indicator. */
  readonly comparisons: ReadonlyMap<IndicatorId, Comparison>;
  /** Savings to narrow. */
  readonly ids: readonly IndicatorId[];
  /** Whether a machine's carrier has a meter of its own already. */
  readonly isMeasured: (site: string, machine: string, carrier: Carrier) => boolean;
  /** Seed of the draws. */
  readonly seed: number;
}

/**
 * Ranks meters that could be put in.
 *
 * @param asked - account, lots and what is measured
 * @returns those that narrow a saving, by the largest narrowing
 */
export function blindness(asked: BlindnessAsked): readonly Blindness[] {
  const { account, groups, comparisons, ids, isMeasured, seed } = asked;
  const { program, draws } = account;
  const count = Math.min(DRAWS, draws.count);
  const amounts = amountsUnder(program, groups, () => 1);
  const candidates = machinesTaking(program, amounts).filter(
    ({ site, machine, carrier }) =>
      machine !== "" && isCounted(carrier) && !isMeasured(site, machine, carrier),
  );
  const flows = candidates.map((one) => machineAmount(program, one, amounts));
  const drawn: Drawn = new Map();
  drawInto(drawn, program, flows, count, seed);
  const savings = ids.flatMap((id) => {
    const comparison = comparisons.get(id);
    const all = comparison?.draws?.subarray(0, count);
    if (all === undefined || comparison?.saving === undefined) return [];
    const centred = centredOf(all);
    const variance = meanProduct(centred, centred);
    const { low, high } = comparison.saving;
    return variance > 0 ? [{ id, centred, variance, width: 100 * (high - low) }] : [];
  });
  const seen = new Set<string>();
  return candidates
    .flatMap(({ site, machine, carrier }, at): readonly Blindness[] => {
      const flow = drawn.get(flows[at]!)!;
      const key = keyOf(site, machine, carrier);
      if (!isCounted(carrier) || seen.has(key) || !flow.every((value) => value > 0)) return [];
      seen.add(key);
      const mean = logMean(flow);
      const logs = flow.map((value) => Math.log(value) - mean);
      const doubt = meanProduct(logs, logs) + (ACCURACY[carrier] / 1.959964) ** 2;
      const points = new Map(
        savings.map(({ id, centred, variance, width }) => {
          const removed = meanProduct(centred, logs) ** 2 / (doubt * variance);
          return [id, width * (1 - Math.sqrt(Math.max(0, 1 - removed)))] as const;
        }),
      );
      return [{ site, machine, carrier, points }];
    })
    .sort((a, b) => widest(b) - widest(a) || (a.machine < b.machine ? -1 : 1));
}

/**
 * Largest narrowing of a meter.
 *
 * @param one - the meter
 * @returns percentage points
 */
export function widest(one: Blindness): number {
  return Math.max(0, ...one.points.values());
}

function centredOf(draws: Float64Array): Float64Array {
  const mean = draws.reduce((sum, value) => sum + value, 0) / draws.length;
  return draws.map((value) => value - mean);
}

function meanProduct(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum / a.length;
}
