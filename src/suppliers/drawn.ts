/**
 * Draws of one supplier's lots by stratum of a mix.
 */

import type { IndicatorId } from "../account/indicators.js";
import type { ProgramTerm } from "../account/program.js";
import { dutiesOf } from "./boundary.js";
import type { Candidate } from "./candidate.js";
import { type CellTotals, cellTotals } from "./cells.js";
import type { Gate } from "./gate.js";
import { placeIn, type ReferenceMix } from "./reference.js";
import type { CellDraws } from "./standardise.js";
import { type Ends, type Unstated, unsaidOf } from "./unstated.js";

/** Draws of one supplier at one mix. */
export interface Drawn {
  /** Value in its own mix and boundary, by indicator. */
  readonly crude: ReadonlyMap<IndicatorId, Float64Array>;
  /** Totals by stratum. */
  readonly value: CellTotals;
  /** Totals with settings left unsaid at their unfavourable end, by indicator. */
  readonly counted: ReadonlyMap<IndicatorId, CellTotals>;
  /** Totals as if nothing had been said of any setting, by indicator; empty where no stratum must be filled. */
  readonly silent: ReadonlyMap<IndicatorId, CellTotals>;
  /** Those settings, by indicator. */
  readonly unstated: ReadonlyMap<IndicatorId, readonly Unstated[]>;
  /** What the boundary leaves out of lots in a stratum. */
  readonly holes: readonly (string | undefined)[];
}

/** How draws are made. */
export interface DrawnAsked {
  /** Ends of settings as if nothing had been said; absent where no supplier lacks a stratum. */
  readonly silent?: Ends | undefined;
  /** Indicators. */
  readonly ids: readonly IndicatorId[];
  /** Number of draws. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
}

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
  const ask = {
    groups,
    cellOf,
    cells: mix.strata.length,
    counts: countsOf(candidate, gate),
    draws: asked.draws,
    seed: asked.seed,
  };
  const unsaid = unsaidOf(program, ask.counts, asked.ids);
  const value = cellTotals({ ...ask, program, ids: asked.ids });
  // As it stands all of it counts; only where something is left out for all must that be drawn apart.
  const isNarrowed = [...gate.leftOut.values()].some((duties) => duties.size > 0);
  const whole = isNarrowed
    ? cellTotals({ ...ask, program, ids: asked.ids, counts: () => true })
    : value;
  const accepted = whole.accepted.reduce((sum, area) => sum + area, 0);
  return {
    crude: new Map(
      asked.ids.map((id) => [id, perUnit(added(whole.totals.get(id) ?? []), accepted) ?? NONE]),
    ),
    value,
    counted: new Map(
      asked.ids.map((id) => [
        id,
        cellTotals({ ...ask, program: unsaid.get(id)?.program ?? program, ids: [id] }),
      ]),
    ),
    silent: silentOf(ask, program, asked),
    unstated: new Map(asked.ids.map((id) => [id, unsaid.get(id)?.settings ?? []])),
    holes,
  };
}

function silentOf(
  ask: Omit<Parameters<typeof cellTotals>[0], "program" | "ids">,
  program: Candidate["program"],
  { silent, ids }: DrawnAsked,
): Drawn["silent"] {
  if (silent === undefined) return new Map();
  const unsaid = unsaidOf(program, ask.counts, ids, silent);
  return new Map(
    ids.map((id) => [
      id,
      cellTotals({ ...ask, program: unsaid.get(id)?.program ?? program, ids: [id] }),
    ]),
  );
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
  const each = (by: ReadonlyMap<IndicatorId, CellTotals>): ReadonlyMap<IndicatorId, CellTotals> =>
    new Map([...by].map(([id, totals]) => [id, coarser(totals)]));
  return {
    ...drawn,
    value: coarser(drawn.value),
    counted: each(drawn.counted),
    silent: each(drawn.silent),
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
