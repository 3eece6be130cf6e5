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
  /** Per unit of indicator, per flow at a machine: draws of conversion × intensity. */
  readonly perFlow: (term: ProgramTerm, indicator: IndicatorId) => Float64Array | undefined;
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
  const unity = unityOf(program.nodes);
  const draws = drawsOf(program.nodes, count, seed);
  const machine = machineFlows(program, draws);
  const perFlow = perFlowOf(program, draws, unity);
  const sides: readonly Side[] = ["pigment", "dye", "actual"];
  const fence = {
    pigment: new Map<string, Float64Array>(),
    dye: new Map<string, Float64Array>(),
    actual: new Map<string, Float64Array>(),
  };
  const indicators = {
    pigment: new Map<IndicatorId, Float64Array>(),
    dye: new Map<IndicatorId, Float64Array>(),
    actual: new Map<IndicatorId, Float64Array>(),
  };
  for (const side of sides) {
    for (const id of program.indicators.keys()) indicators[side].set(id, new Float64Array(count));
  }
  for (const flow of machine.values()) {
    const outlet = program.classes[flow.term.lotClass]?.outlets[flow.term.arm];
    if (outlet === undefined) continue;
    const into: readonly Side[] = flow.own ? [flow.term.arm, "actual"] : [flow.term.arm];
    for (const { to, node } of fenceOf(outlet, flow.term.flow, unity)) {
      const rate = draws.of(node);
      for (const side of into) addProduct(vectorIn(fence[side], to, count), flow.draws, rate);
    }
    for (const id of program.indicators.keys()) {
      const per = perFlow(flow.term, id);
      if (per === undefined) continue;
      for (const side of into) addProduct(vectorIn(indicators[side], id, count), flow.draws, per);
    }
  }
  const parts = new Map<BrokenDown, Part[]>(BROKEN_DOWN.map((id) => [id, []]));
  for (const term of program.terms) {
    const amount = program.classes[term.lotClass]?.amounts[term.amount] ?? 0;
    for (const id of BROKEN_DOWN) {
      const per = perFlow(term, id);
      if (per === undefined) continue;
      // A term no lot asks for still has a coefficient: the lots of the sample may be read with it.
      const coefficient = amount === 0 ? 0 : meanProduct(draws.of(term.rate), per);
      if (amount !== 0) parts.get(id)?.push({ term, coefficient, mean: amount * coefficient });
    }
  }
  return { program, draws, indicators, fence, parts, perFlow };
}

interface MachineFlow {
  readonly term: ProgramTerm;
  readonly own: boolean;
  readonly draws: Float64Array;
}

// Sums over terms that share outlet, arm, own route and flow: conversions are multiplied once for all.
function machineFlows(program: Program, draws: Draws): ReadonlyMap<string, MachineFlow> {
  const flows = new Map<string, MachineFlow>();
  const outlets = new Map<unknown, number>();
  for (const term of program.terms) {
    const lotClass = program.classes[term.lotClass];
    const amount = lotClass?.amounts[term.amount] ?? 0;
    if (lotClass === undefined || amount === 0) continue;
    const outlet = lotClass.outlets[term.arm];
    if (!outlets.has(outlet)) outlets.set(outlet, outlets.size);
    const own = lotClass.key.own === term.arm;
    const key = `${outlets.get(outlet) ?? 0}|${term.arm}|${String(own)}|${term.flow}`;
    let flow = flows.get(key);
    if (flow === undefined) {
      flow = { term, own, draws: new Float64Array(draws.count) };
      flows.set(key, flow);
    }
    const rate = draws.of(term.rate);
    for (let i = 0; i < rate.length; i++) flow.draws[i] = flow.draws[i]! + amount * rate[i]!;
  }
  return flows;
}

function perFlowOf(program: Program, draws: Draws, unity: number): Account["perFlow"] {
  const found = new Map<unknown, Map<string, Float64Array | undefined>>();
  return (term, id) => {
    const outlet = program.classes[term.lotClass]?.outlets[term.arm];
    if (outlet === undefined) return undefined;
    let byFlow = found.get(outlet);
    if (byFlow === undefined) found.set(outlet, (byFlow = new Map()));
    const key = `${id}|${term.flow}`;
    if (byFlow.has(key)) return byFlow.get(key);
    const intensities = outlet.indicators.get(id);
    let sum: Float64Array | undefined;
    for (const { to, node } of fenceOf(outlet, term.flow, unity)) {
      const intensity = intensities?.get(to);
      if (intensity === undefined) continue;
      sum ??= new Float64Array(draws.count);
      addProduct(sum, draws.of(node), draws.of(intensity));
    }
    byFlow.set(key, sum);
    return sum;
  };
}

function vectorIn<K>(map: Map<K, Float64Array>, key: K, count: number): Float64Array {
  let found = map.get(key);
  if (found === undefined) map.set(key, (found = new Float64Array(count)));
  return found;
}

function addProduct(into: Float64Array, a: Float64Array, b: Float64Array): void {
  for (let i = 0; i < into.length; i++) into[i] = into[i]! + a[i]! * b[i]!;
}

function meanProduct(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum / a.length;
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
