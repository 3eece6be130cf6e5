import { describe, expect, it } from "vitest";
import type { LogDialect } from "../../src/log/dialect.js";
import { judgeRow, type Verdict } from "../../src/log/judge-row.js";
import { layOut } from "../../src/log/layout.js";
import { HEAD, row, RULES } from "./made.js";

function judged(text: string, head = HEAD, rules = RULES, dialect: LogDialect = {}): Verdict {
  const { layout } = layOut("log.csv", { fields: head.split(","), line: 1 }, dialect);
  if (layout === undefined) throw new Error("no layout");
  return judgeRow({ fields: text.split(","), line: 9 }, layout, dialect, rules);
}

describe("judgeRow", () => {
  it("makes a lot of a sound row", () => {
    expect(judged(row({ rejected_m: "3", ink_ml: "n/a", note: "-" }))).toMatchObject({
      lot: {
        ...{ lot: "L-1", date: "2026-03-14", site: "main", client: "Client Elm", gsm: 140 },
        ...{ width: 1.5, length: 200, rejected: 3, ink: undefined, route: "reactive" },
        ...{ fibre: [{ fibre: "cotton", share: 1 }], kind: "production", note: "" },
        place: { file: "log.csv", line: 9 },
      },
      problems: [],
    });
  });

  it("names everything that is wrong in one go, each with its place", () => {
    const { lot, problems } = judged(
      row({ date: "2026-02-30", fibre: "coton", gsm: "heavy", length_m: "-3", route: "" }),
    );
    expect(lot).toBeUndefined();
    expect(problems.map(({ column, value, code }) => [column, value, code])).toEqual([
      ["date", "2026-02-30", "no-such-day"],
      ["fibre", "coton", "unknown-fibre"],
      ["gsm", "heavy", "not-a-number"],
      ["length_m", "-3", "length-not-positive"],
      ["route", "", "missing-route"],
    ]);
    for (const problem of problems) {
      expect(problem).toMatchObject({ file: "log.csv", line: 9, severity: "set-aside" });
      expect(problem.expected).not.toBe("");
      expect(problem.remedy).not.toBe("");
    }
  });

  it.each(["", "-", "n/a"])("misses a required cell that reads %j", (length_m) => {
    expect(judged(row({ length_m })).problems).toMatchObject([
      {
        code: "missing-length-m",
        column: "length_m",
        value: length_m,
        expected: "length of the lot",
      },
    ]);
  });

  it("lets separators trail and headings be blank at the end", () => {
    expect(judged(row(), `${HEAD},,`).problems).toEqual([]);
    expect(judged(`${row()},,`, `${HEAD},,`).problems).toEqual([]);
    expect(judged(`${row()},x`, `${HEAD},`).problems).toEqual([]);
  });

  it("does not take a decimal comma without quotes for two columns", () => {
    // Read one column off, this would be 1 mL of ink for a reprint of lot 5.
    expect(judged(row({ ink_ml: "1,5" })).problems).toMatchObject([
      { code: "row-width", severity: "set-aside", value: "13", expected: "12 fields" },
    ]);
  });

  it("sets a row aside that has too few fields or too many", () => {
    const fields = row().split(",");
    expect(judged(fields.slice(0, -2).join(",")).problems).toEqual([
      {
        code: "row-width",
        severity: "set-aside",
        file: "log.csv",
        line: 9,
        column: "reprint_of",
        value: "10",
        expected: "12 fields",
        remedy: "Look for a separator inside a text without quotes, or a line that is cut off.",
      },
    ]);
    expect(judged(`${row({ note: "red" })}, blue`).problems).toMatchObject([
      { code: "row-width", column: "note", value: "13" },
    ]);
  });

  it.each(["Total", "TOTALS:", "Summe", "Σ", "Grand total"])(
    "knows the row of totals %j",
    (word) => {
      for (const text of [
        `${word},,,,,,1234,,,,,`,
        `${word},,,,,,1234`,
        `,,,${word},,,1234,,,,,`,
      ]) {
        const { lot, problems } = judged(text);
        expect(lot).toBeUndefined();
        expect(problems).toMatchObject([{ code: "row-of-totals", line: 9, value: word }]);
      }
      expect(judged(`${word},,,,,,1234,,,,,`).problems[0]?.column).toBe("lot");
    },
  );

  it.each(["SUM-0001", "Total", "Sumatra 7"])("takes %j for a lot when it has a day", (lot) => {
    expect(judged(row({ lot })).lot?.lot).toBe(lot);
  });

  it("sets a lot aside of which more was rejected than printed", () => {
    const dialect: LogDialect = { columns: { rejected_m: { heading: "B-ware", unit: "cm" } } };
    const head = HEAD.replace("rejected_m", "B-ware");
    expect(judged(row({ "B-ware": "20100" }, head), head, RULES, dialect).problems).toMatchObject([
      {
        code: "rejected-above-length",
        column: "B-ware",
        value: "20100",
        expected: "at most the length, 200 m",
      },
    ]);
    expect(judged(row({ rejected_m: "200" })).lot?.rejected).toBe(200);
  });

  it("sets a lot aside that replaces itself", () => {
    expect(judged(row({ reprint_of: "L-1" })).problems).toMatchObject([
      { code: "reprint-of-itself", column: "reprint_of", value: "L-1" },
    ]);
    expect(judged(row({ reprint_of: "L-0" })).lot).toMatchObject({
      kind: "reprint",
      reprintOf: "L-0",
    });
  });

  it("asks for the site when the plant has several, once", () => {
    const rules = { ...RULES, sites: new Set(["north", "south"]) };
    expect(judged(row(), HEAD, rules).problems).toMatchObject([
      { code: "missing-site", column: "site", value: "", expected: "one of north, south" },
    ]);
    const head = `${HEAD},site`;
    expect(judged(row({ site: "nroth" }, head), head, rules).problems).toMatchObject([
      { code: "unknown-site", value: "nroth" },
    ]);
    expect(judged(row({ site: "south" }, head), head, rules).lot?.site).toBe("south");
  });

  it("gives the day of a row set aside, when it has one", () => {
    expect(judged(row({ gsm: "x" })).day).toBe("2026-03-14");
    expect(judged(row({ gsm: "x", date: "14.03.2026" })).day).toBeUndefined();
    expect(judged(`${row({ date: "2026-01-05" })},surplus`).day).toBeUndefined();
    expect(judged(row()).day).toBeUndefined();
  });

  it("says of each quote inside a cell in use that it was read as it stands", () => {
    const { layout } = layOut("log.csv", { fields: [...HEAD.split(","), "shift"], line: 1 }, {});
    if (layout === undefined) throw new Error("no layout");
    const note = '12" roll';
    const fields = [...row({ note, client: 'The "Elm"' }).split(","), '5"'];
    const stray = ['The "Elm"', note, '5"'];
    const { lot, problems } = judgeRow({ fields, line: 9, stray }, layout, {}, RULES);
    expect(lot).toMatchObject({ note, client: 'The "Elm"' });
    expect(problems.map(({ code, column, value }) => [code, column, value])).toEqual([
      ["quote-inside", "client", 'The "Elm"'],
      ["quote-inside", "note", note],
    ]);
  });

  it("sets a row aside whose cells cannot be told apart, for that alone", () => {
    const { layout } = layOut("log.csv", { fields: HEAD.split(","), line: 1 }, {});
    if (layout === undefined) throw new Error("no layout");
    const fields = row({ gsm: "x", note: '"12" roll"' }).split(",");
    const record = { fields, line: 9, stray: ['"12" roll"'], unclear: true };
    expect(judgeRow(record, layout, {}, RULES).problems).toMatchObject([
      { code: "quote-unclear", column: "note", value: '"12" roll"', severity: "set-aside" },
    ]);
  });

  it("keeps a lot whose cells were corrected, and says so", () => {
    const { lot, problems } = judged(row({ width_m: "150 cm", fibre: "cotton 60 polyester 39.8" }));
    expect(lot?.width).toBeCloseTo(1.5, 12);
    expect(problems).toMatchObject([
      { code: "fibre-shares-scaled", severity: "corrected", line: 9, column: "fibre" },
      { code: "unit-in-cell", severity: "corrected", line: 9, column: "width_m", value: "150 cm" },
    ]);
  });
});
