/**
 * Ranges that others have published, and what of ours is set beside each. Energy is heat and electricity together,
 * counted as fuel and power that enter the site; water is what the site draws. Both go by conditioned cloth.
 */

import { type Fibre, WIDTH } from "./hall.js";

/** How far a figure is vouched for. */
export type Mark = "read" | "quoted" | "from memory" | "worked out";

/** What each mark says. */
export const MARKS: Readonly<Record<Mark, string>> = {
  read: "the figure was read in the text itself, or in a copy of it on the web",
  quoted: "the figure was read in another text that quotes it",
  "from memory":
    "the figure is recalled; the text was not opened again, so look it up before relying on it",
  "worked out": "worked out here from published conditions",
};

/** Where ranges are published. */
export const SOURCES = {
  eu: {
    short: "EU 2022",
    full: "European Commission, Implementing Decision (EU) 2022/2508, best available techniques for the textiles industry, Official Journal L 325, 20 December 2022, p. 112 to 161",
  },
  bref: {
    short: "EU 2003",
    full: "European Commission, Reference Document on Best Available Techniques for the Textiles Industry, July 2003",
  },
  etsu: {
    short: "UK 1997",
    full: "Carbon Trust, typical energy requirements of textile wet processes, 1997; as given by Hasanbeigi, A., Energy-Efficiency Improvement Opportunities for the Textile Industry, LBNL-3970E, Lawrence Berkeley National Laboratory, 2010",
  },
  us: {
    short: "US fact sheets",
    full: "North Carolina Division of Pollution Prevention, Water Efficiency, fact sheet on textiles, 2009, and US EPA, Profile of the Textile Industry, EPA/310-R-97-009, 1997",
  },
  epa: {
    short: "US mills 1982",
    full: "US EPA, Development Document for Effluent Limitations Guidelines, Textile Mills, 1982",
  },
  handbook: {
    short: "handbooks",
    full: "Table of water use of textile processes, repeated in many handbooks and reviews; no first source known",
  },
  cn: {
    short: "China 2012",
    full: "China, GB 4287-2012, Discharge standards of water pollutants for dyeing and finishing of textile industry, base volumes of waste water",
  },
  trade: { short: "trade", full: "Common practice, no source" },
} as const;

/** Key of a source. */
export type SourceKey = keyof typeof SOURCES;

/** A step, or steps together, of one of the hall's routes. */
export interface Steps {
  /** Pigment route, or the dye counterpart of the fibre. */
  readonly on:
    "dye" | "pigment-calender" | "pigment-stenter" | "pigment-finished" | "other-machines";
  /** Roles; the whole route when absent. */
  readonly roles?: readonly string[];
}

/** What of ours is set beside a range. */
export type Measure =
  | ({ readonly of: "water" | "energy" | "carbon-to-air" | "heat-per-water" } & Steps)
  | {
      readonly of: "settings";
      readonly ids: readonly string[];
      /** What the settings come to; the last value is the mass per area [g/m²]. */
      readonly formula: (...values: number[]) => number;
    };

/** A number of ours beside a published range. */
export interface Beside {
  /** Short name, unique within its range. */
  readonly id: string;
  /** What it is, in plain words. */
  readonly words: string;
  /** How it is taken. */
  readonly measure: Measure;
  /** Fibres it is asked of; all when absent. */
  readonly fibres?: readonly Fibre[];
}

/** Quantities, each with an axis of its own. */
export const QUANTITIES = {
  water: { words: "Water withdrawn", unit: "L/kg" },
  energy: { words: "Heat and electricity", unit: "kWh/kg" },
  "dryer-heat": { words: "Heat for the water that a dryer drives off", unit: "MJ/kg water" },
  humidity: { words: "Humidity of the exhaust of a dryer", unit: "kg/kg dry air" },
  air: { words: "Dry air through a curing stenter", unit: "kg/kg" },
  carbon: { words: "Organic carbon in exhaust air", unit: "g C/kg" },
} as const;

/** A quantity. */
export type QuantityName = keyof typeof QUANTITIES;

/** A published range. */
export interface Published {
  /** Id. */
  readonly id: string;
  /** Short name. */
  readonly name: string;
  /** What it covers. */
  readonly words: string;
  /** Quantity, which fixes the unit. */
  readonly quantity: QuantityName;
  /** Lower end; 0 for a ceiling. */
  readonly low: number;
  /** Upper end. */
  readonly high: number;
  /** Source. */
  readonly source: SourceKey;
  /** Table or section. */
  readonly where?: string;
  /** How far it is vouched for. */
  readonly mark: Mark;
  /** What must be known of it. */
  readonly note?: string;
  /** Ours. */
  readonly beside: readonly Beside[];
}

