import { describe, expect, it } from "vitest";
import type { LogDialect } from "../../src/log/dialect.js";
import { type CellVerdict, judgeCell } from "../../src/log/judge-cell.js";
import { layOut } from "../../src/log/layout.js";
import { HEAD, RULES } from "./made.js";

function judged(name: string, cell: string, dialect: LogDialect = {}): CellVerdict {
  const fields = [
    ...new Set([
      ...HEAD.split(","),
      ...["site", "kind", "baths", "rub_dry", "coverage_pct", "water_l"],
    ]),
  ];
  const { layout } = layOut("log.csv", { fields, line: 1 }, dialect);
  const placed = layout?.columns.find(({ column }) => column.name === name);
  if (placed === undefined) throw new Error(`no column ${name}`);
  return judgeCell(cell, placed, dialect, RULES);
}

describe("judgeCell", () => {
  it.each([
    ["46050", "count of days"],
    ["46050.5", "count of days"],
    ["31.01.26", "four digits"],
    ["31.01.2026", "`dates:`"],
  ])("says how to mend the day %j", (cell, remedy) => {
    expect(judged("date", cell).fault?.remedy).toContain(remedy);
  });

  it("leaves notes and names with a hash alone", () => {
    expect(judged("note", "#REF!")).toEqual({ value: "#REF!" });
    expect(judged("lot", "#12")).toEqual({ value: "#12" });
  });

  it.each([
    ["lot", "L-1", "L-1"],
    ["length_m", "200", 200],
    ["length_m", "0.1", 0.1],
    ["length_m", "200000", 200_000],
    ["rejected_m", "0", 0],
    ["ink_ml", "8946", 8.946],
    ["coverage_pct", "100", 1],
    ["baths", "5", 5],
    ["rub_dry", "4.5", 4.5],
    ["date", "2026-06-30", "2026-06-30"],
    ["route", "reactive", "reactive"],
    ["site", "main", "main"],
    ["kind", "overhead", "overhead"],
  ])("takes for %s the cell %j", (name, cell, value) => {
    const verdict = judged(name, cell);
    expect(verdict.fault).toBeUndefined();
    if (typeof value === "number") expect(verdict.value).toBeCloseTo(value, 12);
    else expect(verdict.value).toBe(value);
  });

  it.each([
    ["length_m", "0", "length-not-positive", "a length of the lot above 0 m"],
    ["length_m", "-3", "length-not-positive", "a length of the lot above 0 m"],
    ["length_m", "200001", "out-of-range", "length of the lot from 0 to 200000 m"],
    ["rejected_m", "-1", "out-of-range", "length not of first quality from 0 to 200000 m"],
    ["gsm", "9", "out-of-range", "mass per area from 10 to 1500 g/m²"],
    ["width_m", "150", "out-of-range", "width of the cloth from 0.2 to 5.5 m"],
    ["coverage_pct", "101", "out-of-range", "from 0 to 100 %"],
    ["baths", "2.5", "off-step", "number of baths in steps of 1"],
    ["rub_dry", "4.2", "off-step", "dry rub fastness in steps of 0.5"],
    ["length_m", "long", "not-a-number", 'a number with decimal sign "."'],
    ["length_m", "#REF!", "not-a-number", "not the error of a spreadsheet"],
    ["length_m", "<10", "not-a-number", "not a limit"],
    ["date", "2026-02-30", "no-such-day", "a day written as ymd, such as 2026-01-31"],
    ["date", "2026-07-01", "future-date", "a day not after 2026-06-30"],
    ["date", "46050", "no-such-day", "a day written as ymd"],
    ["lot", "#REF!", "error-in-cell", "name of the lot, not the error of a spreadsheet"],
    ["client", "#N/A", "error-in-cell", "client, not the error of a spreadsheet"],
    ["lot", "####", "error-in-cell", "not the error of a spreadsheet"],
    ["kind", "sample", "unknown-kind", "one of production, reprint, overhead"],
    ["site", "mian", "unknown-site", "one of main"],
    ["fibre", "cotton 60 polyester 30", "fibre-shares", "adding up to 100, not 90"],
  ])("sets %s %j aside: %s", (name, cell, code, expected) => {
    const { value, fault } = judged(name, cell);
    expect(value).toBeUndefined();
    expect(fault).toMatchObject({ code, severity: "set-aside" });
    expect(fault?.expected).toContain(expected);
    expect(fault?.remedy).not.toBe("");
  });

  it.each([
    ["water_l", "<10"],
    ["water_l", ">= 5 L"],
    ["water_l", "≤.5"],
    ["rub_dry", "> 4"],
  ])("leaves the reading %s %j out and keeps the row", (name, cell) => {
    expect(judged(name, cell)).toEqual({
      fault: {
        code: "limit-not-used",
        severity: "corrected",
        expected: "a measured number, not a limit",
        remedy: "The reading was left out; give the number when it was measured.",
      },
    });
  });

  // Ink and settings enter the sums, where a mean would take the place of a small amount.
  it.each([
    ["ink_ml", "<10"],
    ["rejected_m", "<1"],
    ["coverage_pct", ">90"],
    ["baths", "<3"],
    ["water_l", "<few"],
  ])("sets a row aside for %s %j", (name, cell) => {
    expect(judged(name, cell).fault).toMatchObject({ code: "not-a-number", severity: "set-aside" });
  });

  it("lists what is known and offers the nearest spelling", () => {
    expect(judged("fibre", "coton").fault).toMatchObject({
      code: "unknown-fibre",
      expected: "one of cotton, viscose, flax, polyester, polyamide, elastane",
      remedy: expect.stringMatching(/^Is it cotton\? .*`values: { fibre: … }`/) as string,
    });
    expect(judged("route", "reactiv").fault).toMatchObject({
      code: "unknown-route",
      expected: "one of pigment-calender, reactive, disperse",
      remedy: expect.stringMatching(/^Is it reactive\?/) as string,
    });
    expect(judged("route", "zzz").fault?.remedy).toMatch(/^Correct the word/);
  });

  it("puts the exporter's words into ours", () => {
    const dialect: LogDialect = {
      values: {
        route: { R1: "reactive" },
        fibre: { BW: "cotton" },
        kind: { M: "overhead" },
        site: { A: "main" },
      },
    };
    expect(judged("route", "R1", dialect).value).toBe("reactive");
    expect(judged("fibre", "BW", dialect).value).toEqual([{ fibre: "cotton", share: 1 }]);
    expect(judged("kind", "M", dialect).value).toBe("overhead");
    expect(judged("site", "A", dialect).value).toBe("main");
    expect(judged("route", "R2", dialect).fault?.code).toBe("unknown-route");
    expect(judged("fibre", "toString", dialect).fault?.code).toBe("unknown-fibre");
  });

  it("converts a unit in the cell once, whatever unit the column is mapped with", () => {
    // 100 yd are 91.44 m exactly: NIST Special Publication 811 (2008), appendix B.
    const dialect: LogDialect = { columns: { length_m: { heading: "length_m", unit: "yd" } } };
    expect(judged("length_m", "100", dialect).value).toBeCloseTo(91.44, 10);
    for (const cell of ["100 yd", "91.44 m", "9144 cm"]) {
      const { value, fault } = judged("length_m", cell, dialect);
      expect(value).toBeCloseTo(91.44, 10);
      expect(fault).toMatchObject({
        code: "unit-in-cell",
        severity: "corrected",
        expected: "a bare number in yd",
      });
    }
    expect(judged("length_m", "100 kg", dialect).fault?.code).toBe("not-a-number");
  });

  it("says that shares were scaled", () => {
    expect(judged("fibre", "cotton 60 polyester 39.8")).toMatchObject({
      value: [{ fibre: "cotton" }, { fibre: "polyester" }],
      fault: { code: "fibre-shares-scaled", severity: "corrected" },
    });
  });
});
