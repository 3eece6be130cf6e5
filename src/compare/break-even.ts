/**
 * Break-evens: the value of one setting or factor at which nothing is saved, or at which a claim falls below
 * its level, all else as drawn.
 *
 * Every setting is first turned over its plausible range with all others at their medians. The curve found is
 * shifted so that it passes today's drawn value; its changes of sign are the break-evens. Those nearest to
 * today are then found anew on the draws, the setting held at one value in all of them:
 *
 *     Q(S | x) − Q(S | today) + Q today of the report = level     Q the median, or the low end for claims
 */

import type { IndicatorId } from "../account/indicators.js";
import type { Program } from "../account/program.js";
import type { FactorSet } from "../factors/factor.js";
import type { Leaf } from "../numbers/quantity.js";
import { quantile } from "../numbers/quantiles.js";
import { type Course, courseOf, type Point, rootBetween, rootsAlong } from "../numbers/roots.js";
import { type Bench, benchOf, drawnColumns, type Holding, medianColumns } from "./held.js";
import { stepsOver, type Turned, turnedOf } from "./turned.js";

/** What is asked of one share saved. */
export interface Target {
  /** Indicator. */
  readonly id: IndicatorId;
  /** Quantile of the draws that is looked at: 0.5, or 0.025 for claims. */
  readonly quantile: number;
  /** Level at which it turns: 0 for nothing saved, or the level of a claim. */
  readonly level: number;
  /** The quantile as the report has it. */
  readonly today: number;
}

/** A value at which the target is met. */
export interface Root {
  /** The value, in the unit of the factor. */
  readonly value: number;
  /** Whether it was found on the draws; else with all other factors at their medians. */
  readonly isDrawn: boolean;
}

/** Break-evens of one factor. */
export interface FactorBreakEven {
  /** Stream of the number, or the factor where several machines share its default. */
  readonly factor: string;
  /** The number, for unit, words and who gave it. */
  readonly leaf: Leaf;
  /** Its value today. */
  readonly today: number;
  /** 95 % interval as it is drawn. */
  readonly interval: readonly [number, number];
  /** Range it was turned over. */
  readonly range: readonly [number, number];
  /** How the share saved goes over that range. */
  readonly course: Course;
  /** Values by nearness to today's. */
  readonly roots: readonly Root[];
}

/** Break-evens of one target. */
export interface BreakEvens {
  /** What was asked. */
  readonly target: Target;
  /** Factors with a break-even inside their plausible range, the nearest first. */
  readonly found: readonly FactorBreakEven[];
  /** Factors that move the share saved and have none inside their plausible range. */
  readonly none: readonly FactorBreakEven[];
  /** Factors that do not move it. */
  readonly idle: number;
  /** Factors that move it and bend: it rises over one part of their range and falls over another. */
  readonly bends: number;
}

/** How break-evens are looked for. */
export interface Search {
  /** Terms and conversions. */
  readonly program: Program;
  /** Factors in force, for plausible ranges. */
  readonly factors: FactorSet;
  /** Accepted area of dye over that of pigment, draw by draw; absent where both are the same. */
  readonly areas?: Float64Array;
  /** Most draws to refine on. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
  /** Factors refined for each target. */
  readonly refined: number;
}

/** Steps on either side of today's value. */
const STEPS = 8;

/** Values tried at once: the steps on both sides, and today's, which may lie outside the range. */
const MOST_POINTS = 2 * STEPS + 2;

/** Change of a share saved that counts as none. */
const SLACK = 1e-9;

/** A break-even of the medians is found to this part of the range. */
const FINE = 1e-6;

/** Numbers kept at once while refining, so that a large mill takes fewer draws instead of more memory. */
const MOST_NUMBERS = 8e6;

/** Part of the way from today's value within which a break-even of the draws is looked for first. */
const NEAR = 0.1;

/** A break-even is found to this part of the way from today's value to the end of the range. */
const CLOSE = 1e-4;

/**
 * Looks for the break-evens of all settings and factors.
 *
 * @param search - where and how
 * @param targets - what is asked
 * @returns one answer for each target, in their order
 */
export function breakEvensOf(search: Search, targets: readonly Target[]): readonly BreakEvens[] {
  const { program, factors, areas } = search;
  const ids = [...new Set(targets.map(({ id }) => id))];
  const middle = areas === undefined ? undefined : Float64Array.of(quantile(areas, 0.5));
  const bench = benchOf(program, ids, medianColumns(program, MOST_POINTS), middle);
  const turned = turnedOf(program, factors);
  const sweeps = turned.map((one) => sweep(bench, one, targets));
  const drawn = lazily(() => {
    const count = Math.floor(MOST_NUMBERS / Math.max(1, program.nodes.list.length));
    const draws = Math.max(1, Math.min(search.draws, count));
    return benchOf(program, ids, drawnColumns(program, ids, draws, search.seed), areas);
  });
  return targets.map((target, t) => {
    const rows = sweeps.map((row) => row[t]!);
    const found = rows.flatMap((row) => (row.roots.length > 0 ? [row] : [])).sort(byNearness);
    return {
      target,
      found: found.map((row, i) =>
        i < search.refined ? refined(row, target, drawn) : { ...row.of, roots: screened(row) },
      ),
      none: rows
        .filter(({ of, roots }) => of.course !== "level" && roots.length === 0)
        .map(({ of }) => ({ ...of, roots: [] })),
      idle: rows.filter(({ of }) => of.course === "level").length,
      bends: rows.filter(({ of }) => of.course === "bends").length,
    };
  });
}

