/**
 * One record of the log against the columns: a lot, or everything that is wrong with it.
 */

import type { Problem } from "../problems/problem.js";
import { unitFactor } from "../units/convert.js";
import { isBlank, readDay, readNumber } from "./cells.js";
import { type Column, COLUMNS } from "./columns.js";
import type { CsvRecord } from "./csv.js";
import type { LogDialect } from "./dialect.js";
import { readFibre } from "./fibre.js";
import type { FibreShare, Lot, LotKind } from "./lot.js";

/** What the plant file and the factors know. */
export interface LogRules {
  /** Routes of the plant file. */
  readonly routes: ReadonlySet<string>;
  /** Fibres of the factor set. */
  readonly fibres: ReadonlySet<string>;
  /** Sites of the plant file. */
  readonly sites: ReadonlySet<string>;
  /** Day after which no lot can have been printed, ISO 8601. */
  readonly today: string;
}

/** Where each of our columns stands in the records of a file. */
export interface Layout {
  /** File as the user named it. */
  readonly file: string;
  /** Column, place in the record (-1 for a constant), the exporter's heading, factor to the logged unit. */
  readonly columns: readonly {
    readonly column: Column;
    readonly at: number;
    readonly heading: string;
    readonly factor: number;
    readonly constant: string;
  }[];
  /** Number of headings. */
  readonly width: number;
}

/** Verdict on a record. */
export interface Verdict {
  /** The lot; absent when the row is set aside. */
  readonly lot?: Lot;
  /** What is wrong, or was corrected. */
  readonly problems: readonly Problem[];
}

const KINDS: readonly LotKind[] = ["production", "reprint", "overhead"];

/**
 * Judges a record.
 *
 * @param record - the record
 * @param layout - where columns stand
 * @param dialect - how the log is written
 * @param rules - what is known
 * @returns a lot with what was corrected, or what is wrong
 */
