/**
 * Steamer: fixes dye in saturated steam, or above 100 °C in steam that is heated further.
 *
 *     S = S_floor + s_flush M + s_idle × idle hours
 *     S_floor = (m c + c_w · water on cloth)(t_c − t₁) / (h_g − c_w t_c),   t_c = min(t, 100 °C)
 *     above 100 °C: m c (t − 100) + S · 2.0 (t − 100) from the superheater
 *
 * The floor is what the laws of nature ask for: it condenses on the cloth and goes with it to the wash. All
 * other steam keeps air out and is vented. Boiling is taken at 100 °C, the chamber being open to the hall.
 */

import { constant, derive, type Quantity } from "../numbers/quantity.js";
import { WATER_HEAT_CAPACITY } from "../physics/moist-air.js";
import { product } from "./algebra.js";
import { amountNamed } from "./amounts.js";
import type { Cloth, WaterPart } from "./cloth.js";
import { chosenSource, drawnFrom, DRY_HEAT_SOURCES, heatChoice, heatFlow } from "./heat-source.js";
import { heldTerms, hotHours, hoursByDwell, perHour, powerTerms } from "./hours.js";
import { DWELL, IDLE, POWER, SETUP } from "./shared-settings.js";
import type { StepContext, StepKind } from "./step.js";
import type { Term } from "./term.js";
import { waterTerms } from "./water.js";

/** Temperature at which water boils in an open chamber. [°C] */
const BOILING = 100;

/** Heat capacity of steam near air pressure, from 100 to 200 °C. [kJ/(kg K)] */
const STEAM_HEAT_CAPACITY = 2.0;

const KILO = 1e-3;
const MASS = amountNamed("mass");

/** Steamer for prints. */
export const steamer: StepKind = {
  kind: "steamer",
  words: "Fixes dye in steam.",
  settings: {
    temperature: {
      words: "temperature of the steam in the chamber",
      unit: "°C",
      limits: [98, 200],
      owner: "role",
    },
    dwell: { ...DWELL, words: "time in the steam", limits: [60, 3600] },
    contact: {
      words: "cloth length inside the chamber",
      unit: "m",
      limits: [1, 600],
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
  },
  choices: {
    superheat: heatChoice("what heats steam and cloth above 100 °C", DRY_HEAT_SOURCES),
  },
  // A logged temperature belongs here, so no later step may take it; what the chamber needs is taken at the
  // setting, because a lot below and one above boiling do not add up to a mean.
  columns: ["fixTemp", "dwell", "speed"],
  build: (context, cloth) => {
    const temperature = context.set("temperature");
    const hours = hoursByDwell(context);
    const idle = context.set("idle");
    const condensed = condensing(context, cloth, temperature);
    const vented: readonly WaterPart[] = [
      { amount: MASS, rate: context.set("flush") },
      ...perHour("idle-steam", hours, product("idle-steam", context.set("idle-steam"), idle)),
    ];
    const steam = [...condensed, ...vented];
    return {
      terms: [
        ...steam.map((part): Term => ({ flow: "steam.open", ...part })),
        ...waterTerms("water.evaporated", vented),
        ...superheat(context, steam, temperature),
        ...powerTerms(hours, context.set("power")),
        ...heldTerms(hours, hotHours(idle)),
      ],
      cloth: { water: [...cloth.water, ...condensed], temperature },
    };
  },
};

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
    [temperature, cloth.temperature, context.steam.enthalpy],
    (t = 0, tIn = 0, enthalpy = 0) => {
      const tCondensing = Math.min(t, BOILING);
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

function superheat(
  context: StepContext,
  steam: readonly WaterPart[],
  temperature: Quantity,
): readonly Term[] {
  const source = chosenSource(context, "superheat");
  const above = derive("above-boiling", "K", "t − 100 °C, not below 0", [temperature], (t = 0) =>
    Math.max(0, t - BOILING),
  );
  const fibres = derive(
    "superheat-of-fibres",
    "MJ/kg",
    "m c (t − 100) / 1000",
    [context.kind.heatCapacity, above],
    (capacity = 0, rise = 0) => KILO * capacity * rise,
  );
  const ofSteam = derive(
    "superheat-of-steam",
    "MJ/kg",
    "2.0 (t − 100) / 1000",
    [above],
    (rise = 0) => KILO * STEAM_HEAT_CAPACITY * rise,
  );
  const needed = [
    { amount: MASS, rate: fibres },
    ...steam.map(({ amount, rate }) => ({ amount, rate: product("superheat", rate, ofSteam) })),
  ];
  return needed.map(({ amount, rate }) => ({
    flow: heatFlow(source),
    amount,
    rate: drawnFrom(context, source, rate),
  }));
}
