/**
 * A supplier's own page: what the buyer may send back to it. No other supplier appears in it.
 */

import type {
  IndicatorResult,
  SupplierResult,
  SuppliersCompared,
} from "../../suppliers/compare-suppliers.js";
import type { Block, Cell, ReportDocument } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatInterval, formatNumber, formatPercent } from "../format.js";
import { meterWords } from "./standing-table.js";
import { printed, printingOf, type Ranged, scaled } from "./supplier-tables.js";
import { asksOf } from "./supplier-questions.js";
import { capital, chanceWords, listed, ownShare, verifiedWords } from "./supplier-words.js";

/** Settings shown of each indicator. */
const SHOWN = 6;

/**
 * Makes the page of one supplier.
 *
 * @param compared - the comparison
 * @param alias - the supplier
 * @param date - day of the comparison
 * @returns the document; undefined for a supplier that could not be compared
 */
export function supplierPage(
  compared: SuppliersCompared,
  alias: string,
  date: string,
): ReportDocument | undefined {
  const at = compared.candidates.findIndex((one) => one.alias === alias);
  const candidate = compared.candidates[at];
  if (candidate === undefined) return undefined;
  const { pack } = candidate.given;
  const covered = compared.covered[at] ?? 0;
  const asks = asksOf(compared, alias);
  const title = `${alias}: what we worked out from your evidence`;
  const blocks: readonly Block[] = [
    { kind: "heading", level: 1, id: "page", text: title },
    paragraph(
      `Evidence from ${pack.period.from} to ${pack.period.to}, ${pack.totals.lots} lots; ${verifiedWords(candidate.given)}. It covers ${formatPercent(covered)} of the mix that was asked for. Please check it and tell us what is wrong before it is used.`,
    ),
    ...compared.results.flatMap((result): readonly Block[] => {
      const own = result.suppliers[at];
      if (own === undefined) return [];
      return [
        {
          kind: "heading",
          level: 2,
          id: `own-${result.id}`,
          text: capital(result.words),
        },
        paragraph(standingWords(compared, result, alias)),
        paragraph(
          `${formatPercent(ownShare(candidate, result.id))} of it rests on numbers of your own. ${meteredWords(candidate, result)}`,
        ),
        strataTable(compared, result, own),
        unsaidTable(result, own),
      ];
    }),
    { kind: "heading", level: 2, id: "questions", text: "What we would ask you" },
    asks.length === 0
      ? paragraph("Nothing.")
      : {
          kind: "list",
          ordered: false,
          items: asks.map(({ question, fix }) => [{ kind: "text", text: `${question} ${fix}` }]),
        },
    paragraph(
      "Worked out from what you sent, under factors that are the same for all. A question is no finding of fault. An indicative calculation from data supplied by the user, not legal, financial, engineering or safety advice.",
    ),
  ];
  return {
    title,
    author: alias,
    language: "en",
    date,
    footer: `Mix ${compared.mix.digest.slice(0, 12)} · pack ${candidate.given.verified?.sealed?.seal.digest.slice(0, 12) ?? "not sealed"} · not reviewed`,
    blocks,
    figures: {},
  };
}

// Own value at the mix and own place; of the others only their number.
function standingWords(
  { results }: SuppliersCompared,
  result: IndicatorResult,
  alias: string,
): string {
  const { unit, scale } = printingOf(result);
  const { ranked } = result.standings;
  const at = ranked.findIndex((one) => one.alias === alias);
  const one = ranked[at];
  const holed = results[0]?.suppliers.find((own) => own.alias === alias)?.holed;
  if (one?.value === undefined || one.counted === undefined)
    return holed === undefined
      ? "Less than half of the mix is covered, so there is no value at the mix and no place."
      : `Your boundary leaves out ${listed(holed)}, so there is no value at the mix and no place.`;
  const values = `At the mix it comes to ${ranged(scaled(one.value, scale))} ${unit}; for the order it counts as ${ranged(scaled(one.counted, scale))} ${unit}.`;
  if (one.unborne === true)
    return `${values} No place is told, for lots explain less than half of your site meter, or show more than it, or none was read.`;
  const end = one.chances?.[at] ?? 0;
  const drawn = one.chancesDrawn?.[at] ?? 0;
  return `${values} Of ${ranked.length} compared, the least taken first, it stands at ${at + 1} in ${chanceWords(end)} of draws with unsaid settings at their unfavourable end, and in ${chanceWords(drawn)} with them drawn from their defaults.`;
}

