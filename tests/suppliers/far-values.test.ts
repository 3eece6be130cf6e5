import { describe, expect, it } from "vitest";
import { type Candidate, candidateOf } from "../../src/suppliers/candidate.js";
import { farValues } from "../../src/suppliers/far-values.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { houseOf } from "./made.js";

const program = (alias: string, settings: Readonly<Record<string, number>>) =>
  (
    candidateOf(
      houseOf(alias, {
        settings: Object.fromEntries(
          Object.entries(settings).map(([name, value]) => [
            name,
            { value, low: 0.9 * value, high: 1.1 * value },
          ]),
        ),
      }),
      SHIPPED,
      "2026-11-25",
    ) as Candidate
  ).program;

const usual = [
  program("B", { "wash-range.fresh-water": 20, "printer.belt-water": 100 }),
  program("C", { "wash-range.fresh-water": 22, "printer.belt-water": 110 }),
];

describe("values far from those of other houses", () => {
  it("are named with the furthest first", () => {
    const own = program("A", { "wash-range.fresh-water": 8, "printer.belt-water": 900 });
    expect(farValues(own, usual)!.map(({ factor, value }) => [factor, value])).toEqual([
      ["printer.belt-water", 900],
      ["wash-range.fresh-water", 8],
    ]);
  });

  it("are none within half and twice the usual, and unknown with one other", () => {
    const own = program("A", { "wash-range.fresh-water": 12, "printer.belt-water": 190 });
    expect(farValues(own, usual)).toEqual([]);
    expect(farValues(own, usual.slice(0, 1))).toBeUndefined();
  });
});
