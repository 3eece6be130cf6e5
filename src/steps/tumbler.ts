/**
 * Tumbler: dries cloth in batches in a drum of hot air, to soften it as much as to dry it. It may take
 * cloth dry or straight from a soak.
 *
 *     hours = M / load × cycle;   heat by the drying balance, exhaust kept at a humidity
 *     soak: water drawn = soak × M, at least what the cloth takes up;   drained = drawn + in with cloth − after-soak × m
 */

import { derive } from "../numbers/quantity.js";
import { ratio } from "./algebra.js";
import { amountNamed } from "./amounts.js";
import type { Cloth } from "./cloth.js";
import { dry } from "./drying.js";
import { chosenSource, HEAT_SOURCES, heatChoice } from "./heat-source.js";
import { exhaustRise } from "./humidity-rise.js";
import {
  CREW,
  EXHAUST_HUMIDITY,
  FAN,
  IDLE,
  IDLE_POWER,
  MOISTURE_OUT,
  POWER,
  RECOVERY,
  STANDING,
} from "./shared-settings.js";
import type { StepContext, StepKind, StepResult } from "./step.js";
import { released, waterAt, waterTerms } from "./water.js";

const MASS = amountNamed("mass");

/** Batch dryer with a turning drum. */
export const tumbler: StepKind = {
  kind: "tumbler",
  words: "Tumbles cloth in batches in hot air, dry or straight from a soak.",
  settings: {
    "exhaust-humidity": EXHAUST_HUMIDITY,
    fan: FAN,
    "exhaust-temperature": {
      words: "temperature of the exhaust",
      unit: "°C",
      limits: [40, 150],
      owner: "role",
    },
    "cloth-out": {
      words: "cloth temperature at the end of a cycle",
      unit: "°C",
      limits: [30, 130],
      owner: "role",
    },
    "moisture-out": MOISTURE_OUT,
    recovery: RECOVERY,
    standing: { ...STANDING, limits: [0, 100] },
    power: { ...POWER, words: "electric power of drum and fan while running", limits: [0, 100] },
    idle: IDLE,
    "idle-power": IDLE_POWER,
    crew: CREW,
    load: { words: "cloth in a batch", unit: "kg", limits: [5, 600], owner: "machine" },
    cycle: {
      words: "time of a batch with loading",
      unit: "h",
      limits: [0.1, 6],
      owner: "role",
    },
    soak: {
      words: "fresh water of the soak per conditioned cloth",
      unit: "L/kg",
      limits: [0, 100],
      owner: "role",
    },
    "after-soak": {
      words: "moisture of the cloth when it leaves the soak",
      unit: "kg/kg",
      limits: [0.2, 1.5],
      owner: "role",
    },
  },
  choices: {
    heat: heatChoice("what heats the air", HEAT_SOURCES),
    entry: {
      words: "whether cloth is put in as it comes or soaked before",
      options: ["dry", "soaked"],
      usual: "dry",
    },
  },
  columns: [],
  build: (context, cloth) => {
    const soaked =
      context.choose("entry") === "soaked" ? soak(context, cloth) : { terms: [], cloth };
    const dried = dry(context, soaked.cloth, {
      hours: [
        {
          amount: MASS,
          rate: ratio("hours-per-mass", "h/kg", context.set("cycle"), context.set("load")),
        },
      ],
      moistureOut: context.set("moisture-out"),
      clothOut: context.set("cloth-out"),
      air: {
        rise: exhaustRise(context),
        fan: context.set("fan"),
        exhaust: context.set("exhaust-temperature"),
        recovery: context.set("recovery"),
      },
      standing: context.set("standing"),
      power: context.set("power"),
      idle: context.set("idle"),
      idlePower: context.set("idle-power"),
      heat: chosenSource(context, "heat"),
    });
    return { ...dried, terms: [...soaked.terms, ...dried.terms] };
  },
};

function soak(context: StepContext, cloth: Cloth): StepResult {
  const moisture = context.set("after-soak");
  const left = waterAt(context, moisture);
  const parts = released(cloth, left);
  const own = parts.filter((part) => part.amount === MASS).map((part) => part.rate);
  // A bath from which the cloth takes more than was poured in would drain less than nothing.
  const drawn = derive(
    "soak-drawn",
    "L/kg",
    "the greater of soak and what the cloth takes up",
    [context.set("soak"), ...own],
    (litres = 0, ...gone) => Math.max(litres, -gone.reduce((sum, part) => sum + part, 0)),
  );
  return {
    terms: [
      { flow: "water.process", amount: MASS, rate: drawn },
      { flow: "water.drained", amount: MASS, rate: drawn },
      ...waterTerms("water.drained", parts),
    ],
    cloth: {
      water: [{ amount: MASS, rate: left }],
      temperature: context.supplyTemperature,
      moisture,
    },
  };
}
