/**
 * Places of suppliers at one mix for one indicator.
 */

import { rangeOf, type Range } from "../compare/compare.js";
import { kendallTau, pairsKept } from "./kendall.js";
import { chanceLess, expectedRank, groupsApart, rankChances } from "./rank-chances.js";
import { type CellDraws, type MissingRule, standardisedDraws } from "./standardise.js";

/** Covered weight below which a supplier has no place. [-] */
const RANKED = 0.5;

/** Covered weight below which a place is told with a condition. [-] */
export const UNCONDITIONAL = 0.8;

/** What places are worked out from. */
export interface StandingsAsked {
  /** Names. */
  readonly aliases: readonly string[];
  /** Weights of the mix. */
  readonly weights: readonly number[];
  /** Draws by supplier and stratum. */
  readonly values: readonly CellDraws[];
  /** The same with settings left unsaid at their unfavourable end. */
  readonly counted: readonly CellDraws[];
  /** What a stratum without data counts as; nothing where all have data. */
  readonly silent: CellDraws;
  /** The same as `counted` per kg of cloth. */
  readonly byMass: readonly CellDraws[];
  /** Whether its meters bear each supplier out; all when left out. */
  readonly borne?: readonly boolean[];
  /** Places with the route left to the supplier. */
  readonly other?: Standings;
}

/** A supplier with its place. */
export interface Standing {
  /** Its name. */
  readonly alias: string;
  /** Weight of the mix that it covers. */
  readonly covered: number;
  /** Value at the strata it covers; absent where it covers none. */
  readonly value?: Range;
  /** What counts for its place: settings left unsaid and strata missing at their unfavourable end. */
  readonly counted?: Range;
  /** Chance of each place; absent for those without a place. */
  readonly chances?: readonly number[];
  /** The same with settings left unsaid drawn from their defaults. */
  readonly chancesDrawn?: readonly number[];
  /** Set where its meters do not bear it out, so that it is told apart from nobody. */
  readonly unborne?: true;
  /** Mean place. */
  readonly expected?: number;
  /** Group, from 1 on: suppliers of one group cannot be told apart. */
  readonly group?: number;
  /** Chance to take less than the next in order that meters bear out; absent for the last. */
  readonly beforeNext?: number;
  /** The same with settings left unsaid drawn from their defaults. */
  readonly beforeNextDrawn?: number;
}

/** An order under another assumption. */
export interface OtherOrder {
  /** The assumption. */
  readonly id:
    | "unsaid at typical"
    | "common strata"
    | "missing at best"
    | "strata alike"
    | "per kg"
    | "route free";
  /** Places by supplier in the order of `ranked`, from 1 on; halves where equal. */
  readonly places: readonly number[];
  /** Kendall's tau-b with the order at the mix; absent where it has no value. */
  readonly tau?: number;
  /** Pairs with an order under both. */
  readonly pairs: number;
  /** Those that keep it. */
  readonly kept: number;
}

/** A value used for the order that is more than this many times the value itself owes its place to what was unsaid. */
const UNSAID = 2;

/**
 * Whether a supplier owes its place to settings left unsaid, and not to what it takes.
 *
 * @param one - the supplier
 * @returns true where the value used for the order is more than twice the value at the mix
 */
export function isPlacedByUnsaid(one: Standing): boolean {
  const { value, counted } = one;
  return (
    value !== undefined && counted !== undefined && counted.median > UNSAID * Math.abs(value.median)
  );
}

/**
 * Suppliers as they are shown, no order among those that differ: first those told apart from all others by name,
 * then those that are not, group by group, then those that meters do not bear out.
 *
 * @param ranked - suppliers in order
 * @returns the same, names within each part
 */
export function asShown(ranked: readonly Standing[]): readonly Standing[] {
  const sizes = new Map<number, number>();
  for (const { group } of ranked)
    if (group !== undefined) sizes.set(group, (sizes.get(group) ?? 0) + 1);
  const part = ({ group }: Standing): number =>
    group === undefined ? Infinity : (sizes.get(group) ?? 0) > 1 ? group : 0;
  // Two that meters do not bear out are both infinite, and their difference is no number.
  return [...ranked].sort(
    (a, b) =>
      (part(a) === part(b) ? 0 : part(a) - part(b)) ||
      a.alias.localeCompare(b.alias, "en", { numeric: true }),
  );
}

/** Places of all. */
export interface Standings {
  /** Those with a place, in order. */
  readonly ranked: readonly Standing[];
  /** Those without. */
  readonly unranked: readonly Standing[];
  /** Orders under other assumptions. */
  readonly others: readonly OtherOrder[];
  /** Lowest tau among them; absent with fewer than two suppliers. */
  readonly leastTau?: number;
}

/**
 * Places as they may leave the program: no chance of those that meters do not bear out.
 *
 * @param standings - places
 * @returns the same, with those chances left out
 */
export function asTold(standings: Standings): Standings {
  return {
    ...standings,
    ranked: standings.ranked.map((one): Standing => {
      if (one.unborne !== true) return one;
      const { chances: _chances, chancesDrawn: _drawn, expected: _expected, ...rest } = one;
      return rest;
    }),
  };
}

