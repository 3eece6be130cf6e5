import { openMill, readMill } from "../../src/cli/workspace.js";
import { buildStudy } from "../../src/invest/build-study.js";
import { optionHouses } from "../../src/invest/option-houses.js";
import { readInvest } from "../../src/invest/read-invest.js";
import type { Study } from "../../src/invest/study.js";
import type { Group } from "../../src/ledger/ledger.js";
import type { Plant } from "../../src/plant/plant.js";
import { sentence } from "../../src/problems/sentence.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { textOf } from "../tools/tree.js";

/** Text of the example's investment file. */
export const DEMO_TEXT = textOf("examples/demo/invest.yaml");

/** Day of the report. */
export const DAY = "2026-11-25";

/** A mill with its lots. */
export interface DemoMill {
  readonly plant: Plant;
  readonly groups: readonly Group[];
}

/**
 * Reads the example's mill.
 *
 * @returns plant and groups of lots
 */
export async function demoMill(): Promise<DemoMill> {
  const { mill } = openMill({ plant: "examples/demo/plant.yaml" });
  if (mill === undefined) throw new Error("the demo cannot be read");
  const { reading } = await readMill(mill, [], { today: DAY });
  if (reading === undefined) throw new Error("the log cannot be read");
  return { plant: mill.plant, groups: reading.ledger.settled().groups };
}

/**
 * Builds a study on the example's mill.
 *
 * @param mill - the mill
 * @param change - what becomes of the file
 * @param draws - number of draws
 * @returns the study
 */
export function demoStudy(
  { plant, groups }: DemoMill,
  change: (text: string) => string = (text) => text,
  draws = 60,
): Study {
  const read = readInvest({ name: "invest.yaml", text: change(DEMO_TEXT) });
  if (read.value === undefined) throw new Error(read.problems.map(sentence).join("\n"));
  const { text, yaml } = read.value;
  const file = { name: "plant.yaml", text: textOf("examples/demo/plant.yaml") };
  const { houses, problems } = optionHouses(yaml, text, file, plant, SHIPPED);
  if (problems.length > 0) throw new Error(problems.map(sentence).join("\n"));
  return buildStudy({
    text,
    plant,
    houses,
    factors: SHIPPED,
    groups,
    period: ["2025-10-01", "2026-09-30"],
    asOf: DAY,
    draws,
    seed: 1,
  });
}
