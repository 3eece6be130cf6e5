/**
 * Boiler and feed tank as one control volume.
 *
 *     G = S / (1 − ℓ);   make-up = G [1/(1 − b) − r];   blowdown = G b / (1 − b)
 *     fuel = G [h_g + b/(1 − b) h_f − r h_cond − (1/(1 − b) − r) h_mk] / η
 *
 * G steam raised, S steam at the user, ℓ line loss as steam, b blowdown as a share of feed water, r return
 * as a share of G, η on net calorific value. With r = b = 0 the fuel is G (h_g − h_mk)/η. Lost steam is
 * counted as evaporated, condensate that does not return as drained.
 */

import { constant, derive, type Quantity } from "../numbers/quantity.js";
import {
  liquidEnthalpy,
  saturationTemperature,
  vapourEnthalpy,
  waterEnthalpy,
} from "../physics/steam.js";
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
  /** Condensate that comes back, as a share of the steam that reached closed coils. [-] */
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
  const raised = raisedPerUsed(house);
  const lost: Conversion = {
    to: "water.evaporated",
    rate: derive("steam-lost", "L/kg", "G − 1", [raised], (G = 0) => G - 1),
  };
  if (house.fuel === "bought") {
    return [...boughtSteam(house, raised, r), lost, ...notReturned(raised, returned)];
  }
  return [
    { to: `fuel.${house.fuel}`, rate: firedPerKilogram(house, raised, r) },
    {
      to: "water.process",
      rate: derive(
        "make-up",
        "L/kg",
        "G [1/(1 − b) − r]",
        [raised, house.blowdown, r],
        (G = 0, b = 0, back = 0) => G * (1 / (1 - b) - back),
      ),
    },
    {
      to: "water.drained",
      rate: derive(
        "blowdown",
        "L/kg",
        "G b/(1 − b)",
        [raised, house.blowdown],
        (G = 0, b = 0) => (G * b) / (1 - b),
      ),
    },
    lost,
    ...notReturned(raised, returned),
    { to: "electricity", rate: product("boiler-power", house.power, raised) },
  ];
}

function firedPerKilogram(house: BoilerHouse, raised: Quantity, r: Quantity): Quantity {
  return derive(
    "boiler-heat",
    "MJ/kg",
    "G [h_g + b/(1 − b) h_f − r h_cond − (1/(1 − b) − r) h_mk] / (1000 η)",
    [
      raised,
      house.blowdown,
      r,
      house.efficiency,
      steamEnthalpyOf(house.pressure),
      boilingEnthalpyOf(house.pressure),
      waterEnthalpyOf(house.pressure, house.condensateTemperature),
      waterEnthalpyOf(house.pressure, house.makeUpTemperature),
    ],
    (G = 0, b = 0, back = 0, eta = 1, steam = 0, boiling = 0, condensate = 0, makeUp = 0) =>
      (1e-3 *
        G *
        (steam + (b / (1 - b)) * boiling - back * condensate - (1 / (1 - b) - back) * makeUp)) /
      eta,
  );
}

// Bought steam is water that comes in, as far as it does not go back to the supplier.
function boughtSteam(house: BoilerHouse, raised: Quantity, r: Quantity): readonly Conversion[] {
  return [
    {
      to: "steam.bought",
      rate: derive(
        "bought-steam-heat",
        "MJ/kg",
        "G (h_g − r h_cond) / 1000",
        [
          raised,
          r,
          steamEnthalpyOf(house.pressure),
          waterEnthalpyOf(house.pressure, house.condensateTemperature),
        ],
        (G = 0, back = 0, steam = 0, condensate = 0) => 1e-3 * G * (steam - back * condensate),
      ),
    },
    {
      to: "water.steam-bought",
      rate: derive(
        "bought-steam-kept",
        "L/kg",
        "G (1 − r)",
        [raised, r],
        (G = 0, back = 0) => G * (1 - back),
      ),
    },
  ];
}

// Open steam stays with cloth, bath or air; what condenses behind a coil and does not return is drained.
function notReturned(raised: Quantity, returned: Quantity | undefined): readonly Conversion[] {
  if (returned === undefined) return [];
  const rate = derive(
    "condensate-drained",
    "L/kg",
    "1 − G r",
    [raised, returned],
    (G = 0, back = 0) => 1 - G * back,
  );
  return [{ to: "water.drained", rate }];
}

function boilingEnthalpyOf(pressure: Quantity): Quantity {
  return derive("boiling-enthalpy", "kJ/kg", "h_f(p), IAPWS-IF97", [pressure], (p = 0) =>
    liquidEnthalpy(p),
  );
}

// Water hotter than boiling at main pressure would flash: it counts as boiling.
function waterEnthalpyOf(pressure: Quantity, temperature: Quantity): Quantity {
  return derive(
    "water-enthalpy",
    "kJ/kg",
    "h(p, t), IAPWS-IF97",
    [pressure, temperature],
    (p = 0, t = 0) => (t < saturationTemperature(p) ? waterEnthalpy(p, t) : liquidEnthalpy(p)),
  );
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
    [steamEnthalpyOf(house.pressure), boilingEnthalpyOf(house.pressure)],
    (steam = 0, boiling = 0) => 1000 / (steam - boiling),
  );
}

/**
 * Steam raised per steam used: what is lost on the way is raised too.
 *
 * @param house - the boiler house
 * @returns 1 / (1 − ℓ) [kg/kg]
 */
export function raisedPerUsed(house: BoilerHouse): Quantity {
  return derive("steam-raised", "kg/kg", "1 / (1 − ℓ)", [house.lineLoss], (l = 0) => 1 / (1 - l));
}

/**
 * Condensate that returns as a share of the steam raised for a coil, which is more than reaches it.
 *
 * @param house - the boiler house
 * @returns r = return from coils × (1 − ℓ) [-]
 */
export function returnOfRaised(house: BoilerHouse): Quantity {
  return derive(
    "return-of-raised",
    "1",
    "condensate-return × (1 − ℓ)",
    [house.condensateReturn, house.lineLoss],
    (back = 0, l = 0) => back * (1 - l),
  );
}
