/**
 * Wash range: takes what was not fixed off the cloth in a row of boxes, and warms their water.
 *
 *     bath water = liquor ratio × M + filling × fillings = drawn from the works + open steam
 *     or           flow × (hours running + hours stopped) + filling × fillings
 *     drained = bath water + in with cloth − carried out
 *
 * Which of the two holds is a choice of the mill: liquor by the weight of the cloth, or valves that stand open
 * at a flow, also while the cloth stands. By flow, logged liquor ratios and baths are not used, and surfaces
 * lose heat while stopped as well; which boxes need heat is still judged at `fresh-water`.
 *
 * How much heat that takes, and how much steam where it is blown in, stands in `wash-boxes.ts` and
 * `wash-heat.ts`. A logged liquor ratio is that of each bath when baths are logged, and that of the whole
 * wash when they are not.
 */

import { ONE } from "../numbers/quantity.js";
import { product } from "./algebra.js";
import { amountNamed } from "./amounts.js";
import {
  heldTerms,
  type HourPart,
  hoursBySpeed,
  perHour,
  powerTerms,
  waiting,
  waitingHours,
} from "./hours.js";
import { CREW, POWER, SETUP, SPEED } from "./shared-settings.js";
import type { StepContext, StepKind } from "./step.js";
import { substanceTerms } from "./substances.js";
import type { Term } from "./term.js";
import { SEQUENCES } from "./wash-boxes.js";
import { lastBox, type LiquorPart, warming } from "./wash-heat.js";
import { released, waterTerms } from "./water.js";

const MASS = amountNamed("mass");
const LOTS = amountNamed("lots");

/** Open-width wash range. */
export const washRange: StepKind = {
  kind: "wash-range",
  words: "Washes unfixed dye and chemicals off cloth in a row of boxes.",
  settings: {
    "fresh-water": {
      words: "fresh water of the whole wash per conditioned cloth",
      unit: "L/kg",
      limits: [1, 400],
      owner: "role",
    },
    "litres-per-bath": {
      words: "fresh water of one bath per conditioned cloth, where only baths are logged",
      unit: "L/kg",
      limits: [0.5, 100],
      owner: "role",
    },
    "carry-over": {
      words: "water that conditioned cloth carries from box to box",
      unit: "kg/kg",
      limits: [0.3, 4],
      owner: "machine",
    },
    warm: { words: "temperature of warm boxes", unit: "°C", limits: [30, 85], owner: "role" },
    hot: { words: "temperature of hot boxes", unit: "°C", limits: [50, 99], owner: "role" },
    recovery: {
      words: "share of the drain's heat given back to the feed",
      unit: "1",
      limits: [0, 0.9],
      owner: "machine",
    },
    surface: {
      words: "heat lost from open surfaces while running",
      unit: "kW",
      limits: [0, 200],
      owner: "machine",
    },
    fill: {
      words: "water to fill all boxes once",
      unit: "L",
      limits: [0, 50000],
      owner: "machine",
    },
    "fills-per-lot": {
      words: "fillings per lot; 1 when boxes are emptied after each lot",
      unit: "1/lot",
      limits: [0, 10],
      owner: "machine",
    },
    power: {
      ...POWER,
      words: "electric power of drives and pumps while running",
      limits: [0, 300],
    },
    speed: { ...SPEED, owner: "machine" },
    setup: SETUP,
    crew: CREW,
    flow: {
      words: "fresh water of all boxes together while their valves are open",
      unit: "L/h",
      limits: [50, 60000],
      owner: "machine",
    },
    stops: {
      words: "hours stopped with the water running, per hour running",
      unit: "1",
      limits: [0, 3],
      owner: "machine",
    },
  },
  choices: {
    "water-by": {
      words: "whether fresh water goes by the weight of the cloth or by the hour, stops included",
      options: ["liquor", "flow"],
      usual: "liquor",
    },
    heating: {
      words: "whether steam is blown into the boxes or stays behind a coil",
      options: ["injection", "coil"],
      usual: "injection",
    },
    sequence: {
      words: "boxes in the order of the cloth, and how they are fed",
      options: Object.keys(SEQUENCES),
      usual: "six",
    },
  },
  columns: ["liquorRatio", "baths"],
  build: (context, cloth) => {
    const carried = context.set("carry-over");
    const running = hoursBySpeed(context);
    const byFlow = context.choose("water-by") === "flow";
    const stopped = byFlow ? waitingHours(running, context.set("stops")) : [];
    const bath = byFlow ? byHour(context, running, stopped) : liquor(context);
    const filling = product("filling", context.set("fill"), context.set("fills-per-lot"));
    const fresh: readonly LiquorPart[] = [...bath, { amount: LOTS, rate: filling }];
    return {
      terms: [
        ...fresh.map((part): Term => ({ flow: "water.process", ...part })),
        ...fresh.map((part): Term => ({ flow: "water.drained", ...part })),
        ...waterTerms("water.drained", released(cloth, carried)),
        ...warming(context, cloth, bath, filling, { running, stopped }),
        ...substanceTerms(context.recipe, "bath", MASS, ONE),
        ...powerTerms(running, context.set("power")),
        ...heldTerms(context, running),
        ...waiting(heldTerms(context, stopped)),
      ],
      cloth: { water: [{ amount: MASS, rate: carried }], temperature: lastBox(context) },
    };
  },
};

// Fresh water by the hour, running and stopped. [L]
function byHour(
  context: StepContext,
  running: readonly HourPart[],
  stopped: readonly HourPart[],
): readonly LiquorPart[] {
  const flow = context.set("flow");
  return [
    ...perHour("bath-water", running, flow),
    ...perHour("bath-water", stopped, flow).map((part) => ({ ...part, part: "waiting" as const })),
  ];
}

// Fresh water by what was logged: liquor ratio and baths, one of them, or neither. [L]
function liquor(context: StepContext): readonly LiquorPart[] {
  const whole = context.set("fresh-water");
  if (!context.takes("liquorRatio") || !context.takes("baths")) {
    return [{ amount: MASS, rate: whole }];
  }
  return [
    { amount: amountNamed("mass·liquorRatio·baths"), rate: ONE },
    { amount: amountNamed("mass·liquorRatio[no baths]"), rate: ONE },
    { amount: amountNamed("mass·baths[no liquorRatio]"), rate: context.set("litres-per-bath") },
    { amount: amountNamed("mass[no liquorRatio, baths]"), rate: whole },
  ];
}