function meteredWords(
  candidate: SuppliersCompared["candidates"][number],
  result: IndicatorResult,
): string {
  const words = meterWords(candidate, result);
  if (words === "–") return "No site meter bears on it.";
  return words === "no readings"
    ? "No readings of a site meter that bears on it were sent."
    : `Your site meters show ${words} what your lots come to.`;
}

function strataTable(
  { mix }: SuppliersCompared,
  result: IndicatorResult,
  own: SupplierResult,
): Block {
  const { unit, scale } = printingOf(result);
  return {
    kind: "table",
    id: `strata-${result.id}`,
    caption: `${capital(result.words)} by stratum, ${unit}: median with 95 % interval, and the value used for the order, where settings left unsaid stand at their unfavourable end.`,
    head: ["Stratum", "Weight in the mix", "Lots", "Value", "Value used for order"].map(
      (head, i) => (i < 1 ? textCell(head) : numberCell(head)),
    ),
    rows: own.cells.map((cell, k): readonly Cell[] => [
      textCell(mix.strata[k]?.words ?? "", true),
      numberCell(formatPercent(mix.strata[k]?.weight ?? 0, 1)),
      numberCell(String(cell.lots)),
      cell.value === undefined
        ? textCell(
            cell.hole === undefined ? "▨ nothing printed" : `no value: ${cell.hole} is not counted`,
          )
        : numberCell(ranged(scaled(cell.value, scale))),
      cell.counted === undefined ? textCell("") : numberCell(printed(scaled(cell.counted, scale))),
    ]),
    widths: [2.2, 1, 0.6, 1.8, 1],
  };
}

// Settings that count most, and all others with what they do together, so that the column adds up to the whole.
function unsaidTable(result: IndicatorResult, own: SupplierResult): Block {
  const { unit, scale } = printingOf(result);
  const cost = (rise: number): number => (rise * scale) / Math.max(1, own.accepted);
  const shown = own.unstated.slice(0, SHOWN);
  const rest = own.unstated.length - shown.length;
  const whole = unsaidCost(own) * scale;
  const others = whole - shown.reduce((sum, { rise }) => sum + cost(rise), 0);
  const names = own.unstated.map(({ factor }) => factor);
  return {
    kind: "table",
    id: `unsaid-${result.id}`,
    caption: `Settings that you left to defaults and that count most. ${COUNTS_AT} State them in the plant file, with where they are from, and they count as stated.`,
    head: ["Setting", "Typical", "Counts at", `Costs, ${unit}`].map((head, i) =>
      i < 1 ? textCell(head) : numberCell(head),
    ),
    rows: [
      ...shown.map(
        ({ factor, owner, words, unit: its, typical, counted, rise }): readonly Cell[] => [
          {
            runs: [
              { kind: "text", text: factor, style: "code" },
              {
                kind: "text",
                text: ` ${words}${names.filter((name) => name === factor).length > 1 ? ` (${owner})` : ""}`,
              },
            ],
          },
          numberCell(`${plain(typical)}${unitOf(its)}`),
          numberCell(`${plain(counted)}${unitOf(its)}`),
          numberCell(plain(cost(rise))),
        ],
      ),
      [
        textCell(`all ${rest} others, and what they do together`),
        textCell(""),
        textCell(""),
        numberCell(plain(others)),
      ],
      [textCell("all of them", true), textCell(""), textCell(""), numberCell(plain(whole))],
    ],
    widths: [3.2, 1, 1, 0.9],
  };
}

/** How the end is chosen that a setting counts at. */
const COUNTS_AT =
  "A setting counts at the end at which more is taken: the plausible limit where any supplier compared states it, otherwise the end of the default's 95 % interval.";

// What unsaid settings add to a square metre of its own cloth in the mix. [unit/m²]
function unsaidCost({ cells }: SupplierResult): number {
  let area = 0;
  let more = 0;
  for (const { accepted, value, counted } of cells) {
    if (value === undefined || counted === undefined) continue;
    area += accepted;
    more += accepted * (counted.median - value.median);
  }
  return area > 0 ? more / area : 0;
}

function ranged(range: Ranged): string {
  const digits = digitsFor(range.median, range.low, range.high);
  return `${formatNumber(range.median, digits)} (${formatInterval(range.low, range.high, digits)})`;
}

// A bare ratio has the unit 1, which nobody writes.
function unitOf(unit: string): string {
  return unit === "1" ? "" : ` ${unit}`;
}

function plain(value: number): string {
  return formatNumber(value, Math.min(3, digitsFor(value)));
}

function paragraph(text: string): Block {
  return { kind: "paragraph", runs: [{ kind: "text", text }] };
}
