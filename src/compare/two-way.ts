/**
 * The share saved over two settings at once, all else at its median.
 */

import type { IndicatorId } from "../account/indicators.js";
import type { Program } from "../account/program.js";
import type { FactorSet } from "../factors/factor.js";
import { type Bench, benchOf, type Holding, medianColumns } from "./held.js";
import { type Turned, turnedOf } from "./turned.js";

/** One side of a map. */
export interface Side {
  /** Setting or factor. */
  readonly turned: Turned;
  /** Ends of the side. */
  readonly range: readonly [number, number];
}

/** What may be laid along a side: the first factor of the list that the mill has. */
export interface Wanted {
  /** Whether a factor may serve, each of the list before the next. */
  readonly factors: readonly RegExp[];
  /** Ends of the side, given the value of today and the plausible range. */
  readonly range: (
    today: number,
    plausible: readonly [number, number],
  ) => readonly [number, number];
}

/** A map asked for. */
export interface MapAsked {
  /** Indicator. */
  readonly id: IndicatorId;
  /** Side that runs across. */
  readonly across: Wanted;
  /** Side that runs upwards. */
  readonly up: Wanted;
}

/** A map worked out. */
export interface TwoWayMap {
  /** Indicator. */
  readonly id: IndicatorId;
  /** Side that runs across. */
  readonly across: Side;
  /** Side that runs upwards. */
  readonly up: Side;
  /** Shares saved at even steps from end to end, lowest row first; not a number where none can be formed. */
  readonly rows: readonly (readonly number[])[];
  /** Share saved at today's values. */
  readonly today: number;
}

/** Points along each side. */
const POINTS = 21;

/**
 * Works maps out.
 *
 * @param program - terms and conversions
 * @param factors - factors in force, for plausible ranges
 * @param asked - maps asked for
 * @param areas - accepted area of dye over that of pigment at the medians; 1 when absent
 * @returns one answer for each map, in their order; undefined where the mill lacks a side or nothing hangs on it
 */
export function twoWayMaps(
  program: Program,
  factors: FactorSet,
  asked: readonly MapAsked[],
  areas = 1,
): readonly (TwoWayMap | undefined)[] {
  const ids = [...new Set(asked.map(({ id }) => id))];
  const bench = benchOf(program, ids, medianColumns(program), Float64Array.of(areas));
  const turned = turnedOf(program, factors);
  return asked.map(({ id, across, up }) => {
    const sides = [across, up].map((wanted) => sideOf(bench, turned, id, wanted));
    const [x, y] = sides;
    if (x === undefined || y === undefined) return undefined;
    const at = [...x.turned.at, ...y.turned.at];
    const holding = bench.hold(at, [id]);
    if (holding === undefined) return undefined;
    const saving = (a: number, b: number): number => {
      const values = [...x.turned.at.map(() => a), ...y.turned.at.map(() => b)];
      return holding(values)[0]?.[0] ?? NaN;
    };
    return {
      id,
      across: x,
      up: y,
      rows: points(y.range).map((b) => points(x.range).map((a) => saving(a, b))),
      today: saving(x.turned.today, y.turned.today),
    };
  });
}

function points([low, high]: readonly [number, number]): readonly number[] {
  return Array.from({ length: POINTS }, (_, i) => low + ((high - low) * i) / (POINTS - 1));
}

// Of several owners of a factor the one that moves the share saved most.
function sideOf(
  bench: Bench,
  turned: readonly Turned[],
  id: IndicatorId,
  wanted: Wanted,
): Side | undefined {
  for (const pattern of wanted.factors) {
    const [best] = turned
      .flatMap((one) => {
        if (one.range === undefined || !pattern.test(one.leaf.factor)) return [];
        const holding = bench.hold(one.at, [id]);
        if (holding === undefined) return [];
        const range = wanted.range(one.today, one.range);
        if (!(range[0] <= one.today && one.today <= range[1] && range[0] < range[1])) return [];
        return [{ turned: one, range, moves: moves(holding, one, range) }];
      })
      .filter((side) => side.moves > 0)
      .sort((a, b) => b.moves - a.moves);
    if (best !== undefined) return { turned: best.turned, range: best.range };
  }
  return undefined;
}

function moves(holding: Holding, { at }: Turned, [low, high]: readonly [number, number]): number {
  const [a = NaN, b = NaN] = [low, high].map((x) => holding(at.map(() => x))[0]?.[0]);
  return Math.abs(b - a);
}
