/**
 * Cost split into its flows: amount × price, as means of draws.
 */

import type { Quantity } from "../../numbers/quantity.js";
import { mean } from "../../numbers/quantiles.js";
import type { Workflow } from "../../plant/shipped-routes.js";
import { amountScale, priceUnit } from "./units.js";
import type { ReportDesk } from "./desk.js";
import { carrierWords } from "./names.js";

/** One priced flow on both routes, as means per reference unit. */
export interface CostPart {
  /** What is priced. */
  readonly words: string;
  /** Price as the mill gave it, with unit; those of all inks for ink. */
  readonly price: string;
  /** Unit of the amounts. */
  readonly amountUnit: string;
  /** Amount of pigment and dye in that unit. */
  readonly amount: Readonly<Record<Workflow, number>>;
  /** Cost of pigment and dye in the currency. */
  readonly cost: Readonly<Record<Workflow, number>>;
}

/**
 * Splits the cost.
 *
 * @param desk - the report
 * @returns parts that add up to the mean cost; undefined where a flow has several prices, by site or by date
 */
export function costParts(desk: ReportDesk): readonly CostPart[] | undefined {
  const { account } = desk.input;
  const { program } = account;
  const flows = new Map<string, Set<number>>();
  for (const { outlets } of program.classes) {
    for (const arm of ["pigment", "dye"] as const) {
      for (const [flow, node] of outlets[arm].indicators.get("cost") ?? [])
        flows.set(flow, (flows.get(flow) ?? new Set()).add(node));
    }
  }
  const parts: CostPart[] = [];
  const left = { pigment: total(desk, "pigment"), dye: total(desk, "dye") };
  for (const [flow, nodes] of flows) {
    if (flow === "ink") continue;
    const [node = -1] = nodes;
    if (nodes.size !== 1) return undefined;
    const price = account.draws.of(node);
    const of = (arm: Workflow): { amount: number; cost: number } => {
      const draws = account.fence[arm].get(flow);
      if (draws === undefined) return { amount: 0, cost: 0 };
      return {
        amount: mean(draws) / desk.units(arm),
        cost: mean(draws.map((value, i) => value * (price[i] ?? NaN))) / desk.units(arm),
      };
    };
    const [pigment, dye] = [of("pigment"), of("dye")];
    left.pigment -= pigment.cost;
    left.dye -= dye.cost;
    const { unit, scale } = amountScale(flow);
    parts.push({
      words: flowWords(flow),
      price: priceOf(program.nodes.list[node]?.quantity),
      amountUnit: unit,
      amount: { pigment: pigment.amount * scale, dye: dye.amount * scale },
      cost: { pigment: pigment.cost, dye: dye.cost },
    });
  }
  const inks = flows.get("ink");
  if (inks !== undefined) {
    const of = (arm: Workflow): number =>
      mean(account.fence[arm].get("ink") ?? new Float64Array(1)) / desk.units(arm);
    const { unit, scale } = amountScale("ink");
    parts.push({
      words: "ink",
      price: [
        ...new Set([...inks].map((node) => priceOf(program.nodes.list[node]?.quantity))),
      ].join("; "),
      amountUnit: unit,
      amount: { pigment: of("pigment") * scale, dye: of("dye") * scale },
      // Each class of lots has its own ink, so ink is what the other flows leave.
      cost: left,
    });
  }
  return parts;
}

/**
 * Cost of ink on both routes.
 *
 * @param desk - the report
 * @returns means per reference unit; undefined where ink is not priced or the cost cannot be split
 */
export function inkCost(
  desk: ReportDesk,
): { readonly pigment: number; readonly dye: number; readonly unit: string } | undefined {
  const noted = desk.compared("cost");
  const ink = costParts(desk)?.find(({ words }) => words === "ink");
  return noted === undefined || ink === undefined ? undefined : { ...ink.cost, unit: noted.unit };
}

function total(desk: ReportDesk, arm: Workflow): number {
  const draws = desk.input.account.indicators[arm].get("cost");
  return draws === undefined ? 0 : mean(draws) / desk.units(arm);
}

function flowWords(flow: string): string {
  switch (flow) {
    case "water.withdrawn":
      return "water withdrawn";
    case "water.discharged":
      return "effluent, by volume";
    case "machine.hours":
      return "machine hours, labour included";
    default:
      return carrierWords(flow);
  }
}

function priceOf(quantity: Quantity | undefined): string {
  const leaf = quantity?.kind === "derived" ? quantity.reads[0] : quantity;
  if (leaf?.kind !== "leaf") return "–";
  const ink = /^tariffs\.ink\.(.+)$/.exec(leaf.factor)?.[1];
  return `${leaf.spread.value} ${priceUnit(leaf.factor, leaf.unit)}${ink === undefined ? "" : ` ${ink}`}`;
}
