/**
 * Both arms of all lots, draw by draw: flows at the fence, indicators, and the means that break them down.
 */

import { addProduct, addScaled, sumProduct } from "../numbers/loops.js";
import type { Workflow } from "../plant/shipped-routes.js";
import { AMOUNTS } from "../steps/amounts.js";
import { BLOCK, type BlockVisit, type DrawKeep, type Draws, drawsOf } from "./draws.js";
import type { IndicatorId } from "./indicators.js";
import { fenceOf, unityOf } from "./outlet.js";
import type { Program, ProgramTerm } from "./program.js";

/** Indicators that are broken down by step, month, client and lot. */
export const BROKEN_DOWN = ["water", "energy", "electricity", "co2-location", "cod"] as const;

/** An indicator that is broken down. */
export type BrokenDown = (typeof BROKEN_DOWN)[number];

/** One term's part of an indicator. */
export interface Part {
  /** The term. */
  readonly term: ProgramTerm;
  /** Mean of rate × conversion × intensity, per unit of amount. */
  readonly coefficient: number;
  /** Mean contribution to the total of its arm. */
  readonly mean: number;
}

/** Results of an account. */
export interface Account {
  /** The program it was worked out from. */
  readonly program: Program;
  /** Draws, for traces. */
  readonly draws: Draws;
  /** Indicator totals by arm; `actual` is what the mill really did. */
  readonly indicators: Readonly<Record<Side, ReadonlyMap<IndicatorId, Float64Array>>>;
  /** Flows at the fence by arm. */
  readonly fence: Readonly<Record<Side, ReadonlyMap<string, Float64Array>>>;
  /** Parts of the indicators that are broken down. */
  readonly parts: ReadonlyMap<IndicatorId, readonly Part[]>;
}

/** An arm, or what the mill really did. */
export type Side = Workflow | "actual";

/**
 * Works the account out.
 *
 * @param program - terms and conversions
 * @param count - number of draws
 * @param seed - seed of the draws
 * @returns totals, draw by draw, and parts
 */
export function accountOf(program: Program, count: number, seed: number): Account {
  const tally = tallyOf(program, count);
  const draws = drawsOf(program.nodes, count, seed);
  draws.each(tally.needed, tally.visit);
  return tally.account(draws);
}

/**
 * Works accounts out in one pass over the draws of quantities that they share.
 *
 * @param programs - programs over the same nodes
 * @param count - number of draws
 * @param seed - seed of the draws
 * @param keep - keeps leaves for draws of other programs
 * @returns an account of each, the same as it would be alone
 */
export function accountsOf(
  programs: readonly Program[],
  count: number,
  seed: number,
  keep?: DrawKeep,
): readonly Account[] {
  const [first] = programs;
  if (first === undefined) return [];
  if (programs.some(({ nodes }) => nodes !== first.nodes))
    throw new Error("Programs of one pass must share their nodes.");
  const tallies = programs.map((program) => tallyOf(program, count));
  const draws = drawsOf(first.nodes, count, seed, keep);
  const needed = new Set(tallies.flatMap((tally) => [...tally.needed]));
  draws.each(needed, (start, end, values) => {
    for (const { visit } of tallies) visit(start, end, values);
  });
  return tallies.map(({ account }) => account(draws));
}

/** Sums of a program, filled block by block. */
interface Tally {
  readonly needed: ReadonlySet<number>;
  readonly visit: BlockVisit;
  readonly account: (draws: Draws) => Account;
}

function tallyOf(program: Program, count: number): Tally {
  const plan = planOf(program);
  // An arm's own lots and the others are kept apart until the end, so that what the mill really did costs
  // no second pass.
  const sums = new Map<string, Float64Array>();
  const into = plan.groups.map(({ side, fence, indicators }) => ({
    fence: fence.map(({ to }) => vectorIn(sums, `${side}|fence|${to}`, count)),
    indicators: indicators.map(({ id }) => vectorIn(sums, `${side}|indicator|${id}`, count)),
  }));
  const means = plan.groups.map(({ rates }) =>
    rates.map(() => new Float64Array(BROKEN_DOWN.length)),
  );
  const flow = new Float64Array(BLOCK);
  const per = new Float64Array(BLOCK);
  const visit: BlockVisit = (start, end, values) => {
    const n = end - start;
    plan.groups.forEach((group, g) => {
      flow.fill(0, 0, n);
      for (const { node, amount } of group.rates) addScaled(flow, values[node]!, amount, n);
      group.fence.forEach(({ node }, at) => {
        addProduct(into[g]!.fence[at]!, start, flow, values[node]!, n);
      });
      group.indicators.forEach(({ pairs, broken }, k) => {
        per.fill(0, 0, n);
        for (const [rate, intensity] of pairs)
          addProduct(per, 0, values[rate]!, values[intensity]!, n);
        addProduct(into[g]!.indicators[k]!, start, flow, per, n);
        if (broken < 0) return;
        group.rates.forEach(({ node }, at) => {
          const row = means[g]![at]!;
          row[broken] = row[broken]! + sumProduct(values[node]!, per, n) / count;
        });
      });
    });
  };
  const parted = (): ReadonlyMap<BrokenDown, Part[]> => {
    const parts = new Map<BrokenDown, Part[]>(BROKEN_DOWN.map((id) => [id, []]));
    for (const { term, amount, group, rate } of plan.terms) {
      BROKEN_DOWN.forEach((id, broken) => {
        const coefficient = means[group]![rate]![broken]!;
        if (coefficient !== 0)
          parts.get(id)?.push({ term, coefficient, mean: amount * coefficient });
      });
    }
    return parts;
  };
  return {
    needed: plan.needed,
    visit,
    account: (draws) => ({
      program,
      draws,
      indicators: sidesOf(sums, "indicator", [...program.indicators.keys()], count),
      fence: sidesOf(sums, "fence", plan.fence, count),
      parts: parted(),
    }),
  };
}

