/**
 * Judges the meters of a plant file: readings of gas must say which heating value they are counted on.
 */

import type { Complaints } from "./complaints.js";
import type { PlantText } from "./schema.js";

/**
 * Notes gas meters without a basis, and other meters with one. Net and gross differ by a tenth for natural
 * gas, so neither may be taken for granted.
 *
 * @param complaints - where faults are noted
 * @param text - the file
 */
export function judgeMeters(complaints: Complaints, text: PlantText): void {
  for (const [name, { quantity, basis }] of Object.entries(text.meters ?? {})) {
    const path = ["meters", name];
    if (complaints.refused([...path, "basis"])) continue;
    if (quantity === "gas" && basis === undefined) {
      complaints.say(
        path,
        "meter-basis",
        name,
        "`basis: gross` or `basis: net` at a meter of gas, as no kWh of gas can be read without it",
        "Add it. Bills and meters count gross as a rule; the bill says so as gross, upper or higher heating value.",
      );
    }
    if (quantity !== "gas" && basis !== undefined) {
      complaints.say(
        [...path, "basis"],
        "meter-basis",
        basis,
        `no basis at a meter of ${quantity}: heating values are of fuels`,
        "Leave it out.",
      );
    }
  }
}
