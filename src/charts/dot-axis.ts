import { axisTicks, logTicks, ZERO_ONLY } from "./axis-ticks.js";
import { formatNumber } from "./number-format.js";

/** The axis that dots are placed along. */
export interface DotAxis {
  /** Whether each step multiplies. */
  readonly isLog: boolean;
  /** Ends of the scale. */
  readonly domain: readonly [number, number];
  /** Values with a line and a number, in terms of the scale. */
  readonly ticks: readonly number[];
  /** Prints the number of a tick. */
  readonly print: (tick: number) => string;
  /** Value on the scale at which a quantity stands: 0 has a place of its own on a logarithmic axis. */
  readonly place: (value: number) => number;
  /** Where zero is set apart from the rest of the axis, if it is. */
  readonly breakAt?: number;
  /** Said behind the name of the axis. */
  readonly note: string;
}

/** From this ratio of the largest to the smallest value on the axis is logarithmic. */
const TWO_DECADES = 100;

/** Share of the logarithmic axis that is kept for zero. [-] */
const ZERO_ROOM = 0.1;

/**
 * Chooses the axis for dots: from 0 where the values lie within two powers of ten, logarithmic beyond
 * that. A value of 0 does not make the axis linear; on a logarithmic one it is set apart, left of a
 * break.
 *
 * @param values - quantities, in any order
 * @returns the axis; negative values make it linear
 */
export function dotAxis(values: readonly number[]): DotAxis {
  let [least, most, lowest, largest] = [Infinity, 0, 0, 0];
  for (const value of values) {
    lowest = Math.min(lowest, value);
    largest = Math.max(largest, value);
    if (value > 0) {
      least = Math.min(least, value);
      most = Math.max(most, value);
    }
  }
  if (lowest < 0 || !(most / least > TWO_DECADES)) return linear(lowest, largest);
  const hasZero = values.some((value) => value === 0);
  const [low, high] = [least / 1.15, most * 1.15];
  const apart = hasZero ? (high / low) ** ZERO_ROOM : 1;
  const start = low / apart;
  const zero = start * Math.sqrt(apart);
  const { values: ticks, digits } = logTicks(low, high);
  const decimals = new Map(ticks.map((tick, index) => [tick, digits[index] ?? 0]));
  return {
    isLog: true,
    domain: [start, high],
    ticks: hasZero ? [zero, ...ticks] : ticks,
    print: (tick) => (hasZero && tick === zero ? "0" : formatNumber(tick, decimals.get(tick) ?? 0)),
    place: (value) => (value === 0 ? zero : value),
    ...(hasZero ? { breakAt: low } : {}),
    note: hasZero ? ", logarithmic scale, with 0 set apart at its left end" : ", logarithmic scale",
  };
}

function linear(lowest: number, largest: number): DotAxis {
  const isEmpty = lowest === largest;
  const high = isEmpty ? 1 : largest;
  const rim = (high - lowest) * 0.02;
  const ticks = isEmpty ? ZERO_ONLY : axisTicks(lowest, high, 6);
  return {
    isLog: false,
    domain: [lowest < 0 ? lowest - rim : 0, high + rim],
    ticks: ticks.values,
    print: (tick) => formatNumber(tick, ticks.digits),
    place: (value) => value,
    note: "",
  };
}