/**
 * Works places out.
 *
 * @param asked - draws and weights
 * @returns places as chances, groups, and orders under other assumptions
 */
export function standingsOf(asked: StandingsAsked): Standings {
  const { aliases, weights, values, counted } = asked;
  const silent = [asked.silent];
  const covered = values.map((cells) =>
    weights.reduce((sum, weight, k) => sum + (cells[k] === undefined ? 0 : weight), 0),
  );
  const inMix = aliases.flatMap((_, s) => ((covered[s] ?? 0) >= RANKED - 1e-12 ? [s] : []));
  const draws = new Map(
    inMix.map((s) => [s, standardisedDraws(weights, counted[s] ?? [], silent, "most")!]),
  );
  const median = (s: number): number => rangeOf(draws.get(s)!).median;
  const order = [...inMix].sort((a, b) => median(a) - median(b));
  const sorted = order.map((s) => draws.get(s)!);
  const chances = rankChances(sorted);
  // Unsaid settings drawn from their defaults; a stratum that is missing at the most of those who print it.
  const open = order.map((s) => standardisedDraws(weights, values[s] ?? [], values, "most")!);
  const openChances = rankChances(open);
  // Only those whose meters bear them out are told apart.
  const borne = order.flatMap((s, place) => (asked.borne?.[s] === false ? [] : [place]));
  const groups = groupsApart(borne.map((place) => sorted[place]!));
  const own = (s: number): Range | undefined => {
    const at = standardisedDraws(weights, values[s] ?? [], [], "left out");
    return at === undefined ? undefined : rangeOf(at);
  };
  const basic = (s: number): Standing => {
    const value = own(s);
    return {
      alias: aliases[s] ?? "",
      covered: covered[s] ?? 0,
      ...(value === undefined ? {} : { value }),
    };
  };
  const ranked = order.map((s, place): Standing => {
    const at = borne.indexOf(place);
    const next = at < 0 ? undefined : borne[at + 1];
    return {
      ...basic(s),
      counted: rangeOf(draws.get(s)!),
      chances: [...chances[place]!],
      chancesDrawn: [...openChances[place]!],
      expected: expectedRank(chances[place]!),
      ...(at < 0 ? { unborne: true as const } : { group: groups[at] ?? 1 }),
      ...(next === undefined
        ? {}
        : {
            beforeNext: chanceLess(sorted[place]!, sorted[next]!),
            beforeNextDrawn: chanceLess(open[place]!, open[next]!),
          }),
    };
  });
  const others = ranked.length < 2 ? [] : othersOf(asked, order, covered);
  const taus = others.flatMap(({ tau }) => (tau === undefined ? [] : [tau]));
  return {
    ranked,
    unranked: aliases.flatMap((_, s) => (inMix.includes(s) ? [] : [basic(s)])),
    others,
    ...(taus.length === 0 ? {} : { leastTau: Math.min(...taus) }),
  };
}

function othersOf(
  { aliases, weights, values, counted, silent: at, byMass, other }: StandingsAsked,
  order: readonly number[],
  covered: readonly number[],
): readonly OtherOrder[] {
  const silent = [at];
  const base = order.map((_, place) => place + 1);
  const medians = (
    cells: readonly CellDraws[],
    rule: MissingRule,
    by: readonly number[] = weights,
    pool: readonly CellDraws[] = silent,
    only?: (stratum: number) => boolean,
  ): readonly number[] => {
    return order.map((s) => {
      const draws = standardisedDraws(by, cells[s] ?? [], pool, rule, only);
      return draws === undefined ? NaN : rangeOf(draws).median;
    });
  };
  const common = (k: number): boolean => order.every((s) => counted[s]?.[k] !== undefined);
  const list: readonly (readonly [OtherOrder["id"], readonly number[] | undefined])[] = [
    ["unsaid at typical", medians(values, "most", weights, values)],
    ["common strata", medians(counted, "left out", weights, [], common)],
    [
      "missing at best",
      order.some((s) => (covered[s] ?? 0) < 1 - 1e-9)
        ? medians(counted, "least", weights, counted)
        : undefined,
    ],
    [
      "strata alike",
      medians(
        counted,
        "most",
        weights.map(() => 1),
      ),
    ],
    ["per kg", medians(byMass, "most", weights, byMass)],
    [
      "route free",
      other === undefined
        ? undefined
        : order.map(
            (s) => other.ranked.find(({ alias }) => alias === aliases[s])?.counted?.median ?? NaN,
          ),
    ],
  ];
  return list.flatMap(([id, numbers]): readonly OtherOrder[] => {
    if (numbers === undefined || numbers.some(Number.isNaN)) return [];
    const tau = kendallTau(base, numbers);
    return [
      {
        id,
        places: placesOf(numbers),
        ...pairsKept(base, numbers),
        ...(Number.isNaN(tau) ? {} : { tau }),
      },
    ];
  });
}

/**
 * Places of values, the least first; equal ones share the mean of their places.
 *
 * @param values - the values
 * @returns places from 1 on
 */
export function placesOf(values: readonly number[]): readonly number[] {
  return values.map((value) => {
    const less = values.filter((one) => one < value).length;
    const equal = values.filter((one) => one === value).length;
    return less + (equal + 1) / 2;
  });
}
