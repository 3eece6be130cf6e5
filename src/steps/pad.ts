/**
 * Pad: cloth runs through a trough of liquor and a mangle that leaves the pick-up on it. Serves
 * pre-treatment and, after printing, softener or fixer finishes.
 *
 *     liquor on cloth = p M;   water on cloth rises by (1 − s) p M
 *     chemicals = recipe × (p M + V_dump × lots);   water drawn = (1 − s)(p M + V_dump × lots) + V_wash × changes
 *
 * p pick-up, s solids of the liquor, M conditioned cloth. How often the trough is changed is a setting,
 * never read off the order of the rows.
 */

import { constant, derive, ONE, type Quantity } from "../numbers/quantity.js";
import { product } from "./algebra.js";
import { amountNamed, type Amount } from "./amounts.js";
import type { WaterPart } from "./cloth.js";
import { heldTerms, hoursBySpeed, powerTerms } from "./hours.js";
import { CREW, POWER, SETUP, SPEED } from "./shared-settings.js";
import type { StepContext, StepKind } from "./step.js";
import { substanceTerms } from "./substances.js";
import type { Term } from "./term.js";
import { waterTerms } from "./water.js";

const LOTS = amountNamed("lots");
const LITRE_OF_LIQUOR = constant(
  "kilogram-of-liquor",
  1,
  "kg/L",
  "one litre of liquor is taken as one kilogram",
);

/** Pad with trough and mangle. */
export const pad: StepKind = {
  kind: "pad",
  words: "Impregnates the cloth with a liquor and squeezes it to the pick-up.",
  settings: {
    pickup: {
      words: "liquor taken up per conditioned cloth",
      unit: "kg/kg",
      limits: [0.1, 2],
      owner: "role",
    },
    solids: { words: "dry matter of the liquor", unit: "1", limits: [0, 0.5], owner: "role" },
    dump: {
      words: "liquor left in trough and hoses at the end of a lot",
      unit: "L/lot",
      limits: [0, 500],
      owner: "machine",
    },
    "dump-to-drain": {
      words: "share of left-over liquor poured into the drain; the rest is taken away as waste",
      unit: "1",
      limits: [0, 1],
      owner: "machine",
    },
    "trough-wash": {
      words: "water to rinse trough and rollers at a change of liquor",
      unit: "L",
      limits: [0, 1000],
      owner: "machine",
    },
    "lots-per-change": {
      words: "lots run on one filling of the same liquor",
      unit: "lot",
      limits: [1, 200],
      owner: "machine",
    },
    power: { ...POWER, limits: [0, 200] },
    speed: { ...SPEED, owner: "machine" },
    setup: SETUP,
    crew: CREW,
  },
  choices: {},
  columns: ["pickup"],
  build: (context, cloth) => {
    const dump = context.set("dump");
    const toDrain = context.set("dump-to-drain");
    const toWaste = derive("dump-to-waste", "1", "1 − dump-to-drain", [toDrain], (s = 0) => 1 - s);
    const wash = derive(
      "trough-wash-per-lot",
      "L/lot",
      "trough-wash / lots-per-change",
      [context.set("trough-wash"), context.set("lots-per-change")],
      (litres = 0, lots = 1) => litres / lots,
    );
    const water = derive(
      "water-of-liquor",
      "1",
      "1 − solids",
      [context.set("solids")],
      (s = 0) => 1 - s,
    );
    const taken = liquorOnCloth(context);
    const hours = hoursBySpeed(context);
    const added: WaterPart[] = taken.map(({ amount, rate }) => ({
      amount,
      rate: product("water-of-pick-up", rate, water),
    }));
    const terms: Term[] = [
      ...waterTerms("water.process", added),
      ...taken.flatMap(({ amount, rate }) => substanceTerms(context.recipe, "cloth", amount, rate)),
      { flow: "water.process", amount: LOTS, rate: product("water-of-dump", dump, water) },
      { flow: "water.process", amount: LOTS, rate: wash },
      { flow: "water.drained", amount: LOTS, rate: product("dump-drained", dump, water, toDrain) },
      { flow: "water.drained", amount: LOTS, rate: wash },
      { flow: "water.wasted", amount: LOTS, rate: product("dump-wasted", dump, water, toWaste) },
      ...substanceTerms(
        context.recipe,
        "drain",
        LOTS,
        product("liquor-drained", dump, LITRE_OF_LIQUOR, toDrain),
      ),
      ...substanceTerms(
        context.recipe,
        "waste",
        LOTS,
        product("liquor-wasted", dump, LITRE_OF_LIQUOR, toWaste),
      ),
      ...powerTerms(hours, context.set("power")),
      ...heldTerms(context, hours),
    ];
    return {
      terms,
      cloth: { water: [...cloth.water, ...added], temperature: context.supplyTemperature },
    };
  },
};

// Liquor on cloth, by the pattern of what was logged: p M, or M where p is open times the setting.
function liquorOnCloth(
  context: StepContext,
): readonly { readonly amount: Amount; readonly rate: Quantity }[] {
  const pickup = context.set("pickup");
  return context.takes("pickup")
    ? [
        { amount: amountNamed("mass·pickup"), rate: ONE },
        { amount: amountNamed("mass[no pickup]"), rate: pickup },
      ]
    : [{ amount: amountNamed("mass"), rate: pickup }];
}
