import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { type Column, COLUMNS } from "../../src/log/columns.js";
import { judgeRow } from "../../src/log/judge-row.js";
import { layOut } from "../../src/log/layout.js";
import { LogRowSchema } from "../../src/log/row-schema.js";
import { RULES } from "./made.js";

type Row = Readonly<Record<string, string | number>>;

const SOUND: Row = {
  ...{ lot: "L-1", date: "2026-03-14", fibre: "cotton", gsm: 140, width_m: 1.5 },
  ...{ length_m: 150_000, route: "reactive" },
};

function taken(row: Row): boolean {
  const headings = COLUMNS.map(({ name }) => name);
  const { layout } = layOut("log.csv", { fields: headings, line: 1 }, {});
  if (layout === undefined) throw new Error("no layout");
  const fields = headings.map((name) => String(row[name] ?? ""));
  return judgeRow({ fields, line: 2 }, layout, {}, RULES).lot !== undefined;
}

// Numbers at the ends of a range, beside them, and on and off its steps; written without an exponent.
function numbers({ range = [0, 1], step = 0.1 }: Column): fc.Arbitrary<number> {
  const [low, high] = range;
  const ends = [low, high, low - step, high + step, low + step, low + step / 4];
  const inside = fc.integer({ min: 0, max: 40 }).map((n) => low + (n * step) / 2);
  return fc.oneof(fc.constantFrom(...ends), inside).map((value) => Number(value.toFixed(4)));
}

function cells(column: Column): fc.Arbitrary<string | number> {
  switch (column.kind) {
    case "number":
      // Longer than most that can be rejected, as the two columns must agree.
      return column.name === "length_m" ? fc.constantFrom(0, -1, 2e5, 2e5 + 1) : numbers(column);
    case "date":
      return fc.constantFrom(
        "2026-02-28",
        "2026-02-29",
        "2024-02-29",
        "2026-13-01",
        "2026-1-5x",
        "soon",
      );
    case "kind":
      return fc.constantFrom("production", "reprint", "overhead", "sample", "Reprint");
    case "fibre":
      return fc.constantFrom("cotton", "cotton 60 polyester 40");
    case "route":
      return fc.constantFrom("reactive", "disperse");
    case "site":
      return fc.constant("main");
    case "text":
      return fc.string({ unit: fc.constantFrom("a", "b", "ü", "1"), minLength: 3, maxLength: 6 });
  }
}

describe("LogRowSchema", () => {
  it("takes the rows that the reader takes, and no others", () => {
    const changes = COLUMNS.map((column) =>
      cells(column).map((cell) => [column.name, cell] as const),
    );
    const rows = fc
      .array(fc.oneof(...changes), { maxLength: 3 })
      .map((changed): Row => ({ ...SOUND, ...Object.fromEntries(changed) }))
      .filter(({ rejected_m = 0, length_m = 0 }) => !(Number(rejected_m) > Number(length_m)));
    const met = { taken: 0, refused: 0 };
    fc.assert(
      fc.property(rows, (row) => {
        const judged = taken(row);
        met[judged ? "taken" : "refused"] += 1;
        expect(LogRowSchema.safeParse(row).success).toBe(judged);
      }),
      { seed: 1, numRuns: 2000 },
    );
    expect(met.taken).toBeGreaterThan(300);
    expect(met.refused).toBeGreaterThan(300);
  });

  it.each(COLUMNS.filter(({ required }) => required).map(({ name }) => name))(
    "asks for %s, as the reader does",
    (name) => {
      const { [name]: _left, ...row } = SOUND;
      expect([LogRowSchema.safeParse(row).success, taken(row)]).toEqual([false, false]);
    },
  );

  it("lets columns stand that are not ours", () => {
    expect(LogRowSchema.safeParse({ ...SOUND, shift: "early" }).success).toBe(true);
  });

  it("says range, step and unit as JSON Schema", () => {
    const { properties, required } = z.toJSONSchema(LogRowSchema);
    expect(Object.keys(properties ?? {})).toEqual(COLUMNS.map(({ name }) => name));
    expect(required).toEqual(COLUMNS.filter((column) => column.required).map(({ name }) => name));
    expect(properties).toMatchObject({
      length_m: { type: "number", exclusiveMinimum: 0, maximum: 200_000 },
      rub_wet: { type: "number", minimum: 1, maximum: 5, multipleOf: 0.5 },
      water_l: { description: "water of the lot [L]" },
      kind: { enum: ["production", "reprint", "overhead"] },
    });
  });
});
