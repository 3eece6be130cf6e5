/**
 * Draws of one supplier's lots by stratum of a mix.
 */

import type { DrawKeep } from "../account/draws.js";
import type { IndicatorId } from "../account/indicators.js";
import type { ProgramTerm } from "../account/program.js";
import { dutiesOf } from "./boundary.js";
import type { Candidate } from "./candidate.js";
import { type CellTotals, cellTotals } from "./cells.js";
import { drawShelf } from "./draw-shelf.js";
import type { Gate } from "./gate.js";
import { placeIn, type ReferenceMix } from "./reference.js";
import { effectiveLots, sampleFactors } from "./sampling.js";
import type { CellDraws } from "./standardise.js";
import { type Ends, type Unstated, unsaidOf } from "./unstated.js";

/** Draws of one supplier at one mix. */
export interface Drawn {
  /** Value in its own mix and boundary, by indicator. */
  readonly crude: ReadonlyMap<IndicatorId, Float64Array>;
  /** Totals by stratum, with the doubt of the sample. */
  readonly value: CellTotals;
  /** The same with settings left unsaid at their unfavourable end, by indicator. */
  readonly counted: ReadonlyMap<IndicatorId, CellTotals>;
  /** Those settings, by indicator. */
  readonly unstated: ReadonlyMap<IndicatorId, readonly Unstated[]>;
  /** What the boundary leaves out of lots in a stratum. */
  readonly holes: readonly (string | undefined)[];
  /** Effective number of lots by stratum. */
  readonly effective: readonly number[];
  /** Totals as if nothing had been said of any setting; worked out when asked for. */
  readonly silent: (id: IndicatorId) => CellTotals;
}

/** How draws are made. */
export interface DrawnAsked {
  /** Ends of settings left unsaid. */
  readonly counted: Ends;
  /** Ends of settings as if nothing had been said. */
  readonly silent: Ends;
  /** Indicators. */
  readonly ids: readonly IndicatorId[];
  /** Number of draws of values. */
  readonly draws: number;
  /** Number of draws of what counts for places. */
  readonly placeDraws: number;
  /** Seed. */
  readonly seed: number;
  /** Keeps draws of what is one for all suppliers. */
  readonly keep: DrawKeep;
}

/** Leaves of one supplier whose draws are kept from one pass to the next. */
const KEPT = 1000;

/**
 * Draws a supplier's lots at one mix.
 *
 * @param candidate - the supplier
 * @param gate - boundaries, and what is left out for all
 * @param mix - the mix
 * @param asked - indicators and draws
 * @returns totals by stratum, draw by draw
 */
export function drawnOf(
  candidate: Candidate,
  gate: Gate,
  mix: ReferenceMix,
  asked: DrawnAsked,
): Drawn {
  const { program, groups, classes } = candidate;
  const rows = gate.boundary.filter(({ alias }) => alias === candidate.alias);
  const holed = new Map(
    rows
      .filter(({ holes }) => holes.length > 0)
      .map(({ route, holes }) => [route, holes.join(", ")]),
  );
  const cellOf = classes.map((own) => placeIn(mix, own));
  // A stratum in which some lots lack a step has no value at all: the rest of it would be another mix.
  const holes = mix.strata.map(
    (_, k) =>
      groups.flatMap(({ key }, i) => {
        const hole = cellOf[i] === k ? holed.get(key.route) : undefined;
        return hole === undefined ? [] : [hole];
      })[0],
  );
  const counts = countsOf(candidate, gate);
  const ask = {
    groups,
    cellOf,
    cells: mix.strata.length,
    counts,
    seed: asked.seed,
    keep: drawShelf(KEPT, asked.keep, (id) => id.endsWith(candidate.salt)),
  };
  const { ids, draws, placeDraws } = asked;
  const value = cellTotals({ ...ask, program, ids, draws });
  // As it stands all of it counts; only where something is left out for all must that be drawn apart.
  const isNarrowed = [...gate.leftOut.values()].some((duties) => duties.size > 0);
  const rest = isNarrowed
    ? cellTotals({ ...ask, program, ids, draws, counts: (term) => !counts(term) })
    : undefined;
  const accepted = value.accepted.reduce((sum, area) => sum + area, 0);
  const effective = holes.map((_, k) => effectiveLots(groups.filter((__, i) => cellOf[i] === k)));
  const sample = mix.strata.map(({ classes: own }, k) =>
    sampleFactors(
      effective[k] ?? 0,
      asked.seed,
      `${JSON.stringify(own)}${candidate.salt}`,
      Math.max(draws, placeDraws),
    ),
  );
  const unsaid = unsaidOf(program, counts, ids, asked.counted);
  const ofCounted = (id: IndicatorId): CellTotals =>
    cellTotals({
      ...ask,
      program: unsaid.get(id)?.program ?? program,
      ids: [id],
      draws: placeDraws,
    });
  const silent = new Map<IndicatorId, CellTotals>();
  const silenced = once(() => unsaidOf(program, counts, ids, asked.silent));
  return {
    crude: new Map(
      ids.map((id) => [
        id,
        perUnit(
          added([...(value.totals.get(id) ?? []), ...(rest?.totals.get(id) ?? [])]),
          accepted,
        ) ?? NONE,
      ]),
    ),
    value: sampled(value, sample),
    counted: new Map(ids.map((id) => [id, sampled(ofCounted(id), sample)])),
    unstated: new Map(ids.map((id) => [id, unsaid.get(id)?.settings ?? []])),
    holes,
    effective,
    silent: (id) => {
      let found = silent.get(id);
      if (found === undefined) {
        const held = silenced().get(id)?.program ?? program;
        found = cellTotals({ ...ask, program: held, ids: [id], draws: placeDraws });
        silent.set(id, found);
      }
      return found;
    },
  };
}

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => (made ??= make());
}

