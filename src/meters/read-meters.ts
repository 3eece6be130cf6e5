/**
 * Reads meters.csv: meter, from, to, reading, unit, and where there are such columns `register`, `quality` and
 * `event`. A meter of amounts gives what it counted from one day to another; one with a dial gives the figure on
 * it at the end of the day `to`, and where meters were changed (`event` swap) the first figure of the new one in
 * `register`.
 */

import { isBlank, isLimit, readDay, readNumber } from "../log/cells.js";
import { CsvFault, type CsvRecord, csvRecords } from "../log/csv.js";
import { unreadable } from "../log/file-faults.js";
import type { MeterText } from "../plant/meter-part.js";
import type { Plant } from "../plant/plant.js";
import type { Problem } from "../problems/problem.js";
import { amountPerUnit, type MeterConditions } from "./reading-amount.js";
import type { Reading } from "./reading.js";
import { type DialReading, dialSteps } from "./registers.js";

/** What readers hand back. */
export interface MetersRead {
  /** Readings, by meter in the order of the file. */
  readonly readings: readonly Reading[];
  /** What is wrong. */
  readonly problems: readonly Problem[];
}

const NEEDED = ["meter", "from", "to", "reading", "unit"] as const;

/**
 * Reads the file.
 *
 * @param name - file as the user named it
 * @param chunks - its bytes
 * @param plant - the print house with its meters
 * @param conditions - of gas and steam
 * @returns readings and what is wrong with rows
 */
export async function readMeters(
  name: string,
  chunks: AsyncIterable<Uint8Array>,
  plant: Plant,
  conditions: MeterConditions,
): Promise<MetersRead> {
  const desk = new RowDesk(name, plant.text.meters ?? {}, conditions);
  try {
    for await (const batch of csvRecords(chunks, "utf-8", undefined)) {
      for (const record of batch)
        if (!desk.take(record)) return { readings: [], problems: desk.problems };
    }
  } catch (error) {
    if (!(error instanceof CsvFault)) throw error;
    desk.problems.push(unreadable(name, error));
  }
  return { readings: desk.readings(), problems: desk.problems };
}

interface AmountRow extends Reading {
  readonly line: number;
  readonly corrected: boolean;
}

class RowDesk {
  readonly problems: Problem[] = [];
  readonly #name: string;
  readonly #meters: Readonly<Record<string, MeterText>>;
  readonly #conditions: MeterConditions;
  readonly #amounts = new Map<string, AmountRow[]>();
  readonly #dials = new Map<string, { unit: string; factor: number; rows: DialReading[] }>();
  readonly #units = new Map<string, string>();
  #heads: readonly string[] | undefined;

  constructor(
    name: string,
    meters: Readonly<Record<string, MeterText>>,
    conditions: MeterConditions,
  ) {
    this.#name = name;
    this.#meters = meters;
    this.#conditions = conditions;
  }

  // Takes a record; false when the file cannot be read on.
  take(record: CsvRecord): boolean {
    if (this.#heads === undefined) {
      const heads = record.fields.map((field) => field.trim());
      this.#heads = heads;
      const missing = NEEDED.filter((head) => !heads.includes(head));
      for (const head of missing)
        this.#say(record.line, head, "", `a column ${head}`, "Add it.", "refused");
      return missing.length === 0;
    }
    this.#row(record, this.#heads);
    return true;
  }

