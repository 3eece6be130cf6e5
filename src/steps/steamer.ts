/**
 * Steamer: fixes dye in saturated steam, or above boiling in steam that is heated further.
 *
 *     S = S_floor + s_flush M + s_idle × idle hours + s_fill × charges
 *     S_floor = (m c + c_w · water on cloth)(t_c − t₁) / (h_g − c_w t_c),   t_c = min(t, t_b)
 *     above boiling: m c (t − t_b) + S · 2.0 (t − t_b) from the superheater
 *
 * The floor is what the laws of nature ask for: it condenses on the cloth and goes with it to the wash. All
 * other steam keeps air out and is vented. The chamber is open to the hall, so water boils in it at the air
 * pressure of the site: t_b is 99.97 °C at sea level and 3 K less for each kilometre.
 *
 * Loop steamers take cloth by its length and the time in the steam. Chests and star steamers take it in
 * charges: length / batch-length of them, each holding the machine for a cycle and filled with steam once.
 * Lots share a charge by their length; a mill that never puts two lots together gives, as batch-length, the
 * mean length of its charges.
 */

import { constant, derive, type Quantity } from "../numbers/quantity.js";
import { WATER_HEAT_CAPACITY } from "../physics/moist-air.js";
import { saturationTemperature } from "../physics/steam.js";
import { product, ratio } from "./algebra.js";
import { amountNamed } from "./amounts.js";
import type { Cloth, WaterPart } from "./cloth.js";
import { chosenSource, drawnFrom, DRY_HEAT_SOURCES, heatChoice, heatFlow } from "./heat-source.js";
import {
  heldTerms,
  type HourPart,
  hoursByDwell,
  perHour,
  powerTerms,
  waiting,
  waitingHours,
} from "./hours.js";
import { CREW, DWELL, IDLE, POWER, SETUP } from "./shared-settings.js";
import type { StepContext, StepKind } from "./step.js";
import type { Term } from "./term.js";
import { waterTerms } from "./water.js";

/** Heat capacity of steam near air pressure, from 100 to 200 °C. [kJ/(kg K)] */
const STEAM_HEAT_CAPACITY = 2.0;

const KILO = 1e-3;
const MASS = amountNamed("mass");
const LENGTH = amountNamed("length");

/** Steamer for prints. */
export const steamer: StepKind = {
  kind: "steamer",
  words: "Fixes dye in steam.",
  settings: {
    temperature: {
      words: "temperature of the steam in the chamber",
      unit: "°C",
      limits: [85, 200],
      owner: "role",
    },
    dwell: { ...DWELL, words: "time in the steam", limits: [60, 3600] },
    contact: {
      words: "cloth length inside the chamber",
      unit: "m",
      limits: [1, 600],
      owner: "machine",
    },
    "batch-length": {
      words: "cloth length in a charge, where cloth is steamed in charges",
      unit: "m",
      limits: [5, 3000],
      owner: "machine",
    },
    cycle: {
      words: "time of a charge with loading and unloading",
      unit: "h",
      limits: [0.1, 6],
      owner: "role",
    },
    "charge-steam": {
      words: "steam to fill the chamber and warm what carries the cloth, for each charge",
      unit: "kg",
      limits: [0, 500],
      owner: "machine",
    },
    flush: {
      words: "steam beyond what condenses on the cloth, per conditioned cloth",
      unit: "kg/kg",
      limits: [0, 20],
      owner: "machine",
    },
    "idle-steam": {
      words: "steam to keep the chamber full while waiting",
      unit: "kg/h",
      limits: [0, 2000],
      owner: "machine",
    },
    idle: IDLE,
    power: { ...POWER, limits: [0, 200] },
    setup: SETUP,
    crew: CREW,
  },
  choices: {
    loading: {
      words: "whether cloth runs through or is steamed in charges, as in chests and star steamers",
      options: ["continuous", "batch"],
      usual: "continuous",
    },
    superheat: heatChoice("what heats steam and cloth above 100 °C", DRY_HEAT_SOURCES),
  },
  // A logged temperature belongs here, so no later step may take it; what the chamber needs is taken at the
  // setting, because a lot below and one above boiling do not add up to a mean. In charges the cycle rules, so
  // a logged dwell or speed is kept from later steps in the same way.
  columns: ["fixTemp", "dwell", "speed"],
  build: (context, cloth) => {
    const temperature = context.set("temperature");
    const batch = context.choose("loading") === "batch";
    const hours = batch ? hoursByCharge(context) : hoursByDwell(context);
    const idle = waitingHours(hours, context.set("idle"));
    const condensed = condensing(context, cloth, temperature);
    const vented: readonly WaterPart[] = [
      { amount: MASS, rate: context.set("flush") },
      ...(batch ? fillings(context) : []),
    ];
    const kept = perHour("idle-steam", idle, context.set("idle-steam"));
    const steamed = (steam: readonly WaterPart[], gone: readonly WaterPart[]): readonly Term[] => [
      ...steam.map((part): Term => ({ flow: "steam.open", ...part })),
      ...waterTerms("water.evaporated", gone),
      ...superheat(context, steam, temperature),
    ];
    return {
      terms: [
        ...steamed([...condensed, ...vented], vented),
        ...clothAboveBoiling(context, temperature),
        ...powerTerms(hours, context.set("power")),
        ...heldTerms(context, hours),
        ...waiting([...steamed(kept, kept), ...heldTerms(context, idle)]),
      ],
      cloth: { water: [...cloth.water, ...condensed], temperature },
    };
  },
};