function sampled(totals: CellTotals, sample: readonly Float64Array[]): CellTotals {
  return {
    ...totals,
    totals: new Map(
      [...totals.totals].map(([id, cells]) => [
        id,
        cells.map((draws, k) => {
          const factors = sample[k];
          return factors === undefined ? draws : draws.map((total, i) => total * factors[i]!);
        }),
      ]),
    ),
  };
}

function added(draws: readonly Float64Array[]): Float64Array {
  const sum = new Float64Array(draws[0]?.length ?? 0);
  for (const one of draws) for (let i = 0; i < sum.length; i++) sum[i] = sum[i]! + one[i]!;
  return sum;
}

/**
 * The same draws with strata put together: what was drawn for each need not be drawn again.
 *
 * @param drawn - draws at a mix
 * @param into - place of each stratum among the new ones
 * @param count - number of new strata
 * @returns draws at the coarser mix; one hole leaves the whole new stratum without a value
 */
export function puttingTogether(drawn: Drawn, into: readonly number[], count: number): Drawn {
  const places = [...into, count];
  const sums = (numbers: readonly number[]): number[] => {
    const all = Array.from({ length: count + 1 }, () => 0);
    numbers.forEach((number, k) => (all[places[k] ?? count]! += number));
    return all;
  };
  const coarser = ({ lots, accepted, mass, totals }: CellTotals): CellTotals => ({
    lots: sums(lots),
    accepted: sums(accepted),
    mass: sums(mass),
    totals: new Map(
      [...totals].map(([id, draws]) => [
        id,
        Array.from({ length: count + 1 }, (_, c) =>
          added([
            new Float64Array(draws[0]?.length ?? 0),
            ...draws.filter((__, k) => places[k] === c),
          ]),
        ),
      ]),
    ),
  });
  return {
    ...drawn,
    value: coarser(drawn.value),
    counted: new Map([...drawn.counted].map(([id, totals]) => [id, coarser(totals)])),
    silent: (id) => coarser(drawn.silent(id)),
    effective: sums([...drawn.effective, 0]),
    holes: Array.from({ length: count }, (_, c) =>
      drawn.holes.find((hole, k) => places[k] === c && hole !== undefined),
    ),
  };
}

/** No draws. */
export const NONE = new Float64Array(0);

function countsOf(candidate: Candidate, gate: Gate): (term: ProgramTerm) => boolean {
  const out = new Map(
    candidate.given.pack.boundary.routes.map((route) => {
      const left = gate.leftOut.get(candidate.routes.get(route.route) ?? "");
      const roles = [...dutiesOf(route)].flatMap(([role, duty]) =>
        left?.has(duty) === true ? [role] : [],
      );
      return [route.route, new Set(roles)];
    }),
  );
  return ({ lotClass, role }) => {
    const route = candidate.program.classes[lotClass]?.key.route ?? "";
    return out.get(route)?.has(role) !== true;
  };
}

function perUnit(draws: Float64Array | undefined, units: number): Float64Array | undefined {
  return draws === undefined || !(units > 0) ? undefined : draws.map((value) => value / units);
}

/**
 * Draws per unit in each stratum.
 *
 * @param totals - totals by stratum
 * @param id - indicator
 * @param holes - what the boundary leaves out
 * @param per - unit
 * @returns draws; undefined where nothing was printed, or where a step is left out
 */
export function cellsOf(
  totals: CellTotals,
  id: IndicatorId,
  holes: Drawn["holes"],
  per: "accepted" | "mass",
): CellDraws {
  return holes.map((hole, k) =>
    hole === undefined ? perUnit(totals.totals.get(id)?.[k], totals[per][k] ?? 0) : undefined,
  );
}
