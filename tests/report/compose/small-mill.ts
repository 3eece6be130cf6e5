import { accountOf } from "../../../src/account/account.js";
import { INDICATOR_IDS } from "../../../src/account/indicators.js";
import { writeProgram } from "../../../src/account/program.js";
import { swingsOf } from "../../../src/account/swings.js";
import { compareArms } from "../../../src/compare/compare.js";
import { metersWorth } from "../../../src/compare/meters-worth.js";
import { Ledger } from "../../../src/ledger/ledger.js";
import type { Lot } from "../../../src/log/lot.js";
import type { Plant } from "../../../src/plant/plant.js";
import { amountPlaces } from "../../../src/report/compose/answer.js";
import type { Reference, ReportInput } from "../../../src/report/compose/input.js";
import { PLAIN_LOT, plantFrom, START, WASHED } from "../../account/plant-file.js";
import { SHIPPED } from "../../tools/shipped-factors.js";

/** One stenter dries for all. */
const BEFORE = { ...START, "pretreat-dry": "stenter" } as const;
const SITE = {
  place: "PRT",
  burner: { fuel: "natural-gas" },
  boiler: { fuel: "natural-gas" },
  effluent: "municipal",
  tariffs: {
    currency: "EUR",
    date: "2026-09-30",
    electricity: 0.15,
    fuel: { "natural-gas": 0.06 },
    water: 1.4,
    effluent: 1.2,
    ink: { pigment: 17, reactive: 14, acid: 14, disperse: 14 },
  },
  machines: {
    pad: { kind: "pad" },
    stenter: { kind: "stenter", choices: { heat: "burner" } },
    printer: { kind: "printer" },
    calender: { kind: "calender", choices: { heat: "electric" } },
    steamer: { kind: "steamer" },
    range: { kind: "wash-range", choices: { sequence: "six", heating: "injection" } },
    nip: { kind: "squeeze" },
  },
} as const;

/** What a small mill may have otherwise. */
export interface MillChange {
  /** Name of the house. */
  readonly house?: string;
  /** Settings of the site. */
  readonly settings?: Readonly<Record<string, unknown>>;
  /** Whether pigment goods go through pad and stenter once more. */
  readonly finish?: boolean;
  /** Meters of the plant file. */
  readonly meters?: Readonly<Record<string, unknown>>;
  /** What columns of readings count. */
  readonly readings?: object;
}

/**
 * A mill of one site with two routes.
 *
 * @param change - what it has otherwise
 * @returns the plant as read from its file
 */
export function smallMill(change: MillChange = {}): Plant {
  const finish = change.finish === true;
  return plantFrom({
    millrace: 1,
    house: change.house ?? "Two Route Mill (invented)",
    sites: {
      main: { ...SITE, settings: { "hall.temperature": 24, ...change.settings } },
    },
    routes: {
      "pigment-calender": {
        like: "pigment-calender",
        machines: {
          ...BEFORE,
          fix: "calender",
          ...(finish ? { finish: "pad", "finish-dry": "stenter" } : {}),
        },
        ...(finish ? { finish: "soft" } : {}),
      },
      reactive: {
        like: "reactive",
        machines: { ...BEFORE, ...WASHED, dry: "stenter" },
      },
    },
    ...(change.meters === undefined ? {} : { meters: change.meters }),
    ...(change.readings === undefined ? {} : { readings: change.readings }),
  });
}

const BLANK: Lot = {
  ...PLAIN_LOT,
  client: "Client Aspen",
  order: "O-1",
  fabric: "plain cotton",
  length: 400,
  rejected: 4,
  coverage: 0.6,
};

/**
 * A lot of cotton.
 *
 * @param change - what it has otherwise
 * @returns the lot
 */
export function lotOf(change: Partial<Lot>): Lot {
  return { ...BLANK, ...change };
}

/** Six lots in two months, of two clients, on both routes and two fabrics. */
export const LOTS: readonly Lot[] = [
  lotOf({ lot: "A-1" }),
  lotOf({ lot: "A-2", route: "reactive", length: 700, rejected: 12 }),
  lotOf({ lot: "A-3", client: "Client Birch", fabric: "sateen", gsm: 180, route: "reactive" }),
  lotOf({ lot: "A-4", client: "Client Birch", date: "2026-04-09", length: 250, ink: 5 }),
  lotOf({ lot: "A-5", date: "2026-04-20", route: "reactive", length: 90, liquorRatio: 22 }),
  lotOf({
    lot: "A-6",
    client: "Client Birch",
    date: "2026-04-21",
    fabric: "sateen",
    gsm: 180,
    length: 610,
  }),
];

/** What a report is asked for. */
export interface Asked {
  /** Reference unit. */
  readonly per?: Reference["per"];
  /** Number of draws. */
  readonly draws?: number;
  /** Name of the log. */
  readonly file?: string;
}

/** Day of the reports. */
export const AS_OF = "2026-11-25";

/**
 * What a report on lots of a mill is made of.
 *
 * @param plant - the mill
 * @param lots - its lots
 * @param asked - what is asked for
 * @returns the input
 */
export function inputOf(
  plant: Plant = smallMill(),
  lots: readonly Lot[] = LOTS,
  asked: Asked = {},
): ReportInput {
  const ledger = new Ledger();
  for (const lot of lots) ledger.add(lot, plant);
  const { groups, uncovered, folded } = ledger.settled();
  const program = writeProgram(plant, SHIPPED, groups, AS_OF);
  const account = accountOf(program, asked.draws ?? 200, 1);
  const reference = referenceOf(asked.per ?? "m2", groups);
  const ids = INDICATOR_IDS.filter((id) => program.indicators.has(id));
  const comparisons = new Map(
    ids.map((id) => [id, compareArms(account, id, reference.units)] as const),
  );
  const dates = lots.map(({ date }) => date).sort();
  return {
    plant,
    factors: SHIPPED,
    groups,
    folded,
    sample: ledger.sample(),
    uncovered,
    account,
    comparisons,
    worth: metersWorth(account, comparisons, ["water", "cod", "energy", "co2-location"]),
    swings: swingsOf(program, ["water", "energy", "co2-location"]),
    log: {
      files: [
        {
          name: asked.file ?? "log.csv",
          bytes: 1000,
          sha256: "ab".repeat(32),
          rows: lots.length,
          accepted: lots.length,
          corrected: 0,
          setAside: 0,
          outside: 0,
          unused: [],
          reasons: {},
          filled: {},
        },
      ],
      counts: new Map(),
      problems: [],
      filled: new Map(),
      refused: false,
    },
    filtered: 0,
    withReadings: 0,
    days: [dates[0] ?? "", dates.at(-1) ?? ""],
    reference,
    scope: { client: "", site: "", order: "" },
    date: AS_OF,
    seed: 1,
    meters: [],
    metersMissing: "No readings were found.",
    version: "0.0.0",
  };
}

function referenceOf(per: Reference["per"], groups: ReportInput["groups"]): Reference {
  const place = { kg: "mass", m: "length", m2: "accepted", total: "lots" } as const;
  const at = amountPlaces()[place[per]];
  const units = groups.reduce((sum, { amounts }) => sum + (amounts[at] ?? 0), 0);
  return {
    per,
    units: per === "total" ? 1 : units,
    suffix: { kg: "kg", m: "m", m2: "m²", total: "" }[per],
    words: {
      kg: "kg of cloth printed",
      m: "metre printed",
      m2: "accepted m²",
      total: "the whole period",
    }[per],
  };
}
