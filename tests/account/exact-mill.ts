/** A small mill whose every number is known exactly, so that it can be worked out by hand. */

import { readPlant } from "../../src/plant/read-plant.js";
import type { Plant } from "../../src/plant/plant.js";
import { sentence } from "../../src/problems/sentence.js";
import type { Lot } from "../../src/log/lot.js";
import { SHIPPED } from "../tools/shipped-factors.js";

/** Numbers of the mill, all invented, in the units of the factors of the same names. */
export const SETTINGS: Readonly<Record<string, number>> = {
  "hall.temperature": 25,
  "hall.relative-humidity": 0.5,
  "site.pressure": 1.01325,
  "water.supply-temperature": 15,
  "boiler.pressure": 8,
  "boiler.efficiency": 0.85,
  "boiler.blowdown": 0.05,
  "boiler.line-loss": 0.05,
  "boiler.condensate-return": 0.8,
  "boiler.condensate-temperature": 90,
  "boiler.power": 2,
  "burner.efficiency": 0.99,
  "fuel.natural-gas.vapour": 0.045,
  "oil-heater.efficiency": 0.88,
  "oil-heater.loop-loss": 0.08,
  "oil-heater.pump": 0.005,
  "electric-heat.efficiency": 1,
  "water-works.electricity": 0.5,
  "water-works.softening-reject": 0.05,
  "effluent.electricity": 0.8,
  "fibre.cotton.regain": 0.08,
  "fibre.cotton.heat-capacity": 1.3,
  "fibre.cotton.wetting-heat": 46,
  "fibre.cotton.sorption-heat": 1250,
  "fibre.polyester.regain": 0.004,
  "fibre.polyester.heat-capacity": 1.1,
  "fibre.polyester.wetting-heat": 5,
  "fibre.polyester.sorption-heat": 900,
  "pad.pickup": 0.7,
  "pad.solids": 0.1,
  "pad.dump": 20,
  "pad.dump-to-drain": 0.75,
  "pad.trough-wash": 60,
  "pad.lots-per-change": 3,
  "pad.power": 5,
  "pad.speed": 30,
  "pad.setup": 0.1,
  "stenter-dry.exhaust-humidity": 0.06,
  "stenter-dry.exhaust-temperature": 120,
  "stenter-dry.cloth-out": 90,
  "stenter-dry.moisture-out": 0.05,
  "stenter-dry.recovery": 0.2,
  "stenter-dry.standing": 30,
  "stenter-dry.power": 40,
  "stenter-dry.idle": 0.1,
  "stenter-dry.idle-power": 0.5,
  "stenter-dry.speed": 25,
  "stenter-dry.setup": 0.05,
  "stenter-cure.exhaust-flow": 3000,
  "stenter-cure.approach": 10,
  "stenter-cure.fix-temperature": 160,
  "stenter-cure.dwell": 90,
  "stenter-cure.contact": 24,
  "stenter-cure.moisture-out": 0.005,
  "stenter-cure.recovery": 0.1,
  "stenter-cure.standing": 30,
  "stenter-cure.power": 40,
  "stenter-cure.idle": 0.1,
  "stenter-cure.idle-power": 0.5,
  "stenter-cure.setup": 0.05,
  "printer.rate": 200,
  "printer.power": 9,
  "printer.dryer-power": 26,
  "printer.standby-power": 2,
  "printer.standby": 0.25,
  "printer.setup": 0.2,
  "printer.belt-water": 120,
  "printer.flush-water": 5,
  "printer.purge": 0.2,
  "printer.purge-to-drain": 0.75,
  "printer.ink-laydown": 0.02,
  "printer.coverage": 0.5,
  "printer.ink-ratio": 0.9,
  "calender.fix-temperature": 165,
  "calender.dwell": 30,
  "calender.contact": 2.5,
  "calender.standing": 15,
  "calender.power": 4,
  "calender.idle": 0.1,
  "calender.setup": 0.1,
  "calender.moisture-out": 0.01,
  "calender.paper": 1,
  "calender.paper-uses": 2,
  "steamer.temperature": 102,
  "steamer.dwell": 600,
  "steamer.contact": 60,
  "steamer.flush": 0.8,
  "steamer.idle-steam": 50,
  "steamer.idle": 0.1,
  "steamer.power": 6,
  "steamer.setup": 0.1,
  "wash-range.fresh-water": 25,
  "wash-range.litres-per-bath": 4,
  "wash-range.carry-over": 1.1,
  "wash-range.warm": 60,
  "wash-range.hot": 95,
  "wash-range.recovery": 0.3,
  "wash-range.surface": 10,
  "wash-range.fill": 500,
  "wash-range.fills-per-lot": 0.5,
  "wash-range.power": 12,
  "wash-range.speed": 25,
  "wash-range.setup": 0.2,
  "squeeze.moisture-out": 0.75,
  "squeeze.power": 2,
  "squeeze.speed": 25,
  "ink.pigment.water": 0.65,
  "ink.reactive.water": 0.7,
  "recipe.pigment-pad.crosslinker": 8,
  "recipe.pigment-pad.dispersant": 10,
  "recipe.reactive-pad.urea": 100,
  "recipe.reactive-pad.alginate": 12,
  "recipe.reactive-pad.soda": 30,
  "recipe.pigment-ink.pigment": 40,
  "recipe.pigment-ink.binder": 80,
  "recipe.pigment-ink.humectant": 250,
  "recipe.pigment-ink.dispersant": 15,
  "recipe.reactive-ink.reactive-dye": 100,
  "recipe.reactive-ink.humectant": 200,
  "recipe.reactive-ink.dispersant": 5,
  "recipe.reactive-wash.detergent": 5,
  "substance.crosslinker.cod": 1.3,
  "substance.dispersant.cod": 1.7,
  "substance.pigment.cod": 1.8,
  "substance.binder.cod": 2.1,
  "substance.humectant.cod": 1.45,
  "substance.urea.cod": 0,
  "substance.alginate.cod": 0.8,
  "substance.soda.cod": 0,
  "substance.reactive-dye.cod": 0.9,
  "substance.detergent.cod": 2.2,
  "substance.alginate.fixed": 0,
  "substance.dispersant.fixed": 0,
  "substance.humectant.fixed": 0,
  "substance.reactive-dye.fixed": 0.7,
  "substance.alginate.evaporated-washed": 0,
  "substance.dispersant.evaporated-washed": 0,
  "substance.humectant.evaporated-washed": 0.05,
  "substance.reactive-dye.evaporated-washed": 0,
};

