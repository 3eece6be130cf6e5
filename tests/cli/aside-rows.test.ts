import { readdirSync } from "node:fs";
import { tmpdir } from "node:os";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { AsideRows } from "../../src/cli/aside-rows.js";
import type { AsideRow } from "../../src/log/reading.js";

const HEADINGS: readonly (readonly string[])[] = [
  ["lot", "note"],
  ["note", "gsm", "lot"],
];

function rowOf(file: number, line: number, fields: readonly string[]): AsideRow {
  const problem = { code: "x", severity: "set-aside", expected: "a lot", remedy: "Mend it." };
  return {
    file: `log-${file}.csv`,
    line,
    headings: HEADINGS[file] ?? [],
    fields,
    problems: [{ ...problem, severity: "set-aside" }],
  };
}

function textOf(rows: readonly AsideRow[], most?: number): string {
  const aside = new AsideRows(most);
  for (const row of rows) aside.add(row);
  expect(aside.count).toBe(rows.length);
  return [...aside.csv(";")].join("");
}

const cell = fc.string({
  unit: fc.constantFrom("a", "é", "字", "\n", '"', ";", "😀"),
  maxLength: 8,
});
const rows = fc
  .tuple(fc.array(fc.array(cell, { maxLength: 4 })), fc.array(fc.array(cell, { maxLength: 4 })))
  .map(([one, two]) => [
    ...one.map((fields, i) => rowOf(0, i + 2, fields)),
    ...two.map((fields, i) => rowOf(1, i + 2, fields)),
  ]);

describe("AsideRows", () => {
  it("gives the rows as CSV under the headings of all files", () => {
    expect(textOf([rowOf(0, 2, ["L-1", "a;b"]), rowOf(1, 3, ["n", "140", "L-2"])])).toBe(
      "\ufeffset-aside-file;set-aside-line;set-aside-reason;lot;note;gsm\r\n" +
        'log-0.csv;2;expected a lot. Mend it.;L-1;"a;b";\r\n' +
        "log-1.csv;3;expected a lot. Mend it.;L-2;n;140\r\n",
    );
  });

  it("gives the same text however little it keeps in memory", () => {
    fc.assert(
      fc.property(rows, fc.nat(600), (list, most) => {
        expect(textOf(list, most)).toBe(textOf(list));
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("leaves no name on the disk", () => {
    const names = (): string[] =>
      readdirSync(tmpdir()).filter((name) => name.startsWith("millrace-aside-"));
    const before = names();
    const aside = new AsideRows(10);
    for (let i = 0; i < 50; i++) aside.add(rowOf(0, i, [`L-${i}`, "note"]));
    expect(names()).toEqual(before);
    expect([...aside.csv(",")]).toHaveLength(51);
  });

  it("forgets all when reading starts again", () => {
    for (const most of [10, 1e6]) {
      const aside = new AsideRows(most);
      for (let i = 0; i < 20; i++) aside.add(rowOf(0, i, [`L-${i}`, "note"]));
      aside.forget();
      expect(aside.count).toBe(0);
      aside.add(rowOf(1, 7, ["n", "140", "L-7"]));
      expect([...aside.csv(",")].join("")).toBe(
        textOf([rowOf(1, 7, ["n", "140", "L-7"])]).replaceAll(";", ","),
      );
    }
  });
});
