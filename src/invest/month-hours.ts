/**
 * How hours of machines lie over the months of the log: which month is the busiest, and by how much.
 */

import { drawsOf } from "../account/draws.js";
import { fenceOf, unityOf } from "../account/outlet.js";
import { mean } from "../numbers/quantiles.js";
import { AMOUNTS } from "../steps/amounts.js";
import { ruleBuckets, stepOf, type LotFlowsInput } from "./lot-flows.js";
import type { MonthWeights } from "./study.js";

/** Draws for the mean of a rate; only the share of a month in the year hangs on it. */
const DRAWS = 100;

/** Days below which a month of the log is too short to judge. */
const SHORT = 14;

/** A month of the log. */
export interface LogMonth {
  /** Month, as `2026-03`. */
  readonly month: string;
  /** Days of it in the log. */
  readonly days: number;
}

const MS_PER_DAY = 86_400_000;

/**
 * Months of a period that are long enough to judge.
 *
 * @param from - first day
 * @param to - last day
 * @returns months in order; the longest alone where all are short
 */
export function monthsOf(from: string, to: string): readonly LogMonth[] {
  const sums = new Map<string, number>();
  for (let day = Date.parse(from); day <= Date.parse(to); day += MS_PER_DAY) {
    const month = new Date(day).toISOString().slice(0, 7);
    sums.set(month, (sums.get(month) ?? 0) + 1);
  }
  const months = [...sums].map(([month, days]): LogMonth => ({ month, days }));
  const long = months.filter(({ days }) => days >= SHORT);
  return long.length > 0 ? long : months;
}

/** Weights of all lots and of those of each rule. */
export interface MonthlyHours {
  /** All lots on their own routes. */
  readonly all: MonthWeights;
  /** By rule: on the dye routes they took, and on the route they would take. */
  readonly moving: readonly { readonly dye: MonthWeights; readonly pigment: MonthWeights }[];
}

/**
 * Hours of each month against the mean of the log, by machine.
 *
 * @param input - program and lots
 * @param months - months to judge
 * @param days - days of the log
 * @returns weights
 */
export function monthlyHours(
  input: LotFlowsInput,
  months: readonly LogMonth[],
  days: number,
): MonthlyHours {
  const { program, plant } = input;
  const unity = unityOf(program.nodes);
  const terms = program.terms.flatMap(({ lotClass, arm, role, flow, amount, rate }) => {
    const { key, outlets } = program.classes[lotClass]!;
    const hours = fenceOf(outlets[arm], flow, unity).some(({ to }) => to === "machine.hours");
    if (!hours) return [];
    const { machine } = stepOf(plant, key, arm, role);
    return [{ lotClass, arm, own: key.own, machine, amount, rate }];
  });
  const rates = meanRates(input, new Set(terms.map(({ rate }) => rate)));
  const sums = new Map<string, Map<string, Map<string, number>>>();
  const amounts = amountsByMonth(input);
  for (const { lotClass, arm, own, machine, amount, rate } of terms) {
    for (const [bucket, byMonth] of amounts[lotClass] ?? []) {
      if (bucket === "all" && arm !== own) continue;
      const name = bucket === "all" ? bucket : `${bucket}|${arm}`;
      const machines = slot(sums, name, () => new Map<string, Map<string, number>>());
      const row = slot(machines, machine, () => new Map<string, number>());
      for (const [month, vector] of byMonth)
        row.set(month, (row.get(month) ?? 0) + (vector[amount] ?? 0) * (rates.get(rate) ?? 0));
    }
  }
  const weights = (bucket: string): MonthWeights =>
    new Map(
      [...(sums.get(bucket) ?? [])].map(([machine, row]) => {
        const total = [...row.values()].reduce((sum, hours) => sum + hours, 0);
        return [
          machine,
          Float64Array.from(months, (each) =>
            total > 0 ? (((row.get(each.month) ?? 0) / total) * days) / each.days : 0,
          ),
        ];
      }),
    );
  return {
    all: weights("all"),
    moving: Array.from({ length: input.rules }, (_, rule) => ({
      dye: weights(`${rule}|dye`),
      pigment: weights(`${rule}|pigment`),
    })),
  };
}

function meanRates(
  { program, seed }: LotFlowsInput,
  nodes: ReadonlySet<number>,
): ReadonlyMap<number, number> {
  const means = new Map<number, number>();
  drawsOf(program.nodes, DRAWS, seed).each(new Set(nodes), (start, end, values) => {
    // One block holds them all.
    for (const node of nodes) means.set(node, mean(values[node]!.subarray(0, end - start)));
  });
  return means;
}

type ByMonth = Map<string, Float64Array>;

function amountsByMonth(input: LotFlowsInput): readonly Map<string, ByMonth>[] {
  const { program, groups } = input;
  const classes = program.classes.map(() => new Map<string, ByMonth>());
  for (const group of groups) {
    const lotClass = program.classOf(group.key);
    const places = lotClass === undefined ? undefined : classes[lotClass];
    if (places === undefined) continue;
    for (const bucket of ruleBuckets(input, group.key)) {
      const byMonth = slot(places, bucket, (): ByMonth => new Map());
      const sum = slot(byMonth, group.key.month, () => new Float64Array(AMOUNTS.length));
      group.amounts.forEach((value, i) => (sum[i] = (sum[i] ?? 0) + value));
    }
  }
  return classes;
}

function slot<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let found = map.get(key);
  if (found === undefined) map.set(key, (found = make()));
  return found;
}
