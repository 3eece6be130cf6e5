import type { Factor, FactorSet, FactorValue } from "../../src/factors/factor.js";
import { loadFactors } from "../../src/factors/load.js";
import type { TextFile } from "../../src/factors/yaml-text.js";
import { interval95 } from "../../src/numbers/distributions.js";
import { sentence } from "../../src/problems/sentence.js";
import { filesUnder, textOf } from "./tree.js";

/** Files of the shipped factors. */
export const FACTOR_FILES: readonly TextFile[] = filesUnder("factors", ".yaml").map((name) => ({
  name,
  text: textOf(name),
}));

/** The shipped factors. */
export const SHIPPED: FactorSet = read();

function read(): FactorSet {
  const { value, problems } = loadFactors(FACTOR_FILES, []);
  if (value !== undefined) return value;
  throw new Error(problems.map(sentence).join("\n"));
}

/**
 * A shipped factor.
 *
 * @param id - its id
 * @returns the factor
 */
export function shippedFactor(id: string): Factor {
  const factor = SHIPPED.factors.get(id);
  if (factor === undefined) throw new Error(`there is no factor ${id}`);
  return factor;
}

/**
 * The newest value of a shipped factor.
 *
 * @param id - id of the factor
 * @returns the value
 */
export function newest(id: string): FactorValue {
  const [value] = shippedFactor(id).values;
  if (value === undefined) throw new Error(`${id} has no value`);
  return value;
}

/**
 * Central figure of the newest value.
 *
 * @param id - id of the factor
 * @returns the figure
 */
export function central(id: string): number {
  return newest(id).spread.value;
}

/**
 * Both ends of the newest value: its bounds, or its 95 % interval.
 *
 * @param id - id of the factor
 * @returns lower and upper end
 */
export function ends(id: string): readonly [number, number] {
  const { spread } = newest(id);
  return "low" in spread ? [spread.low, spread.high] : interval95(spread);
}
