import { beforeAll, describe, expect, it } from "vitest";
import { quantiles } from "../../../src/numbers/quantiles.js";
import type { Block, Run } from "../../../src/report/document.js";
import { ReportDesk } from "../../../src/report/compose/desk.js";
import type { ReportInput } from "../../../src/report/compose/input.js";
import { breakEvenBlocks, conditions, scatterBlock } from "../../../src/report/compose/overturn.js";
import { inputOf, LOTS, lotOf, smallMill } from "./small-mill.js";
import { inputWithYields, millWithYields, share } from "./with-yields.js";

const runText = (runs: readonly Run[]): string =>
  runs.map((run) => (run.kind === "note-ref" ? "" : run.text)).join("");

function said(block: Block | undefined): string {
  return block?.kind === "paragraph" ? runText(block.runs) : "";
}

function cells(block: Block | undefined): readonly (readonly string[])[] {
  if (block?.kind !== "table") throw new Error("There is no table.");
  return block.rows.map((row) => row.map(({ runs }) => runText(runs)));
}

/** Lots of full logs, so that no setting is open. */
const LOGGED = { pickup: 0.7, fixTemp: 165, dwell: 90, ink: 8, liquorRatio: 20, baths: 2 } as const;

describe("break-even yields", () => {
  let input: ReportInput;

  beforeAll(() => {
    input = inputOf();
  });

  it("are printed for every indicator of page one, with what they mean", () => {
    const desk = new ReportDesk(input);
    const [, table] = breakEvenBlocks(desk);
    const rows = cells(table);
    expect(rows.map(([words]) => words)).toEqual([
      "Water withdrawn",
      "COD load",
      "Final energy",
      "Electricity",
      "CO₂e location",
      "CO₂e market",
      "Cost",
    ]);
    for (const [words, at = "", interval, meaning] of rows) {
      expect(interval, words).toMatch(/^\d+ to \d+$/);
      expect(meaning, words).toContain(Number(at) > 100 ? "yields more" : "yields less");
    }
  });

  it("are the ratio of both routes, draw by draw", () => {
    const desk = new ReportDesk(input);
    breakEvenBlocks(desk);
    const of = (arm: "pigment" | "dye"): Float64Array =>
      input.account.indicators[arm].get("electricity") ?? new Float64Array(0);
    const ratios = of("pigment").map((value, i) => (100 * value) / (of("dye")[i] ?? NaN));
    const [low, median, high] = quantiles(ratios, [0.025, 0.5, 0.975]);
    const figure = desk.figures.figures["electricity.break-even-yield"];
    expect(figure).toMatchObject({ unit: "%", of: "median" });
    expect(figure?.value).toBeCloseTo(median ?? NaN, 9);
    expect(figure?.low).toBeCloseTo(low ?? NaN, 9);
    expect(figure?.high).toBeCloseTo(high ?? NaN, 9);
  });

  it("are said to be none where the dye route takes next to nothing", () => {
    const water = input.comparisons.get("water");
    if (water === undefined) throw new Error("Water is not compared.");
    const { breakEvenYield: _none, ...bare } = water;
    const comparisons = new Map(input.comparisons).set("water", bare);
    const rows = cells(breakEvenBlocks(new ReportDesk({ ...input, comparisons }))[1]);
    expect(rows[0]?.slice(0, 3)).toEqual(["Water withdrawn", "none", "–"]);
  });

  it("come with the yields that were taken", () => {
    const sentence = (made: ReportInput): string => said(breakEvenBlocks(new ReportDesk(made))[0]);
    expect(sentence(input)).toContain("gives no yield by workflow");
    const yields = { pigment: share(0.93, 0.9, 0.95) };
    expect(sentence(inputWithYields(yields))).toMatch(
      /92\.\d\s% \(\d\d\.\d\s% to \d\d\.\d\s%; first-quality book of 2025\) of the printed area of site main by pigment/,
    );
    expect(sentence(inputOf(millWithYields(yields), LOTS, { per: "kg" }))).toContain(
      "acts per accepted m² only, so that it changes nothing in this report per kg of cloth printed",
    );
    const pigment = LOTS.filter(({ route }) => route !== "reactive");
    expect(sentence(inputOf(millWithYields(yields), pigment))).toContain("for no lot");
  });
});

describe("few lots", () => {
  const text = (count: number, change: Parameters<typeof lotOf>[0] = {}): string => {
    const lots = Array.from({ length: count }, (_, i) => lotOf({ lot: `F-${i}`, ...change }));
    return said(conditions(new ReportDesk(inputOf(smallMill(), lots, { draws: 50 }))));
  };

  it("are said to widen the intervals, with what was not logged", () => {
    const six = text(6);
    expect(six).toContain("this report rests on 6 lots");
    expect(six).toContain("the mean strays by 0.41 of what a single lot strays");
    for (const words of [
      "pick-up of the pad (100",
      "cloth temperature at fixation (100",
      "speed or dwell at fixation (100",
      "water of the wash (100",
    ])
      expect(six).toContain(words);
    expect(six).not.toContain("ink or coverage");
    expect(text(6, { coverage: undefined })).toContain("ink or coverage (100");
    expect(text(1)).toContain("rests on 1 lot.");
  });

  it("go unsaid from 30 lots on, and where all was logged", () => {
    expect(text(29)).toContain("Few lots");
    expect(text(30)).not.toContain("Few lots");
    expect(text(6, LOGGED)).not.toContain("Few lots");
  });

  it("do not count cleaning and set-up", () => {
    const lots = Array.from({ length: 31 }, (_, i) =>
      lotOf({ lot: `F-${i}`, ...(i < 5 ? { kind: "overhead" } : {}) }),
    );
    const said26 = said(conditions(new ReportDesk(inputOf(smallMill(), lots, { draws: 50 }))));
    expect(said26).toContain("rests on 26 lots");
  });

  it("are told in the chapter on doubt for any number", () => {
    const doubt = (lots: Parameters<typeof inputOf>[1]): string =>
      said(scatterBlock(new ReportDesk(inputOf(smallMill(), lots, { draws: 50 }))));
    expect(doubt(LOTS)).toContain("over 6 lots it is 0.41 of the scatter of one lot, and may be");
    const many = Array.from({ length: 100 }, (_, i) => lotOf({ lot: `F-${i}` }));
    expect(doubt(many)).toContain("over 100 lots it is 0.10 of the scatter of one lot, and small");
    expect(doubt([lotOf(LOGGED)])).toContain("Every lot logged its own settings");
  });
});
