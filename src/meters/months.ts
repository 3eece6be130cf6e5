/**
 * Meter readings by month beside the months of the model. Nothing is adjusted here.
 */

import { CsvFault, type CsvRecord, csvRecords } from "../log/csv.js";
import { unreadable } from "../log/file-faults.js";
import { readDay, readNumber } from "../log/cells.js";
import type { Plant } from "../plant/plant.js";
import type { Problem } from "../problems/problem.js";
import { unitFactor } from "../units/convert.js";

/** A reading over a period. */
export interface Reading {
  /** Meter of the plant file. */
  readonly meter: string;
  /** First day. */
  readonly from: string;
  /** Last day. */
  readonly to: string;
  /** Consumption, in L for water, kWh net for gas and electricity, kg for steam. */
  readonly amount: number;
}

/** One meter's months beside the model. */
export interface MeterMonthSeries {
  /** Meter. */
  readonly meter: string;
  /** What it counts. */
  readonly quantity: "water" | "electricity" | "gas" | "steam";
  /** Unit of both. */
  readonly unit: string;
  /** Months with either. */
  readonly months: readonly {
    readonly month: string;
    readonly metered?: number;
    readonly modelled?: number;
  }[];
}

const TARGET = { water: "L", electricity: "kWh", gas: "kWh", steam: "kg" } as const;

/**
 * Reads meters.csv: meter, from, to, reading, unit; readings are amounts over the period.
 *
 * @param name - file as the user named it
 * @param chunks - its bytes
 * @param plant - the print house with its meters
 * @param netPerGross - net per gross heating value of the gas
 * @returns readings and what is wrong with rows
 */
export async function readMeters(
  name: string,
  chunks: AsyncIterable<Uint8Array>,
  plant: Plant,
  netPerGross: number,
): Promise<{ readonly readings: readonly Reading[]; readonly problems: readonly Problem[] }> {
  const readings: Reading[] = [];
  const problems: Problem[] = [];
  let heads: readonly string[] | undefined;
  try {
    for await (const batch of csvRecords(chunks, "utf-8", undefined)) {
      for (const record of batch) {
        if (heads === undefined) {
          heads = record.fields.map((field) => field.trim());
          for (const head of ["meter", "from", "to", "reading", "unit"]) {
            if (!heads.includes(head))
              problems.push(
                fault(name, record, head, "", `a column ${head}`, "Add it.", "refused"),
              );
          }
          if (problems.length > 0) return { readings, problems };
        } else {
          const reading = judge(name, record, heads, plant, netPerGross, problems);
          if (reading !== undefined) readings.push(reading);
        }
      }
    }
  } catch (error) {
    if (!(error instanceof CsvFault)) throw error;
    problems.push(unreadable(name, error));
  }
  return { readings, problems };
}

function judge(
  name: string,
  record: CsvRecord,
  heads: readonly string[],
  plant: Plant,
  netPerGross: number,
  problems: Problem[],
): Reading | undefined {
  const cell = (head: string): string => (record.fields[heads.indexOf(head)] ?? "").trim();
  const say = (column: string, expected: string, remedy: string): void => {
    problems.push(fault(name, record, column, cell(column), expected, remedy, "set-aside"));
  };
  const meters = plant.text.meters ?? {};
  const meter = meters[cell("meter")];
  if (meter === undefined) {
    say(
      "meter",
      `a meter of the plant file: ${Object.keys(meters).join(", ")}`,
      "Correct the name or add the meter.",
    );
    return undefined;
  }
  const from = readDay(cell("from"), "ymd");
  const to = readDay(cell("to"), "ymd");
  if (from === undefined) {
    say("from", "a day such as 2026-01-01", "Correct the date.");
    return undefined;
  }
  if (to === undefined || to < from) {
    say("to", "a day not before `from`", "Correct the date.");
    return undefined;
  }
  const read = readNumber(cell("reading"), {}, undefined, undefined);
  if (!("number" in read) || !(read.number >= 0)) {
    say("reading", "an amount of 0 or more", "Give the amount over the period, not the register.");
    return undefined;
  }
  const factor = unitFactor(cell("unit"), TARGET[meter.quantity]);
  if (typeof factor !== "number") {
    say("unit", `a unit of ${meter.quantity}: ${factor.reason}`, factor.remedy);
    return undefined;
  }
  if (meter.quantity === "gas" && meter.basis === undefined) {
    say("meter", "a meter of gas with its basis, net or gross", "Add `basis` to it in plant.yaml.");
    return undefined;
  }
  const net = meter.basis === "gross" ? netPerGross : 1;
  return { meter: cell("meter"), from, to, amount: read.number * factor * net };
}

function fault(
  file: string,
  record: CsvRecord,
  column: string,
  value: string,
  expected: string,
  remedy: string,
  severity: Problem["severity"],
): Problem {
  return {
    code: `meter-${column}`,
    severity,
    file,
    line: record.line,
    column,
    value,
    expected,
    remedy,
  };
}

/**
 * Sets readings beside the model. A reading that spans months is shared by days.
 *
 * @param readings - the readings
 * @param plant - the print house
 * @param modelled - what lots of a month add up to, by quantity and month, in the units of readings
 * @returns one series a meter
 */
export function meterMonths(
  readings: readonly Reading[],
  plant: Plant,
  modelled: (quantity: MeterMonthSeries["quantity"]) => ReadonlyMap<string, number>,
): readonly MeterMonthSeries[] {
  return Object.entries(plant.text.meters ?? {}).flatMap(([meter, { quantity }]) => {
    const metered = new Map<string, number>();
    for (const reading of readings) {
      if (reading.meter !== meter) continue;
      for (const [month, share] of sharesByMonth(reading.from, reading.to)) {
        metered.set(month, (metered.get(month) ?? 0) + share * reading.amount);
      }
    }
    if (metered.size === 0) return [];
    const model = modelled(quantity);
    const scale = quantity === "water" ? 1e-3 : 1;
    const months = [...new Set([...metered.keys(), ...model.keys()])].sort().map((month) => {
      const read = metered.get(month);
      const made = model.get(month);
      return {
        month,
        ...(read === undefined ? {} : { metered: read * scale }),
        ...(made === undefined ? {} : { modelled: made * scale }),
      };
    });
    return [
      {
        meter,
        quantity,
        unit: { water: "m³", electricity: "kWh", gas: "kWh net", steam: "kg" }[quantity],
        months,
      },
    ];
  });
}

const DAY = 86_400_000;

function sharesByMonth(from: string, to: string): ReadonlyMap<string, number> {
  const first = Date.parse(`${from}T00:00:00Z`);
  const last = Date.parse(`${to}T00:00:00Z`);
  const days = (last - first) / DAY + 1;
  const shares = new Map<string, number>();
  for (let at = first; at <= last; at += DAY) {
    const month = new Date(at).toISOString().slice(0, 7);
    shares.set(month, (shares.get(month) ?? 0) + 1 / days);
  }
  return shares;
}
