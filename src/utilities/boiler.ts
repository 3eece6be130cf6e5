/**
 * Boiler and feed tank as one control volume.
 *
 *     G = S / (1 − ℓ);   make-up = G [1/(1 − b) − r];   blowdown = G b / (1 − b)
 *     fuel = G [h_g + b/(1 − b) h_f − r h_cond − (1/(1 − b) − r) h_mk] / η
 *
 * G steam raised, S steam at the user, ℓ line loss as steam, b blowdown as a share of feed water, r return
 * as a share of G, η on net calorific value. With r = b = 0 the fuel is G (h_g − h_mk)/η.
 */

import { constant, derive, ONE, type Quantity } from "../numbers/quantity.js";
import { liquidEnthalpy, vapourEnthalpy } from "../physics/steam.js";
import { WATER_HEAT_CAPACITY } from "../physics/moist-air.js";
import { product } from "../steps/algebra.js";
import type { Conversion } from "./conversion.js";

/** The boiler house as the plant file and the factors give it. */
export interface BoilerHouse {
  /** Main pressure. [bar absolute] */
  readonly pressure: Quantity;
  /** Efficiency on net calorific value. [-] */
  readonly efficiency: Quantity;
  /** Blowdown as a share of feed water. [-] */
  readonly blowdown: Quantity;
  /** Steam lost between boiler and user, as a share of steam raised. [-] */
  readonly lineLoss: Quantity;
  /** Condensate returned from closed coils, as a share of steam raised. [-] */
  readonly condensateReturn: Quantity;
  /** Temperature of the returned condensate. [°C] */
  readonly condensateTemperature: Quantity;
  /** Temperature of the make-up water. [°C] */
  readonly makeUpTemperature: Quantity;
  /** Electricity of pumps and fan. [kWh/kg] */
  readonly power: Quantity;
  /** Fuel burned, or `bought` for steam from outside. */
  readonly fuel: string;
}

/**
 * Enthalpy of the saturated steam at main pressure.
 *
 * @param pressure - main pressure [bar absolute]
 * @returns h_g [kJ/kg]
 */
export function steamEnthalpyOf(pressure: Quantity): Quantity {
  return derive("steam-enthalpy", "kJ/kg", "h_g(p), IAPWS-IF97", [pressure], (p = 0) =>
    vapourEnthalpy(p),
  );
}

/**
 * What one kilogram of steam at the user takes at the fence.
 *
 * @param house - the boiler house
 * @param returned - condensate returned per steam raised; none for open steam [-]
 * @returns flows at the fence and at the water works per kg
 */
export function steamConversions(house: BoilerHouse, returned?: Quantity): readonly Conversion[] {
  const r = returned ?? constant("no-return", 0, "1", "nothing returns from open steam");
  const raised = derive(
    "steam-raised",
    "kg/kg",
    "1 / (1 − ℓ)",
    [house.lineLoss],
    (l = 0) => 1 / (1 - l),
  );
  if (house.fuel === "bought") return boughtSteam(house, raised, r, returned === undefined);
  const heat = derive(
    "boiler-heat",
    "MJ/kg",
    "G [h_g + b/(1 − b) h_f − r h_cond − (1/(1 − b) − r) h_mk] / (1000 η)",
    [
      raised,
      house.pressure,
      house.blowdown,
      r,
      house.condensateTemperature,
      house.makeUpTemperature,
      house.efficiency,
    ],
    (G = 0, p = 0, b = 0, back = 0, tCond = 0, tMakeUp = 0, eta = 1) =>
      (1e-3 *
        G *
        (vapourEnthalpy(p) +
          (b / (1 - b)) * liquidEnthalpy(p) -
          back * WATER_HEAT_CAPACITY * tCond -
          (1 / (1 - b) - back) * WATER_HEAT_CAPACITY * tMakeUp)) /
      eta,
  );
  const makeUp = derive(
    "make-up",
    "L/kg",
    "G [1/(1 − b) − r]",
    [raised, house.blowdown, r],
    (G = 0, b = 0, back = 0) => G * (1 / (1 - b) - back),
  );
  const drained = derive(
    "blowdown-and-lost-condensate",
    "L/kg",
    returned === undefined ? "G b/(1 − b)" : "G b/(1 − b) + condensate not returned",
    [raised, house.blowdown, r],
    (G = 0, b = 0, back = 0) =>
      (G * b) / (1 - b) + (returned === undefined ? 0 : Math.max(0, 1 - G * back)),
  );
  const lost = derive("steam-lost", "L/kg", "G − 1", [raised], (G = 0) => G - 1);
  return [
    { to: `fuel.${house.fuel}`, rate: heat },
    { to: "water.process", rate: makeUp },
    { to: "water.drained", rate: drained },
    { to: "water.evaporated", rate: lost },
    { to: "electricity", rate: product("boiler-power", house.power, raised) },
  ];
}

function boughtSteam(
  house: BoilerHouse,
  raised: Quantity,
  r: Quantity,
  open: boolean,
): readonly Conversion[] {
  const heat = derive(
    "bought-steam-heat",
    "MJ/kg",
    "G (h_g − r h_cond) / 1000",
    [raised, house.pressure, r, house.condensateTemperature],
    (G = 0, p = 0, back = 0, tCond = 0) =>
      1e-3 * G * (vapourEnthalpy(p) - back * WATER_HEAT_CAPACITY * tCond),
  );
  return [
    { to: "steam.bought", rate: heat },
    ...(open ? [{ to: "water.steam-bought", rate: ONE }] : []),
  ];
}

/**
 * Steam that condenses behind a closed coil to give one megajoule: 1000 / (h_g − h_f).
 *
 * @param house - the boiler house
 * @returns kg of steam per MJ
 */
export function coilSteam(house: BoilerHouse): Quantity {
  return derive(
    "coil-steam",
    "kg/MJ",
    "1000 / (h_g − h_f)",
    [house.pressure],
    (p = 0) => 1000 / (vapourEnthalpy(p) - liquidEnthalpy(p)),
  );
}