  readings(): readonly Reading[] {
    return Object.keys(this.#meters).flatMap((meter) => [
      ...this.#amountsOf(meter),
      ...this.#dialOf(meter),
    ]);
  }

  #row(record: CsvRecord, heads: readonly string[]): void {
    const cell = (head: string): string => (record.fields[heads.indexOf(head)] ?? "").trim();
    const refuse = (column: string, expected: string, remedy: string): void => {
      this.#say(record.line, column, cell(column), expected, remedy, "set-aside");
    };
    const name = cell("meter");
    const meter = this.#meters[name];
    if (meter === undefined) {
      const known = Object.keys(this.#meters).join(", ");
      refuse("meter", `a meter of the plant file: ${known}`, "Correct the name or add the meter.");
      return;
    }
    if (meter.quantity === "gas" && meter.basis === undefined) {
      refuse(
        "meter",
        "a meter of gas with its basis, net or gross",
        "Add `basis` to it in plant.yaml.",
      );
      return;
    }
    const dial = meter.kind === "register";
    const to = readDay(cell("to"), "ymd");
    const from = dial && isBlank(cell("from")) ? to : readDay(cell("from"), "ymd");
    if (from === undefined) {
      refuse("from", "a day such as 2026-01-01", "Correct the date.");
      return;
    }
    if (to === undefined || to < from) {
      refuse("to", "a day not before `from`", "Correct the date.");
      return;
    }
    const below = meter.quantity === "cod" && isLimit(cell("reading"));
    const read = readNumber(
      below ? cell("reading").replace(/^[<≤]=?\s*/u, "") : cell("reading"),
      {},
      undefined,
      undefined,
    );
    if (!("number" in read) || !(read.number >= 0)) {
      refuse(
        "reading",
        dial ? "a figure on the dial of 0 or more" : "an amount of 0 or more",
        dial
          ? "Give the figure as it stands on the dial."
          : "Give the amount over the period, or say `kind: register` at the meter in plant.yaml.",
      );
      return;
    }
    const factor = amountPerUnit(meter, cell("unit"), this.#conditions);
    if (typeof factor !== "number") {
      refuse("unit", `a unit of ${meter.quantity}: ${factor.reason}`, factor.remedy);
      return;
    }
    const quality = cell("quality").toLowerCase();
    if (!["", "read", "estimated", "corrected"].includes(quality)) {
      refuse("quality", "read, estimated, corrected, or blank", "Correct the word.");
      return;
    }
    this.#unitsOf(name, record.line, cell("unit"));
    const estimated = quality === "estimated";
    if (dial) {
      const anew = this.#anewOf(cell, refuse);
      if (anew === false) return;
      this.#dial(name, cell("unit"), factor).push({
        line: record.line,
        day: to,
        figure: read.number,
        ...(anew === undefined ? {} : { anew }),
        estimated,
      });
      return;
    }
    const rows = this.#amounts.get(name) ?? [];
    this.#amounts.set(name, rows);
    rows.push({
      meter: name,
      from,
      to,
      amount: read.number * factor,
      ...(estimated ? { estimated: true as const } : {}),
      ...(below ? { below: true as const } : {}),
      line: record.line,
      corrected: quality === "corrected",
    });
  }

  // First figure of a new meter; undefined where none was changed, false where it is not told.
  #anewOf(
    cell: (head: string) => string,
    refuse: (column: string, expected: string, remedy: string) => void,
  ): number | undefined | false {
    const event = cell("event").toLowerCase();
    if (event === "") return undefined;
    if (event !== "swap") {
      refuse("event", "swap, or blank", "Correct the word.");
      return false;
    }
    const anew = readNumber(cell("register"), {}, undefined, undefined);
    if ("number" in anew && anew.number >= 0) return anew.number;
    refuse(
      "register",
      "the first figure of the new meter where meters were changed",
      "Give it; most begin at 0.",
    );
    return false;
  }

  #dial(name: string, unit: string, factor: number): DialReading[] {
    const known = this.#dials.get(name);
    if (known !== undefined) return known.rows;
    const rows: DialReading[] = [];
    this.#dials.set(name, { unit, factor, rows });
    return rows;
  }

  #unitsOf(meter: string, line: number, unit: string): void {
    const before = this.#units.get(meter);
    if (before === undefined) this.#units.set(meter, unit);
    else if (before !== unit)
      this.#say(
        line,
        "unit",
        unit,
        `${before}, as in the rows of ${meter} before`,
        "Check whether the unit or the figure is wrong; it was read as it stands.",
        "warning",
        "meter-two-units",
      );
  }

  // A corrected reading takes the place of those of the same days; of others that overlap, the first stays.
  #amountsOf(meter: string): readonly Reading[] {
    const kept: AmountRow[] = [];
    const rows = this.#amounts.get(meter) ?? [];
    const sample = this.#meters[meter]?.quantity === "cod";
    for (const row of [
      ...rows.filter((one) => one.corrected),
      ...rows.filter((one) => !one.corrected),
    ]) {
      const other = sample
        ? undefined
        : kept.find(({ from, to }) => from <= row.to && row.from <= to);
      if (other === undefined) kept.push(row);
      else if (!other.corrected || row.corrected)
        this.#say(
          row.line,
          "from",
          row.from,
          `days that no other row of ${meter} counts; line ${other.line} has ${other.from} to ${other.to}`,
          "Correct the days, or mark the right row as corrected.",
          "set-aside",
          "meter-overlap",
        );
    }
    return kept
      .sort((a, b) => a.line - b.line)
      .map(({ line: _, corrected: __, ...reading }) => reading);
  }

  #dialOf(meter: string): readonly Reading[] {
    const dial = this.#dials.get(meter);
    if (dial === undefined) return [];
    const { steps, faults } = dialSteps(this.#meters[meter] ?? {}, dial.rows);
    for (const { line, figure, before } of faults)
      this.#say(
        line,
        "reading",
        String(figure),
        `a figure of ${meter} not below the one before, ${before}`,
        "Correct it; say `digits` at the meter where its dial begins anew, or `event` swap where it was changed.",
        "set-aside",
        "meter-runs-back",
      );
    return steps.map(({ from, to, steps: moved, estimated }) => ({
      meter,
      from,
      to,
      amount: moved * dial.factor,
      ...(estimated ? { estimated: true as const } : {}),
    }));
  }

  #say(
    line: number,
    column: string,
    value: string,
    expected: string,
    remedy: string,
    severity: Problem["severity"],
    code = `meter-${column}`,
  ): void {
    const file = this.#name;
    this.problems.push({ code, severity, file, line, column, value, expected, remedy });
  }
}
