import { compareArms } from "../../../src/compare/compare.js";
import { swingsWithYields } from "../../../src/compare/yield-swings.js";
import { yieldsOf } from "../../../src/compare/yields.js";
import type { Lot } from "../../../src/log/lot.js";
import type { Plant } from "../../../src/plant/plant.js";
import type { SiteText } from "../../../src/plant/schema.js";
import type { ReportInput } from "../../../src/report/compose/input.js";
import { inputOf, LOTS, smallMill } from "./small-mill.js";

/** Yields as a plant file gives them. */
export type Yields = NonNullable<SiteText["yield"]>;

/**
 * A share of first quality.
 *
 * @param value - the share
 * @param low - its lower end
 * @param high - its upper end
 * @returns as the plant file has it
 */
export function share(value: number, low = value, high = value): NonNullable<Yields["dye"]> {
  return { value, low, high, source: "first-quality book of 2025" };
}

/**
 * The small mill with yields by workflow.
 *
 * @param yields - the yields
 * @returns the plant
 */
export function millWithYields(yields: Yields): Plant {
  const plant = smallMill();
  const { main } = plant.sites;
  if (main === undefined) throw new Error("The small mill has lost its site.");
  return { ...plant, sites: { main: { ...main, yield: yields } } };
}

/**
 * What a report per accepted m² is made of where yields act.
 *
 * @param yields - the yields
 * @param lots - its lots
 * @returns the input
 */
export function inputWithYields(yields: Yields, lots: readonly Lot[] = LOTS): ReportInput {
  const plant = millWithYields(yields);
  const input = inputOf(plant, lots);
  const uncovered = input.uncovered.reduce((sum, { area }) => sum + area, 0);
  const found = yieldsOf(plant, input.groups, uncovered, input.account.draws.count, input.seed);
  if (found === undefined) throw new Error("No yield acts on these lots.");
  return {
    ...input,
    yields: found,
    reference: { ...input.reference, byArm: found.central },
    comparisons: new Map(
      [...input.comparisons.keys()].map((id) => [
        id,
        compareArms(input.account, id, found.accepted),
      ]),
    ),
    swings: swingsWithYields(input.swings, found),
  };
}