/** Machines by name: kind, and what heats them. */
const MACHINES = {
  pad: { kind: "pad" },
  "gas stenter": { kind: "stenter", choices: { heat: "burner" } },
  "steam stenter": { kind: "stenter", choices: { heat: "steam-coil" } },
  printer: { kind: "printer" },
  calender: { kind: "calender", choices: { heat: "oil" } },
  steamer: { kind: "steamer", choices: { superheat: "electric" } },
  range: { kind: "wash-range", choices: { heating: "injection", sequence: "six" } },
  nip: { kind: "squeeze" },
} as const;

const START = { pretreat: "pad", "pretreat-dry": "gas stenter", print: "printer" } as const;
const WASHED = { steam: "steamer", wash: "range", squeeze: "nip", dry: "steam stenter" } as const;

/** The plant file as plain data. */
export interface MillFile {
  readonly sites: { readonly main: Readonly<Record<string, unknown>> };
  readonly routes: Readonly<Record<string, unknown>>;
  readonly [key: string]: unknown;
}

/** The plant file of the mill. */
export const EXACT_MILL: MillFile = {
  millrace: 1,
  house: "Three Lot Mill (invented)",
  gwp: "AR6",
  sites: {
    main: {
      place: "PRT",
      settings: exactly(SETTINGS),
      burner: { fuel: "natural-gas" },
      oil_heater: { fuel: "natural-gas" },
      boiler: { fuel: "natural-gas" },
      effluent: "own",
      machines: MACHINES,
    },
  },
  routes: {
    "pigment-calender": { like: "pigment-calender", machines: { ...START, fix: "calender" } },
    "pigment-stenter": { like: "pigment-stenter", machines: { ...START, fix: "gas stenter" } },
    reactive: { like: "reactive", machines: { ...START, ...WASHED } },
    acid: { like: "acid", machines: { ...START, ...WASHED } },
    disperse: { like: "disperse", machines: { ...START, ...WASHED } },
  },
};

/**
 * Numbers as a plant file says them without doubt.
 *
 * @param numbers - numbers by name
 * @returns the same, each `{ value, exact: true }`
 */
export function exactly(numbers: Readonly<Record<string, number>>): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(numbers).map(([id, value]) => [id, { value, exact: true }]),
  );
}

/**
 * A plant as read from a file. JSON is YAML, so the file is written as JSON.
 *
 * @param file - what the file says
 * @returns the plant
 */
export function plantFrom(file: MillFile): Plant {
  const { value, problems } = readPlant(
    { name: "plant.yaml", text: JSON.stringify(file, undefined, 2) },
    SHIPPED,
  );
  if (value === undefined) throw new Error(problems.map(sentence).join("\n"));
  return value;
}

/** 1000 m of cotton by pigment and calender, nothing logged but what must be. */
export const PLAIN_LOT: Lot = {
  lot: "1",
  date: "2026-03-02",
  site: "main",
  client: "",
  order: "",
  fabric: "",
  fibre: [{ fibre: "cotton", share: 1 }],
  gsm: 140,
  width: 1.6,
  length: 1000,
  rejected: undefined,
  route: "pigment-calender",
  kind: "production",
  ink: undefined,
  coverage: undefined,
  pickup: undefined,
  fixTemp: undefined,
  dwell: undefined,
  liquorRatio: undefined,
  baths: undefined,
  speed: undefined,
  readings: { electricity: undefined, water: undefined, gas: undefined, steam: undefined },
  fastness: { rubDry: undefined, rubWet: undefined, wash: undefined },
  reprintOf: "",
  note: "",
  place: { file: "log.csv", line: 2 },
};
