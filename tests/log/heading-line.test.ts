import { describe, expect, it } from "vitest";
import { headingFaults } from "../../src/log/heading-line.js";
import type { LogDialect } from "../../src/log/dialect.js";
import { layOut } from "../../src/log/layout.js";
import { HEAD } from "./made.js";

function faults(
  lines: readonly (readonly string[])[],
  dialect: LogDialect = {},
): ReturnType<typeof headingFaults> {
  const top = lines.map((fields, i) => ({ fields, line: 1 + 2 * i }));
  const { problems } = layOut("log.csv", top[0] ?? { fields: [], line: 1 }, dialect);
  return headingFaults(problems, top, dialect);
}

const HEADINGS = HEAD.split(",");

describe("headingFaults", () => {
  it("names the line that holds every required heading, in one problem", () => {
    expect(faults([["Print log", ""], ["Shift", "1"], HEADINGS])).toEqual([
      {
        ...{ code: "headings-below", severity: "refused", file: "log.csv", line: 1 },
        value: "Print log",
        expected: "the row of headings",
        remedy: "Line 5 looks like it: set `heading_line: 5` under `log:` in plant.yaml.",
      },
    ]);
  });

  it.each([";", "\t", "|", ","])(
    "finds them when the title hid their separator %j, quoted or not",
    (separator) => {
      const line = HEADINGS.join(separator);
      const quoted = HEADINGS.map((head) => `"${head}"`).join(separator);
      for (const text of [line, quoted]) {
        expect(faults([["Print log"], [text]])).toMatchObject([{ code: "headings-below" }]);
      }
    },
  );

  it("finds headings as they are mapped", () => {
    const dialect: LogDialect = { columns: { lot: "Partie" } };
    const theirs = HEADINGS.map((head) => (head === "lot" ? "Partie" : head));
    expect(faults([["Print log"], theirs], dialect)).toMatchObject([{ code: "headings-below" }]);
    expect(faults([["Print log"], HEADINGS], dialect)[0]?.code).toBe("missing-column");
  });

  it("leaves missing columns as they are when no line holds them all", () => {
    const codes = (all: ReturnType<typeof headingFaults>): readonly string[] =>
      all.map(({ code }) => code);
    const seven = Array.from({ length: 7 }, () => "missing-column");
    expect(codes(faults([["Print log"], ["lot", "date"]]))).toEqual(seven);
    expect(codes(faults([["Print log"]]))).toEqual(seven);
  });

  it("does not offer another line when only an optional heading is missing", () => {
    const dialect: LogDialect = { columns: { note: "Bemerkung" } };
    expect(faults([HEADINGS, [...HEADINGS, "Bemerkung"]], dialect)).toMatchObject([
      { code: "missing-column", column: "Bemerkung" },
    ]);
  });

  it("warns of headings in the letters of another encoding", () => {
    const dialect: LogDialect = {
      ...{ encoding: "windows-1252", columns: { length_m: "Länge" } },
    };
    const heads = HEADINGS.map((head) => (head === "length_m" ? "LÃ¤nge" : head));
    expect(faults([heads], dialect)).toMatchObject([
      { code: "missing-column", column: "Länge" },
      { code: "text-garbled", severity: "warning", line: 1, value: "LÃ¤nge" },
    ]);
  });
});
