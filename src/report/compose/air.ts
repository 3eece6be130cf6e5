/**
 * The finding of the chapter on what goes to air.
 */

import type { Block, Run } from "../document.js";
import type { ReportDesk } from "./desk.js";

/**
 * Organic carbon and formaldehyde on both routes in a sentence.
 *
 * @param desk - the report
 * @returns a paragraph; nothing where neither is in the report
 */
export function airFinding(desk: ReportDesk): readonly Block[] {
  const sentences = (
    [
      ["carbon-to-air", "Organic carbon to air"],
      ["formaldehyde", "Formaldehyde to air"],
    ] as const
  ).flatMap(([id, words]): readonly Run[] => {
    const noted = desk.compared(id);
    if (noted === undefined) return [];
    return [
      { kind: "text", text: `${words}: `, style: "bold" },
      noted.pigment.run,
      { kind: "text", text: ` ${noted.unit} on the pigment route, ` },
      noted.dye.run,
      {
        kind: "text",
        text: ` on the dye route${noted.comparison.resolved ? "" : "; which is more is open"}. `,
      },
    ];
  });
  return sentences.length === 0 ? [] : [{ kind: "paragraph", runs: sentences }];
}
