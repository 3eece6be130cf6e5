/**
 * Readings by month.
 */

import type { Reading } from "./reading.js";

/** Quantities that are set beside a model. */
export type Counted = "water" | "electricity" | "gas" | "steam";

const COUNTED: readonly string[] = ["water", "electricity", "gas", "steam"];

/**
 * Whether a quantity is set beside a model.
 *
 * @param quantity - of a meter
 * @returns true for water, electricity, gas and steam
 */
export function isCounted(quantity: string): quantity is Counted {
  return COUNTED.includes(quantity);
}

/** What a meter counted in a month. */
export interface MonthAmount {
  /** Amount, in the unit of readings. */
  readonly amount: number;
  /** Share of the days of the month that readings cover, up to 1. */
  readonly covered: number;
  /** Part of the amount that was estimated. */
  readonly estimated: number;
}

/**
 * Readings of a meter by month. One that spans months is shared by days.
 *
 * @param readings - readings of one meter
 * @returns amounts by month, sorted
 */
export function amountsByMonth(readings: readonly Reading[]): ReadonlyMap<string, MonthAmount> {
  const months = new Map<string, MonthAmount>();
  for (const reading of readings) {
    for (const [month, days] of daysByMonth(reading.from, reading.to)) {
      const part = (days / daysBetween(reading.from, reading.to)) * reading.amount;
      const before = months.get(month) ?? { amount: 0, covered: 0, estimated: 0 };
      months.set(month, {
        amount: before.amount + part,
        covered: Math.min(1, before.covered + days / daysOf(month)),
        estimated: before.estimated + (reading.estimated === true ? part : 0),
      });
    }
  }
  return new Map([...months].sort(([a], [b]) => (a < b ? -1 : 1)));
}

/** First and last day. */
type Days = Pick<Reading, "from" | "to">;

/**
 * Whether a reading counts one month from its first day to its last.
 *
 * @param reading - the reading
 * @returns false where it has to be shared among months by days
 */
export function isMonth(reading: Days): boolean {
  const { from, to } = reading;
  return from.endsWith("-01") && from.slice(0, 7) === to.slice(0, 7) && isLast(to);
}

const DAY = 86_400_000;

function at(day: string): number {
  return Date.parse(`${day}T00:00:00Z`);
}

function daysBetween(from: string, to: string): number {
  return (at(to) - at(from)) / DAY + 1;
}

/**
 * Days of a month.
 *
 * @param month - such as 2026-02
 * @returns 28 to 31
 */
export function daysOf(month: string): number {
  const [year = 0, number = 1] = month.split("-").map(Number);
  return new Date(Date.UTC(year, number, 0)).getUTCDate();
}

function isLast(day: string): boolean {
  return Number(day.slice(8)) === daysOf(day.slice(0, 7));
}

function daysByMonth(from: string, to: string): ReadonlyMap<string, number> {
  const days = new Map<string, number>();
  const end = at(to);
  for (let start = at(from); start <= end;) {
    const day = new Date(start);
    const next = Date.UTC(day.getUTCFullYear(), day.getUTCMonth() + 1, 1);
    days.set(day.toISOString().slice(0, 7), (Math.min(next, end + DAY) - start) / DAY);
    start = next;
  }
  return days;
}
