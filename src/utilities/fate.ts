/**
 * Where a substance ends: on the cloth, in the drain, in the air or in waste, by how the print is fixed.
 *
 *     air = E;   after a wash: cloth = (1 − E) F, water = (1 − E)(1 − F);   without a wash: cloth = 1 − E
 *
 * E share evaporated, F share fixed. What is put into a bath or poured away goes to the drain, what is
 * taken away is waste. The four shares add up to one, so the balance of each substance closes.
 */

import { derive, ONE, type Quantity } from "../numbers/quantity.js";
import { product } from "../steps/algebra.js";
import type { Placement, Substance } from "../steps/flows.js";
import type { Conversion } from "./conversion.js";

/** What is known of a substance. */
export interface SubstanceFacts {
  /** Share that stays on the cloth in a wash. [-] */
  readonly fixed: Quantity;
  /** Share that leaves with the air, on this kind of route. [-] */
  readonly evaporated: Quantity;
  /** Chemical oxygen demand. [g/g] */
  readonly cod: Quantity;
  /** Nitrogen. [g/g] */
  readonly nitrogen: Quantity;
  /** Dissolved salts. [g/g] */
  readonly salt: Quantity;
  /** Organic carbon. [g/g] */
  readonly carbon: Quantity;
  /** Formaldehyde set free in curing; absent for most. [g/g] */
  readonly formaldehyde?: Quantity;
}

/**
 * Loads per gram of a substance put somewhere.
 *
 * @param substance - what it is
 * @param placement - where it is put
 * @param facts - what is known of it
 * @param washed - whether the route washes the print
 * @returns loads to water and air, and where each gram ends
 */
export function fateConversions(
  substance: Substance,
  placement: Placement,
  facts: SubstanceFacts,
  washed: boolean,
): readonly Conversion[] {
  const used: Conversion = { to: `used.${substance}`, rate: ONE };
  const toWater = (share: Quantity): readonly Conversion[] => [
    { to: `to-water.${substance}`, rate: share },
    { to: "cod", rate: product("cod-load", share, facts.cod) },
    { to: "nitrogen", rate: product("nitrogen-load", share, facts.nitrogen) },
    { to: "salt", rate: product("salt-load", share, facts.salt) },
  ];
  if (placement === "waste") return [used, { to: `to-waste.${substance}`, rate: ONE }];
  if (placement !== "cloth") return [used, ...toWater(ONE)];
  const air = facts.evaporated;
  const cloth = washed
    ? derive("stays", "1", "(1 − E) F", [air, facts.fixed], (E = 0, F = 0) => (1 - E) * F)
    : derive("stays", "1", "1 − E", [air], (E = 0) => 1 - E);
  return [
    used,
    { to: `to-cloth.${substance}`, rate: cloth },
    { to: `to-air.${substance}`, rate: air },
    { to: "carbon.air", rate: product("carbon-to-air", air, facts.carbon) },
    ...(facts.formaldehyde === undefined || washed
      ? []
      : [{ to: "formaldehyde", rate: facts.formaldehyde }]),
    ...(washed ? toWater(washedOut(air, facts.fixed)) : []),
  ];
}

function washedOut(air: Quantity, fixed: Quantity): Quantity {
  return derive(
    "washed-out",
    "1",
    "(1 − E)(1 − F)",
    [air, fixed],
    (E = 0, F = 0) => (1 - E) * (1 - F),
  );
}
