/**
 * Factors in a pack: those that the supplier's figures rest on, with their sources.
 */

import type { Factor, FactorSet, Source } from "../factors/factor.js";
import type { Pack } from "./schema.js";

/**
 * A set of factors that remembers which were asked for.
 *
 * @param set - factors in force
 * @returns the same set, and the ids asked for so far
 */
export function remembering(set: FactorSet): {
  readonly set: FactorSet;
  readonly asked: ReadonlySet<string>;
} {
  const asked = new Set<string>();
  const factors = new Map(set.factors);
  const get = (id: string): Factor | undefined => {
    const found = set.factors.get(id);
    if (found !== undefined) asked.add(id);
    return found;
  };
  Object.assign(factors, { get, has: (id: string) => get(id) !== undefined });
  return { set: { ...set, factors: factors }, asked };
}

/**
 * Factors as a pack holds them. Vintages that no month of the period reads are left out.
 *
 * @param set - factors in force
 * @param asked - ids wanted
 * @param months - months of the lots
 * @param asOf - day of the pack
 * @returns factors sorted by id, and their sources
 */
export function factorList(
  set: FactorSet,
  asked: ReadonlySet<string>,
  months: readonly string[],
  asOf: string,
): Pick<Pack, "factors" | "sources"> {
  const sorted = [...months].sort();
  const last = `${sorted.at(-1) ?? "9999-12"}-01`;
  const first = `${sorted[0] ?? "0000-01"}-01`;
  const factors = [...asked].sort().flatMap((id) => {
    const factor = set.factors.get(id);
    if (factor === undefined) return [];
    const known = factor.values.filter(({ entered }) => entered <= asOf);
    // All that begin within the period, and the one in force at its first month; the oldest where none is.
    const before = known.find(({ from }) => from <= first);
    const within = known.filter(({ from }) => from > first && from <= last);
    const oldest = known.at(-1);
    const served = before ?? within.at(-1) ?? oldest;
    const values = [...new Set([...within, ...(served === undefined ? [] : [served])])];
    if (values.length === 0) return [];
    return [
      {
        id,
        unit: factor.unit,
        words: factor.words,
        ...(factor.basis === undefined ? {} : { basis: factor.basis }),
        plausible: [...factor.plausible] as [number, number],
        own: factor.overruled,
        values: values.map(({ note: _note, page, spread, quality, ...rest }) => ({
          ...rest,
          ...(page === undefined ? {} : { page }),
          spread: structuredClone(spread) as Pack["factors"][number]["values"][number]["spread"],
          quality: { ...quality },
        })),
      },
    ];
  });
  const keys = new Set(factors.flatMap(({ values }) => values.map(({ source }) => source)));
  const sources = Object.fromEntries(
    [...keys].sort().flatMap((key) => {
      const source = set.sources.get(key);
      return source === undefined ? [] : [[key, filled(source)]];
    }),
  );
  return { factors, sources };
}

function filled(source: Source): Pack["sources"][string] {
  return Object.fromEntries(
    Object.entries(source).filter(([, value]) => value !== undefined),
  ) as Pack["sources"][string];
}

/**
 * Factors of a pack as a set again.
 *
 * @param pack - factors and sources of a pack
 * @returns the set
 */
export function factorSetOf(pack: Pick<Pack, "factors" | "sources" | "factorSet">): FactorSet {
  const source = ({
    author,
    title,
    publisher,
    year,
    where,
    read,
    licence,
  }: Pack["sources"][string]): Source => ({
    author,
    title,
    publisher,
    year,
    where,
    read,
    licence,
  });
  return {
    factors: new Map(
      pack.factors.map(({ id, unit, words, basis, plausible, own, values }): [string, Factor] => [
        id,
        {
          id,
          unit,
          words,
          basis,
          plausible,
          overruled: own,
          values: values.map((value) => ({ ...value, page: value.page, note: undefined })),
        },
      ]),
    ),
    sources: new Map(Object.entries(pack.sources).map(([key, one]) => [key, source(one)])),
    digest: pack.factorSet,
  };
}

/** A factor of a pack that is not as shipped. */
export interface FactorDifference {
  /** Id. */
  readonly id: string;
  /**
   * `own`: said to be the supplier's; `altered`: said to be shipped and is not; `reworded`: the value is shipped,
   * what is said of it is not; `unknown`: not shipped.
   */
  readonly how: "own" | "altered" | "reworded" | "unknown";
  /** Central value of the pack's newest vintage. */
  readonly value: number;
  /** Central value of the shipped vintage of the same start, or the newest; absent when there is none. */
  readonly shipped?: number;
}

/**
 * Compares the factors of a pack with the shipped ones.
 *
 * @param factors - factors of the pack
 * @param shipped - the reader's own set, without own factors
 * @returns those that differ, sorted by id
 */
export function factorDifferences(
  factors: Pack["factors"],
  shipped: FactorSet,
): readonly FactorDifference[] {
  return factors.flatMap((factor): readonly FactorDifference[] => {
    const mine = shipped.factors.get(factor.id);
    const value = factor.values[0]?.spread.value ?? NaN;
    if (mine === undefined) return [{ id: factor.id, how: factor.own ? "own" : "unknown", value }];
    const same =
      factor.unit === mine.unit &&
      factor.values.every((one) =>
        mine.values.some(
          ({ from, entered, spread }) =>
            from === one.from &&
            entered === one.entered &&
            JSON.stringify(sorted(spread)) === JSON.stringify(sorted(one.spread)),
        ),
      );
    if (same && (factor.own || saysTheSame(factor, mine))) return [];
    const twin = mine.values.find(({ from }) => from === factor.values[0]?.from) ?? mine.values[0];
    return [
      {
        id: factor.id,
        how: factor.own ? "own" : same ? "reworded" : "altered",
        value,
        ...(twin === undefined ? {} : { shipped: twin.spread.value }),
      },
    ];
  });
}

// Words, limits, source, page, year, place and scores, as they are shipped.
function saysTheSame(factor: Pack["factors"][number], mine: Factor): boolean {
  return (
    factor.words === mine.words &&
    factor.basis === mine.basis &&
    factor.plausible.every((limit, i) => limit === mine.plausible[i]) &&
    factor.values.every((one) =>
      mine.values.some(
        (value) =>
          value.from === one.from &&
          value.entered === one.entered &&
          value.source === one.source &&
          value.page === one.page &&
          value.year === one.year &&
          value.region === one.region &&
          JSON.stringify(sorted(value.quality)) === JSON.stringify(sorted(one.quality)),
      ),
    )
  );
}

/**
 * Sources of a pack that do not read as shipped, and those that say nothing.
 *
 * @param sources - sources of the pack
 * @param shipped - the reader's own set
 * @returns keys of sources reworded, and of those without author or title
 */
export function sourceDifferences(
  sources: Pack["sources"],
  shipped: FactorSet,
): { readonly reworded: readonly string[]; readonly empty: readonly string[] } {
  const text = (source: object): string => JSON.stringify(sorted(source));
  const keys = Object.keys(sources);
  return {
    reworded: keys.filter((key) => {
      const mine = shipped.sources.get(key);
      return mine !== undefined && text(sources[key] ?? {}) !== text(filled(mine));
    }),
    empty: keys.filter(
      (key) =>
        (sources[key]?.author ?? "").trim() === "" || (sources[key]?.title ?? "").trim() === "",
    ),
  };
}

function sorted(value: object): object {
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
}
