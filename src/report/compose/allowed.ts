/**
 * Phrases that may stand in a text about this report because they are literally true.
 */

import type { Block } from "../document.js";
import { textCell } from "../figure-desk.js";
import type { ReportDesk } from "./desk.js";

/**
 * The phrases of the plant file with their proof.
 *
 * @param desk - the report
 * @returns a table, or a sentence where there are none
 */
export function allowedBlocks(desk: ReportDesk): readonly Block[] {
  const phrases = desk.input.plant.text.wording?.allow ?? [];
  if (phrases.length === 0)
    return [
      {
        kind: "paragraph",
        runs: [
          {
            kind: "text",
            text: "The words of a text made from this report can be judged with `millrace check --wording FILE`. No phrase is allowed by proof in the plant file.",
          },
        ],
      },
    ];
  return [
    {
      kind: "table",
      id: "allowed-wording",
      caption:
        "Phrases that the plant file allows word for word, with reason and proof. The proof was not read by this tool.",
      head: ["Phrase", "Why it is literally true", "Proof"].map((text) => textCell(text)),
      rows: phrases.map(({ text, reason, proof }) => [
        textCell(`“${text}”`, true),
        textCell(reason),
        textCell(proof),
      ]),
      widths: [2, 3, 2],
    },
  ];
}
