/**
 * Tables of conditions, mix, boundary, checks, questions and evidence.
 */

import { DUTIES } from "../../suppliers/boundary.js";
import type { SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import type { Block } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatPercent } from "../format.js";
import { sharedBoundaries } from "./many-suppliers.js";
import { asksOf } from "./supplier-questions.js";
import { gateWords, questionWords, testWords, verifiedWords } from "./supplier-words.js";

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
 * Table C-T4: checks, as questions.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function flagTable(compared: SuppliersCompared): Block {
  const { candidates, flags } = compared;
  const rows = candidates.flatMap(({ alias }, s) =>
    (flags[s] ?? [])
      .filter(({ outcome }) => outcome === "flag")
      .map((flag) => [
        textCell(alias, true),
        textCell(testWords(flag.id)),
        textCell(questionWords(flag)),
      ]),
  );
  return {
    kind: "table",
    id: "checks",
    caption:
      "Checks that ask something. Each is a question and no finding of fault; there may be a good answer.",
    head: [textCell("Supplier"), textCell("Looked for"), textCell("Question")],
    rows:
      rows.length > 0
        ? rows
        : [[textCell("all", true), textCell("every check"), textCell("nothing to ask")]],
    widths: [1, 1.4, 3],
  };
}

/**
 * Verification of all packs, check by check.
 *
 * @param compared - the comparison
 * @returns the table
 */
export function evidenceTable(compared: SuppliersCompared): Block {
  const { candidates } = compared;
  return {
    kind: "table",
    id: "packs",
    caption: "Evidence as it came.",
    head: [
      textCell("Supplier"),
      textCell("Period"),
      numberCell("Lots"),
      numberCell("Rows set aside"),
      textCell("Checked"),
      textCell("SHA-256 of the pack"),
    ],
    rows: candidates.map(({ alias, given }) => [
      textCell(alias, true),
      textCell(`${given.pack.period.from} to ${given.pack.period.to}`),
      numberCell(String(given.pack.totals.lots)),
      numberCell(String(given.pack.counts.aside)),
      textCell(verifiedWords(given)),
      textCell(given.verified?.sealed?.seal.digest ?? "not sealed"),
    ]),
    widths: [1.4, 1.8, 0.7, 0.9, 1.5, 2.4],
  };
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
