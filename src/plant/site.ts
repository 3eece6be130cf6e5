/**
 * A site's air, water, steam and utilities as quantities.
 */

import { constant, derive, type Quantity } from "../numbers/quantity.js";
import { humidityRatio } from "../physics/moist-air.js";
import { product } from "../steps/algebra.js";
import { SUBSTANCES, type Placement, STEP_FLOWS } from "../steps/flows.js";
import {
  type BoilerHouse,
  coilSteam,
  raisedPerUsed,
  returnOfRaised,
  steamConversions,
  steamEnthalpyOf,
} from "../utilities/boiler.js";
import { chained } from "../utilities/chain.js";
import type { Conversion, Conversions } from "../utilities/conversion.js";
import { fateConversions } from "../utilities/fate.js";
import {
  drainConversions,
  electricHeatConversions,
  oilConversions,
  waterConversions,
} from "../utilities/works.js";
import { bondOf } from "./bonds.js";
import type { Asked, Lookup } from "./quantities.js";
import type { SiteText } from "./schema.js";

/** A site ready for its steps. */
export interface Site {
  /** Name. */
  readonly name: string;
  /** Looks up a factor of the site. */
  readonly at: (id: string) => Quantity;
  /** Air of the hall. */
  readonly hall: {
    readonly temperature: Quantity;
    readonly humidity: Quantity;
    readonly pressure: Quantity;
  };
  /** Temperature of the supply water. [°C] */
  readonly supplyTemperature: Quantity;
  /** Enthalpy of the steam. [kJ/kg] */
  readonly steamEnthalpy: Quantity;
  /** Steam that heat behind a coil takes. [kg/MJ] */
  readonly coilSteam: Quantity;
  /** Steam raised per steam used. [kg/kg] */
  readonly raisedSteam: Quantity;
  /** Vapour of the burner's fuel. [kg/MJ] */
  readonly burnerVapour: Quantity;
  /** Unburnt loss of direct burners, as an efficiency. [-] */
  readonly burnerEfficiency: Quantity;
  /** Conversions to the fence, for a route with or without a wash. */
  readonly conversions: (washed: boolean) => Conversions;
  /** Fuels burned on the site. */
  readonly fuels: readonly string[];
}

const PLACEMENTS: readonly Placement[] = ["cloth", "drain", "bath", "waste"];

/**
 * Builds a site.
 *
 * @param name - its name
 * @param text - as written in the plant file
 * @param lookup - where factors are found
 * @returns the site
 */
export function buildSite(name: string, text: SiteText, lookup: Lookup): Site {
  const at = (id: string): Quantity => lookup(askedAt(name, text, id));
  const temperature = at("hall.temperature");
  const pressure = at("site.pressure");
  const humidity = derive(
    "hall-humidity",
    "kg/kg",
    "W(t, RH, p)",
    [temperature, at("hall.relative-humidity"), pressure],
    (t = 20, rh = 0.5, p = 1) => humidityRatio(t, rh, p),
  );
  const supplyTemperature = at("water.supply-temperature");
  const house: BoilerHouse = {
    pressure: at("boiler.pressure"),
    efficiency: at("boiler.efficiency"),
    blowdown: at("boiler.blowdown"),
    lineLoss: at("boiler.line-loss"),
    condensateReturn: at("boiler.condensate-return"),
    condensateTemperature: at("boiler.condensate-temperature"),
    makeUpTemperature: supplyTemperature,
    power: derive(
      "boiler-power-per-kg",
      "kWh/kg",
      "power / 1000",
      [at("boiler.power")],
      (p = 0) => p / 1000,
    ),
    fuel: text.boiler?.fuel ?? "natural-gas",
  };
  const burnerFuel = text.burner?.fuel ?? "natural-gas";
  const oilFuel = text.oil_heater?.fuel ?? "natural-gas";
  const vapourId = `fuel.${burnerFuel}.vapour`;
  return {
    name,
    at,
    hall: { temperature, humidity, pressure },
    supplyTemperature,
    steamEnthalpy: steamEnthalpyOf(house.pressure),
    coilSteam: coilSteam(house),
    raisedSteam: raisedPerUsed(house),
    burnerVapour: at(vapourId),
    burnerEfficiency: at("burner.efficiency"),
    conversions: (washed) => {
      const direct = new Map<string, readonly Conversion[]>([
        [
          "heat.burner",
          [
            {
              to: `fuel.${burnerFuel}`,
              rate: constant("burner-fuel", 1, "MJ/MJ", "fuel at the burner"),
            },
          ],
        ],
        [
          "heat.oil",
          oilConversions(
            oilFuel,
            at("oil-heater.efficiency"),
            at("oil-heater.loop-loss"),
            at("oil-heater.pump"),
          ),
        ],
        ["heat.electric", electricHeatConversions(at("electric-heat.efficiency"))],
        ["heat.steam-coil", coil(house)],
        ["steam.open", steamConversions(house)],
        [
          "water.process",
          waterConversions({
            electricity: at("water-works.electricity"),
            reject: at("water-works.softening-reject"),
            salt: at("water-works.salt"),
          }),
        ],
        [
          "water.drained",
          drainConversions(text.effluent === "municipal" ? undefined : at("effluent.electricity")),
        ],
        ["air.compressed", [{ to: "electricity", rate: at("compressor.specific") }]],
        ...SUBSTANCES.flatMap((substance) =>
          PLACEMENTS.map((placement): [string, readonly Conversion[]] => [
            `${substance}@${placement}`,
            fateConversions(
              substance,
              placement,
              {
                fixed: at(`substance.${substance}.fixed`),
                evaporated: at(
                  `substance.${substance}.${washed ? "evaporated-washed" : "evaporated-dry-heat"}`,
                ),
                cod: at(`substance.${substance}.cod`),
                nitrogen: at(`substance.${substance}.nitrogen`),
                salt: at(`substance.${substance}.salt`),
                carbon: at(`substance.${substance}.carbon`),
                ...(substance === "crosslinker"
                  ? { formaldehyde: at("substance.crosslinker.formaldehyde") }
                  : {}),
              },
              washed,
            ),
          ]),
        ),
      ]);
      return chained(direct, [...direct.keys(), ...Object.keys(STEP_FLOWS)]);
    },
    fuels: [...new Set([burnerFuel, oilFuel, house.fuel])].filter((fuel) => fuel !== "bought"),
  };
}

// Heat behind a coil is steam at the user, part of which comes back as condensate.
function coil(house: BoilerHouse): readonly Conversion[] {
  const steam = coilSteam(house);
  return steamConversions(house, returnOfRaised(house)).map(({ to, rate }) => ({
    to,
    rate: product("coil", steam, rate),
  }));
}

function askedAt(name: string, text: SiteText, id: string): Asked {
  const family = id.split(".")[0] ?? "";
  const world = ["fuel", "gwp", "grid", "substance", "ink", "fibre"].includes(family);
  const given = text.settings?.[id];
  return {
    id,
    owner: world ? "" : `site ${name}`,
    bond: bondOf(id, { site: name }),
    ...(given === undefined
      ? {}
      : { given, where: `sites.${name}.settings.${id}`, owner: `site ${name}` }),
  };
}
