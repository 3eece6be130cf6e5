/**
 * Corrects a model by meters: all readings and all modelled flows of the machines they count are reconciled at
 * once, and the corrections that come out multiply the rates of these machines on both arms.
 *
 * A correction is a formula over the very draws it corrects. A setting that makes the model of a metered machine
 * take more in one draw is taken back by the correction of that draw, so that it moves no result any more but by
 * what it changes between the two routes; swings and indices of doubt see that by themselves.
 */

import type { Calibration, Carrier, Correction } from "../account/calibration.js";
import type { Program } from "../account/program.js";
import type { Group } from "../ledger/ledger.js";
import { sha256Hex } from "../numbers/digest.js";
import { medianOf } from "../numbers/distributions.js";
import type { Derived, Leaf, Quantity } from "../numbers/quantity.js";
import { type Balance, type BalancePart, correctionsOf, solveBalances } from "./balance.js";
import { quantile } from "../numbers/quantiles.js";
import type { MeterInUse } from "./in-use.js";
import { nameOfPart } from "./metered-flows.js";
import { tierTold, type TierId } from "./precedence.js";
import { keyOf, type State, statesOf } from "./corrected-states.js";
import { type Drawn, drawInto, workedOut } from "./drawn.js";
import { logCovariance, logMean } from "./states.js";

/** Draws from which the gain is worked out. */
const GAIN_DRAWS = 2000;

