import { describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import { ReportDesk } from "../../../src/report/compose/desk.js";
import type { ReportInput } from "../../../src/report/compose/input.js";
import { bestMeasurement, worthBlocks } from "../../../src/report/compose/measurement.js";
import { inputOf, LOTS, smallMill } from "./small-mill.js";

const INPUT = inputOf(smallMill(), LOTS, { draws: 2000 });
const desk = (change: Partial<ReportInput> = {}): ReportDesk =>
  new ReportDesk({ ...INPUT, ...change });

const said = (block: Block): string =>
  block.kind === "paragraph"
    ? block.runs.map((run) => (run.kind === "note-ref" ? "" : run.text)).join("")
    : "";

const numbersIn = (text: string): readonly number[] =>
  (text.match(/\d+/g) ?? []).map((digits) => Number(digits));

function rowsOf(id: string): readonly (readonly string[])[] {
  const table = worthBlocks(desk()).find((block) => block.kind === "table" && block.id === id);
  if (table?.kind !== "table") throw new Error(`no table ${id}`);
  return table.rows.map((row) =>
    row.map(({ runs }) => runs.map((run) => (run.kind === "note-ref" ? "" : run.text)).join("")),
  );
}

describe("bestMeasurement", () => {
  const best = [...(INPUT.worth ?? [])]
    .map(([id, { worths }]) => ({ id, first: worths[0] }))
    .sort((a, b) => (b.first?.share ?? 0) - (a.first?.share ?? 0))[0];

  it("names the measurement with the largest share, and how it narrows the interval", () => {
    const sentence = said(bestMeasurement(desk()));
    expect(sentence).toContain(`${best?.first?.measurement.words ?? "?"}: it would take away`);
    const [, from = "", to = ""] = /saving \((.+?) would be about (.+?%)\)/.exec(sentence) ?? [];
    const [low = NaN, high = NaN] = numbersIn(from);
    const [lowAfter = NaN, highAfter = NaN] = numbersIn(to);
    expect(high - low).toBeGreaterThan(highAfter - lowAfter);
  });

  it("says that none stands out where nothing was worked out", () => {
    const { worth, ...without } = INPUT;
    expect(worth?.size).toBeGreaterThan(0);
    expect(said(bestMeasurement(new ReportDesk(without)))).toBe(
      "The measurement that would help most: none stands out.",
    );
  });
});

describe("worthBlocks", () => {
  it("splits the variance of each saving so that rows add up to all of it", () => {
    const rows = rowsOf("worth");
    const columns = (rows[0]?.length ?? 1) - 1;
    expect(columns).toBe(INPUT.worth?.size);
    for (let column = 1; column <= columns; column++) {
      const sum = rows.reduce((total, row) => total + (numbersIn(row[column] ?? "")[0] ?? 0), 0);
      // Rows below 2 % are left out and small shares are chance in part, so some per cent either way.
      expect(Math.abs(sum - 100)).toBeLessThan(10);
    }
  });

  it("sets the interval as it stands above those that would stay", () => {
    const rows = rowsOf("worth-after");
    let now = NaN;
    for (const [, what = "", , interval = ""] of rows) {
      const [low = NaN, high = NaN] = numbersIn(interval);
      if (what === "as it stands") now = high - low;
      else expect(high - low).toBeLessThanOrEqual(now);
    }
    expect(rows.filter(([, what]) => what === "as it stands").length).toBe(INPUT.worth?.size);
    expect(rows.length).toBeGreaterThan(INPUT.worth?.size ?? NaN);
  });

  it("names what would help the totals really made", () => {
    const sentences = worthBlocks(desk()).map(said);
    expect(
      sentences.some((one) => one.startsWith("For the totals of what the mill really did")),
    ).toBe(true);
  });

  it("says so where no measurement is worth naming", () => {
    const [first] = worthBlocks(desk({ worth: new Map() }));
    expect(first === undefined ? "" : said(first)).toBe(
      "No measurement would take away a part worth naming.",
    );
  });
});
