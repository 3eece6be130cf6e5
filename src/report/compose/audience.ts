/**
 * What a report leaves out for those outside the mill.
 */

import type { Block } from "../document.js";
import type { ReportDesk } from "./desk.js";
import type { ReportInput } from "./input.js";

/**
 * Blocks for the mill, and a sentence for others.
 *
 * @param desk - the report
 * @param what - what is left out, such as `Costs`
 * @param blocks - makes the blocks
 * @param from - readers it is kept from
 * @returns the blocks, or a sentence that says what is not here
 */
export function keptFrom(
  desk: ReportDesk,
  what: string,
  blocks: () => readonly Block[],
  from: readonly ("client" | "public")[] = ["client", "public"],
): readonly Block[] {
  const { audience = "internal" } = desk.input;
  if (audience === "internal" || !from.includes(audience)) return blocks();
  const words = `${what} are not part of a report ${audience === "client" ? "to a client" : "to the public"}.`;
  return [{ kind: "paragraph", runs: [{ kind: "text", text: words }] }];
}

/**
 * For whom a report is, for the foot of its pages.
 *
 * @param input - the report
 * @returns words behind a point; empty for the mill itself
 */
export function audienceWords(input: ReportInput): string {
  const { audience = "internal", scope } = input;
  if (audience === "internal") return "";
  return audience === "client" ? ` · for ${scope.client}` : " · public";
}
