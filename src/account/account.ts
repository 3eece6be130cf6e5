/**
 * Both arms of all lots, draw by draw: flows at the fence, indicators, and the means that break them down.
 */

import type { Workflow } from "../plant/shipped-routes.js";
import { AMOUNTS } from "../steps/amounts.js";
import { type Draws, drawsOf } from "./draws.js";
import type { IndicatorId } from "./indicators.js";
import { fenceOf, type Program, type ProgramTerm, unityOf } from "./program.js";

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
  readonly parts: ReadonlyMap<BrokenDown, readonly Part[]>;
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
  const plan = planOf(program);
  const draws = drawsOf(program.nodes, count, seed);
  const ids = [...program.indicators.keys()];
  const fence = sides(() => new Map<string, Float64Array>());
  const indicators = sides(() => new Map(ids.map((id) => [id, new Float64Array(count)])));
  const coefficients = plan.terms.map(() => new Float64Array(BROKEN_DOWN.length));
  const flow = new Float64Array(count);
  const per = new Float64Array(count);
  draws.each(plan.needed, (start, end, values) => {
    const n = end - start;
    for (const group of plan.groups) {
      flow.fill(0, 0, n);
      for (const at of group.terms) {
        const { term, amount } = plan.terms[at]!;
        const rate = values[term.rate]!;
        for (let i = 0; i < n; i++) flow[i] = flow[i]! + amount * rate[i]!;
      }
      for (const { to, node } of group.fence) {
        for (const side of group.sides)
          addProduct(vectorIn(fence[side], to, count), start, flow, values[node]!, n);
      }
      for (const { id, pairs, broken } of group.indicators) {
        per.fill(0, 0, n);
        for (const [rate, intensity] of pairs)
          addProduct(per, 0, values[rate]!, values[intensity]!, n);
        for (const side of group.sides)
          addProduct(vectorIn(indicators[side], id, count), start, flow, per, n);
        if (broken < 0) continue;
        for (const at of group.terms) {
          const row = coefficients[at]!;
          row[broken] =
            row[broken]! + sumProduct(values[plan.terms[at]!.term.rate]!, per, n) / count;
        }
      }
    }
  });
  const parts = new Map<BrokenDown, Part[]>(BROKEN_DOWN.map((id) => [id, []]));
  plan.terms.forEach(({ term, amount }, at) => {
    BROKEN_DOWN.forEach((id, broken) => {
      const coefficient = coefficients[at]![broken]!;
      if (coefficient !== 0) parts.get(id)?.push({ term, coefficient, mean: amount * coefficient });
    });
  });
  return { program, draws, indicators, fence, parts };
}

function sides<T>(make: () => T): Record<Side, T> {
  return { pigment: make(), dye: make(), actual: make() };
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
  readonly terms: number[];
  readonly sides: readonly Side[];
  readonly fence: readonly { readonly to: string; readonly node: number }[];
  readonly indicators: readonly {
    readonly id: IndicatorId;
    readonly pairs: readonly (readonly [number, number])[];
    readonly broken: number;
  }[];
}

interface Plan {
  readonly terms: readonly { readonly term: ProgramTerm; readonly amount: number }[];
  readonly groups: readonly FlowGroup[];
  readonly needed: ReadonlySet<number>;
}

// Terms that share outlet, arm, own route and flow: conversions are multiplied once for all of them.
function planOf(program: Program): Plan {
  const unity = unityOf(program.nodes);
  const outlets = new Map<unknown, number>();
  const groups = new Map<string, FlowGroup>();
  const terms: { term: ProgramTerm; amount: number }[] = [];
  const needed = new Set<number>([unity]);
  for (const term of program.terms) {
    const lotClass = program.classes[term.lotClass];
    const amount = lotClass?.amounts[term.amount] ?? 0;
    if (lotClass === undefined || amount === 0) continue;
    const outlet = lotClass.outlets[term.arm];
    if (!outlets.has(outlet)) outlets.set(outlet, outlets.size);
    const own = lotClass.key.own === term.arm;
    const key = `${outlets.get(outlet) ?? 0}|${term.arm}|${String(own)}|${term.flow}`;
    let group = groups.get(key);
    if (group === undefined) {
      group = {
        terms: [],
        sides: own ? [term.arm, "actual"] : [term.arm],
        fence: fenceOf(outlet, term.flow, unity),
        indicators: [...program.indicators.keys()].flatMap((id) => {
          const pairs = pairsOf(program, term, id);
          return pairs.length === 0
            ? []
            : [{ id, pairs, broken: (BROKEN_DOWN as readonly string[]).indexOf(id) }];
        }),
      };
      group.fence.forEach(({ node }) => needed.add(node));
      group.indicators.forEach(({ pairs }) => {
        pairs.flat().forEach((node) => needed.add(node));
      });
      groups.set(key, group);
    }
    needed.add(term.rate);
    group.terms.push(terms.length);
    terms.push({ term, amount });
  }
  return { terms, groups: [...groups.values()], needed };
}

function vectorIn<K>(map: Map<K, Float64Array>, key: K, count: number): Float64Array {
  let found = map.get(key);
  if (found === undefined) map.set(key, (found = new Float64Array(count)));
  return found;
}

function addProduct(
  into: Float64Array,
  start: number,
  a: Float64Array,
  b: Float64Array,
  n: number,
): void {
  for (let i = 0; i < n; i++) into[start + i] = into[start + i]! + a[i]! * b[i]!;
}

function sumProduct(a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += a[i]! * b[i]!;
  return sum;
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
  id: BrokenDown,
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