export function judgeRow(
  record: CsvRecord,
  layout: Layout,
  dialect: LogDialect,
  rules: LogRules,
): Verdict {
  const problems: Problem[] = [];
  const say = (
    column: string | undefined,
    value: string,
    code: string,
    expected: string,
    remedy: string,
    severity: Problem["severity"] = "set-aside",
  ): void => {
    problems.push({
      code,
      severity,
      file: layout.file,
      line: record.line,
      ...(column === undefined ? {} : { column }),
      value,
      expected,
      remedy,
    });
  };
  if (record.fields.length !== layout.width) {
    // A trailing separator at the end of each line is an exporter's habit, not a fault.
    const extra = record.fields.slice(layout.width);
    if (record.fields.length < layout.width || extra.some((field) => field.trim() !== "")) {
      say(
        undefined,
        String(record.fields.length),
        "row-width",
        `${layout.width} fields`,
        "Look for a separator inside a text without quotes, or a line that is cut off.",
      );
      return { problems };
    }
  }
  const first = record.fields[0]?.trim() ?? "";
  if (/^(total|totals|sum|summe|gesamt|toplam|totale|somme|Σ)\b/i.test(first)) {
    say(
      layout.columns[0]?.heading,
      first,
      "row-of-totals",
      "one lot a row",
      "Leave rows of totals out of the export; nothing was counted twice.",
    );
    return { problems };
  }
  const values: Record<string, string | number | undefined> = {};
  let blend: readonly FibreShare[] = [];
  for (const { column, at, heading, factor, constant } of layout.columns) {
    const cell = (at < 0 ? constant : (record.fields[at] ?? "")).trim();
    if (isBlank(cell)) {
      if (column.required)
        say(
          heading,
          cell,
          `missing-${column.name}`,
          column.words,
          "Fill the cell or leave the row out.",
        );
      continue;
    }
    switch (column.kind) {
      case "text":
        values[column.name] = cell;
        break;
      case "number": {
        const read = readNumber(cell, dialect, column.target, column.unit);
        if ("fault" in read)
          say(
            heading,
            cell,
            "not-a-number",
            read.fault,
            "Correct the cell, or blank it when nothing was measured.",
          );
        if (!("number" in read)) break;
        if (read.corrected === true)
          say(
            heading,
            cell,
            "unit-in-cell",
            `a bare number in ${column.unit ?? ""}`,
            "It was converted; put the unit into the heading.",
            "corrected",
          );
        const number = read.number * factor;
        const fault = rangeFault(column, number);
        if (fault === undefined) values[column.name] = number * (column.scale ?? 1);
        else say(heading, cell, fault.code, fault.expected, "Correct the value or its unit.");
        break;
      }
      case "date": {
        const day = readDay(cell, dialect.dates ?? "ymd");
        if (day === undefined)
          say(
            heading,
            cell,
            "no-such-day",
            `a day written as ${dialect.dates ?? "ymd"}, such as ${example(dialect.dates ?? "ymd")}`,
            "Correct the date, or name the order with `dates:` in plant.yaml.",
          );
        else if (day > rules.today)
          say(heading, cell, "future-date", `a day not after ${rules.today}`, "Correct the date.");
        else values[column.name] = day;
        break;
      }
      case "fibre": {
        const read = readFibre(dialect.values?.fibre?.[cell] ?? cell, rules.fibres);
        if ("unknown" in read)
          say(
            heading,
            cell,
            "unknown-fibre",
            `fibres such as ${[...rules.fibres].slice(0, 8).join(", ")}`,
            "Correct the word, or map it with `values: { fibre: … }` in plant.yaml.",
          );
        else if ("sum" in read)
          say(
            heading,
            cell,
            "fibre-shares",
            `a share for each fibre, adding up to 100, not ${Math.round(read.sum * 10) / 10}`,
            "Write it as `cotton 60 polyester 40`.",
          );
        else {
          blend = read.blend;
          if (read.corrected)
            say(
              heading,
              cell,
              "fibre-shares-scaled",
              "shares adding up to 100",
              "They were scaled to 100.",
              "corrected",
            );
        }
        break;
      }
      case "route":
      case "site":
      case "kind": {
        const word = dialect.values?.[column.kind]?.[cell] ?? cell;
        const known: ReadonlySet<string> =
          column.kind === "route"
            ? rules.routes
            : column.kind === "site"
              ? rules.sites
              : new Set(KINDS);
        if (known.has(word)) values[column.name] = word;
        else
          say(
            heading,
            cell,
            `unknown-${column.kind}`,
            `one of ${[...known].join(", ")}`,
            `Correct the word, or map it with \`values: { ${column.kind}: … }\` in plant.yaml.`,
          );
        break;
      }
    }
  }
  const length = number(values, "length_m");
  const rejected = number(values, "rejected_m");
  if (length !== undefined && rejected !== undefined && rejected > length) {
    say(
      "rejected_m",
      String(rejected),
      "rejected-above-length",
      `at most the length, ${length} m`,
      "Correct one of the two.",
    );
  }
  const site = text(values, "site") || (rules.sites.size === 1 ? ([...rules.sites][0] ?? "") : "");
  if (site === "")
    say(
      "site",
      "",
      "missing-site",
      `one of ${[...rules.sites].join(", ")}`,
      "Add the column `site`: the plant file has several.",
    );
  if (problems.some((problem) => problem.severity === "set-aside")) return { problems };
  return { lot: lotFrom(values, blend, site, layout.file, record.line), problems };
}

function lotFrom(
  values: Readonly<Record<string, string | number | undefined>>,
  fibre: readonly FibreShare[],
  site: string,
  file: string,
  line: number,
): Lot {
  const reprintOf = text(values, "reprint_of");
  const kind = text(values, "kind") as LotKind | "";
  return {
    lot: text(values, "lot"),
    date: text(values, "date"),
    site,
    client: text(values, "client"),
    order: text(values, "order"),
    fabric: text(values, "fabric"),
    fibre,
    gsm: number(values, "gsm") ?? NaN,
    width: number(values, "width_m") ?? NaN,
    length: number(values, "length_m") ?? NaN,
    rejected: number(values, "rejected_m"),
    route: text(values, "route"),
    kind: kind === "" ? (reprintOf === "" ? "production" : "reprint") : kind,
    ink: number(values, "ink_ml"),
    coverage: number(values, "coverage_pct"),
    pickup: number(values, "pickup_pct"),
    fixTemp: number(values, "fix_temp_c"),
    dwell: number(values, "dwell_s"),
    liquorRatio: number(values, "liquor_ratio"),
    baths: number(values, "baths"),
    speed: number(values, "speed_m_min"),
    readings: {
      electricity: number(values, "electricity_kwh"),
      water: number(values, "water_l"),
      gas: number(values, "gas_kwh"),
      steam: number(values, "steam_kg"),
    },
    fastness: {
      rubDry: number(values, "rub_dry"),
      rubWet: number(values, "rub_wet"),
      wash: number(values, "wash_fastness"),
    },
    reprintOf,
    note: text(values, "note"),
    place: { file, line },
  };
}

