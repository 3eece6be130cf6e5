/**
 * An invented mill, and logs of it in which the settings logged lot by lot scatter about true ones.
 */

import { type Group, Ledger } from "../../src/ledger/ledger.js";
import type { Lot } from "../../src/log/lot.js";
import { normalQuantile } from "../../src/numbers/normal.js";
import { uniforms } from "../../src/numbers/generator.js";
import type { Plant } from "../../src/plant/plant.js";
import { plantFrom } from "../account/exact-mill.js";

const PIGMENT = { pretreat: "pad-1", "pretreat-dry": "stenter-1", print: "printer" } as const;
const REACTIVE = {
  ...PIGMENT,
  steam: "steamer",
  wash: "range",
  squeeze: "nip",
  dry: "stenter-2",
} as const;
const ACID = { ...REACTIVE, pretreat: "pad-2", "pretreat-dry": "stenter-2" } as const;

/**
 * The mill: shipped factors almost everywhere, a few numbers of its own. Two pads and two stenters share
 * defaults, so that half of their doubt is common. Silk pigment goes through the other pad than silk acid
 * does, so that logged pick-up crosses to the other arm for cotton and not for silk.
 */
export const WORLD_MILL: Plant = plantFrom({
  millrace: 1,
  house: "Mill of many worlds (invented)",
  gwp: "AR6",
  sites: {
    main: {
      place: "PRT",
      settings: {
        "hall.temperature": { value: 24, low: 19, high: 30 },
        "water.supply-temperature": { value: 15, low: 10, high: 20 },
        "boiler.efficiency": { value: 0.86, low: 0.82, high: 0.9 },
      },
      burner: { fuel: "natural-gas" },
      oil_heater: { fuel: "natural-gas" },
      boiler: { fuel: "natural-gas" },
      effluent: "own",
      tariffs: {
        currency: "EUR",
        date: "2026-09-30",
        electricity: 0.15,
        fuel: { "natural-gas": 0.06 },
        water: 1.4,
        effluent: 1.2,
        labour: { value: 20, low: 16, high: 26 },
        ink: { pigment: 17, reactive: 14, acid: 14 },
      },
      machines: {
        "pad-1": { kind: "pad" },
        "pad-2": { kind: "pad" },
        "stenter-1": { kind: "stenter", choices: { heat: "burner" }, settings: { power: 42 } },
        "stenter-2": { kind: "stenter", choices: { heat: "steam-coil" } },
        printer: { kind: "printer", settings: { rate: { value: 200, low: 160, high: 240 } } },
        calender: { kind: "calender", choices: { heat: "oil" } },
        steamer: { kind: "steamer" },
        range: { kind: "wash-range", choices: { sequence: "six", heating: "injection" } },
        nip: { kind: "squeeze" },
      },
    },
  },
  routes: {
    "pigment-calender": { like: "pigment-calender", machines: { ...PIGMENT, fix: "calender" } },
    "pigment-stenter": { like: "pigment-stenter", machines: { ...PIGMENT, fix: "stenter-1" } },
    reactive: { like: "reactive", machines: REACTIVE },
    acid: { like: "acid", machines: ACID },
  },
});

/** Streams of the settings that lots of a route may log. */
interface Logged {
  readonly pickup: string;
  readonly dwell: string;
  readonly fixTemp?: string;
  readonly freshWater?: string;
}

const COVERAGE = "printer.coverage @ role main/printer/print";
const LAYDOWN = "printer.ink-laydown @ role main/printer/print";

function washed(pad: string): Logged {
  return {
    pickup: `pad.pickup @ role main/${pad}/pretreat`,
    dwell: "steamer.dwell @ role main/steamer/steam",
    freshWater: "wash-range.fresh-water @ role main/range/wash",
  };
}

function dryFixed(kind: string, machine: string): Logged {
  return {
    pickup: "pad.pickup @ role main/pad-1/pretreat",
    dwell: `${kind}.dwell @ role main/${machine}/fix`,
    fixTemp: `${kind}.fix-temperature @ role main/${machine}/fix`,
  };
}

const LOGGED: Readonly<Record<string, Logged>> = {
  "pigment-calender": dryFixed("calender", "calender"),
  "pigment-stenter": dryFixed("stenter-cure", "stenter-1"),
  reactive: washed("pad-1"),
  acid: washed("pad-2"),
};

/** What is printed, on which route, and up to which share of the lots. */
const GOODS = [
  { fabric: "poplin", fibre: "cotton", gsm: 120, route: "pigment-calender", upTo: 0.3 },
  { fabric: "poplin", fibre: "cotton", gsm: 120, route: "pigment-stenter", upTo: 0.45 },
  { fabric: "poplin", fibre: "cotton", gsm: 120, route: "reactive", upTo: 0.7 },
  { fabric: "crepe", fibre: "silk", gsm: 70, route: "pigment-calender", upTo: 0.8 },
  { fabric: "crepe", fibre: "silk", gsm: 70, route: "acid", upTo: 1 },
] as const;