const CELLULOSICS = ["cotton", "viscose"] as const;
const SYNTHETICS = ["polyester", "polyamide"] as const;

const water = (on: Steps["on"], ...roles: readonly string[]): Measure => of("water", on, roles);
const energy = (on: Steps["on"], ...roles: readonly string[]): Measure => of("energy", on, roles);

function of(name: "water" | "energy", on: Steps["on"], roles: readonly string[]): Measure {
  return { of: name, on, ...(roles.length === 0 ? {} : { roles }) };
}

const WASH: Beside = {
  id: "wash",
  words: "wash after printing and steaming",
  measure: water("dye", "wash"),
};
const DYE_ROUTE: Beside = { id: "route", words: "whole dye route", measure: water("dye") };

const DRYERS: readonly Beside[] = [
  { id: "pad", words: "stenter after the pad", measure: energy("dye", "pretreat-dry") },
  { id: "wash", words: "stenter after the wash", measure: energy("dye", "dry") },
  { id: "flue", words: "hot flue after the pad", measure: energy("other-machines", "flue-dry") },
];

const PER_WATER: readonly Beside[] = [
  {
    id: "pad",
    words: "stenter after the pad",
    measure: { of: "heat-per-water", on: "dye", roles: ["pretreat-dry"] },
  },
  {
    id: "wash",
    words: "stenter after the wash",
    measure: { of: "heat-per-water", on: "dye", roles: ["dry"] },
  },
];

// kg of dry air per kg of cloth while cloth runs: flow × dwell / (3600 × contact × width × mass per area).
function airPerCloth(kind: string): Measure {
  return {
    of: "settings",
    ids: [`${kind}.exhaust-flow`, `${kind}.dwell`, `${kind}.contact`],
    formula: (flow = 0, dwell = 0, contact = 1, gsm = 1) =>
      (flow * dwell) / (3600 * contact * WIDTH * (gsm / 1000)),
  };
}

