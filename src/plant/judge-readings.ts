/**
 * Judges what the plant file says of readings of single lots.
 */

import type { Complaints } from "./complaints.js";
import type { PlantText } from "./schema.js";

/**
 * Notes machines that no site has.
 *
 * @param complaints - where faults are noted
 * @param text - the file
 */
export function judgeReadings(complaints: Complaints, text: PlantText): void {
  const known = Object.values(text.sites).flatMap(({ machines }) => Object.keys(machines));
  for (const [column, what] of Object.entries(text.readings ?? {}))
    what?.machines.forEach((machine, i) => {
      if (!known.includes(machine))
        complaints.unknown(
          ["readings", column, "machines", i],
          machine,
          "a machine of the file",
          known,
        );
    });
}