// An arm is its own lots and the others'; what the mill really did is the own lots of both.
function sidesOf<K extends string>(
  sums: ReadonlyMap<string, Float64Array>,
  kind: string,
  ids: readonly K[],
  count: number,
): Record<Side, ReadonlyMap<K, Float64Array>> {
  const added = (first: string, second: string): ReadonlyMap<K, Float64Array> =>
    new Map(
      ids.map((id) => {
        const all = new Float64Array(count);
        for (const side of [first, second]) {
          const part = sums.get(`${side}|${kind}|${id}`);
          if (part !== undefined) addScaled(all, part, 1, count);
        }
        return [id, all];
      }),
    );
  return {
    pigment: added("pigment|own", "pigment|other"),
    dye: added("dye|own", "dye|other"),
    actual: added("pigment|own", "dye|own"),
  };
}

/**
 * Nodes of conversion and intensity by which a flow at a machine adds to an indicator.
 *
 * @param program - the program
 * @param term - a term of that flow
 * @param id - the indicator
 * @returns pairs of nodes; the indicator per unit of flow is the sum of their products
 */
export function pairsOf(
  program: Program,
  term: ProgramTerm,
  id: IndicatorId,
): readonly (readonly [number, number])[] {
  const outlet = program.classes[term.lotClass]?.outlets[term.arm];
  const intensities = outlet?.indicators.get(id);
  if (outlet === undefined || intensities === undefined) return [];
  return fenceOf(outlet, term.flow, unityOf(program.nodes)).flatMap(({ to, node }) => {
    const intensity = intensities.get(to);
    return intensity === undefined ? [] : [[node, intensity] as const];
  });
}

interface FlowGroup {
  readonly side: string;
  readonly rates: { readonly node: number; amount: number }[];
  readonly fence: readonly { readonly to: string; readonly node: number }[];
  readonly indicators: readonly {
    readonly id: IndicatorId;
    readonly pairs: readonly (readonly [number, number])[];
    readonly broken: number;
  }[];
}

interface Plan {
  readonly terms: readonly {
    readonly term: ProgramTerm;
    readonly amount: number;
    readonly group: number;
    readonly rate: number;
  }[];
  readonly groups: readonly FlowGroup[];
  readonly fence: readonly string[];
  readonly needed: ReadonlySet<number>;
}

// Terms that share outlet, arm, own route and flow: conversions are multiplied once for all of them, and
// terms of one rate are one.
function planOf(program: Program): Plan {
  const unity = unityOf(program.nodes);
  const outlets = new Map<unknown, number>();
  const groups: FlowGroup[] = [];
  const placeOf = new Map<string, number>();
  const terms: Plan["terms"][number][] = [];
  const needed = new Set<number>([unity]);
  for (const term of program.terms) {
    const lotClass = program.classes[term.lotClass];
    const amount = lotClass?.amounts[term.amount] ?? 0;
    if (lotClass === undefined || amount === 0) continue;
    const outlet = lotClass.outlets[term.arm];
    if (!outlets.has(outlet)) outlets.set(outlet, outlets.size);
    const side = `${term.arm}|${lotClass.key.own === term.arm ? "own" : "other"}`;
    const key = `${outlets.get(outlet) ?? 0}|${side}|${term.flow}`;
    let group = placeOf.get(key);
    if (group === undefined) {
      group = groups.length;
      placeOf.set(key, group);
      groups.push({
        side,
        rates: [],
        fence: fenceOf(outlet, term.flow, unity),
        indicators: [...program.indicators.keys()].flatMap((id) => {
          const pairs = pairsOf(program, term, id);
          return pairs.length === 0
            ? []
            : [{ id, pairs, broken: (BROKEN_DOWN as readonly string[]).indexOf(id) }];
        }),
      });
    }
    const { rates } = groups[group]!;
    const known = placeOf.get(`${key}|${term.rate}`);
    const rate = known ?? rates.length;
    if (known === undefined) {
      placeOf.set(`${key}|${term.rate}`, rate);
      rates.push({ node: term.rate, amount });
    } else rates[rate]!.amount += amount;
    terms.push({ term, amount, group, rate });
  }
  for (const { rates, fence, indicators } of groups) {
    for (const { node } of [...rates, ...fence]) needed.add(node);
    for (const { pairs } of indicators) for (const node of pairs.flat()) needed.add(node);
  }
  const names = new Set(groups.flatMap(({ fence }) => fence.map(({ to }) => to)));
  return { terms, groups, fence: [...names], needed };
}

function vectorIn<K>(map: Map<K, Float64Array>, key: K, count: number): Float64Array {
  let found = map.get(key);
  if (found === undefined) map.set(key, (found = new Float64Array(count)));
  return found;
}

/**
 * Mean of an indicator for any sums of amounts of one class: Σ amount × mean coefficient.
 *
 * @param account - the account
 * @param id - the indicator
 * @returns coefficients by class and arm, in the order of the list of amounts
 */
export function coefficientsOf(
  account: Account,
  id: IndicatorId,
): (lotClass: number, arm: Workflow) => Float64Array {
  const found = new Map<string, Float64Array>();
  for (const { term, coefficient } of account.parts.get(id) ?? []) {
    const key = `${term.lotClass}|${term.arm}`;
    let row = found.get(key);
    if (row === undefined) found.set(key, (row = new Float64Array(AMOUNTS.length)));
    row[term.amount] = (row[term.amount] ?? 0) + coefficient;
  }
  return (lotClass, arm) => found.get(`${lotClass}|${arm}`) ?? new Float64Array(AMOUNTS.length);
}
