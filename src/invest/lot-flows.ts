/**
 * Flows at the fence by machine, for lots on the routes they took and for lots that may move: draw by draw, for one
 * year.
 */

import { drawsOf } from "../account/draws.js";
import { fenceOf, unityOf } from "../account/outlet.js";
import type { Program } from "../account/program.js";
import type { LedgerKey } from "../ledger/key.js";
import type { Group } from "../ledger/ledger.js";
import { plantUnder } from "../plant/dated.js";
import type { Plant } from "../plant/plant.js";
import type { Workflow } from "../plant/shipped-routes.js";
import { AMOUNTS } from "../steps/amounts.js";
import type { Charged } from "./avoidable.js";

/** Flows that have a price or bound something; inks stand apart by name, as `ink.pigment`. */
const WANTED =
  /^(electricity|fuel\..+|steam\.bought|water\.withdrawn|water\.discharged|cod|ink|paper|machine\.hours)$/;

/** CO2e: what the mill burns, what it draws by location, and what a partner house causes, which is in no scope. */
const CARBON = ["scope-1", "scope-2-location", "co2-location"] as const;

/** Flows of some lots: by flow, then machine. */
export type FlowsByMachine = ReadonlyMap<string, ReadonlyMap<string, Charged>>;

/** Lots that may move under one rule. */
export interface MovingFlows {
  /** On the dye routes they took. */
  readonly dye: FlowsByMachine;
  /** On the pigment route they would take. */
  readonly pigment: FlowsByMachine;
}

/** Flows of a year. */
export interface LotFlows {
  /** All lots on their own routes. */
  readonly all: FlowsByMachine;
  /** Lots that may move, by rule. */
  readonly moving: readonly MovingFlows[];
}

/** What flows are worked out from. */
export interface LotFlowsInput {
  /** Program of the house over the groups. */
  readonly program: Program;
  /** The house. */
  readonly plant: Plant;
  /** Groups of lots, with the pigment route that they would take. */
  readonly groups: readonly Group[];
  /** Rule under which lots may move; undefined for those that may not. */
  readonly ruleOf: (key: LedgerKey) => number | undefined;
  /** Number of rules. */
  readonly rules: number;
  /** What the logged period is to be multiplied by to make a year. */
  readonly yearly: number;
  /** Number of draws. */
  readonly draws: number;
  /** Seed of the draws. */
  readonly seed: number;
}

interface Out {
  readonly running: Float64Array;
  readonly waiting: Float64Array;
}

interface Sum {
  readonly into: Float64Array;
  readonly conversion: number;
  readonly intensity: number | undefined;
  readonly rates: { readonly node: number; readonly amount: number }[];
}

/**
 * Adds flows up.
 *
 * @param input - program, lots and draws
 * @returns flows of a year
 */
export function lotFlows(input: LotFlowsInput): LotFlows {
  const { program, draws: count } = input;
  const tables = new Map<string, Map<string, Map<string, Out>>>();
  const sums = sumsOf(input, (bucket, flow, machine, part) => {
    const table = slot(tables, bucket, () => new Map<string, Map<string, Out>>());
    const row = slot(table, flow, () => new Map<string, Out>());
    return slot(row, machine, () => ({
      running: new Float64Array(count),
      waiting: new Float64Array(count),
    }))[part];
  });
  const needed = new Set<number>([unityOf(program.nodes)]);
  for (const { conversion, intensity, rates } of sums) {
    needed.add(conversion);
    if (intensity !== undefined) needed.add(intensity);
    for (const { node } of rates) needed.add(node);
  }
  drawsOf(program.nodes, count, input.seed).each(needed, (start, end, values) => {
    const flow = new Float64Array(end - start);
    for (const { into, conversion, intensity, rates } of sums) {
      flow.fill(0);
      for (const { node, amount } of rates) {
        const rate = values[node]!;
        for (let i = 0; i < flow.length; i++) flow[i] = flow[i]! + amount * rate[i]!;
      }
      const by = values[conversion]!;
      const times = intensity === undefined ? undefined : values[intensity]!;
      for (let i = 0; i < flow.length; i++) {
        into[start + i] =
          into[start + i]! + flow[i]! * by[i]! * (times === undefined ? 1 : times[i]!);
      }
    }
  });
  const of = (bucket: string): FlowsByMachine => tables.get(bucket) ?? new Map();
  return {
    all: of("all"),
    moving: Array.from({ length: input.rules }, (_, rule) => ({
      dye: of(`${rule}|dye`),
      pigment: of(`${rule}|pigment`),
    })),
  };
}