/** Lots of a log. */
export const LOTS_OF_A_WORLD = 300;

/** Both sides of a log. */
export interface WorldLots {
  /** What each lot really was, every setting with its value. */
  readonly actual: readonly Lot[];
  /** What the log says: the same lots with most settings blank. */
  readonly logged: readonly Lot[];
}

/** What logs of a world hang on. */
export interface WorldAsked {
  /** Number of the world. */
  readonly world: number;
  /** True value of a setting, by its stream. */
  readonly setting: (stream: string) => number;
  /** Relative error of all logged values of a column in this world; none when absent. */
  readonly misread?: (column: string) => number;
}

/**
 * Lots of one world. Their scatter about the true settings is invented: 4 % of pick-up, 5 % of dwell, 2 K,
 * 10 % of wash water, a fifth of coverage, standard deviations all but the last.
 *
 * @param asked - the world
 * @returns lots as they were and as they are logged
 */
export function lotsOf({ world, setting, misread }: WorldAsked): WorldLots {
  const streams = new Map<string, Float64Array>();
  const share = (name: string, at: number): number => {
    let found = streams.get(name);
    if (found === undefined) {
      found = uniforms("logs of worlds", `${world} ${name}`, LOTS_OF_A_WORLD);
      streams.set(name, found);
    }
    return found[at] ?? NaN;
  };
  const scatter = (name: string, at: number): number => normalQuantile(share(name, at));
  const pairs = Array.from({ length: LOTS_OF_A_WORLD }, (_, at) => {
    const sort = share("goods", at);
    const { fabric, fibre, gsm, route } = GOODS.find(({ upTo }) => sort < upTo) ?? GOODS[0];
    const of = loggedOn(route);
    const length = 60 + 900 * share("length", at) ** 2;
    const mean = setting(COVERAGE);
    // Even on both sides, so that the mean over lots is the true setting, and never above full laydown.
    const coverage = mean + 0.2 * Math.min(mean, 1 - mean) * (2 * share("coverage", at) - 1);
    const inked = share("ink is logged", at) < 0.25;
    const width = 1.5;
    const actual: Lot = {
      lot: `${world}-${at}`,
      date: `2026-${String(1 + (at % 10)).padStart(2, "0")}-15`,
      site: "main",
      client: "",
      order: "",
      fabric,
      fibre: [{ fibre, share: 1 }],
      gsm,
      width,
      length,
      rejected: 0.02 * length,
      route,
      kind: "production",
      // The other arm's ink is told from logged ink by the ink ratio, so a lot logs it on both sides or neither.
      ink: inked
        ? length * width * coverage * setting(LAYDOWN) * (1 + 0.05 * scatter("ink", at))
        : undefined,
      coverage,
      pickup: setting(of.pickup) * (1 + 0.04 * scatter("pickup", at)),
      fixTemp:
        of.fixTemp === undefined ? undefined : setting(of.fixTemp) + 2 * scatter("fixTemp", at),
      dwell: setting(of.dwell) * (1 + 0.05 * scatter("dwell", at)),
      liquorRatio:
        of.freshWater === undefined
          ? undefined
          : setting(of.freshWater) * (1 + 0.1 * scatter("liquorRatio", at)),
      baths: undefined,
      speed: undefined,
      readings: { electricity: undefined, water: undefined, gas: undefined, steam: undefined },
      fastness: { rubDry: undefined, rubWet: undefined, wash: undefined },
      reprintOf: "",
      note: "",
      place: { file: "log.csv", line: at + 2 },
    };
    const kept = (
      column: "coverage" | "dwell" | "fixTemp" | "liquorRatio" | "pickup",
      often: number,
    ): number | undefined => {
      const value = actual[column];
      return value === undefined || share(`${column} is logged`, at) >= often
        ? undefined
        : value * (1 + (misread?.(column) ?? 0));
    };
    const logged: Lot = {
      ...actual,
      ink: actual.ink === undefined ? undefined : actual.ink * (1 + (misread?.("ink") ?? 0)),
      coverage: kept("coverage", 0.6),
      pickup: kept("pickup", 0.4),
      fixTemp: kept("fixTemp", 0.5),
      dwell: kept("dwell", 0.5),
      liquorRatio: kept("liquorRatio", 0.3),
    };
    return { actual, logged };
  });
  return { actual: pairs.map(({ actual }) => actual), logged: pairs.map(({ logged }) => logged) };
}

function loggedOn(route: string): Logged {
  const found = LOGGED[route];
  if (found === undefined) throw new Error(`Nothing is said of ${route}.`);
  return found;
}

/**
 * Groups of a ledger of lots.
 *
 * @param lots - the lots
 * @returns groups
 */
export function groupsOf(lots: readonly Lot[]): readonly Group[] {
  const ledger = new Ledger();
  for (const lot of lots) ledger.add(lot, WORLD_MILL);
  return ledger.settled().groups;
}
