/**
 * Heat of a wash range, box by box, on plain numbers.
 *
 *     Q_j / M = F_j c_w (T_j − T_in,j) + (m c / M + c_w u)(T_j − T_{j−1})
 *
 * Boxes stand in groups. The feed of a group enters its last box and runs against the cloth to its first,
 * where it leaves: T_in,j = T_{j+1} inside the group, and at its last box T_s + ε (T_drain − T_s), ε the
 * share of the drain's heat given back. A box fed by itself is a group of one. Groups share the fresh water
 * evenly. A box at supply level is not heated: it has the temperature of the water that feeds it.
 *
 * A box that would have to be cooled is left alone, so the sum is a bound from above: the next box would
 * find its water and cloth warmer than counted. Which boxes are heated is judged at the liquor set, so
 * that the heat stays linear in the liquor that lots log.
 */

import { WATER_HEAT_CAPACITY } from "../physics/moist-air.js";

/** Temperature at which a box is run. */
export type Level = "supply" | "warm" | "hot";

/** Boxes through which one feed runs, in the order of the cloth. */
export type Group = readonly Level[];

/** Sequences of boxes that print houses run. Common practice, no source; `five` is the dyers' textbook order. */
export const SEQUENCES = {
  six: [["supply"], ["warm"], ["hot"], ["hot"], ["warm"], ["supply"]],
  five: [["supply"], ["warm"], ["hot"], ["warm"], ["supply"]],
  four: [["supply"], ["hot"], ["warm"], ["supply"]],
  "counter-current": [["warm", "hot", "hot", "warm", "supply"]],
} as const satisfies Readonly<Record<string, readonly Group[]>>;

/** A sequence by name. */
export type Sequence = keyof typeof SEQUENCES;

/** Temperatures of a range. */
export interface RangeLevels {
  /** Water as the water works give it, T_s. [°C] */
  readonly supply: number;
  /** Warm boxes. [°C] */
  readonly warm: number;
  /** Hot boxes. [°C] */
  readonly hot: number;
  /** Share of the drain's heat given back to the feed, ε. [-] */
  readonly recovery: number;
}

/** Cloth and liquor that enter a range, per kg of conditioned cloth. */
export interface Entering {
  /** Temperature of the cloth. [°C] */
  readonly temperature: number;
  /** Heat capacity of the fibres, m c / M. [kJ/(kg K)] */
  readonly capacity: number;
  /** Water carried from box to box, u. [kg/kg] */
  readonly carried: number;
  /** Fresh water of the whole range at which the boxes to be heated are judged. [L/kg] */
  readonly liquor: number;
}

/** Heat of one group of boxes, linear in liquor and cloth. */
export interface GroupHeat {
  /** Temperature at which its feed comes in. [°C] */
  readonly feed: number;
  /** Heat per litre of fresh water of the whole range. [kJ/L] */
  readonly perLitre: number;
  /** Heat per conditioned cloth. [kJ/kg] */
  readonly perMass: number;
}

/**
 * Heat of every group of a range.
 *
 * @param groups - the boxes
 * @param levels - their temperatures
 * @param entering - cloth and liquor
 * @returns one entry a group, in the order of the cloth
 */
export function washHeat(
  groups: readonly Group[],
  levels: RangeLevels,
  entering: Entering,
): readonly GroupHeat[] {
  // Plain loops: this runs in every draw, and lists made and dropped there cost more than the sums.
  const share = 1 / groups.length;
  const ofFibres = entering.capacity + WATER_HEAT_CAPACITY * entering.carried;
  const heats: GroupHeat[] = [];
  let before = entering.temperature;
  for (const group of groups) {
    const feed = feedTemperature(group, levels);
    let perLitre = 0;
    let perMass = 0;
    for (let at = 0; at < group.length; at++) {
      const box = boxTemperature(group[at]!, feed, levels);
      const next = at + 1 < group.length ? boxTemperature(group[at + 1]!, feed, levels) : feed;
      const ofLiquor = share * WATER_HEAT_CAPACITY * (box - next);
      const ofCloth = ofFibres * (box - before);
      before = box;
      if (entering.liquor * ofLiquor + ofCloth <= 0) continue;
      perLitre += ofLiquor;
      perMass += ofCloth;
    }
    heats.push({ feed, perLitre, perMass });
  }
  return heats;
}

/**
 * Heat to bring a fresh filling of all boxes from supply to their temperatures.
 *
 * @param groups - the boxes, which share the filling evenly
 * @param levels - their temperatures
 * @returns heat per litre of the filling [kJ/L]
 */
export function fillingHeat(groups: readonly Group[], levels: RangeLevels): number {
  let rise = 0;
  let boxes = 0;
  for (const group of groups) {
    for (const level of group) {
      rise += boxTemperature(level, levels.supply, levels) - levels.supply;
      boxes += 1;
    }
  }
  return (WATER_HEAT_CAPACITY * Math.max(0, rise)) / boxes;
}

/**
 * Temperature of the feed of the hottest box, whose heat the losses of the range are charged to.
 *
 * @param groups - the boxes
 * @param levels - their temperatures
 * @returns temperature [°C]
 */
export function hottestFeed(groups: readonly Group[], levels: RangeLevels): number {
  const hottest = groups.find((group) => group.includes("hot"));
  return hottest === undefined ? levels.supply : feedTemperature(hottest, levels);
}

/**
 * Temperature of the last box, with which the cloth leaves.
 *
 * @param groups - the boxes
 * @param levels - their temperatures
 * @returns temperature [°C]
 */
export function lastTemperature(groups: readonly Group[], levels: RangeLevels): number {
  const group = groups.at(-1) ?? [];
  return boxTemperature(group.at(-1) ?? "supply", feedTemperature(group, levels), levels);
}

function feedTemperature(group: Group, levels: RangeLevels): number {
  const drain = boxTemperature(group[0] ?? "supply", levels.supply, levels);
  return levels.supply + levels.recovery * (drain - levels.supply);
}

function boxTemperature(level: Level, feed: number, levels: RangeLevels): number {
  return level === "supply" ? feed : levels[level];
}
