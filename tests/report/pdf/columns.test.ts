import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { SetCell } from "../../../src/report/pdf/columns.js";
import { columnNeeds, columnWidths } from "../../../src/report/pdf/columns.js";
import { Paper } from "../../../src/report/pdf/paper.js";
import { inter, report } from "./sample-text.js";

const { faces } = new Paper(report([]), inter).pen;

function row(...texts: readonly string[]): readonly SetCell[] {
  return texts.map((text, column) => ({
    cell: { runs: [] },
    column,
    span: 1,
    spans: [
      {
        text,
        face: faces.regular,
        size: 8,
        colour: "#000000",
        rise: 0,
        digits: false,
        code: false,
      },
    ],
  }));
}

function sum(widths: readonly number[]): number {
  return widths.reduce((total, width) => total + width, 0);
}

describe("columnWidths", () => {
  it("follows the shares it is given", () => {
    const widths = columnWidths(columnNeeds(row("a", "b", "c"), [], 3), [2, 1, 1], 400);
    expect(widths.map(Math.round)).toEqual([200, 100, 100]);
  });

  it("widens a column whose longest word does not fit its share", () => {
    const long = "Hauptbetriebswerkbau";
    const needed = faces.regular.set(long, false).width * 8;
    const [first = 0, second = 0] = columnWidths(
      columnNeeds(row("a", "b"), [row(long, "b")], 2),
      [1, 99],
      400,
    );
    expect(first).toBeCloseTo(needed, 6);
    expect(first + second).toBeCloseTo(400, 6);
  });

  it("lets the longest text wrap and the others stand on one line", () => {
    const text = "a long remark ".repeat(40);
    const name = "Lindqvist & Daughter";
    const [first = 0] = columnWidths(
      columnNeeds(row("Client", "Note"), [row(name, text)], 2),
      undefined,
      400,
    );
    expect(first).toBeGreaterThanOrEqual(faces.regular.set(name, false).width * 8 - 1e-6);
  });

  it("ignores shares that are no widths", () => {
    const plain = columnWidths(columnNeeds(row("a", "b"), [], 2), undefined, 100);
    expect(columnWidths(columnNeeds(row("a", "b"), [], 2), [1, Number.NaN], 100)).toEqual(plain);
    expect(columnWidths(columnNeeds(row("a", "b"), [], 2), [1], 100)).toEqual(plain);
    expect(columnWidths(columnNeeds(row("a", "b"), [], 2), [0, 1], 100)).toEqual(plain);
  });

  it("always adds up to the table, with no column at nothing", () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: "grapheme-ascii", maxLength: 300 }), {
          minLength: 1,
          maxLength: 9,
        }),
        fc.integer({ min: 60, max: 500 }),
        (texts, width) => {
          const widths = columnWidths(
            columnNeeds(row(...texts), [row(...texts)], texts.length),
            undefined,
            width,
          );
          expect(sum(widths)).toBeCloseTo(width, 4);
          for (const one of widths) expect(one).toBeGreaterThan(0);
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });
});
