/**
 * A supplier's own page: what the buyer may send back to it. No other supplier appears in it.
 */

import type { SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import type { Block, Cell, ReportDocument } from "../document.js";
import { FigureDesk, numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatNumber, formatPercent } from "../format.js";
import { printingOf, scaled } from "./supplier-tables.js";
import { asksOf } from "./supplier-questions.js";
import { ownShare, verifiedWords } from "./supplier-words.js";

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
  const desk = new FigureDesk();
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
      const { unit, scale } = printingOf(result);
      return [
        {
          kind: "heading",
          level: 2,
          id: `own-${result.id}`,
          text: result.words.charAt(0).toUpperCase() + result.words.slice(1),
        },
        paragraph(
          `${formatPercent(ownShare(candidate, result.id))} of it rests on numbers of your own.`,
        ),
        {
          kind: "table",
          id: `strata-${result.id}`,
          caption: `${result.words} by stratum, ${unit}: median with 95 % interval, and the value used for the order, where settings left unsaid stand at their unfavourable end.`,
          head: ["Stratum", "Lots", "Value", "Value used for order"].map((head, i) =>
            i < 1 ? textCell(head) : numberCell(head),
          ),
          rows: own.cells.map((cell, k): readonly Cell[] => {
            const words = compared.mix.strata[k]?.words ?? "";
            if (cell.value === undefined)
              return [
                textCell(words, true),
                numberCell(String(cell.lots)),
                textCell(
                  cell.hole === undefined
                    ? "▨ nothing printed"
                    : `no value: ${cell.hole} is not counted`,
                ),
                textCell(""),
              ];
            const noted = desk.range(`${result.id}.${k}`, scaled(cell.value, scale), unit);
            return [
              textCell(words, true),
              numberCell(String(cell.lots)),
              { runs: [noted.run, { kind: "text", text: ` (${noted.interval})` }], align: "right" },
              numberCell(formatNumber((cell.counted?.median ?? NaN) * scale, noted.digits)),
            ];
          }),
          widths: [2.4, 0.7, 1.8, 1],
        },
        {
          kind: "table",
          id: `unsaid-${result.id}`,
          caption: `Settings that you left to defaults and that count most. State them in the plant file, with where they are from, and they count as stated.`,
          head: ["Setting", "Typical", "Counts at", `Costs, ${unit}`].map((head, i) =>
            i < 1 ? textCell(head) : numberCell(head),
          ),
          rows: own.unstated
            .slice(0, SHOWN)
            .map(({ factor, words, unit: its, typical, counted, rise }): readonly Cell[] => [
              {
                runs: [
                  { kind: "text", text: factor, style: "code" },
                  { kind: "text", text: ` ${words}` },
                ],
              },
              numberCell(`${plain(typical)}${unitOf(its)}`),
              numberCell(`${plain(counted)}${unitOf(its)}`),
              numberCell(plain((rise * scale) / Math.max(1, own.accepted))),
            ]),
          widths: [3.2, 1, 1, 0.9],
        },
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
    figures: desk.figures,
  };
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
