/**
 * Where flows at machines lead: to the fence, and from there to indicators.
 */

import { ONE } from "../numbers/quantity.js";
import type { IndicatorId } from "./indicators.js";
import type { Nodes } from "./nodes.js";

/** Where flows at machines lead, for one site, vintage, settings in force and kind of route. */
export interface Outlet {
  /** Fence flows per unit of a flow at a machine: by flow, name and node. */
  readonly fence: ReadonlyMap<string, readonly { readonly to: string; readonly node: number }[]>;
  /** Indicators per unit of a flow at the fence: by indicator, then flow. */
  readonly indicators: ReadonlyMap<IndicatorId, ReadonlyMap<string, number>>;
  /** Steam that heat behind a coil takes. [kg/MJ] */
  readonly coilSteam: number;
  /** Steam raised per steam used. [kg/kg] */
  readonly raisedSteam: number;
}

/**
 * Fence flows of a flow at a machine; a flow without conversion is one at the fence already.
 *
 * @param outlet - the outlet
 * @param flow - flow at the machine
 * @param unity - node of the number one
 * @returns flows at the fence with the node of each rate
 */
export function fenceOf(
  outlet: Outlet,
  flow: string,
  unity: number,
): readonly { readonly to: string; readonly node: number }[] {
  return outlet.fence.get(flow) ?? [{ to: flow, node: unity }];
}

/**
 * Node of the number one.
 *
 * @param nodes - the nodes
 * @returns its number
 */
export function unityOf(nodes: Nodes): number {
  return nodes.number(ONE);
}