/** Published ranges that apply to what the hall does, by quantity. */
export const PUBLISHED: readonly Published[] = [
  {
    id: "bat-w-dye-cont",
    name: "Continuous dyeing",
    words: "continuous dyeing of fabric, yearly average",
    quantity: "water",
    low: 2,
    high: 16,
    source: "eu",
    where: "table 1.1",
    mark: "from memory",
    note: "The lower end was also read where another text quotes it. The table has no row for printing; continuous dyeing is the nearest.",
    beside: [{ ...WASH, fibres: ["cotton", "viscose", "polyamide", "silk"] }],
  },
  {
    id: "bat-w-wash-syn",
    name: "Washing of synthetic cloth",
    words: "washing of synthetic material, yearly average",
    quantity: "water",
    low: 5,
    high: 20,
    source: "eu",
    where: "table 1.1",
    mark: "from memory",
    beside: [{ ...WASH, fibres: SYNTHETICS }],
  },
  {
    id: "bat-w-dye-batch",
    name: "Batch dyeing",
    words: "batch dyeing of fabric, yearly average",
    quantity: "water",
    low: 10,
    high: 150,
    source: "eu",
    where: "table 1.1",
    mark: "from memory",
    note: "The upper end was also read where another text quotes it.",
    beside: [DYE_ROUTE],
  },
  {
    id: "bat-w-prep-comb",
    name: "Preparation of cellulosics",
    words: "bleaching, scouring and desizing of cellulosics together, yearly average",
    quantity: "water",
    low: 9,
    high: 20,
    source: "eu",
    where: "table 1.1",
    mark: "quoted",
    beside: [
      {
        id: "prepare",
        words: "preparation",
        measure: water("other-machines", "prepare"),
        fibres: CELLULOSICS,
      },
    ],
  },
  {
    id: "wash-cont-reactive",
    name: "Continuous wash after reactive dyeing",
    words: "continuous washing after dyeing with reactive dye",
    quantity: "water",
    low: 10,
    high: 15,
    source: "bref",
    where: "section 4.9",
    mark: "from memory",
    beside: [{ ...WASH, fibres: CELLULOSICS }],
  },
  {
    id: "gen-print-cotton",
    name: "Printing of cotton",
    words: "printing of cotton, not said what is in it",
    quantity: "water",
    low: 8,
    high: 16,
    source: "handbook",
    mark: "from memory",
    beside: [
      {
        id: "print-wash",
        words: "printing, steaming and washing",
        measure: water("dye", "print", "steam", "wash", "squeeze"),
        fibres: ["cotton"],
      },
      {
        id: "pigment",
        words: "pigment printing with fixation by heat",
        measure: water("pigment-calender"),
        fibres: ["cotton"],
      },
    ],
  },
  {
    id: "us-print",
    name: "Printing",
    words: "printing as one process, 3.0 gal/lb, a ceiling",
    quantity: "water",
    low: 0,
    high: 25,
    source: "us",
    mark: "from memory",
    beside: [{ id: "print", words: "printer", measure: water("dye", "print") }],
  },
  {
    id: "us-print-afterwash",
    name: "Washing after printing, old mills",
    words: "washing after printing in older mills, 13.2 gal/lb, a ceiling",
    quantity: "water",
    low: 0,
    high: 110.2,
    source: "us",
    mark: "from memory",
    beside: [WASH],
  },
  {
    id: "us-finish-chem",
    name: "Chemical finishing",
    words: "chemical finishing, 0.6 gal/lb, a ceiling",
    quantity: "water",
    low: 0,
    high: 5,
    source: "us",
    mark: "from memory",
    beside: [
      {
        id: "finish",
        words: "finish pad and stenter",
        measure: water("pigment-finished", "finish", "finish-dry"),
      },
    ],
  },
  {
    id: "us-woven-simple",
    name: "Whole mill, woven cloth",
    words: "whole mill that finishes woven cloth by simple processing, lowest to highest",
    quantity: "water",
    low: 12.5,
    high: 275,
    source: "epa",
    mark: "from memory",
    note: "The median of the mills was 78.4 L/kg.",
    beside: [
      DYE_ROUTE,
      { id: "pigment", words: "whole pigment route", measure: water("pigment-calender") },
    ],
  },
  {
    id: "cn-woven",
    name: "Limit on waste water, woven cloth",
    words: "waste water per mass of woven cloth, a ceiling",
    quantity: "water",
    low: 0,
    high: 140,
    source: "cn",
    mark: "from memory",
    note: "A limit of law, for waste water; ours is water drawn, which is a little more. Silk has 300 L/kg.",
    beside: [{ ...DYE_ROUTE, fibres: ["cotton", "viscose", "polyester", "polyamide"] }],
  },
  {
    id: "bat-e-thermal",
    name: "Thermal treatment",
    words: "thermal treatment: drying, setting, curing; heat and electricity, yearly average",
    quantity: "energy",
    low: 0.5,
    high: 4.4,
    source: "eu",
    where: "table 1.2",
    mark: "quoted",
    beside: [
      {
        id: "dye",
        words: "both dryers of the dye route",
        measure: energy("dye", "pretreat-dry", "dry"),
      },
      {
        id: "calender",
        words: "dryer and calender, pigment",
        measure: energy("pigment-calender", "pretreat-dry", "fix"),
      },
      {
        id: "stenter",
        words: "dryer and curing stenter, pigment",
        measure: energy("pigment-stenter", "pretreat-dry", "fix"),
      },
      {
        id: "finished",
        words: "the same with a finish and its stenter",
        measure: energy("pigment-finished", "pretreat-dry", "fix", "finish-dry"),
      },
    ],
  },
  {
    id: "ct-dry-stenter",
    name: "Drying on a stenter",
    words: "drying on a stenter, 2.5 to 7.5 GJ/t",
    quantity: "energy",
    low: 0.69,
    high: 2.08,
    source: "etsu",
    mark: "from memory",
    beside: DRYERS,
  },
  {
    id: "ct-set-stenter",
    name: "Heat setting on a stenter",
    words: "heat setting on a stenter, 4.0 to 9.0 GJ/t",
    quantity: "energy",
    low: 1.11,
    high: 2.5,
    source: "etsu",
    mark: "from memory",
    beside: [
      { id: "stenter", words: "curing on the stenter", measure: energy("pigment-stenter", "fix") },
      {
        id: "finish",
        words: "stenter after the finish pad",
        measure: energy("pigment-finished", "finish-dry"),
      },
      { id: "oven", words: "curing in the oven", measure: energy("other-machines", "oven-fix") },
      {
        id: "partner",
        words: "pass at a partner house",
        measure: energy("other-machines", "partner"),
      },
      {
        id: "calender",
        words: "fixing on the calender",
        measure: energy("pigment-calender", "fix"),
      },
    ],
  },
  {
    id: "ct-low-purge",
    name: "Scouring in a steamer",
    words: "scouring and bleaching in a steamer that loses little steam, 1.5 to 5.0 GJ/t",
    quantity: "energy",
    low: 0.42,
    high: 1.39,
    source: "etsu",
    mark: "from memory",
    note: "Another process in a like machine.",
    beside: [{ id: "steam", words: "steamer", measure: energy("dye", "steam") }],
  },
  {
    id: "ct-ow-range",
    name: "Scouring at open width",
    words: "scouring and bleaching on an open-width range, 3.0 to 7.0 GJ/t",
    quantity: "energy",
    low: 0.83,
    high: 1.94,
    source: "etsu",
    mark: "from memory",
    beside: [
      { ...WASH, measure: energy("dye", "wash") },
      {
        id: "prepare",
        words: "preparation",
        measure: energy("other-machines", "prepare"),
        fibres: CELLULOSICS,
      },
    ],
  },
  {
    id: "ct-print-rotary",
    name: "Rotary screen printing",
    words: "rotary screen printing, 2.5 to 8.5 GJ/t; not said whether drying and fixing are in it",
    quantity: "energy",
    low: 0.69,
    high: 2.36,
    source: "etsu",
    mark: "from memory",
    beside: [
      {
        id: "calender",
        words: "printing and calender",
        measure: energy("pigment-calender", "print", "fix"),
      },
      {
        id: "stenter",
        words: "printing and curing stenter",
        measure: energy("pigment-stenter", "print", "fix"),
      },
      { id: "steam", words: "printing and steaming", measure: energy("dye", "print", "steam") },
    ],
  },
  {
    id: "ct-thermosol",
    name: "Continuous and thermosol dyeing",
    words: "continuous and thermosol dyeing, 7.0 to 20.0 GJ/t",
    quantity: "energy",
    low: 1.94,
    high: 5.56,
    source: "etsu",
    mark: "from memory",
    beside: [
      {
        id: "route",
        words: "whole disperse route",
        measure: energy("dye"),
        fibres: ["polyester"],
      },
    ],
  },
  {
    id: "exhaust-balance",
    name: "Air and vapour of a dryer",
    words: "air and vapour alone, exhaust of 0.15 kg/kg at 130 °C to 0.03 kg/kg at 150 °C",
    quantity: "dryer-heat",
    low: 3.4,
    high: 9.1,
    source: "bref",
    where: "humidities of section 4.8.1, hall air of 25 °C and 0.010 kg/kg",
    mark: "worked out",
    note: "No loss through the casing, no heat for the cloth and none while waiting.",
    beside: PER_WATER,
  },
  {
    id: "dryer-usual",
    name: "Hot-air dryers, as often quoted",
    words: "heat of hot-air dryers per kg of water, as often quoted",
    quantity: "dryer-heat",
    low: 5,
    high: 8,
    source: "trade",
    mark: "from memory",
    beside: PER_WATER,
  },
  {
    id: "exhaust-humidity",
    name: "Exhaust humidity",
    words: "0.05 commonly found, 0.10 to 0.15 well run",
    quantity: "humidity",
    low: 0.05,
    high: 0.15,
    source: "bref",
    where: "section 4.8.1",
    mark: "read",
    note: "A setting, not a result: the poor and the well run hall are set from this guidance, so only the usual one is tried here.",
    beside: [
      {
        id: "setting",
        words: "exhaust humidity of the drying stenter",
        measure: {
          of: "settings",
          ids: ["stenter-dry.exhaust-humidity"],
          formula: (humidity = 0) => humidity,
        },
        fibres: ["cotton"],
      },
    ],
  },
  {
    id: "cure-air",
    name: "Air for curing",
    words: "from air that takes 0.5 kWh/kg to 20 m³ of exhaust per kg",
    quantity: "air",
    low: 13,
    high: 24,
    source: "eu",
    where:
      "table 1.2, lower end, as air heated from 25 to 160 °C; and the reference air of the document of 2003 at 1.2 kg/m³; both rounded",
    mark: "worked out",
    note: "Both figures behind it are recalled.",
    beside: [
      { id: "stenter", words: "curing stenter", measure: airPerCloth("stenter-cure") },
      { id: "oven", words: "curing oven", measure: airPerCloth("oven") },
    ],
  },
  {
    id: "air-carbon",
    name: "Carbon in exhaust air",
    words: "within reach of nearly all finishing processes, cleaned where needed, a ceiling",
    quantity: "carbon",
    low: 0,
    high: 0.8,
    source: "bref",
    mark: "read",
    beside: [
      {
        id: "pigment",
        words: "pigment route, calender",
        measure: { of: "carbon-to-air", on: "pigment-calender" },
      },
      { id: "dye", words: "dye route", measure: { of: "carbon-to-air", on: "dye" } },
    ],
  },
];
