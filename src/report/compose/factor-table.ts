/**
 * Factors and settings used, with value, doubt, source and quality.
 */

import { leafRange } from "../../account/draws.js";
import type { Leaf } from "../../numbers/quantity.js";
import { datedStream } from "../../plant/dated.js";
import type { Block, Cell, Run } from "../document.js";
import { textCell } from "../figure-desk.js";
import { formatNumber } from "../format.js";
import type { ReportDesk } from "./desk.js";
import { leafUnit, valueText } from "./units.js";

/** Where a number of the table comes from. */
type Standing = "mill" | "own estimate" | "memory" | "source";

interface Row {
  readonly name: string;
  readonly leaf: Leaf;
  readonly standing: Standing;
}

/** How many numbers of a report rest on what. */
export interface FactorCounts {
  /** Numbers drawn: with doubt. */
  readonly all: number;
  /** Given by the mill. */
  readonly mill: number;
  /** Own estimates and common practice: no published source. */
  readonly own: number;
  /** With a source that was not re-read. */
  readonly recalled: number;
}

/**
 * Counts the numbers of the report by what they rest on.
 *
 * @param desk - the report
 * @returns counts
 */
export function factorCounts(desk: ReportDesk): FactorCounts {
  const rows = rowsOf(desk).filter(({ leaf }) => !isFixed(leaf));
  const count = (of: Standing): number => rows.filter(({ standing }) => standing === of).length;
  return {
    all: rows.length,
    mill: count("mill"),
    own: count("own estimate"),
    recalled: count("memory"),
  };
}

function rowsOf(desk: ReportDesk): readonly Row[] {
  const { account, factors, yields } = desk.input;
  const leaves = new Map<string, Leaf>();
  const all = [
    ...account.program.nodes.leaves().map(({ leaf }) => leaf),
    ...(yields?.given ?? []).map(({ leaf }) => leaf),
  ];
  const spreads = new Map<string, Set<string>>();
  for (const { factor, spread, provenance } of all) {
    if (provenance !== "default") continue;
    const seen = spreads.get(factor) ?? new Set();
    spreads.set(factor, seen.add(JSON.stringify(spread)));
  }
  for (const leaf of all) {
    if (leaf.provenance === "constant") continue;
    // Owners that share a default are one row; those of other values are rows of their own.
    const isShared = leaf.provenance === "default" && (spreads.get(leaf.factor)?.size ?? 0) < 2;
    const name = isShared ? leaf.factor : datedStream(leaf);
    if (!leaves.has(name)) leaves.set(name, leaf);
  }
  return [...leaves]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([name, leaf]) => ({
      name,
      leaf,
      standing: standingOf(leaf, factors.sources.get(leaf.source)?.read),
    }));
}

function standingOf(leaf: Leaf, read: string | undefined): Standing {
  if (leaf.provenance === "plant") return "mill";
  if (read === "memory") return "memory";
  return read === "own estimate" || read === "common practice" ? "own estimate" : "source";
}

/**
 * Factors and settings used, and the sources they come from.
 *
 * @param desk - the report
 * @returns a sentence and two tables
 */
export function factorBlocks(desk: ReportDesk): readonly Block[] {
  const { factors } = desk.input;
  const counts = factorCounts(desk);
  const rows = rowsOf(desk);
  const shown = rows.filter((row) => !isNothing(row));
  const recalled = shown.filter(({ standing }) => standing === "memory").length;
  const used = [
    ...new Set(rows.map(({ leaf }) => leaf.source).filter((key) => factors.sources.has(key))),
  ].sort();
  const whole = (count: number): string => formatNumber(count, 0);
  return [
    {
      kind: "paragraph",
      runs: [
        {
          kind: "text",
          text: `Of ${whole(counts.all)} numbers drawn, ${whole(counts.mill)} were given by the mill, ${whole(counts.own)} are our own estimates or trade practice without a published source, ${whole(counts.recalled)} have a source that was not re-read, and ${whole(counts.all - counts.mill - counts.own - counts.recalled)} were read at theirs. ${whole(rows.length - counts.all)} more are taken without doubt.`,
        },
      ],
    },
    {
      kind: "table",
      id: "factors",
      caption: `Settings and factors used: the value as given, the median and the 95 % interval of what is drawn (a lopsided interval sets the median off the value given), who gave it, and five scores of quality from 1 to 5 (reliability, completeness, time, place, technology). ${whole(recalled)} of ${whole(shown.length)} are marked “from memory”: the figure was not re-read at its source.`,
      behind: true,
      head: [
        "Setting or factor",
        "Given",
        "Median drawn",
        "95 % interval",
        "Source",
        "Quality",
      ].map((text) => textCell(text)),
      rows: shown.map((row) => rowCells(desk, row)),
      widths: [5.2, 1.5, 1.1, 1.7, 1.7, 1],
    },
    ...nothingList(rows.filter(isNothing)),
    {
      kind: "table",
      id: "sources",
      caption:
        "Sources. “memory” means that the figure was not re-read at its source; “common practice” has no published source.",
      behind: true,
      head: ["Key", "Source", "Read"].map((text) => textCell(text)),
      rows: used.map((key) => sourceCells(desk, key)),
      widths: [2.2, 5, 1.2],
    },
  ];
}

