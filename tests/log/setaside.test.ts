import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { AsideRow } from "../../src/log/reading.js";
import { setAsideLines, worded } from "../../src/log/setaside.js";
import { HEAD, read, row } from "./made.js";

function aside(fields: readonly string[], headings: readonly string[] = ["lot", "note"]): AsideRow {
  const problem = {
    code: "x",
    severity: "set-aside",
    expected: "a lot",
    remedy: "Correct it.",
  } as const;
  return { file: "log.csv", line: 7, headings, fields, problems: [problem] };
}

function setAsideCsv(rows: readonly AsideRow[], separator = ","): string {
  const layouts = rows.map(({ headings }) => headings);
  return [...setAsideLines(rows.map(worded), layouts, separator)].join("");
}

describe("setAsideLines", () => {
  it("gives file, line and reason with the row, quoted where needed, marked as UTF-8", () => {
    expect(setAsideCsv([aside(["L-1", 'a, "b"\nc'])])).toBe(
      "\ufeffset-aside-file,set-aside-line,set-aside-reason,lot,note\r\n" +
        'log.csv,7,expected a lot. Correct it.,L-1,"a, ""b""\nc"\r\n',
    );
  });

  it.each(["=1+1", "+cmd", "-2+3", "@sum", "\t=1", " =1", "\r=1", "\uff1d1"])(
    "guards %j",
    (text) => {
      expect(setAsideCsv([aside(["L-1", text])])).toContain(`'${text}`);
    },
  );

  it("guards headings, names of files and values quoted in reasons alike", () => {
    const text = setAsideCsv([{ ...aside(["a", "b"], ["=lot", "note"]), file: "=log.csv" }]);
    expect(text).toContain(",'=lot,");
    expect(text).toContain("\n'=log.csv,");
  });

  it.each(["-3", "+3", "-1,5", "-", "–", "2026-01-31", "'=1"])("leaves %j alone", (text) => {
    const [, line = ""] = setAsideCsv([aside(["L-1", text])], ";").split("\r\n");
    expect(line.endsWith(`;${text}`)).toBe(true);
  });

  it("takes the headings of several files together", () => {
    const text = setAsideCsv([aside(["L-1", "a"]), aside(["b", "L-2"], ["client", "lot"])]);
    const lines = text.split("\r\n").map((line) => line.split(",").slice(3).join(","));
    expect(lines.slice(0, 3)).toEqual(["lot,note,client", "L-1,a,", "L-2,,b"]);
  });

  it("gives the same faults when it is read again as it stands, however often", async () => {
    const rows = [
      row({ lot: "=L-1", length_m: "-3", note: "-" }),
      row({ lot: "L-2", fibre: "coton", note: "@home" }),
      row({ lot: "L-3", gsm: "#REF!" }),
      row({ lot: "L-4" }).split(",").slice(0, -1).join(","),
      `${row({ lot: "L-5", note: "a" })}, b`,
      "Total,,,,,,1234,,,,,",
    ];
    const first = await read([`${HEAD}\n${rows.join("\n")}\n`]);
    expect(first.aside).toHaveLength(rows.length);
    const again = await read([setAsideCsv(first.aside)]);
    // Three columns more are counted when a row has too many fields or too few.
    const faults = ({ account }: typeof first): unknown =>
      account.problems.map(({ code, column, value }) =>
        code === "row-width" ? [code] : [code, column, value],
      );
    expect(faults(again)).toEqual(faults(first));
    expect(again.aside).toHaveLength(rows.length);
    expect(again.account.files[0]?.rows).toBe(rows.length);
    const third = await read([setAsideCsv(again.aside)]);
    expect(third.aside).toHaveLength(rows.length);
    expect(setAsideCsv(third.aside).split("\r\n")[0]).toBe(
      setAsideCsv(first.aside).split("\r\n")[0],
    );
  });

  it("gives sound lots back once the fault is mended", async () => {
    const { aside: rows } = await read([
      `${HEAD}\n${row({ lot: "=L,1", length_m: "-3", client: 'The "Elm"', note: "+a" }).replace("=L,1", '"=L,1"').replace('The "Elm"', '"The ""Elm"""')}\n`,
    ]);
    const { lots } = await read([setAsideCsv(rows).replace(",-3,", ",3,")]);
    expect(lots).toMatchObject([{ lot: "=L,1", client: 'The "Elm"', note: "+a", length: 3 }]);
  });

  it("can be read again by the dialect of a foreign log", async () => {
    const dialect = { separator: ";", decimal: ",", encoding: "windows-1252" } as const;
    const head = HEAD.replaceAll(",", ";");
    const text = row({ lot: "L-1", client: "Muller", gsm: "0", width_m: "1#5" });
    const { aside: rows } = await read(
      [`${head}\n${text.replaceAll(",", ";").replace("#", ",")}\n`],
      dialect,
    );
    const mended = setAsideCsv(rows, ";").replace(";0;", ";140;").replace("Muller", "Müller");
    const { lots } = await read([mended], dialect);
    expect(lots).toMatchObject([{ lot: "L-1", client: "Müller", width: 1.5, gsm: 140 }]);
  });

  it("keeps any text through writing and reading", async () => {
    const text = fc
      .string({
        unit: fc.constantFrom("=", "+", "-", "@", "a", ",", ";", '"', "\n", "'", "1"),
        minLength: 1,
        maxLength: 6,
      })
      .filter((note) => note !== "-" && !/^'+[=+\-@]/.test(note) && note.trim() === note);
    await fc.assert(
      fc.asyncProperty(text, async (note) => {
        const quoted = `"${note.replaceAll('"', '""')}"`;
        const bad = row({ length_m: "-3", note: "N" }).replace("N", () => quoted);
        const { aside: rows } = await read([`${HEAD}\n${bad}\n`]);
        const mended = setAsideCsv(rows).replace(",-3,", ",3,");
        const { lots } = await read([mended]);
        expect(lots.map((lot) => lot.note)).toEqual([note]);
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});
