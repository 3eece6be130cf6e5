/**
 * Stenter: dries or cures open-width cloth on pins or clips in hot air. The same balance serves hot flue
 * and oven, which carry the cloth on rollers or a belt; only their defaults differ.
 */

import { dry, HEAT_SOURCES, type HeatSource } from "./drying.js";
import { hoursByDwell, hoursBySpeed } from "./hours.js";
import type { ChoiceSpec, SettingSpec, StepKind } from "./step.js";

const HEAT: ChoiceSpec = {
  words: "what heats the machine",
  options: HEAT_SOURCES,
  usual: "burner",
};

const SHARED: Readonly<Record<string, SettingSpec>> = {
  recovery: {
    words: "share of the exhaust's sensible heat given back to incoming air",
    unit: "1",
    limits: [0, 0.8],
    owner: "machine",
  },
  standing: {
    words: "loss through casing and ducts while hot",
    unit: "kW",
    limits: [0, 500],
    owner: "machine",
  },
  power: {
    words: "electric power of fans and drives while running",
    unit: "kW",
    limits: [0, 500],
    owner: "machine",
  },
  idle: {
    words: "hours hot and waiting per hour running",
    unit: "1",
    limits: [0, 3],
    owner: "machine",
  },
  "idle-power": {
    words: "share of the running power drawn while waiting",
    unit: "1",
    limits: [0, 1],
    owner: "machine",
  },
  setup: { words: "set-up before a lot", unit: "h/lot", limits: [0, 4], owner: "machine" },
  "moisture-out": {
    words: "moisture left on the cloth at the exit",
    unit: "kg/kg",
    limits: [0, 0.3],
    owner: "role",
  },
};

const DRYING: Readonly<Record<string, SettingSpec>> = {
  ...SHARED,
  "exhaust-humidity": {
    words: "water in the exhaust per dry air",
    unit: "kg/kg",
    limits: [0.03, 0.25],
    owner: "machine",
  },
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
  speed: { words: "cloth speed", unit: "m/min", limits: [1, 150], owner: "role" },
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
  "fix-temperature": {
    words: "cloth temperature held for fixation",
    unit: "°C",
    limits: [100, 220],
    owner: "role",
  },
  dwell: {
    words: "time at fixation temperature",
    unit: "s",
    limits: [5, 1200],
    owner: "role",
  },
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
        hours: hoursBySpeed(context),
        moistureOut: context.set("moisture-out"),
        clothOut: context.set("cloth-out"),
        fixation: false,
        exhaust: { temperature: context.set("exhaust-temperature") },
        air: { humidity: context.set("exhaust-humidity") },
        recovery: context.set("recovery"),
        standing: context.set("standing"),
        power: context.set("power"),
        idle: context.set("idle"),
        idlePower: context.set("idle-power"),
        heat: context.choose("heat") as HeatSource,
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
        hours: hoursByDwell(context),
        moistureOut: context.set("moisture-out"),
        clothOut: context.set("fix-temperature"),
        fixation: true,
        exhaust: { approach: context.set("approach") },
        air: { flow: context.set("exhaust-flow") },
        recovery: context.set("recovery"),
        standing: context.set("standing"),
        power: context.set("power"),
        idle: context.set("idle"),
        idlePower: context.set("idle-power"),
        heat: context.choose("heat") as HeatSource,
      }),
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