function sumsOf(
  input: LotFlowsInput,
  place: (bucket: string, flow: string, machine: string, part: keyof Out) => Float64Array,
): readonly Sum[] {
  const { program, plant } = input;
  const unity = unityOf(program.nodes);
  const amounts = amountsByBucket(input);
  const sums = new Map<string, Sum>();
  for (const { lotClass, arm, role, flow, amount, rate, part } of program.terms) {
    const { key, outlets } = program.classes[lotClass]!;
    const outlet = outlets[arm];
    const { machine, ink } = stepOf(plant, key, arm, role);
    const buckets = bucketsOf(amounts, lotClass, arm, key.own);
    for (const { to, node } of fenceOf(outlet, flow, unity)) {
      const carbon = CARBON.flatMap((id) => {
        const intensity = outlet.indicators.get(id)?.get(to);
        if (intensity === undefined) return [];
        if (id !== "co2-location") return [{ name: id, intensity }];
        return to.startsWith("bought.") ? [{ name: "partner-co2", intensity }] : [];
      });
      const named = to === "ink" ? `ink.${ink}` : to;
      const outs = [...(WANTED.test(to) ? [{ name: named, intensity: undefined }] : []), ...carbon];
      for (const { bucket, vector } of buckets) {
        const size = (vector[amount] ?? 0) * input.yearly;
        if (size === 0) continue;
        for (const { name, intensity } of outs) {
          const time = part ?? "running";
          const text = [bucket, name, machine, time, node, intensity ?? ""].join("|");
          const sum = slot(sums, text, () => ({
            into: place(bucket, name, machine, time),
            conversion: node,
            intensity,
            rates: [],
          }));
          sum.rates.push({ node: rate, amount: size });
        }
      }
    }
  }
  return [...sums.values()];
}

type Buckets = ReadonlyMap<string, Float64Array>;

// Sums of amounts by class, for all lots and for those of each rule.
function amountsByBucket(input: LotFlowsInput): Buckets {
  const { program, groups } = input;
  const sums = new Map<string, Float64Array>();
  for (const { key, amounts } of groups) {
    const lotClass = program.classOf(key);
    if (lotClass === undefined) continue;
    for (const bucket of ruleBuckets(input, key)) {
      const sum = slot(sums, `${bucket}|${lotClass}`, () => new Float64Array(AMOUNTS.length));
      amounts.forEach((value, i) => (sum[i] = (sum[i] ?? 0) + value));
    }
  }
  return sums;
}

function bucketsOf(
  amounts: Buckets,
  lotClass: number,
  arm: Workflow,
  own: Workflow,
): readonly { readonly bucket: string; readonly vector: Float64Array }[] {
  return [...amounts].flatMap(([text, vector]) => {
    const [name = "", place = ""] = text.split("|");
    if (Number(place) !== lotClass) return [];
    if (name === "all") return arm === own ? [{ bucket: "all", vector }] : [];
    return [{ bucket: `${name}|${arm}`, vector }];
  });
}

/**
 * Sums that lots belong to: those of all lots, and those of the rule under which they may move.
 *
 * @param input - rules
 * @param key - what the lots share
 * @returns names of the sums
 */
export function ruleBuckets(
  input: Pick<LotFlowsInput, "ruleOf">,
  key: LedgerKey,
): readonly string[] {
  const rule = key.own === "dye" ? input.ruleOf(key) : undefined;
  return ["all", ...(rule === undefined ? [] : [String(rule)])];
}

/**
 * Machine and ink of a step.
 *
 * @param plant - the house
 * @param key - what lots share
 * @param arm - the arm
 * @param role - role of the step
 * @returns machine, and ink of the route; empty where there is none
 */
export function stepOf(
  plant: Plant,
  key: LedgerKey,
  arm: Workflow,
  role: string,
): { readonly machine: string; readonly ink: string } {
  const steps = plantUnder(plant, key.settings).routes[key[arm]]?.steps ?? [];
  return {
    machine: steps.find((step) => step.role === role)?.machine ?? "",
    ink: steps.find((step) => step.ink !== undefined)?.ink ?? "",
  };
}

function slot<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let found = map.get(key);
  if (found === undefined) map.set(key, (found = make()));
  return found;
}
