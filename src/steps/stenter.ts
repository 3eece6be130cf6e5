/**
 * Stenter: dries or cures open-width cloth on pins or clips in hot air. The same balance serves hot flue
 * and oven, which carry the cloth on rollers or a belt; only their defaults differ.
 */

import type { DryerRun } from "./dryer-run.js";
import { dry } from "./drying.js";
import { chosenSource, HEAT_SOURCES, heatChoice } from "./heat-source.js";
import { hoursByDwell, hoursBySpeed } from "./hours.js";
import { exhaustRise } from "./humidity-rise.js";
import {
  CREW,
  EXHAUST_HUMIDITY,
  FAN,
  DWELL,
  FIX_TEMPERATURE,
  IDLE,
  IDLE_POWER,
  MOISTURE_OUT,
  POWER,
  RECOVERY,
  SETUP,
  SPEED,
  STANDING,
} from "./shared-settings.js";
import type { SettingSpec, StepContext, StepKind } from "./step.js";

const HEAT = heatChoice("what heats the machine", HEAT_SOURCES);

const SHARED: Readonly<Record<string, SettingSpec>> = {
  recovery: RECOVERY,
  standing: STANDING,
  power: { ...POWER, words: "electric power of fans and drives while running" },
  idle: IDLE,
  "idle-power": IDLE_POWER,
  setup: SETUP,
  crew: CREW,
  "moisture-out": MOISTURE_OUT,
};

const DRYING: Readonly<Record<string, SettingSpec>> = {
  ...SHARED,
  "exhaust-humidity": EXHAUST_HUMIDITY,
  fan: FAN,
  "exhaust-temperature": {
    words: "temperature of the exhaust",
    unit: "°C",
    limits: [60, 220],
    owner: "role",
  },
  "cloth-out": {
    words: "cloth temperature at the exit",
    unit: "°C",
    limits: [40, 210],
    owner: "role",
  },
  speed: SPEED,
};

const CURING: Readonly<Record<string, SettingSpec>> = {
  ...SHARED,
  "exhaust-flow": {
    words: "dry air leaving with the exhaust",
    unit: "kg/h",
    limits: [100, 60000],
    owner: "machine",
  },
  approach: {
    words: "exhaust temperature above the cloth temperature",
    unit: "°C",
    limits: [0, 60],
    owner: "machine",
  },
  "fix-temperature": FIX_TEMPERATURE,
  dwell: DWELL,
  contact: {
    words: "cloth length inside the hot chamber",
    unit: "m",
    limits: [1, 200],
    owner: "machine",
  },
};

function dryer(kind: string, words: string): StepKind {
  return {
    kind,
    words,
    settings: DRYING,
    choices: { heat: HEAT },
    columns: [],
    build: (context, cloth) =>
      dry(context, cloth, {
        ...sharedRun(context),
        hours: hoursBySpeed(context),
        clothOut: context.set("cloth-out"),
        air: {
          rise: exhaustRise(context),
          fan: context.set("fan"),
          exhaust: context.set("exhaust-temperature"),
          recovery: context.set("recovery"),
        },
      }),
  };
}

function curer(kind: string, words: string): StepKind {
  return {
    kind,
    words,
    settings: CURING,
    choices: { heat: HEAT },
    columns: ["fixTemp", "dwell", "speed"],
    build: (context, cloth) =>
      dry(context, cloth, {
        ...sharedRun(context),
        hours: hoursByDwell(context),
        clothOut: context.set("fix-temperature"),
        air: {
          flow: context.set("exhaust-flow"),
          approach: context.set("approach"),
          recovery: context.set("recovery"),
        },
      }),
  };
}

function sharedRun(context: StepContext): Omit<DryerRun, "hours" | "clothOut" | "air"> {
  return {
    moistureOut: context.set("moisture-out"),
    standing: context.set("standing"),
    power: context.set("power"),
    idle: context.set("idle"),
    idlePower: context.set("idle-power"),
    heat: chosenSource(context, "heat"),
  };
}

/** Stenter that dries, its air ruled by exhaust humidity. */
export const stenterDry = dryer("stenter-dry", "Dries wet cloth in hot air on a stenter.");

/** Hot flue that dries, its air ruled by exhaust humidity. */
export const hotFlue = dryer("hot-flue", "Dries wet cloth in hot air on rollers.");

/** Stenter that cures print, its air ruled by the fan. */
export const stenterCure = curer("stenter-cure", "Cures print in hot air on a stenter.");

/** Oven that cures print, its air ruled by the fan. */
export const oven = curer("oven", "Cures print in hot air on a belt or in loops.");
