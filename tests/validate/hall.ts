/** A hall with every kind of step, run in three practices, and the fabrics that are put through it. */

import { writeProgram, type Program } from "../../src/account/program.js";
import { Ledger } from "../../src/ledger/ledger.js";
import type { Lot } from "../../src/log/lot.js";
import type { Plant } from "../../src/plant/plant.js";
import { readPlant } from "../../src/plant/read-plant.js";
import { sentence } from "../../src/problems/sentence.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { type Practice, settingsOf } from "./practice.js";

/** Fibres, each with the class of dye that its counterpart prints with. */
export const FIBRES = ["cotton", "viscose", "polyester", "polyamide", "silk"] as const;

/** A fibre of the grid. */
export type Fibre = (typeof FIBRES)[number];

/** Masses per area. [g/m²] */
export const WEIGHTS = [80, 140, 250] as const;

/** A fabric of the grid. */
export interface Fabric {
  /** Fibre. */
  readonly fibre: Fibre;
  /** Mass per area. [g/m²] */
  readonly gsm: number;
}

/** All fabrics, by fibre and weight. */
export const FABRICS: readonly Fabric[] = FIBRES.flatMap((fibre) =>
  WEIGHTS.map((gsm) => ({ fibre, gsm })),
);

/** Pigment routes of the hall; the last holds the kinds of step that no shipped route takes. */
export const PIGMENT_ROUTES = [
  "pigment-calender",
  "pigment-stenter",
  "pigment-finished",
  "other-machines",
] as const;

/** Length and width of every lot. [m] */
export const LENGTH = 1000;
export const WIDTH = 1.6;

const START = { pretreat: "pad", "pretreat-dry": "stenter", print: "printer" } as const;
const DYE = { ...START, steam: "steamer", wash: "range", squeeze: "nip", dry: "stenter" } as const;

const OTHER_STEPS = [
  { role: "prepare", kind: "preparation" },
  { role: "pretreat", kind: "pad", recipe: "pigment-pad" },
  { role: "flue-dry", kind: "hot-flue" },
  { role: "print", kind: "printer", recipe: "pigment-ink", ink: "pigment" },
  { role: "oven-fix", kind: "oven" },
  { role: "tumble", kind: "tumbler" },
  { role: "slot", kind: "vacuum-slot" },
  { role: "partner", kind: "outsourced" },
] as const;

const OTHER = {
  prepare: "preparation",
  pretreat: "pad",
  "flue-dry": "flue",
  print: "printer",
  "oven-fix": "oven",
  tumble: "tumbler",
  slot: "slot",
  partner: "partner",
} as const;

/**
 * The hall.
 *
 * @param practice - how it is run
 * @returns the plant as read from its file, all else as it ships
 * @throws Error when the plant file has faults
 */
export function hallOf(practice: Practice): Plant {
  const file = {
    millrace: 1,
    house: "Hall of all steps (invented)",
    sites: {
      main: {
        place: "PRT",
        settings: settingsOf(practice),
        machines: {
          pad: { kind: "pad" },
          stenter: { kind: "stenter" },
          printer: { kind: "printer" },
          calender: { kind: "calender" },
          steamer: { kind: "steamer" },
          range: { kind: "wash-range" },
          nip: { kind: "squeeze" },
          preparation: { kind: "preparation" },
          flue: { kind: "hot-flue" },
          oven: { kind: "oven" },
          tumbler: { kind: "tumbler" },
          slot: { kind: "vacuum-slot" },
          partner: { kind: "outsourced" },
        },
      },
    },
    routes: {
      "pigment-calender": { like: "pigment-calender", machines: { ...START, fix: "calender" } },
      "pigment-stenter": { like: "pigment-stenter", machines: { ...START, fix: "stenter" } },
      "pigment-finished": {
        like: "pigment-stenter",
        finish: "soft",
        machines: { ...START, fix: "stenter", finish: "pad", "finish-dry": "stenter" },
      },
      "other-machines": { workflow: "pigment", steps: OTHER_STEPS, machines: OTHER },
      reactive: { like: "reactive", machines: DYE },
      acid: { like: "acid", machines: DYE },
      disperse: { like: "disperse", machines: DYE },
    },
  };
  // JSON is YAML.
  const { value, problems } = readPlant(
    { name: "plant.yaml", text: JSON.stringify(file, undefined, 2) },
    SHIPPED,
  );
  if (value === undefined) throw new Error(problems.map(sentence).join("\n"));
  return value;
}

/**
 * One lot of a fabric on each pigment route, with its dye counterpart, as a program.
 *
 * @param plant - the hall
 * @param fabric - the fabric
 * @param asOf - day of the page, ISO 8601
 * @returns the program
 */
export function programOf(plant: Plant, fabric: Fabric, asOf: string): Program {
  const ledger = new Ledger();
  for (const route of PIGMENT_ROUTES) ledger.add(lotOf(fabric, route, asOf), plant);
  return writeProgram(plant, SHIPPED, ledger.settled().groups, asOf);
}

function lotOf({ fibre, gsm }: Fabric, route: string, date: string): Lot {
  return {
    lot: route,
    date,
    site: "main",
    client: "",
    order: "",
    fabric: "",
    fibre: [{ fibre, share: 1 }],
    gsm,
    width: WIDTH,
    length: LENGTH,
    rejected: undefined,
    route,
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
}
