/**
 * Printer: lays ink on cloth that is stuck to a washed belt, and dries it in a built-in dryer.
 *
 *     ink = logged, or printed area × coverage × full laydown;   hours = printed area / rate + set-up
 *     electricity = (printing + dryer) kW × printed hours + standby kW × standby hours
 *     water = belt L/h × printed hours + flush L × lots;   all of it is drained
 *
 * The dryer's mean load already holds the heat that the ink's water takes, so this water only enters the
 * balance of water. Ink logged on the route the lots took crosses to the other arm by the ink ratio.
 */

import { derive, ONE, type Quantity } from "../numbers/quantity.js";
import { product, ratio } from "./algebra.js";
import { amountNamed, type Amount } from "./amounts.js";
import type { StepFlow } from "./flows.js";
import { heldTerms, type HourPart, perHour, powerTerms, waiting } from "./hours.js";
import { CREW, POWER, SETUP } from "./shared-settings.js";
import type { StepContext, StepKind } from "./step.js";
import { substanceTerms } from "./substances.js";
import type { Term } from "./term.js";

const LOTS = amountNamed("lots");
const PRINTED = amountNamed("printed");

/** Ink-jet printer with belt washing and a built-in dryer. */
export const printer: StepKind = {
  kind: "printer",
  words: "Prints cloth with ink on a washed belt and dries it.",
  settings: {
    rate: {
      words: "printed area per hour, passes and stops included",
      unit: "m2/h",
      limits: [1, 5000],
      owner: "machine",
    },
    power: {
      ...POWER,
      words: "electric power while printing, without the dryer",
      limits: [0, 200],
    },
    "dryer-power": {
      ...POWER,
      words: "mean load of the built-in dryer while printing",
      limits: [0, 300],
    },
    "standby-power": { ...POWER, words: "electric power on standby", limits: [0, 50] },
    standby: { words: "standby per lot", unit: "h/lot", limits: [0, 24], owner: "machine" },
    setup: SETUP,
    crew: CREW,
    "belt-water": {
      words: "water of the belt washer",
      unit: "L/h",
      limits: [0, 3000],
      owner: "machine",
    },
    "flush-water": {
      words: "water to rinse heads and floor",
      unit: "L/lot",
      limits: [0, 1000],
      owner: "machine",
    },
    purge: { words: "ink purged from the heads", unit: "L/lot", limits: [0, 20], owner: "machine" },
    "purge-to-drain": {
      words: "share of purged ink that goes down the drain; the rest is taken away as waste",
      unit: "1",
      limits: [0, 1],
      owner: "machine",
    },
    "ink-laydown": {
      words: "ink at full laydown",
      unit: "L/m2",
      limits: [0.001, 0.2],
      owner: "role",
    },
    coverage: {
      words: "share of the printed area under full laydown, where not logged",
      unit: "1",
      limits: [0, 1],
      owner: "role",
    },
    "ink-ratio": {
      words: "ink of this arm per ink logged on the other",
      unit: "1",
      limits: [0.1, 10],
      owner: "role",
    },
  },
  choices: {},
  columns: [],
  build: (context, cloth) => {
    const printing: readonly HourPart[] = [
      { amount: PRINTED, rate: ratio("hours-per-area", "h/m2", ONE, context.set("rate")) },
    ];
    const standby: readonly HourPart[] = [{ amount: LOTS, rate: context.set("standby") }];
    const setup: readonly HourPart[] = [{ amount: LOTS, rate: context.set("setup") }];
    return {
      terms: [
        ...inkOnCloth(context).flatMap(({ amount, rate }) => laid(context, amount, rate)),
        ...purged(context),
        ...(["water.process", "water.drained"] as const).flatMap((flow): readonly Term[] => [
          ...perHour("belt-wash", printing, context.set("belt-water")).map((part) => ({
            flow,
            ...part,
          })),
          { flow, amount: LOTS, rate: context.set("flush-water") },
        ]),
        ...powerTerms(printing, context.set("power")),
        ...powerTerms(printing, context.set("dryer-power")),
        ...waiting(powerTerms(standby, context.set("standby-power"))),
        ...heldTerms(context, [...setup, ...printing]),
      ],
      cloth,
    };
  },
};

// Ink on cloth by what was logged: the ink, the coverage, or neither.
function inkOnCloth(
  context: StepContext,
): readonly { readonly amount: Amount; readonly rate: Quantity }[] {
  const laydown = context.set("ink-laydown");
  return [
    { amount: amountNamed("ink"), rate: context.own ? ONE : context.set("ink-ratio") },
    { amount: amountNamed("printed·coverage[no ink]"), rate: laydown },
    {
      amount: amountNamed("printed[no ink, coverage]"),
      rate: product("mean-laydown", context.set("coverage"), laydown),
    },
  ];
}

function laid(context: StepContext, amount: Amount, ink: Quantity): readonly Term[] {
  const water = product("water-of-ink", ink, context.inkWater);
  return [
    { flow: "ink", amount, rate: ink },
    { flow: "water.in-ink", amount, rate: water },
    { flow: "water.evaporated", amount, rate: water },
    ...substanceTerms(context.recipe, "cloth", amount, ink),
  ];
}

function purged(context: StepContext): readonly Term[] {
  const purge = context.set("purge");
  const toDrain = context.set("purge-to-drain");
  const toWaste = derive("purge-to-waste", "1", "1 − purge-to-drain", [toDrain], (s = 0) => 1 - s);
  const poured = (share: Quantity): Quantity => product("ink-poured", purge, share);
  const water = (flow: StepFlow, ink: Quantity): Term => ({
    flow,
    amount: LOTS,
    rate: product("water-of-ink", ink, context.inkWater),
  });
  return [
    { flow: "ink", amount: LOTS, rate: purge },
    water("water.in-ink", purge),
    water("water.drained", poured(toDrain)),
    water("water.wasted", poured(toWaste)),
    ...substanceTerms(context.recipe, "drain", LOTS, poured(toDrain)),
    ...substanceTerms(context.recipe, "waste", LOTS, poured(toWaste)),
  ];
}
