/**
 * What a measurement would be worth: how much of the doubt of a saving it could take away.
 *
 * A measurement makes known all settings that it shows. With S_m the share of the variance of the saving
 * that a fit on them explains, and the same for all others,
 *
 *     S_m ≤ share that the measurement removes, in whatever order it is made ≤ 1 − Σ S_other
 *
 * The left side is what it removes when nothing else is measured, the right side what it removes when all
 * else is known already. Both leave out the error of the meter itself. What stays are the residuals of the
 * fit about the median of the saving, so the interval after is that of a measurement which turns out as
 * assumed now.
 */

import type { Account } from "../account/account.js";
import type { IndicatorId } from "../account/indicators.js";
import {
  type Argument,
  argumentOf,
  strengthOf,
  type VarianceShare,
  varianceShare,
} from "../numbers/variance-share.js";
import { type Comparison, type Range, rangeOf } from "./compare.js";
import { type Measurement, measurementOf, MEASUREMENTS, OF_SOURCES } from "./measurements.js";

/** What one measurement would do for one saving. */
export interface Worth {
  /** The measurement. */
  readonly measurement: Measurement;
  /** Share of the variance of the saving that it would remove by itself, from 0 to 1. */
  readonly share: number;
  /** Standard error of the share, for the number of draws looked at. */
  readonly error: number;
  /** Share that it would remove at most, were all else known; not below `share`. */
  readonly most: number;
  /** Median and interval of the saving that would stay, if the settings turned out as they are taken now. */
  readonly after: Range;
}

/** What the doubt of one saving is made of. */
export interface SavingDoubt {
  /** Measurements, the most useful first; those that show nothing are left out. */
  readonly worths: readonly Worth[];
  /** Share of the variance that hangs on factors which rest on sources. */
  readonly sources: number;
  /** Share that hangs on settings which no measurement of the list shows. */
  readonly unlisted: number;
  /** What is left: settings that act through each other, bends the fit misses, yields given. */
  readonly together: number;
  /** The most useful measurement for the total of what the mill really did, and its share. */
  readonly actual?: Omit<Worth, "after" | "most">;
  /** Squared correlation of each factor, straight or squared, with the saving; the largest of its owners. */
  readonly alone: ReadonlyMap<string, number>;
}

/** Draws looked at: enough for a share to ±2 %, and few enough to cost next to nothing. */
const DRAWS = 2500;

interface Column {
  readonly factor: string;
  readonly argument: Argument;
}

/**
 * Ranks measurements by what they would remove from the doubt of savings.
 *
 * @param account - the account
 * @param comparisons - comparisons by indicator
 * @param ids - indicators
 * @returns what the doubt of each saving is made of; indicators whose saving has none are left out
 */
export function metersWorth(
  account: Account,
  comparisons: ReadonlyMap<IndicatorId, Comparison>,
  ids: readonly IndicatorId[],
): ReadonlyMap<IndicatorId, SavingDoubt> {
  const count = Math.min(DRAWS, account.draws.count);
  const columns = account.program.nodes.leaves().flatMap(({ leaf, at }): readonly Column[] => {
    if (leaf.spread.shape === "fixed") return [];
    const argument = argumentOf(account.draws.of(at).subarray(0, count));
    return argument === undefined ? [] : [{ factor: leaf.factor, argument }];
  });
  const parts = partsOf(columns);
  return new Map(
    ids.flatMap((id) => {
      const comparison = comparisons.get(id);
      const saving = comparison?.draws?.subarray(0, count);
      const result = saving === undefined ? undefined : argumentOf(saving);
      if (saving === undefined || result === undefined) return [];
      const median = comparison?.saving?.median ?? rangeOf(saving).median;
      const total = account.indicators.actual.get(id)?.subarray(0, count);
      const actual = bestOf(parts, columns, total === undefined ? undefined : argumentOf(total));
      return [
        [
          id,
          {
            ...doubtOf(parts, columns, { result, median, sd: standardDeviation(saving) }),
            ...(actual === undefined ? {} : { actual }),
          },
        ] as const,
      ];
    }),
  );
}

