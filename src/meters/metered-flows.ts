/**
 * What the model says that a meter counts: flows of the lots as printed, machine by machine, with the way each
 * takes to the meter.
 */

import { type Carrier, carrierOf, isBoilerInput } from "../account/calibration.js";
import { fenceOf, type Outlet, unityOf } from "../account/outlet.js";
import type { Program, ProgramTerm } from "../account/program.js";
import type { Group } from "../ledger/ledger.js";
import { type Quantity, weighedSum } from "../numbers/quantity.js";
import { product, shortName } from "../steps/algebra.js";
import type { Counted } from "./months.js";

/** MJ in a kWh. */
const MJ_PER_KWH = 3.6;

/** What is asked for. */
export interface MeteredAsked {
  /** Site. */
  readonly site: string;
  /** What is counted. */
  readonly quantity: Counted;
  /** Machines behind the meter; all of the site, with boilers and works, when absent. */
  readonly machines?: readonly string[];
}

/** A part of what a meter counts that goes up and down as one. */
export interface MeteredPart {
  /** Machine; empty for what no machine takes. */
  readonly machine: string;
  /** Carrier whose correction multiplies it; absent where none does. */
  readonly carrier?: Carrier;
  /** Whether the correction of the boiler multiplies it too. */
  readonly boiler: boolean;
  /** The part, in L, kWh or kg. */
  readonly amount: Quantity;
}

/**
 * Sums of the amounts of lots by class, each month in part.
 *
 * @param program - the program
 * @param groups - groups of the ledger
 * @param weightOf - share of a month that counts
 * @returns sums in the order of the classes
 */
export function amountsUnder(
  program: Program,
  groups: readonly Group[],
  weightOf: (month: string) => number,
): readonly Float64Array[] {
  const sums = program.classes.map(({ amounts }) => new Float64Array(amounts.length));
  for (const { key, amounts } of groups) {
    const sum = sums[program.classOf(key) ?? -1];
    const weight = weightOf(key.month);
    if (sum === undefined || weight === 0) continue;
    for (let i = 0; i < sum.length; i++) sum[i] = sum[i]! + weight * (amounts[i] ?? 0);
  }
  return sums;
}

/**
 * Machines and what they take, over lots as printed.
 *
 * @param program - the program
 * @param amounts - sums of amounts by class
 * @returns each once, in the order of the program
 */
export function machinesTaking(
  program: Program,
  amounts: readonly Float64Array[],
): readonly { readonly site: string; readonly machine: string; readonly carrier: Carrier }[] {
  const found = new Map<string, { site: string; machine: string; carrier: Carrier }>();
  for (const { lotClass: at, arm, amount, machine, flow } of program.terms) {
    const key = program.classes[at]?.key;
    const carrier = carrierOf(flow);
    if (key?.own !== arm || carrier === undefined || !((amounts[at]?.[amount] ?? 0) > 0)) continue;
    found.set(`${key.site}/${machine}/${carrier}`, { site: key.site, machine, carrier });
  }
  return [...found.values()];
}

/**
 * Parts of what a meter counts.
 *
 * @param program - the program, not corrected
 * @param asked - the meter
 * @param amounts - sums of amounts by class
 * @param name - tells sums of other lots apart
 * @returns parts with an amount; machines in the order in which cloth meets them
 */
export function meteredParts(
  program: Program,
  asked: MeteredAsked,
  amounts: readonly Float64Array[],
  name: string,
): readonly MeteredPart[] {
  const { nodes } = program;
  const unity = unityOf(nodes);
  const parts = new Map<
    string,
    Omit<MeteredPart, "amount"> & {
      readonly sums: Map<
        string,
        { by: readonly number[]; scale: number; rates: Map<number, number> }
      >;
    }
  >();
  for (const term of program.terms) {
    const lotClass = program.classes[term.lotClass];
    const amount = amounts[term.lotClass]?.[term.amount] ?? 0;
    if (lotClass === undefined || amount === 0) continue;
    if (lotClass.key.own !== term.arm || lotClass.key.site !== asked.site) continue;
    const carrier = carrierOf(term.flow);
    for (const way of waysOf(asked, term, lotClass.outlets[term.arm], unity)) {
      const key = nameOfPart({ machine: term.machine, carrier, boiler: way.boiler });
      let part = parts.get(key);
      if (part === undefined) {
        part = {
          machine: term.machine,
          ...(carrier === undefined ? {} : { carrier }),
          boiler: way.boiler,
          sums: new Map(),
        };
        parts.set(key, part);
      }
      const by = `${way.by.join(",")}|${way.scale}`;
      let sum = part.sums.get(by);
      if (sum === undefined) part.sums.set(by, (sum = { ...way, rates: new Map() }));
      sum.rates.set(term.rate, (sum.rates.get(term.rate) ?? 0) + amount);
    }
  }
  const at = (node: number): Quantity => nodes.list[node]!.quantity;
  const unit = { water: "L", electricity: "kWh", gas: "kWh", steam: "kg" }[asked.quantity];
  return [...parts.values()].map(({ sums, ...part }) => {
    const id = `${part.machine === "" ? "site" : part.machine} ${part.carrier ?? "other"} at ${name}`;
    const terms = [...sums.values()].map(({ by, rates }, i) => {
      const flow = weighedSum(
        `${id}, flow ${i + 1}`,
        "1",
        "Σ amount × rate",
        [...rates].map(([rate, weight]) => ({ of: at(rate), weight })),
      );
      return by.length === 0 ? flow : product(`${id}, part ${i + 1}`, flow, ...by.map(at));
    });
    const scales = [...sums.values()].map(({ scale }) => scale);
    return {
      ...part,
      amount: weighedSum(
        `${id}${part.boiler ? " by boiler" : ""}`,
        unit,
        terms.map(shortName).join(" + "),
        terms.map((of, i) => ({ of, weight: scales[i]! })),
      ),
    };
  });
}

