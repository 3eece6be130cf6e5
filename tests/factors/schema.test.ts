import { describe, expect, it } from "vitest";
import * as z from "zod";
import { COLUMNS, FactorFile, SHAPES, SourceFile } from "../../src/factors/schema.js";

const VALUE = { value: 1, spread: { shape: "fixed" }, source: "own-estimate", from: "2026-01-01" };

const TABLE = {
  id: "grid.*.intensity",
  unit: "kg CO2e/kWh",
  columns: ["name", "value"],
  rows: [["ITA", 0.3]],
};

function file(value: unknown, entry: Readonly<Record<string, unknown>> = {}): unknown {
  return { factors: { "pad.speed": { unit: "m/min", values: [value], ...entry } } };
}

describe("schema of a file of factors", () => {
  it("lets an entry through with nothing but unit and values", () => {
    expect(FactorFile.safeParse(file(VALUE)).success).toBe(true);
    expect(FactorFile.safeParse({}).success).toBe(true);
  });

  it.each([
    ["a score above 5", file({ ...VALUE, quality: quality(6) })],
    ["a score between two", file({ ...VALUE, quality: quality(1.5) })],
    ["a score missing", file({ ...VALUE, quality: { ...quality(1), time: undefined } })],
    ["a shape nobody draws", file({ ...VALUE, spread: { shape: "weibull" } })],
    ["a day that does not exist", file({ ...VALUE, from: "2026-02-29" })],
    ["a day with a clock", file({ ...VALUE, entered: "2026-01-01T00:00:00Z" })],
    ["a share of more than all", file({ ...VALUE, spread: { shape: "normal", share: 1.2 } })],
    ["a certainty as confidence", file({ ...VALUE, spread: { shape: "normal", confidence: 1 } })],
    ["a value without end", file({ ...VALUE, value: Infinity })],
    ["no number", file({ ...VALUE, value: NaN })],
    ["no vintage", file(VALUE, { values: [] })],
    ["no unit", file(VALUE, { unit: undefined })],
    ["one plausible end", file(VALUE, { plausible: [1] })],
    ["a key from elsewhere", file({ ...VALUE, author: "x" })],
    ["an id without family", { factors: { speed: { unit: "m/min", values: [VALUE] } } }],
    ["a column nobody reads", { tables: [{ ...TABLE, columns: ["name", "value", "colour"] }] }],
    ["an empty row", { tables: [{ ...TABLE, rows: [[]] }] }],
    ["an id without family in a table", { tables: [{ ...TABLE, id: "intensity" }] }],
  ])("refuses %s", (_, text) => {
    expect(FactorFile.safeParse(text).success).toBe(false);
  });

  it.each(SHAPES)("knows the shape %s", (shape) => {
    expect(FactorFile.safeParse(file({ ...VALUE, spread: { shape } })).success).toBe(true);
  });

  it.each(COLUMNS)("knows the column %s", (column) => {
    expect(
      FactorFile.safeParse({ tables: [{ ...TABLE, columns: ["name", column] }] }).success,
    ).toBe(true);
  });

  it("becomes a JSON Schema that closes its objects and explains its leaves", () => {
    const schema = z.toJSONSchema(FactorFile);
    expect(schema.additionalProperties).toBe(false);
    expect(JSON.stringify(schema)).toContain("a unit such as kWh/kg, 1 for a bare ratio");
  });
});

describe("schema of sources", () => {
  const SOURCE = { author: "our mill", title: "Water meter", read: "2026-12-01" };

  it.each(["memory", "common practice", "own estimate", "2026-12-01"])("reads %s", (read) => {
    expect(SourceFile.safeParse({ meter: { ...SOURCE, read } }).success).toBe(true);
  });

  it.each(["yesterday", "2026", "2026-13-01", "Memory", ""])("does not read %j", (read) => {
    expect(SourceFile.safeParse({ meter: { ...SOURCE, read } }).success).toBe(false);
  });

  it.each([
    ["no way of reading", { meter: { author: "our mill", title: "Water meter" } }],
    ["no title", { meter: { author: "our mill", read: "memory" } }],
    ["a key with blanks", { "water meter": SOURCE }],
    ["a key from elsewhere", { meter: { ...SOURCE, colour: "red" } }],
  ])("refuses %s", (_, text) => {
    expect(SourceFile.safeParse(text).success).toBe(false);
  });

  it("becomes a JSON Schema", () => {
    expect(z.toJSONSchema(SourceFile)).toMatchObject({ type: "object" });
  });
});

function quality(score: number): Readonly<Record<string, number>> {
  return { reliability: score, completeness: 1, time: 1, place: 1, technology: 1 };
}