/** Places of columns: those each measurement shows, and the rest. */
interface Parts {
  readonly measured: readonly {
    readonly measurement: Measurement;
    readonly at: readonly number[];
  }[];
  readonly sources: readonly number[];
  readonly unlisted: readonly number[];
}

function partsOf(columns: readonly Column[]): Parts {
  const shownBy = columns.map(({ factor }) => measurementOf(factor));
  const where = (wanted: (place: number) => boolean): readonly number[] =>
    [...columns.keys()].filter(wanted);
  const ofSources = (place: number): boolean =>
    OF_SOURCES.some((start) => columns[place]?.factor.startsWith(start));
  return {
    measured: MEASUREMENTS.map((measurement) => ({
      measurement,
      at: where((place) => shownBy[place] === measurement),
    })),
    sources: where((place) => shownBy[place] === undefined && ofSources(place)),
    unlisted: where((place) => shownBy[place] === undefined && !ofSources(place)),
  };
}

function doubtOf(
  { measured, sources, unlisted }: Parts,
  columns: readonly Column[],
  { result, median, sd }: { result: Argument; median: number; sd: number },
): Omit<SavingDoubt, "actual"> {
  const strengths = columns.map(({ argument }) => strengthOf(argument, result));
  const explainedBy = (at: readonly number[]): VarianceShare | undefined =>
    varianceShare(
      at.map((place) => columns[place]!.argument),
      result,
      at.map((place) => strengths[place]!),
    );
  const shown = measured
    .flatMap(({ measurement, at }) => {
      const explained = explainedBy(at);
      return explained === undefined ? [] : [{ measurement, ...explained }];
    })
    .sort((a, b) => b.share - a.share || (a.measurement.id < b.measurement.id ? -1 : 1));
  const rest = {
    sources: explainedBy(sources)?.share ?? 0,
    unlisted: explainedBy(unlisted)?.share ?? 0,
  };
  const all = shown.reduce((sum, { share }) => sum + share, rest.sources + rest.unlisted);
  const together = Math.max(0, 1 - all);
  const alone = new Map<string, number>();
  columns.forEach(({ factor }, place) => {
    alone.set(factor, Math.max(alone.get(factor) ?? 0, strengths[place]!));
  });
  return {
    worths: shown.map(({ measurement, share, error, residuals }) => {
      const left = rangeOf(residuals);
      return {
        measurement,
        share,
        error,
        most: Math.min(1, share + together),
        after: {
          median,
          low: median + sd * (left.low - left.median),
          high: median + sd * (left.high - left.median),
        },
      };
    }),
    ...rest,
    together,
    alone,
  };
}

// The measurement whose settings go along with the total most is the one that explains most of it.
function bestOf(
  { measured }: Parts,
  columns: readonly Column[],
  total: Argument | undefined,
): SavingDoubt["actual"] {
  if (total === undefined) return undefined;
  const [best] = measured
    .map(({ measurement, at }) => {
      const all = at.map((place) => columns[place]!.argument);
      const strengths = all.map((argument) => strengthOf(argument, total));
      return { measurement, all, strengths, sum: strengths.reduce((sum, one) => sum + one, 0) };
    })
    .sort((a, b) => b.sum - a.sum);
  if (best === undefined) return undefined;
  const explained = varianceShare(best.all, total, best.strengths);
  if (explained === undefined) return undefined;
  return { measurement: best.measurement, share: explained.share, error: explained.error };
}

function standardDeviation(numbers: Float64Array): number {
  const mean = numbers.reduce((sum, value) => sum + value, 0) / numbers.length;
  return Math.sqrt(numbers.reduce((sum, value) => sum + (value - mean) ** 2, 0) / numbers.length);
}
