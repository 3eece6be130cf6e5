/**
 * Headings that stand below the first line, under a title or notes of the exporter. They are pointed out
 * and not taken: which line holds the headings is for the plant file to say.
 */

import type { Problem } from "../problems/problem.js";
import type { CsvRecord } from "./csv.js";
import type { LogDialect } from "./dialect.js";
import { garbledText, isGarbled } from "./garbled.js";
import { holdsRequired } from "./layout.js";

/** Records looked through below the first. */
export const LOOKED_THROUGH = 20;

/**
 * What is wrong with headings that were refused. When required columns are missing and a record below holds
 * them all, one problem that names its line stands in place of every column missing; headings whose letters
 * belong to another encoding get a warning.
 *
 * @param problems - what is wrong with the record taken for the headings
 * @param top - that record and those that follow it
 * @param dialect - how the log is written
 * @returns what to say
 */
export function headingFaults(
  problems: readonly Problem[],
  top: readonly CsvRecord[],
  dialect: LogDialect,
): readonly Problem[] {
  const [first, ...below] = top;
  const missing = problems.find(({ code }) => code === "missing-column");
  if (missing === undefined || first === undefined) return problems;
  const { column: _column, ...rest } = missing;
  const found = below.find(({ fields }) =>
    cuts(fields).some((cells) => holdsRequired(cells, dialect)),
  );
  if (found !== undefined && !holdsRequired(first.fields, dialect)) {
    const value = first.fields.filter((field) => field.trim() !== "").join(", ");
    const expected = "the row of headings";
    const remedy = `Line ${found.line} looks like it: set \`heading_line: ${found.line}\` under \`log:\` in plant.yaml.`;
    return [
      { ...rest, code: "headings-below", value, expected, remedy },
      ...problems.filter(({ code }) => code !== "missing-column"),
    ];
  }
  const garbled = first.fields.find(isGarbled);
  if (garbled === undefined) return problems;
  const place = { file: missing.file ?? "", line: first.line, column: garbled, value: garbled };
  return [...problems, garbledText(place, dialect.encoding ?? "utf-8")];
}

// The separator was found from a title and may not be that of the headings.
function cuts(fields: readonly string[]): readonly (readonly string[])[] {
  const line = fields.join(",").replaceAll('"', "");
  return [fields, ...[",", ";", "\t", "|"].map((separator) => line.split(separator))];
}
