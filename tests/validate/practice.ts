/**
 * Three ways to run the same hall. The usual one is what ships; the poor and the well run one move settings that
 * people rule day by day, all at once. Machines, recipes, speeds and temperatures stay as they ship.
 */

import { interval95, medianOf } from "../../src/numbers/distributions.js";
import { newest, shippedFactor } from "../tools/shipped-factors.js";

/** Ways to run a hall. */
export const PRACTICES = ["poor", "usual", "well"] as const;

/** A way to run a hall. */
export type Practice = (typeof PRACTICES)[number];

/** A number, or an end of the 95 % interval of the shipped factor. */
type Level = number | "low" | "high";

/** A setting that is moved. */
interface Moved {
  readonly id: string;
  readonly poor: Level;
  readonly well: Level;
  /** Where numbers come from; ends of shipped factors speak for themselves. */
  readonly why?: string;
}

const HUMIDITY =
  "0.05 is commonly found and 0.10 to 0.15 well run by the reference document of 2003, section 4.8.1";
const EXCHANGER = "air-to-air exchangers give back 50 to 60 %, from memory of the same document";

const worseHigh = (...ids: readonly string[]): readonly Moved[] =>
  ids.map((id) => ({ id, poor: "high", well: "low" }));

const MOVED: readonly Moved[] = [
  ...["stenter-dry", "hot-flue"].map((kind) => ({
    id: `${kind}.exhaust-humidity`,
    poor: 0.05,
    well: 0.12,
    why: HUMIDITY,
  })),
  ...["stenter-dry", "hot-flue", "stenter-cure", "oven"].map((kind) => ({
    id: `${kind}.recovery`,
    poor: 0,
    well: 0.5,
    why: EXCHANGER,
  })),
  ...worseHigh("stenter-cure.exhaust-flow", "oven.exhaust-flow"),
  ...worseHigh("stenter-dry.idle", "hot-flue.idle", "stenter-cure.idle", "oven.idle"),
  ...worseHigh(
    "stenter-dry.standing",
    "hot-flue.standing",
    "stenter-cure.standing",
    "oven.standing",
  ),
  ...worseHigh("calender.idle", "calender.standing"),
  ...worseHigh("steamer.flush", "steamer.idle", "steamer.idle-steam"),
  {
    id: "wash-range.fresh-water",
    poor: "high",
    well: 10,
    why: "10 is the lower end of continuous washing after reactive dyeing, from memory of the reference document of 2003",
  },
  {
    id: "wash-range.recovery",
    poor: 0,
    well: 0.5,
    why: "half the heat of the drain, common practice, no source",
  },
  ...worseHigh("squeeze.moisture-out", "printer.belt-water", "pad.dump", "pad.trough-wash"),
  ...worseHigh("preparation.water", "preparation.heat", "preparation.electricity"),
  { id: "boiler.efficiency", poor: "low", well: "high" },
  { id: "boiler.condensate-return", poor: "low", well: "high" },
  ...worseHigh("boiler.line-loss", "boiler.blowdown"),
];

/** What a setting is in each practice. */
export interface MovedSetting {
  /** Id of the factor. */
  readonly id: string;
  /** Unit; `1` for a bare ratio. */
  readonly unit: string;
  /** Values; that of the usual practice is the median of the factor. */
  readonly values: Readonly<Record<Practice, number>>;
  /** Where the numbers come from; `95 % ends` for those of the shipped factor. */
  readonly why: string;
  /** What it is. */
  readonly words: string;
}

/** Settings that the practices move, with their values. */
export const MOVED_SETTINGS: readonly MovedSetting[] = MOVED.map(({ id, poor, well, why }) => {
  const { spread } = newest(id);
  const [low, high] = interval95(spread);
  const at = (level: Level): number => (level === "low" ? low : level === "high" ? high : level);
  const { unit, words } = shippedFactor(id);
  return {
    id,
    unit,
    words,
    values: { poor: at(poor), usual: medianOf(spread), well: at(well) },
    why: why ?? "95 % ends",
  };
});

/**
 * Settings of a practice as a plant file says them.
 *
 * @param practice - the practice
 * @returns settings without doubt by id; none for the usual practice, which is what ships
 */
export function settingsOf(practice: Practice): Record<string, unknown> {
  if (practice === "usual") return {};
  return Object.fromEntries(
    MOVED_SETTINGS.map(({ id, values }) => [id, { value: values[practice], exact: true }]),
  );
}
