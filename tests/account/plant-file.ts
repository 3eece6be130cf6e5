/** What the invented mills of the tests share: how their plant files are read, and a lot to change. */

import type { Lot } from "../../src/log/lot.js";
import type { Plant } from "../../src/plant/plant.js";
import { readPlant } from "../../src/plant/read-plant.js";
import { sentence } from "../../src/problems/sentence.js";
import { SHIPPED } from "../tools/shipped-factors.js";

/** Machines of the steps up to printing, by role. */
export const START = { pretreat: "pad", "pretreat-dry": "gas stenter", print: "printer" } as const;

/** Machines of the steps of a route that is steamed and washed, by role. */
export const WASHED = {
  steam: "steamer",
  wash: "range",
  squeeze: "nip",
  dry: "steam stenter",
} as const;

/** The plant file as plain data. */
export interface MillFile {
  readonly sites: { readonly main: Readonly<Record<string, unknown>> };
  readonly routes: Readonly<Record<string, unknown>>;
  readonly [key: string]: unknown;
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