/**
 * What the model says that a meter counts, for one set of values.
 *
 * @param program - the program, not corrected
 * @param asked - the meter
 * @param amounts - sums of amounts by class
 * @param values - values of all nodes
 * @returns its parts by name, as {@link nameOfPart} has it, in L, kWh or kg
 */
export function meteredAt(
  program: Program,
  asked: MeteredAsked,
  amounts: readonly Float64Array[],
  values: Float64Array,
): ReadonlyMap<string, number> {
  return meteredBy(program, asked, values)(amounts);
}

/**
 * What the model says that a meter counts, for one set of values and any lots.
 *
 * @param program - the program, not corrected
 * @param asked - the meter
 * @param values - values of all nodes
 * @returns its parts by name for sums of amounts by class, as {@link meteredAt} has them
 */
export function meteredBy(
  program: Program,
  asked: MeteredAsked,
  values: Float64Array,
): (amounts: readonly Float64Array[]) => ReadonlyMap<string, number> {
  const unity = unityOf(program.nodes);
  const ways = program.terms.flatMap((term) => {
    const lotClass = program.classes[term.lotClass];
    if (lotClass?.key.own !== term.arm || lotClass.key.site !== asked.site) return [];
    const carrier = carrierOf(term.flow);
    return waysOf(asked, term, lotClass.outlets[term.arm], unity).map(({ by, scale, boiler }) => ({
      lotClass: term.lotClass,
      amount: term.amount,
      name: nameOfPart({ machine: term.machine, carrier, boiler }),
      factors: [scale, values[term.rate] ?? NaN, ...by.map((node) => values[node] ?? NaN)],
    }));
  });
  return (amounts) => {
    const parts = new Map<string, number>();
    for (const { lotClass, amount, name, factors } of ways) {
      let part = amounts[lotClass]?.[amount] ?? 0;
      if (part === 0) continue;
      for (const factor of factors) part *= factor;
      parts.set(name, (parts.get(name) ?? 0) + part);
    }
    return parts;
  };
}

/** What tells parts of a meter apart. */
export interface PartName {
  /** Machine; empty for what no machine takes. */
  readonly machine: string;
  /** Carrier, where a correction multiplies it. */
  readonly carrier?: Carrier | undefined;
  /** Whether the correction of the boiler multiplies it too. */
  readonly boiler: boolean;
}

/**
 * Name of a part.
 *
 * @param part - machine, carrier and whether it goes through the boiler
 * @returns the name
 */
export function nameOfPart(part: PartName): string {
  return `${part.machine}|${part.carrier ?? ""}|${String(part.boiler)}`;
}

interface Way {
  /** Nodes that a flow is multiplied with. */
  readonly by: readonly number[];
  /** Unit of the meter per unit of the flow. */
  readonly scale: number;
  /** Whether it goes through the boiler. */
  readonly boiler: boolean;
}

// Ways on which a flow at a machine comes to a meter.
function waysOf(
  { quantity, machines }: MeteredAsked,
  term: ProgramTerm,
  outlet: Outlet,
  unity: number,
): readonly Way[] {
  const carrier = carrierOf(term.flow);
  if (quantity === "steam") {
    if (carrier !== "steam" || !isBehind(machines, term)) return [];
    const by = [
      ...(term.flow === "heat.steam-coil" ? [outlet.coilSteam] : []),
      ...(machines === undefined ? [outlet.raisedSteam] : []),
    ];
    return [{ by, scale: 1, boiler: false }];
  }
  if (!isBehind(machines, term)) return [];
  const target = { water: "water.withdrawn", electricity: "electricity", gas: "fuel." }[quantity];
  if (machines !== undefined && carrier !== quantity) return [];
  if (machines !== undefined && quantity === "water") return [{ by: [], scale: 1, boiler: false }];
  return fenceOf(outlet, term.flow, unity).flatMap(({ to, node }) => {
    const counted = quantity === "gas" ? to.startsWith(target) && isPiped(to) : to === target;
    if (!counted) return [];
    return [
      {
        by: node === unity ? [] : [node],
        scale: quantity === "gas" ? 1 / MJ_PER_KWH : 1,
        boiler: carrier === "steam" && isBoilerInput(to),
      },
    ];
  });
}

function isBehind(machines: readonly string[] | undefined, { machine }: ProgramTerm): boolean {
  return machines === undefined || machines.includes(machine);
}

// Fuels that come in bottles, tanks or heaps pass no gas meter.
function isPiped(flow: string): boolean {
  return flow.includes("gas") && !/lpg|liquefied/u.test(flow);
}
