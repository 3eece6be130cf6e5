/**
 * What a step may ask for or give off. A step names useful heat and water at its own door; the
 * utilities turn them into fuel, withdrawal and discharge (`utilities/`).
 */

/** Flows a step may name, with unit and meaning. Positive numbers only. */
export const STEP_FLOWS = {
  electricity: { unit: "kWh", words: "electricity drawn by the machine" },
  "heat.burner": { unit: "MJ", words: "heat fired in the machine's own burner" },
  "heat.oil": { unit: "MJ", words: "heat taken from the thermal-oil loop" },
  "heat.electric": { unit: "MJ", words: "heat made by electric elements" },
  "heat.steam-coil": { unit: "MJ", words: "heat taken from steam behind a closed coil" },
  "steam.open": { unit: "kg", words: "steam blown into cloth, bath or chamber" },
  "water.process": { unit: "L", words: "water drawn from the water works" },
  "water.drained": { unit: "L", words: "water let go to the drain" },
  "water.evaporated": { unit: "L", words: "water that leaves as vapour" },
  "water.in-ink": { unit: "L", words: "water that comes in with ink" },
  "water.from-air": { unit: "L", words: "moisture taken up from hall air by stored cloth" },
  "water.wasted": { unit: "L", words: "water in liquor or ink taken away as waste" },
  "air.compressed": { unit: "Nm3", words: "compressed air at 0 °C and 1.01325 bar" },
  ink: { unit: "L", words: "ink laid down or purged" },
  paper: { unit: "m2", words: "protecting paper or nonwoven used up" },
  "machine.hours": { unit: "h", words: "time the machine is held" },
  "labour.hours": { unit: "h", words: "time people are held" },
  "bought.electricity": { unit: "kWh", words: "electricity used by a partner house" },
  "bought.heat": { unit: "MJ", words: "fuel heat used by a partner house" },
} as const;

/** A flow that a step may name. */
export type StepFlow = keyof typeof STEP_FLOWS;

/**
 * Where a substance is put. Its fate from there (fixed, washed out, evaporated) is a property of the
 * route and the substance: `utilities/fate.ts`.
 *
 * - `cloth`: laid on the cloth with liquor or ink
 * - `drain`: poured away or rinsed off with belt, head or trough water
 * - `bath`: dosed into a wash bath
 * - `waste`: taken away as waste
 */
export type Placement = "cloth" | "drain" | "bath" | "waste";

/** Substances followed from recipe to cloth, water, air or waste. */
export const SUBSTANCES = [
  "pigment",
  "binder",
  "crosslinker",
  "softener",
  "humectant",
  "dispersant",
  "reactive-dye",
  "acid-dye",
  "disperse-dye",
  "urea",
  "alginate",
  "thickener",
  "soda",
  "salt",
  "acid-donor",
  "acetic-acid",
  "detergent",
  "reducing-agent",
] as const;

/** A substance followed through the house. */
export type Substance = (typeof SUBSTANCES)[number];
