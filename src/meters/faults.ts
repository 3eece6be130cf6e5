/**
 * What readings say against each other: months that are missing, more below a meter than it counts, more effluent
 * than water.
 */

import type { Group } from "../ledger/ledger.js";
import type { Plant } from "../plant/plant.js";
import type { Problem } from "../problems/problem.js";
import type { MeterInUse } from "./in-use.js";
import { amountsByMonth } from "./months.js";
import type { Reading } from "./reading.js";

/** Share by which meters below may pass the one above before it is a fault: both have errors. */
const SLACK = 0.02;

/**
 * Finds faults between readings.
 *
 * @param plant - the print house
 * @param readings - its readings
 * @param inUse - meters that count what lots take
 * @returns a warning each
 */
export function meterFaults(
  plant: Plant,
  readings: readonly Reading[],
  inUse: readonly MeterInUse[],
): readonly Problem[] {
  const meters = plant.text.meters ?? {};
  const totals = new Map(
    Object.keys(meters).map((name) => [
      name,
      amountsByMonth(readings.filter(({ meter }) => meter === name)),
    ]),
  );
  const common = (name: string, others: readonly string[]): readonly string[] =>
    [...(totals.get(name)?.keys() ?? [])].filter((month) =>
      others.every((other) => totals.get(other)?.has(month) === true),
    );
  const sum = (names: readonly string[], months: readonly string[]): number =>
    names.reduce(
      (all, name) =>
        all + months.reduce((part, month) => part + (totals.get(name)?.get(month)?.amount ?? 0), 0),
      0,
    );
  const faults: Problem[] = [];
  for (const name of Object.keys(meters)) {
    const missing = gapsIn([...(totals.get(name)?.keys() ?? [])]);
    if (missing.length > 0)
      faults.push(
        warning(
          "meter-months-missing",
          name,
          `readings of every month between the first and the last; ${missing.join(", ")} ${missing.length === 1 ? "is" : "are"} missing`,
          "Add them, marked `estimated` where nobody read the meter; months without a reading correct nothing.",
        ),
      );
    const below = Object.keys(meters).filter((other) => meters[other]?.within === name);
    const months = common(name, below);
    const [above, parts] = [sum([name], months), sum(below, months)];
    if (below.length > 0 && parts > (1 + SLACK) * above)
      faults.push(
        warning(
          "meter-above-parent",
          below.join(", "),
          `no more below ${name} than it counts itself; over ${months.length} common months they count ${(parts / above).toFixed(2)} times as much`,
          "Check multipliers, units and `within`; water that comes from another source needs a meter of its own.",
        ),
      );
  }
  const of = (quantity: string): readonly string[] =>
    Object.keys(meters).filter(
      (name) =>
        meters[name]?.quantity === quantity &&
        meters[name].covers === "site" &&
        meters[name].within === undefined,
    );
  for (const [out, into, words] of [
    ["effluent", "water", "Rain, ground water or a source without meter may run into the drain."],
    ["condensate", "steam", "Check that both meters count kilograms of the same users."],
  ] as const) {
    const [first, ...more] = of(out);
    if (first === undefined || of(into).length === 0) continue;
    const months = common(first, [...more, ...of(into)]);
    const [leaves, comes] = [sum(of(out), months), sum(of(into), months)];
    if (leaves > (1 + SLACK) * comes)
      faults.push(
        warning(
          "meter-more-out-than-in",
          of(out).join(", "),
          `less ${out} than ${into}; over ${months.length} common months it is ${(leaves / comes).toFixed(2)} times as much`,
          words,
        ),
      );
  }
  for (const { name, stream } of inUse)
    if (stream.refused !== undefined)
      faults.push(
        warning(
          "meter-base-below-zero",
          name,
          `a base load above 0; the regression gives ${stream.refused.toPrecision(3)}`,
          "It was not used, and a wide stream stands in its place. Look for machines that are read twice or lots that are not logged.",
        ),
      );
  return faults;
}

/**
 * Months with lots and readings that correct nothing, because lots are known of part of them only.
 *
 * @param groups - lots of the house
 * @param readings - its readings
 * @param isWhole - whether lots of a month are known from end to end
 * @returns a warning where there are such months
 */
export function monthsInPart(
  groups: readonly Group[],
  readings: readonly Reading[],
  isWhole: (month: string) => boolean,
): readonly Problem[] {
  const read = amountsByMonth(readings);
  const left = [...new Set(groups.map(({ key }) => key.month))]
    .filter((month) => read.has(month) && !isWhole(month))
    .sort();
  if (left.length === 0) return [];
  return [
    warning(
      "meter-month-in-part",
      left.join(", "),
      "lots of all days of a month that meters count",
      "Readings of these months correct nothing, for the lots of part of them would be set beside all of the reading. Add the rest of the log, or ask for whole months by --from and --to.",
    ),
  ];
}

/**
 * Months in which readings of single lots add up to more than the meter that counts them and all else.
 *
 * @param meters - meters in use
 * @param lots - readings of lots as meters
 * @returns a warning for each meter passed
 */
export function lotsAboveMeter(
  meters: readonly MeterInUse[],
  lots: readonly MeterInUse[],
): readonly Problem[] {
  return meters.flatMap((meter) => {
    const inside = lots.filter(
      ({ site, quantity, machines = [] }) =>
        site === meter.site &&
        quantity === meter.quantity &&
        machines.every((machine) => meter.machines?.includes(machine) ?? true),
    );
    const over = meter.months.flatMap(({ month, metered, covered }) => {
      const read = inside
        .flatMap(({ months }) => months.filter((one) => one.month === month))
        .reduce((sum, one) => sum + one.metered, 0);
      return covered > 0.99 && read > (1 + SLACK) * metered ? [{ month, by: read / metered }] : [];
    });
    if (over.length === 0) return [];
    const list = over.map(({ month, by }) => `${month} (${by.toFixed(2)} times)`).join(", ");
    return [
      warning(
        "lots-above-meter",
        meter.name,
        `readings of lots to add up to no more than meter ${meter.name}, which counts them and all else; they pass it in ${list}`,
        "Check units of the column and of the meter, lots logged twice, and under `readings` in plant.yaml which machines the column counts.",
      ),
    ];
  });
}

function gapsIn(months: readonly string[]): readonly string[] {
  const [first] = months;
  const last = months.at(-1);
  if (first === undefined || last === undefined) return [];
  const there = new Set(months);
  const gaps: string[] = [];
  for (let month = first; month < last; month = next(month))
    if (!there.has(month)) gaps.push(month);
  return gaps;
}

function next(month: string): string {
  const [year = 0, number = 1] = month.split("-").map(Number);
  return new Date(Date.UTC(year, number, 1)).toISOString().slice(0, 7);
}

function warning(code: string, value: string, expected: string, remedy: string): Problem {
  return { code, severity: "warning", file: "meters.csv", value, expected, remedy };
}