interface Row {
  readonly turned: Turned;
  readonly of: Omit<FactorBreakEven, "roots">;
  readonly points: readonly Point[];
  readonly roots: readonly number[];
}

// Turns one factor over its range, once for all targets.
function sweep(bench: Bench, turned: Turned, targets: readonly Target[]): readonly Row[] {
  const { factor, leaf, at, today, interval, range } = turned;
  const ids = targets.map(({ id }) => id);
  const holding = range === undefined ? undefined : bench.hold(at, ids);
  if (range === undefined || holding === undefined) {
    const of = { factor, leaf, today, interval, range: range ?? [today, today], course: "level" };
    return targets.map(() => ({ turned, of: { ...of, course: "level" }, points: [], roots: [] }));
  }
  const savings = (x: number): readonly number[] =>
    holding(at.map(() => x)).map((all) => all[0] ?? NaN);
  const steps = stepsOver(range, today, STEPS);
  const curves = alongside(holding, at.length, [...steps, today]);
  return targets.map((target, t) => {
    const curve = curves[t]!;
    const shift = target.today - target.level - curve[steps.length]!;
    const points = steps.map((x, i) => ({ x, y: curve[i]! + shift }));
    const course = courseOf(
      points.map(({ y }) => y),
      SLACK,
    );
    const roots =
      course === "level"
        ? []
        : rootsAlong(points, (x) => savings(x)[t]! + shift, (range[1] - range[0]) * FINE);
    return { turned, of: { factor, leaf, today, interval, range, course }, points, roots };
  });
}

// Savings at several values, worked out side by side. One that physics refuses spoils the lot, so then each is tried
// alone.
function alongside(
  holding: Holding,
  leaves: number,
  xs: readonly number[],
): readonly Float64Array[] {
  const held = (values: number | Float64Array): readonly Float64Array[] =>
    holding(Array.from({ length: leaves }, () => values));
  const row = new Float64Array(MOST_POINTS).fill(xs.at(-1) ?? NaN);
  row.set(xs);
  const together = held(row);
  if (!together.some((all) => all.some((one) => Number.isNaN(one)))) return together;
  const alone = xs.map((x) => held(x).map((all) => all[0]!));
  return together.map((_, t) => Float64Array.from(alone, (all) => all[t]!));
}

function screened({ roots, of }: Row): readonly Root[] {
  return nearestFirst(
    roots.map((value) => ({ value, isDrawn: false })),
    of.today,
  );
}

// Finds the break-evens of a factor anew on the draws; where one is lost there, that of the medians stays.
function refined(
  row: Row,
  { id, quantile: q, today, level }: Target,
  bench: () => Bench,
): FactorBreakEven {
  const { turned, points, of } = row;
  const holding = bench().hold(turned.at, [id]);
  if (holding === undefined) return { ...of, roots: screened(row) };
  const middle = quantileAt(holding, turned.at, of.today, q);
  const away = (x: number): number =>
    x === of.today
      ? today - level
      : quantileAt(holding, turned.at, x, q) - middle + (today - level);
  const roots = row.roots.map((value): Root => {
    const far = Math.abs(value - of.today);
    const drawn = rootNear(value, NEAR * far, points, away, CLOSE * far);
    return drawn === undefined ? { value, isDrawn: false } : { value: drawn, isDrawn: true };
  });
  return { ...of, roots: nearestFirst(roots, of.today) };
}

function quantileAt(holding: Holding, at: readonly number[], x: number, q: number): number {
  const [saving] = holding(at.map(() => x));
  if (saving === undefined || saving.some((one) => Number.isNaN(one))) return NaN;
  return quantile(saving, q);
}

// Looks close by, then between the points on both sides, then one point further out, for medians and draws part a
// little.
function rootNear(
  value: number,
  reach: number,
  points: readonly Point[],
  of: (x: number) => number,
  tolerance: number,
): number | undefined {
  const ends = [points[0]?.x ?? value, points.at(-1)?.x ?? value] as const;
  const close = [Math.max(ends[0], value - reach), Math.min(ends[1], value + reach)] as const;
  const found = rootBetween(of, close, tolerance);
  if (found !== undefined) return found;
  const after = points.findIndex(({ x }) => x > value);
  const upper = after < 0 ? points.length - 1 : after;
  for (const wider of [0, 1]) {
    const low = points[Math.max(0, upper - 1 - wider)];
    const high = points[Math.min(points.length - 1, upper + wider)];
    if (low === undefined || high === undefined) return undefined;
    const root = rootBetween(of, [low.x, high.x], tolerance);
    if (root !== undefined) return root;
  }
  return undefined;
}

/**
 * How far a value lies from today's, as a share of today's.
 *
 * @param value - the value
 * @param today - today's
 * @returns a share, 0 or more; infinite where today's is zero
 */
export function farness(value: number, today: number): number {
  if (value === today) return 0;
  return Math.abs(value - today) / Math.abs(today);
}

function nearestFirst(roots: readonly Root[], today: number): readonly Root[] {
  return [...roots].sort((a, b) => farness(a.value, today) - farness(b.value, today));
}

function byNearness(a: Row, b: Row): number {
  const of = ({ roots, of: { today } }: Row): number =>
    Math.min(...roots.map((value) => farness(value, today)));
  const [first, second] = [of(a), of(b)];
  if (first === second) return a.of.factor < b.of.factor ? -1 : 1;
  return first < second ? -1 : 1;
}

function lazily<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => (made ??= make());
}
