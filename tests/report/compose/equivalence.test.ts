import { describe, expect, it } from "vitest";
import { Ledger } from "../../../src/ledger/ledger.js";
import type { Lot } from "../../../src/log/lot.js";
import type { Plant } from "../../../src/plant/plant.js";
import {
  equivalenceBlocks,
  equivalenceSentence,
  fastnessKnown,
  medianGrade,
} from "../../../src/report/compose/equivalence.js";
import { ReportDesk } from "../../../src/report/compose/desk.js";
import type { RouteGrades } from "../../../src/ledger/fastness.js";
import type { Cell } from "../../../src/report/document.js";
import { inputOf, LOTS, smallMill } from "./small-mill.js";

const PLANT = smallMill();
const STRICT: Plant = {
  ...PLANT,
  text: {
    ...PLANT.text,
    clients: Object.fromEntries(
      [...new Set(LOTS.map(({ client }) => client))].map((client) => [
        client,
        { minimum: { rub_wet: 3 } },
      ]),
    ),
  },
};

const workflowOf = (lot: Lot): string => PLANT.routes[lot.route]?.workflow ?? "";

/** Lots with one grade for all properties, by workflow; ungraded where none is given. */
function gradedLots(grades: Readonly<Partial<Record<string, number>>>): readonly Lot[] {
  return LOTS.map((lot) => {
    const grade = grades[workflowOf(lot)];
    return { ...lot, fastness: { rubDry: grade, rubWet: grade, wash: grade } };
  });
}

function countsOf(lots: readonly Lot[], plant = PLANT): readonly RouteGrades[] {
  const ledger = new Ledger();
  for (const lot of lots) ledger.add(lot, plant);
  return ledger.fastness();
}

const sentenceOf = (lots: readonly Lot[]): string =>
  equivalenceSentence({ plant: PLANT, fastness: countsOf(lots) });

const textOf = (cell: Cell | undefined): string =>
  (cell?.runs ?? []).map((run) => (run.kind === "note-ref" ? "" : run.text)).join("");

describe("medianGrade", () => {
  it.each([
    [[0, 0, 0, 0, 0, 0, 0, 0, 0], undefined],
    [[1, 0, 0, 0, 0, 0, 0, 0, 0], 1],
    [[0, 0, 0, 0, 0, 0, 0, 0, 3], 5],
    // Of an even number the lower of the two in the middle.
    [[0, 0, 0, 0, 2, 0, 2, 0, 0], 3],
    [[0, 0, 0, 0, 2, 3, 0, 0, 0], 3.5],
  ])("of %j is %s", (counts, expected) => {
    expect(medianGrade(counts)).toBe(expected);
  });
});

describe("functional equivalence", () => {
  it("is not shown where nothing is logged, or on one workflow only", () => {
    expect(sentenceOf(gradedLots({}))).toBe(
      "Fastness is not logged, so functional equivalence is not shown.",
    );
    const one = sentenceOf(gradedLots({ pigment: 4 }));
    expect(one).toMatch(/^Fastness is unknown for most lots of .+ is not shown\.$/);
    expect(equivalenceSentence({ plant: PLANT })).toMatch(/is not shown/);
  });

  it("is not shown where pigment is lower, and names in what", () => {
    const said = sentenceOf(gradedLots({ pigment: 3, dye: 4.5 }));
    expect(said).toContain("wet rub 3 against 4–5");
    expect(said).toContain("pigment is lower in dry rub and wet rub and wash");
    expect(said).toMatch(/is not shown\.$/);
  });

  it("is said with the grades where both are known and pigment is not lower", () => {
    const said = sentenceOf(gradedLots({ pigment: 4, dye: 4 }));
    expect(said).toContain("pigment is not lower in these");
    expect(said).not.toContain("is not shown");
  });

  it("is known only when half of the lots of every route are graded", () => {
    const known = (lots: readonly Lot[]): object =>
      fastnessKnown({ plant: PLANT, fastness: countsOf(lots) });
    expect(known(gradedLots({ pigment: 4, dye: 4 }))).toEqual({ pigment: true, dye: true });
    expect(known(gradedLots({ dye: 4 }))).toEqual({ pigment: false, dye: true });
    const [first, ...rest] = gradedLots({});
    if (first === undefined) throw new Error("no lots");
    const few = [{ ...first, fastness: { rubDry: 4, rubWet: 4, wash: 4 } }, ...rest, ...rest];
    expect(known(few)).toEqual({ pigment: false, dye: false });
    expect(known([])).toEqual({ pigment: false, dye: false });
  });
});

describe("the table by route", () => {
  const blocksOf = (plant: Plant, lots: readonly Lot[]): ReturnType<typeof equivalenceBlocks> =>
    equivalenceBlocks(new ReportDesk({ ...inputOf(plant, lots), fastness: countsOf(lots, plant) }));

  it("has a row a route, and says that nothing is set apart without least grades", () => {
    const [, table, apart] = blocksOf(PLANT, gradedLots({ pigment: 4, dye: 4 }));
    if (table?.kind !== "table") throw new Error("no table");
    const routes = new Set(LOTS.map(({ route }) => route));
    expect(new Set(table.rows.map(([name]) => textOf(name)))).toEqual(routes);
    expect(table.rows.map((row) => textOf(row[8]))).toEqual(table.rows.map(() => "–"));
    expect(JSON.stringify(apart)).toContain("no lot is set apart");
  });

  it("counts lots that miss, and does not count their area as rejected twice", () => {
    const free = blocksOf(PLANT, gradedLots({ pigment: 4, dye: 2 }));
    const strict = blocksOf(STRICT, gradedLots({ pigment: 4, dye: 2 }));
    const [, before] = free;
    const [, after, apart] = strict;
    if (before?.kind !== "table" || after?.kind !== "table") throw new Error("no table");
    expect(after.rows.map((row) => textOf(row[6]))).toEqual(
      before.rows.map((row) => textOf(row[6])),
    );
    const dyed = LOTS.filter((lot) => workflowOf(lot) === "dye" && lot.kind !== "overhead");
    const below = after.rows.reduce((sum, row) => {
      const [count = "0"] = /^\d+/.exec(textOf(row[8])) ?? [];
      return sum + Number(count);
    }, 0);
    expect(below).toBe(dyed.length);
    expect(JSON.stringify(apart)).toContain("They count as rejected");
  });
});
