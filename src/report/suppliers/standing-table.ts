/**
 * The table of page one: suppliers at the mix, beside what they are as they stand and what their meters say.
 */

import type { IndicatorResult, SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import { borneOut } from "../../suppliers/borne-out.js";
import type { Candidate } from "../../suppliers/candidate.js";
import { plainRatio, siteSums } from "../../suppliers/flags.js";
import { asShown, UNCONDITIONAL } from "../../suppliers/standings.js";
import type { Block, Cell } from "../document.js";
import { type FigureDesk, type Noted, numberCell, textCell } from "../figure-desk.js";
import { formatNumber, formatPercent } from "../format.js";
import {
  chancePair,
  NONE,
  printingOf,
  type Ranged,
  sameAs,
  scaled,
  withInterval,
} from "./supplier-tables.js";
import { capital, listed, ownShare, signedWords } from "./supplier-words.js";

/**
 * Table C0: suppliers at the mix.
 *
 * @param compared - the comparison
 * @param result - the indicator
 * @param desk - takes the figures
 * @returns the table
 */
export function standingTable(
  compared: SuppliersCompared,
  result: IndicatorResult,
  desk: FigureDesk,
): Block {
  const { unit, scale } = printingOf(result);
  const { ranked, unranked } = result.standings;
  const rows = [...asShown(ranked), ...asShown(unranked)].map((one): readonly Cell[] => {
    const candidate = compared.candidates.find(({ alias }) => alias === one.alias);
    const supplier = result.suppliers.find(({ alias }) => alias === one.alias);
    const id = `${result.id}.${one.alias}`;
    return [
      textCell(one.alias, true),
      crudeCell(supplier, (range) => desk.range(`${id}.crude`, scaled(range, scale), unit)),
      // Of less than half of the mix there is a value, but of another mix.
      one.value === undefined || one.chances === undefined
        ? NONE
        : withInterval(desk.range(`${id}.value`, scaled(one.value, scale), unit)),
      numberCell(candidate === undefined ? "–" : meteredCell(candidate, result)),
      numberCell(chancePair(one)),
      textCell(one.chances === undefined ? "no place" : sameAs(one, ranked)),
      candidate === undefined ? NONE : numberCell(formatPercent(ownShare(candidate, result.id))),
      numberCell(supplier?.rating === undefined ? "–" : formatNumber(supplier.rating.rating, 1)),
      numberCell(
        `${formatPercent(one.covered)}${one.chances !== undefined && one.covered < UNCONDITIONAL ? ", conditional" : ""}`,
      ),
    ];
  });
  const [quantity] = compared.candidates.flatMap(
    ({ given }) => borneOut(siteSums(given.pack), result.id).quantity ?? [],
  );
  return {
    kind: "table",
    id: `standing-${result.id}`,
    caption: `${capital(result.words)}, ${unit}: medians with 95 % intervals. ${quantity === undefined ? "No meter bears on it. " : `Metered: site meters of ${quantity}, ${meterUnit(quantity)}, and times what lots come to. `}Takes least: chance with unsaid settings drawn / at their unfavourable end. Data: mean of scores from 1, stated by the supplier for this plant, unchecked, to 5, guessed. ${signedSentence(compared.candidates)}`,
    head: [
      textCell("Supplier"),
      numberCell("As it stands"),
      numberCell("At the mix"),
      numberCell("Metered"),
      numberCell("Takes least, drawn / at end"),
      textCell("Not told apart from"),
      numberCell("Own numbers"),
      numberCell("Data"),
      numberCell("Mix covered"),
    ],
    rows,
    widths: [1.75, 1.8, 1.8, 1.15, 1.75, 1.9, 0.9, 0.6, 0.95],
  };
}

// As it stands a house that leaves washing out takes little; the number would be of another thing.
function crudeCell(
  supplier: IndicatorResult["suppliers"][number] | undefined,
  noted: (range: Ranged) => Noted,
): Cell {
  if (supplier === undefined) return NONE;
  return supplier.holed === undefined
    ? withInterval(noted(supplier.crude))
    : numberCell(`–, ${listed(supplier.holed)} not counted`);
}

/**
 * What the site meter of an indicator shows.
 *
 * @param candidate - the supplier
 * @param result - the indicator
 * @returns meter over accepted area, and times what lots come to
 */
export function meterWords(candidate: Candidate, result: Pick<IndicatorResult, "id">): string {
  const { quantity, perArea, ratio } = borneOut(siteSums(candidate.given.pack), result.id);
  if (quantity === undefined) return "–";
  if (perArea === undefined || ratio === undefined) return "no readings";
  return `${plainRatio(perArea)} ${meterUnit(quantity)}, ${plainRatio(ratio)}×`;
}

function meteredCell(candidate: Candidate, result: Pick<IndicatorResult, "id">): string {
  const { quantity } = borneOut([], result.id);
  const words = meterWords(candidate, result);
  return quantity === undefined ? words : words.replace(` ${meterUnit(quantity)},`, ",");
}

function meterUnit(quantity: "water" | "electricity"): string {
  return quantity === "water" ? "L/m²" : "kWh/m²";
}

// One sentence in place of a column in which most say the same.
function signedSentence(candidates: readonly Candidate[]): string {
  const by = new Map<string, string[]>();
  for (const { alias, given } of candidates) {
    const words = signedWords(given);
    by.set(words, [...(by.get(words) ?? []), alias]);
  }
  return [...by]
    .map(([words, names]) =>
      names.length === candidates.length
        ? `All are ${words}.`
        : `${capital(words)}: ${names.length > NAMED ? `${names.length} of them` : listed(names)}.`,
    )
    .join(" ");
}

/** Names in a sentence before they are counted. */
const NAMED = 4;