function text(values: Readonly<Record<string, string | number | undefined>>, name: string): string {
  return String(values[name] ?? "");
}

function number(
  values: Readonly<Record<string, string | number | undefined>>,
  name: string,
): number | undefined {
  const value = values[name];
  return typeof value === "number" ? value : undefined;
}

function rangeFault(
  column: Column,
  value: number,
): { readonly code: string; readonly expected: string } | undefined {
  const [low, high] = column.range ?? [-Infinity, Infinity];
  const unit = column.unit === "1" ? "" : ` ${column.unit ?? ""}`;
  if (column.above === true && !(value > low)) {
    return {
      code: `${column.name.split("_")[0] ?? ""}-not-positive`,
      expected: `a ${column.words} above ${low}${unit}`,
    };
  }
  if (!(value >= low && value <= high)) {
    return { code: "out-of-range", expected: `${column.words} from ${low} to ${high}${unit}` };
  }
  if (column.step !== undefined && !Number.isInteger(value / column.step)) {
    return { code: "off-step", expected: `${column.words} in steps of ${column.step}` };
  }
  return undefined;
}

function example(order: "ymd" | "dmy" | "mdy"): string {
  return { ymd: "2026-01-31", dmy: "31.01.2026", mdy: "01/31/2026" }[order];
}

/** A layout, or why the headings cannot be used. */
export interface LaidOut {
  /** The layout; absent when a required column is missing. */
  readonly layout?: Layout;
  /** Faults of the headings. */
  readonly problems: readonly Problem[];
  /** Headings that are mapped to nothing. */
  readonly unused: readonly string[];
}

/**
 * Finds the columns in a row of headings.
 *
 * @param file - file as the user named it
 * @param record - the row of headings
 * @param dialect - how the log is written
 * @returns the layout, or what is missing
 */
export function layOut(file: string, record: CsvRecord, dialect: LogDialect): LaidOut {
  const headings = record.fields.map((field) => field.trim());
  const folded = headings.map((heading) => heading.toLowerCase());
  const problems: Problem[] = [];
  const used = new Set<number>();
  const columns: Layout["columns"][number][] = [];
  const say = (
    column: string,
    code: string,
    value: string,
    expected: string,
    remedy: string,
  ): void => {
    problems.push({
      code,
      severity: "refused",
      file,
      line: record.line,
      column,
      value,
      expected,
      remedy,
    });
  };
  for (const column of COLUMNS) {
    const mapped = dialect.columns?.[column.name];
    const wanted =
      mapped === undefined ? column.name : typeof mapped === "string" ? mapped : mapped.heading;
    const constant = dialect.constants?.[column.name];
    const at = folded.indexOf(wanted.trim().toLowerCase());
    if (at >= 0 && folded.indexOf(folded[at] ?? "", at + 1) >= 0) {
      say(
        wanted,
        "heading-twice",
        wanted,
        "every heading once",
        "Rename or remove one of the two columns.",
      );
    }
    if (at < 0 && constant === undefined) {
      if (column.required || mapped !== undefined) {
        say(
          wanted,
          "missing-column",
          headings.join(", "),
          `a column ${wanted} (${column.words})`,
          "Add it to the export, or map the heading under `log: columns:` in plant.yaml.",
        );
      }
      continue;
    }
    if (at >= 0) used.add(at);
    let factor = 1;
    const unit = typeof mapped === "object" ? mapped.unit : undefined;
    if (unit !== undefined && column.target !== undefined && column.unit !== undefined) {
      const from = unitFactor(unit, column.target);
      const into = unitFactor(column.unit, column.target);
      if (typeof from !== "number")
        say(wanted, "unknown-unit", unit, `a unit of ${column.words}: ${from.reason}`, from.remedy);
      else factor = from / (typeof into === "number" ? into : 1);
    }
    columns.push({
      column,
      at,
      heading: at < 0 ? column.name : (headings[at] ?? ""),
      factor,
      constant: constant ?? "",
    });
  }
  const unused = headings.filter((heading, at) => !used.has(at) && heading !== "");
  return problems.length > 0
    ? { problems, unused }
    : { layout: { file, columns, width: headings.length }, problems, unused };
}