// Set-up × lots + charges × cycle. A charge is shared by length, because a whole number of charges for each
// lot would not add up over lots.
function hoursByCharge(context: StepContext): readonly HourPart[] {
  return [
    { amount: amountNamed("lots"), rate: context.set("setup") },
    {
      amount: LENGTH,
      rate: ratio("hours-per-metre", "h/m", context.set("cycle"), context.set("batch-length")),
    },
  ];
}

function fillings(context: StepContext): readonly WaterPart[] {
  const [steam, length] = [context.set("charge-steam"), context.set("batch-length")];
  return [{ amount: LENGTH, rate: ratio("charge-steam", "kg/m", steam, length) }];
}

// Boiling in a chamber open to the hall. [°C]
function boiling(context: StepContext): Quantity {
  return derive(
    "boiling-point",
    "°C",
    "temperature at which water boils at the air pressure of the site",
    [context.hall.pressure],
    (pressure = 0) => saturationTemperature(pressure),
  );
}

// Steam that condenses, part by part: for the fibres, and for the water they bring.
function condensing(
  context: StepContext,
  cloth: Cloth,
  temperature: Quantity,
): readonly WaterPart[] {
  const perHeat = derive(
    "steam-per-heat-capacity",
    "kg K/kJ",
    "(t_c − t₁) / (h_g − c_w t_c), not below 0",
    [temperature, boiling(context), cloth.temperature, context.steam.enthalpy],
    (t = 0, tBoiling = 0, tIn = 0, enthalpy = 0) => {
      const tCondensing = Math.min(t, tBoiling);
      const rise = Math.max(0, tCondensing - tIn);
      return rise / (enthalpy - WATER_HEAT_CAPACITY * tCondensing);
    },
  );
  return [
    {
      amount: MASS,
      rate: product("steam-for-fibres", context.kind.heatCapacity, perHeat),
    },
    ...cloth.water.map(({ amount, rate }) => ({
      amount,
      rate: product("steam-for-water", rate, WATER_CAPACITY, perHeat),
    })),
  ];
}

const WATER_CAPACITY = constant(
  "water-heat-capacity",
  WATER_HEAT_CAPACITY,
  "kJ/(kg K)",
  "heat capacity of liquid water",
);

function aboveBoiling(context: StepContext, temperature: Quantity): Quantity {
  return derive(
    "above-boiling",
    "K",
    "t − boiling point, not below 0",
    [temperature, boiling(context)],
    (t = 0, tBoiling = 0) => Math.max(0, t - tBoiling),
  );
}

// Heat of the superheater for steam. [MJ]
function superheat(
  context: StepContext,
  steam: readonly WaterPart[],
  temperature: Quantity,
): readonly Term[] {
  const source = chosenSource(context, "superheat");
  const perSteam = derive(
    "superheat-of-steam",
    "MJ/kg",
    "2.0 (t − boiling point) / 1000",
    [aboveBoiling(context, temperature)],
    (rise = 0) => KILO * STEAM_HEAT_CAPACITY * rise,
  );
  return steam.map(({ amount, rate }) => ({
    flow: heatFlow(source),
    amount,
    rate: drawnFrom(context, source, product("superheat", rate, perSteam)),
  }));
}

// Heat of the superheater for the fibres. [MJ]
function clothAboveBoiling(context: StepContext, temperature: Quantity): readonly Term[] {
  const source = chosenSource(context, "superheat");
  const fibres = derive(
    "superheat-of-fibres",
    "MJ/kg",
    "m c (t − boiling point) / 1000",
    [context.kind.heatCapacity, aboveBoiling(context, temperature)],
    (capacity = 0, rise = 0) => KILO * capacity * rise,
  );
  return [{ flow: heatFlow(source), amount: MASS, rate: drawnFrom(context, source, fibres) }];
}