function isFixed(leaf: Leaf): boolean {
  const { low, high } = leafRange(leaf);
  return low === high;
}

// A row each for what a substance does not hold would bury the numbers that count.
function isNothing({ leaf, standing }: Row): boolean {
  return standing !== "mill" && leaf.spread.value === 0 && isFixed(leaf);
}

function nothingList(rows: readonly Row[]): readonly Block[] {
  if (rows.length === 0) return [];
  return [
    {
      kind: "paragraph",
      tone: "small",
      runs: [
        {
          kind: "text",
          text: `Taken as nothing, without doubt (${formatNumber(rows.length, 0)}): `,
        },
        ...rows.flatMap(({ name }, index): readonly Run[] => [
          ...(index === 0 ? [] : [{ kind: "text" as const, text: ", " }]),
          { kind: "text", text: name, style: "code" },
        ]),
        { kind: "text", text: "." },
      ],
    },
  ];
}

function rowCells(desk: ReportDesk, { name, leaf, standing }: Row): readonly Cell[] {
  const { median, low, high } = leafRange(leaf);
  const value = desk.input.factors.factors
    .get(leaf.factor)
    ?.values.find((entry) => entry.source === leaf.source);
  const quality =
    value === undefined || standing === "mill" ? "–" : Object.values(value.quality).join(" ");
  const unit = leafUnit(leaf);
  return [
    {
      strong: true,
      runs: [
        { kind: "text", text: `${wordsOf(leaf)} ` },
        { kind: "text", text: name, style: "code" },
      ],
    },
    textCell(`${givenText(leaf.spread.value)}${unit === "1" ? "" : ` ${unit}`}`),
    textCell(low === high ? "fixed" : valueText(median, "1")),
    textCell(low === high ? "–" : `${valueText(low, "1")} to ${valueText(high, "1")}`),
    textCell(
      standing === "mill"
        ? millSource(leaf)
        : `${leaf.source}${standing === "memory" ? ", from memory" : ""}`,
    ),
    textCell(quality),
  ];
}

// What the plant file says of the number, unless it says only where it stands.
function millSource({ source }: Leaf): string {
  return source.startsWith("plant.yaml") ? "the mill" : `the mill: ${source}`;
}

/**
 * Words for a number; a price has none of its own and is named by what it prices.
 *
 * @param leaf - the number
 * @returns plain words
 */
export function wordsOf(leaf: Leaf): string {
  const price = /^tariffs\.(?:ink\.)?(?:fuel\.)?(.+)$/.exec(leaf.factor)?.[1];
  if (price === undefined) return leaf.words;
  const ink = leaf.factor.startsWith("tariffs.ink.") ? " ink" : "";
  return `price of ${price === "labour" ? "a machine hour" : price.replaceAll("-", " ")}${ink}`;
}

// As written, not to three digits: a reader looks for the number of the plant file.
function givenText(value: number): string {
  const text = String(value);
  return text.length <= 8 ? text.replace("-", "\u2212") : valueText(value, "1");
}

function sourceCells(desk: ReportDesk, key: string): readonly Cell[] {
  const source = desk.input.factors.sources.get(key);
  const year = source?.year === undefined ? "" : ` (${source.year})`;
  // A text without an author is named by its title and the place where it was read.
  const named = source !== undefined && source.author !== "not named";
  const author = named ? `${source.author}: ` : "";
  const where = named || source?.where === undefined ? "" : `, ${source.where}`;
  return [
    textCell(key, true),
    textCell(
      `${author}${source?.title ?? ""}${year}${where}${source?.licence === undefined ? "" : `. ${source.licence}`}`,
    ),
    textCell(source?.read ?? ""),
  ];
}
