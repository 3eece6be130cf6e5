/**
 * Digests by which a report can be matched with what it was made of.
 */

import { sha256Hex } from "../../numbers/digest.js";
import type { ReportInput } from "./input.js";

/**
 * Digests of logs and plant file.
 *
 * @param input - what the report is made of
 * @returns SHA-256 of the sorted digests of the logs, one a line, and of the plant file's contents as JSON
 */
export function inputDigests(input: Pick<ReportInput, "log" | "plant">): {
  readonly logs: string;
  readonly plant: string;
} {
  return {
    logs: sha256Hex(
      input.log.files
        .map((file) => file.sha256)
        .sort()
        .join("\n"),
    ),
    plant: sha256Hex(JSON.stringify(input.plant.text)),
  };
}