/** What is asked for. */
export interface CalibrationAsked {
  /** Program of the model over all lots of the house. */
  readonly program: Program;
  /** The lots. */
  readonly groups: readonly Group[];
  /** Meters with readings, their months and their streams. */
  readonly meters: readonly MeterInUse[];
  /** Number of draws of the report. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
}

/** What became of a machine's carrier, or of a boiler. */
export interface StateFound {
  /** Site. */
  readonly site: string;
  /** Machine; `boiler` for the boiler of a site. */
  readonly machine: string;
  /** Carrier; `boiler` for fuel per steam. */
  readonly carrier: Carrier | "boiler";
  /** Measured by a meter of its own, or allocated. */
  readonly by: Correction["by"];
  /** Tier of the best meter that tells of it. */
  readonly tier: TierId;
  /** Share of what it comes to that lots with readings of their own take. */
  readonly read: number;
  /** The correction. */
  readonly factor: Derived;
  /** What the model had over all lots as printed, in L, kWh, kg, MJ of oil, Nm³ of air; MJ per kg for a boiler. */
  readonly before: Float64Array;
  /** The correction, draw by draw of the gain. */
  readonly corrections: Float64Array;
}

/** What became of a meter. */
export interface MeterFound {
  /** The meter. */
  readonly use: MeterInUse;
  /** Its reading, draw by draw. */
  readonly reading: Float64Array;
  /** What lots take by the model. */
  readonly before: Float64Array;
  /** The same corrected. */
  readonly after: Float64Array;
  /** Correction of each part of the meter, draw by draw. */
  readonly parts: readonly Float64Array[];
  /** The stream without meter, as it was taken and corrected; absent where there is none. */
  readonly stream?: { readonly before: Float64Array; readonly after: Float64Array };
  /** How far reconciliation moved the reading, in standard deviations. */
  readonly score: number;
}

/** A model corrected by meters. */
export interface Calibrated {
  /** Corrections for programs. */
  readonly calibration: Calibration;
  /** Meters, in the order of the plant file. */
  readonly meters: readonly MeterFound[];
  /** Machines and boilers. */
  readonly states: readonly StateFound[];
  /** Test of all balances at once: sum of squared moves, and the chance of one as large. */
  readonly test: { readonly sum: number; readonly chance: number };
}

/**
 * Corrects a model by meters.
 *
 * @param asked - model, lots and meters
 * @returns corrections with what they come to; undefined when no meter counts anything of the lots
 */
export function calibrate(asked: CalibrationAsked): Calibrated | undefined {
  const { program, meters } = asked;
  const values: Drawn = new Map();
  const count = Math.min(GAIN_DRAWS, asked.draws);
  const candidates = statesOf(program, asked.groups, meters);
  const leaves = meters.flatMap(({ reading, stream }) => [
    reading,
    ...(stream.leaf === undefined ? [] : [stream.leaf]),
  ]);
  const parts = meters.flatMap((use) => use.parts.map(({ amount }) => amount));
  drawInto(
    values,
    program,
    [...candidates.map(({ amount }) => amount), ...parts, ...leaves],
    count,
    asked.seed,
  );
  const drawn = (quantity: Quantity): Float64Array => values.get(quantity)!;
  // What is nothing in some draw has no logarithm, and is left as it is.
  const all = candidates.filter(({ amount }) => drawn(amount).every((value) => value > 0));
  if (all.length === 0) return undefined;
  const placeOf = new Map(
    all.map(({ site, machine, carrier }, at) => [keyOf(site, machine, carrier), at]),
  );
  const n = all.length;
  // Behind the machines stand the streams without meter and the readings.
  const streamed = meters.filter(({ stream }) => stream.leaf !== undefined);
  const streamAt = new Map(streamed.map(({ name }, at) => [name, n + at]));
  const readingAt = (r: number): number => n + streamed.length + r;
  const balances = meters.map((use, r): Balance => {
    const own = use.parts.map((part): BalancePart => ({
      amount: part.amount,
      states: [
        part.carrier === undefined
          ? undefined
          : placeOf.get(keyOf(use.site, part.machine, part.carrier)),
        part.boiler ? placeOf.get(keyOf(use.site, "boiler", "boiler")) : undefined,
      ].filter((state) => state !== undefined),
    }));
    const streams = [use, ...use.below].flatMap(({ name, stream }): readonly BalancePart[] => {
      const state = streamAt.get(name);
      return stream.leaf === undefined || state === undefined
        ? []
        : [{ amount: stream.leaf, states: [state] }];
    });
    return {
      name: use.name,
      parts: [...own, ...streams],
      reading: use.reading,
      readingState: readingAt(r),
    };
  });
  const lefts = new Map(
    streamed.flatMap((use, at) => {
      const stream = { leaf: use.stream.leaf!, total: medianOf(use.reading.spread) };
      const isShare = (value: number): boolean => value < stream.total;
      // A stream that is part of another balance stays as it is: it is small there.
      return use.within === undefined && drawn(stream.leaf).every(isShare)
        ? [[n + at, stream] as const]
        : [];
    }),
  );
  const columns = [
    ...all.map(({ amount }) => drawn(amount)),
    ...streamed.map(({ stream: { leaf } }, at) => {
      const left = lefts.get(n + at);
      return left === undefined
        ? drawn(leaf!)
        : drawn(left.leaf).map((value) => 1 - value / left.total);
    }),
    ...meters.map(({ reading }) => drawn(reading)),
  ];
  const means = Float64Array.from(columns, logMean);
  const covariance = logCovariance(columns, means);
  // Streams and readings hang on nothing else: what their draws seem to say of that is chance.
  for (let i = 0; i < columns.length; i++)
    for (let j = n; j < columns.length; j++) if (i !== j) covariance[i]![j] = covariance[j]![i] = 0;
  const middles = balances.map(({ parts, reading }) => ({
    parts: Float64Array.from(parts, ({ amount }) => Math.exp(logMean(drawn(amount)))),
    reading: Math.exp(logMean(drawn(reading))),
  }));
  const { gain, tests } = solveBalances(
    balances,
    {
      means,
      covariance,
      lefts: new Map(
        [...lefts].map(([state, { leaf, total }]) => [
          state,
          Math.exp(logMean(drawn(leaf))) / total,
        ]),
      ),
    },
    middles,
  );
  const mark = sha256Hex(
    JSON.stringify([...gain.map((row) => [...row]), meters.map(({ name }) => name)]),
  ).slice(0, 8);
  const correctionOf = correctionsOf(balances, gain, mark, lefts);
  const streamLeaves = meters.map(({ reading, stream }) =>
    stream.leaf === undefined ? [reading] : [reading, stream.leaf],
  );
  const shownBy = (state: number): readonly Leaf[] =>
    streamLeaves.filter((_, r) => Math.abs(gain[state]![r]!) > 0.01).flat();
  const states = all.map((state, at): StateFound => {
    const what = state.carrier === "boiler" ? "boiler" : `${state.machine}, ${state.carrier}`;
    const factor = correctionOf(
      at,
      `correction of ${state.site === "main" ? "" : `${state.site}, `}${what}`,
      shownBy(at),
    );
    const tier = tierTold(meters.filter((use) => tells(use, state))) ?? "T4";
    return {
      site: state.site,
      machine: state.machine,
      carrier: state.carrier,
      by: tier === "T1" || tier === "T2" ? "measured" : "allocated",
      tier,
      read: readShare(meters, state, drawn(state.amount)),
      factor,
      before: drawn(state.amount),
      corrections: workedOut(values, factor, count),
    };
  });
  const streamFactors = streamed.map(({ name }, at) =>
    workedOut(values, correctionOf(n + at, `correction of the stream of ${name}`, []), count),
  );
  const correctionOfPart = ({ states: of }: BalancePart): Float64Array =>
    Float64Array.from({ length: count }, (_, i) =>
      of.reduce(
        (product, state) =>
          product * (states[state]?.corrections[i] ?? streamFactors[state - n]![i]!),
        1,
      ),
    );
  const correctedPart = (part: BalancePart): Float64Array => {
    const by = correctionOfPart(part);
    return drawn(part.amount).map((value, i) => value * by[i]!);
  };
  const found = meters.map((use, r): MeterFound => {
    const own = balances[r]!.parts.slice(0, use.parts.length);
    const { leaf } = use.stream;
    const state = streamAt.get(use.name);
    return {
      use,
      reading: drawn(use.reading),
      before: sumOfAll(
        own.map(({ amount }) => drawn(amount)),
        count,
      ),
      parts: own.map(correctionOfPart),
      after: sumOfAll(own.map(correctedPart), count),
      ...(leaf === undefined || state === undefined
        ? {}
        : {
            stream: {
              before: drawn(leaf),
              after: correctedPart({ amount: leaf, states: [state] }),
            },
          }),
      score: tests.scores[readingAt(r)]!,
    };
  });
  const byKey = new Map(
    states.map((state) => [keyOf(state.site, state.machine, state.carrier), state]),
  );
  return {
    calibration: {
      of: (site, machine, carrier) => byKey.get(keyOf(site, machine, carrier)),
      boiler: (site) => byKey.get(keyOf(site, "boiler", "boiler"))?.factor,
    },
    meters: found,
    states,
    test: { sum: tests.sum, chance: tests.chance },
  };
}

// A meter of another quantity tells of a machine only by way of the site: gas of the boiler for its steam.
function tells(use: MeterInUse, { site, machine, carrier }: State): boolean {
  if (use.site !== site) return false;
  if (carrier === "boiler") return use.parts.some(({ boiler }) => boiler);
  if (use.machines === undefined) return true;
  return use.quantity === carrier && use.machines.includes(machine);
}

// Lots that were read, among all of a machine, by what the model has for both at medians.
function readShare(meters: readonly MeterInUse[], state: State, before: Float64Array): number {
  const lots = meters.filter((use) => use.lots !== undefined && tells(use, state));
  const read = lots.map(({ months, parts }) => {
    const names = parts.filter(({ machine }) => machine === state.machine).map(nameOfPart);
    const all = months.flatMap((month) => names.map((name) => month.parts.get(name) ?? 0));
    return all.reduce((sum, value) => sum + value, 0);
  });
  return Math.min(1, Math.max(0, ...read) / quantile(before, 0.5));
}

function sumOfAll(columns: readonly Float64Array[], count: number): Float64Array {
  const sum = new Float64Array(count);
  for (const column of columns) for (let i = 0; i < count; i++) sum[i] = sum[i]! + column[i]!;
  return sum;
}
