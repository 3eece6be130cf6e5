import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isBlank, isLimit, readDay, readNumber } from "../../src/log/cells.js";
import type { LogDialect } from "../../src/log/dialect.js";

const COMMA: LogDialect = { decimal: ",", thousands: "." };

function metres(cell: string, dialect: LogDialect = {}): unknown {
  return readNumber(cell, dialect, "m", "m");
}

describe("isBlank", () => {
  it.each(["", "-", "–", "n/a", "N/A", "NA", "n.d.", "null", "none"])(
    "takes %j for blank",
    (cell) => {
      expect(isBlank(cell)).toBe(true);
      expect(metres(cell)).toEqual({ blank: true });
    },
  );

  it.each(["0", "0.0", "--", "na1"])("does not take %j for blank", (cell) => {
    expect(isBlank(cell)).toBe(false);
  });
});

describe("isLimit", () => {
  it("knows limits from numbers and words", () => {
    expect(["<10", "< 10", ">5", "<=3", ">= 3", "≤2", "≥ .5"].every(isLimit)).toBe(true);
    expect(["10", "-3", "<", "<few", "10<", "=5"].some(isLimit)).toBe(false);
  });
});

describe("readNumber", () => {
  it.each<[string, LogDialect, number]>([
    ["200", {}, 200],
    ["-3", {}, -3],
    ["+3", {}, 3],
    [".5", {}, 0.5],
    ["5.", {}, 5],
    ["1,5", { decimal: "," }, 1.5],
    ["1.234,5", COMMA, 1234.5],
    ["1.234.567", COMMA, 1234567],
    ["1,234.5", { thousands: "," }, 1234.5],
    ["12,34,567.8", { thousands: "," }, 1234567.8],
    ["1 234.5", { thousands: " " }, 1234.5],
    ["1\u00a0234", { thousands: " " }, 1234],
    ["1\u202f234", { thousands: " " }, 1234],
    ["1'234", { thousands: "'" }, 1234],
    ["1\u2019234", { thousands: "'" }, 1234],
  ])("reads %j", (cell, dialect, number) => {
    expect(metres(cell, dialect)).toEqual({ number });
  });

  it.each<[string, LogDialect]>([
    ["1,5", {}],
    ["1.5", { decimal: "," }],
    ["1.234.56", COMMA],
    ["12.34", COMMA],
    ["1.2345", COMMA],
    ["1..234", COMMA],
    ["1,234,5", COMMA],
    ["1.2.3", {}],
    ["1e3", {}],
    ["Infinity", {}],
    ["0x10", {}],
    ["many", {}],
    ["1 2", {}],
  ])("refuses %j rather than guess", (cell, dialect) => {
    expect(metres(cell, dialect)).toHaveProperty("fault");
  });

  it("says what stands there instead of a number", () => {
    expect(metres("<10")).toEqual({ fault: "a measured number, not a limit" });
    expect(metres("< 10")).toEqual({ fault: "a measured number, not a limit" });
    expect(metres("#REF!")).toEqual({ fault: "a number, not the error of a spreadsheet" });
    expect(metres("1,5")).toEqual({ fault: 'a number with decimal sign "."' });
    expect(metres("3 parsec")).toEqual({ fault: "a number in m" });
  });

  it("turns a unit in the cell into the unit of the column", () => {
    expect(readNumber("150 cm", {}, "m", "m")).toEqual({ number: 1.5, corrected: true });
    expect(readNumber("150cm", {}, "m", "cm")).toEqual({ number: 150, corrected: true });
    // A yard is 0.9144 m exactly (NIST SP 811, appendix B).
    expect(readNumber("91.44 m", {}, "m", "yd")).toEqual({
      number: 91.44 / 0.9144,
      corrected: true,
    });
    expect(readNumber("1.500,5 m", COMMA, "m", "m")).toEqual({ number: 1500.5, corrected: true });
  });

  it("leaves the last bit alone when the unit in the cell is the column's own", () => {
    expect(readNumber("7 %", {}, "1", "%")).toEqual({ number: 7, corrected: true });
    expect(readNumber("185 °C", {}, undefined, "°C")).toEqual({ number: 185, corrected: true });
    expect(readNumber("365 °F", {}, undefined, "°C")).toEqual({ fault: "a bare number" });
  });

  it("reads every number back that is written with the signs of the dialect", () => {
    const part = fc.tuple(fc.integer({ min: -1e9, max: 1e9 }), fc.nat(999));
    fc.assert(
      fc.property(part, ([whole, after]) => {
        const digits = String(Math.abs(whole)).replace(/\B(?=(\d{3})+$)/g, ".");
        const decimals = String(after).padStart(3, "0");
        const cell = `${whole < 0 ? "-" : ""}${digits},${decimals}`;
        expect(metres(cell, COMMA)).toEqual({ number: Number(`${whole}.${decimals}`) });
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});

describe("readDay", () => {
  it.each([
    ["2026-01-31", "ymd", "2026-01-31"],
    ["2026/1/5", "ymd", "2026-01-05"],
    ["31.01.2026", "dmy", "2026-01-31"],
    ["1/31/2026", "mdy", "2026-01-31"],
    ["2024-02-29", "ymd", "2024-02-29"],
    ["2026-01-31T23:59:00Z", "ymd", "2026-01-31"],
    ["31.01.2026 14:05", "dmy", "2026-01-31"],
  ] as const)("reads %j as %s", (cell, order, day) => {
    expect(readDay(cell, order)).toBe(day);
  });

  it.each([
    ["2026-02-30", "ymd"],
    ["2025-02-29", "ymd"],
    ["2026-13-01", "ymd"],
    ["2026-00-10", "ymd"],
    ["31.01.26", "dmy"],
    ["31.01.2026", "ymd"],
    ["01/31/2026", "dmy"],
    ["46050", "ymd"],
    ["March 2026", "ymd"],
    ["0026-01-01", "ymd"],
  ] as const)("knows no day %j in order %s", (cell, order) => {
    expect(readDay(cell, order)).toBeUndefined();
  });
});
