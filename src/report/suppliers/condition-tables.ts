/**
 * Tables of conditions, mix, boundary, checks, questions and evidence.
 */

import { DUTIES } from "../../suppliers/boundary.js";
import type { SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import type { Block } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatPercent } from "../format.js";
import { sharedBoundaries } from "./many-suppliers.js";
import { type Flag, type FlagId, FLAGS } from "../../suppliers/flags.js";
import { asksOf } from "./supplier-questions.js";
import { testWords } from "./flag-words.js";
import { gateWords, listed, verifiedWords } from "./supplier-words.js";

/** Names in a cell before they are counted. */
const ASKED = 6;

/** Digits of a digest shown in a column. */
const SHORT = 16;

/**
 * Conditions of comparing.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function gateTable(compared: SuppliersCompared): Block {
  const { gate } = compared;
  return {
    kind: "table",
    id: "conditions",
    caption: "Conditions of comparing, judged before any number.",
    head: [textCell("Condition"), textCell("How it is met")],
    rows: [
      ...gate.lines.map((line) => {
        const [what, how] = gateWords(line);
        return [textCell(what, true), textCell(how)];
      }),
      ...gate.refused.map(({ alias, why, places }) => [
        textCell(`${alias} stays out`, true),
        textCell(places.length === 0 ? why : `${why} (at ${places.slice(0, 4).join(", ")})`),
      ]),
    ],
    widths: [1, 2],
  };
}

/**
 * Table C-T1: the mix.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function mixTable(compared: SuppliersCompared): Block {
  const { mix } = compared;
  return {
    kind: "table",
    id: "mix",
    caption: `Reference mix: ${mix.name}. SHA-256 of strata and weights ${mix.digest}.`,
    head: [textCell("Stratum"), numberCell("Weight")],
    rows: mix.strata.map(({ words, weight }) => [
      textCell(words, true),
      numberCell(formatPercent(weight, 1)),
    ]),
    widths: [3, 1],
  };
}

/**
 * Table C-T3: what is in and out of the count.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function boundaryTable(compared: SuppliersCompared): Block {
  const { gate } = compared;
  return {
    kind: "table",
    id: "boundary-matrix",
    caption:
      "Steps that are counted, by supplier and route: in, at a partner, or out. A step that cloth cannot do without and is out leaves the route without a value.",
    head: [textCell("Supplier"), textCell("Route"), ...DUTIES.map((duty) => textCell(duty))],
    rows: sharedBoundaries(gate.boundary, compared.candidates.length).map(
      ({ names, row: { routeClass, counted, holes } }) => [
        textCell(names, true),
        textCell(routeClass),
        ...DUTIES.map((duty) => textCell(holes.includes(duty) ? "out: missing" : counted[duty])),
      ],
    ),
    widths: [1.9, 1.1, ...DUTIES.map(() => 1.05)],
  };
}

/**
 * Table C-T4: checks, and who is asked after them. The questions themselves stand by supplier in the next table.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function flagTable(compared: SuppliersCompared): Block {
  const { candidates, flags } = compared;
  const named = (id: FlagId, outcome: Flag["outcome"]): string => {
    const names = candidates.flatMap(({ alias }, s) =>
      (flags[s] ?? []).some((flag) => flag.id === id && flag.outcome === outcome) ? [alias] : [],
    );
    if (names.length === 0) return "nobody";
    return names.length > ASKED ? `${names.length} suppliers` : listed(names);
  };
  return {
    kind: "table",
    id: "checks",
    caption:
      "What was looked for, and who is asked. A question is no finding of fault; there may be a good answer.",
    head: [textCell("Looked for"), textCell("Asked"), textCell("Nothing to look at")],
    rows: FLAGS.map((id) => [
      textCell(testWords(id), true),
      textCell(named(id, "flag")),
      textCell(named(id, "not present")),
    ]),
    widths: [2.4, 2, 1.6],
  };
}

/**
 * Verification of all packs, check by check.
 *
 * @param compared - the comparison
 * @returns the table, and digests in full
 */
export function evidenceTables(compared: SuppliersCompared): readonly Block[] {
  const { candidates } = compared;
  const digestOf = ({ given }: SuppliersCompared["candidates"][number]): string | undefined =>
    given.verified?.sealed?.seal.digest;
  const digests: Block = {
    kind: "table",
    id: "digests",
    caption: "SHA-256 of the packs in full.",
    head: [textCell("Supplier"), textCell("SHA-256")],
    rows: candidates.map((one) => [
      textCell(one.alias, true),
      textCell(digestOf(one) ?? "not sealed"),
    ]),
    widths: [1, 3],
    behind: true,
  };
  const packs: Block = {
    kind: "table",
    id: "packs",
    caption: "Evidence as it came.",
    head: [
      textCell("Supplier"),
      textCell("Period"),
      numberCell("Lots"),
      numberCell("Rows set aside"),
      textCell("Checked"),
      textCell("SHA-256 begins"),
    ],
    rows: candidates.map((one) => {
      const { alias, given } = one;
      return [
        textCell(alias, true),
        textCell(`${given.pack.period.from} to ${given.pack.period.to}`),
        numberCell(String(given.pack.totals.lots)),
        numberCell(String(given.pack.counts.aside)),
        textCell(verifiedWords(given)),
        textCell(digestOf(one)?.slice(0, SHORT) ?? "not sealed"),
      ];
    }),
    widths: [1.3, 1.7, 0.6, 0.8, 2.6, 1.5],
  };
  return [packs, digests];
}

/**
 * Table C-T5: questions to each supplier.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function askTable(compared: SuppliersCompared): Block {
  const rows = compared.candidates.flatMap(({ alias }) =>
    asksOf(compared, alias).map(({ question, fix }) => [
      textCell(alias, true),
      textCell(question),
      textCell(fix),
    ]),
  );
  return {
    kind: "table",
    id: "questions",
    caption: "Questions to each supplier, with the smallest thing that would mend the gap.",
    head: [textCell("Supplier"), textCell("Gap or question"), textCell("Smallest fix")],
    rows:
      rows.length > 0 ? rows : [[textCell("all", true), textCell("nothing to ask"), textCell("")]],
    widths: [1, 3, 2],
  };
}
