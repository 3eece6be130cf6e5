import { describe, expect, it } from "vitest";
import { accountOf } from "../../src/account/account.js";
import { INDICATOR_IDS } from "../../src/account/indicators.js";
import { writeProgram } from "../../src/account/program.js";
import { medianOf } from "../../src/numbers/distributions.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { type CalibrationTable, coverageUnder } from "./calibration.js";
import { groupsOf, LOTS_OF_A_WORLD, lotsOf, WORLD_MILL } from "./worlds.js";
import { AS_DRAWN, NATURES } from "./worlds-natures.js";
import { AS_OF, programOfWorlds, settingsOf, totalsAt, withAmounts } from "./worlds-totals.js";

const FEW = { worlds: 10, draws: 200 };
const SIDES = ["pigment", "dye", "saving"] as const;

function cell(table: CalibrationTable, indicator: string, side: (typeof SIDES)[number]): number {
  const share = table.rows.find((row) => row.indicator === indicator)?.[side]?.share;
  if (share === undefined) throw new Error(`no coverage of ${indicator}, ${side}`);
  return share;
}

describe("coverageUnder", () => {
  const asDrawn = coverageUnder(AS_DRAWN, FEW);

  it("counts every world once", async () => {
    const { rows, overall } = await asDrawn;
    expect(rows.map(({ indicator }) => indicator)).toEqual(
      INDICATOR_IDS.filter((id) => rows.some(({ indicator }) => indicator === id)),
    );
    expect(rows.length).toBeGreaterThan(15);
    for (const row of rows) {
      const cells = SIDES.flatMap((side) => row[side] ?? []);
      expect(cells.length).toBeGreaterThan(0);
      for (const { covered, of, share, error } of cells) {
        expect(of).toBe(FEW.worlds);
        expect(covered).toBeGreaterThanOrEqual(0);
        expect(covered).toBeLessThanOrEqual(of);
        expect(share).toBe(covered / of);
        expect(share).toBeGreaterThanOrEqual(overall.lowest);
        expect(share).toBeLessThanOrEqual(overall.highest);
        expect(error).toBeLessThanOrEqual(row.error);
        // By hand: 1.96 √(0.9 × 0.1 / 10).
        if (covered === 9) expect(error).toBeCloseTo(0.18594, 5);
      }
    }
    // Paper runs along on the calender alone, so there is nothing to save.
    const paper = rows.find(({ indicator }) => indicator === "paper");
    expect(paper).toHaveProperty("pigment");
    expect(paper).not.toHaveProperty("dye");
    expect(paper).not.toHaveProperty("saving");
  });

  it("gives the same table again", async () => {
    expect(await coverageUnder(AS_DRAWN, FEW)).toEqual(await asDrawn);
  });

  it("takes other worlds when asked to", async () => {
    const others = await coverageUnder(AS_DRAWN, { ...FEW, first: 100 });
    expect(others.rows.map(({ indicator }) => indicator)).toEqual(
      (await asDrawn).rows.map(({ indicator }) => indicator),
    );
    expect(others).not.toEqual(await asDrawn);
    for (const { pigment } of others.rows) expect(pigment?.of ?? FEW.worlds).toBe(FEW.worlds);
  });

  it("tells how far it has come", async () => {
    const told: string[] = [];
    await coverageUnder(AS_DRAWN, {
      worlds: 2,
      draws: 10,
      onProgress: (text) => told.push(text),
    });
    expect(told).toEqual(["Truths as the factors say: 2 of 2 worlds"]);
  });

  it("never covers a world whose wash water lies ten spreads off, and still covers what does not hang on it", async () => {
    const broken = await coverageUnder(
      {
        ...AS_DRAWN,
        spread: ({ factor, spread }) =>
          factor === "wash-range.fresh-water" && spread.shape === "lognormal"
            ? { shape: "fixed", value: spread.value * spread.gsd ** 10 }
            : spread,
      },
      FEW,
    );
    for (const id of ["water", "discharged", "heat", "scope-1"])
      expect(cell(broken, id, "dye")).toBe(0);
    for (const id of ["water", "electricity", "hours"]) {
      expect(cell(broken, id, "pigment")).toBe(cell(await asDrawn, id, "pigment"));
      expect(cell(broken, id, "pigment")).toBeGreaterThan(0.5);
    }
  });

  it("covers less where logs are misread", async () => {
    const blind = await coverageUnder({ ...AS_DRAWN, misread: 0.9 }, FEW);
    const { overall } = await asDrawn;
    expect(blind.overall.mean).toBeLessThan(overall.mean);
  });
});

describe("worlds", () => {
  const program = programOfWorlds();
  const setting = settingsOf(program, (leaf) => medianOf(leaf.spread));
  const { actual, logged } = lotsOf({ world: 3, setting });

  it("have a nature of their own each", () => {
    expect(NATURES[0]).toBe(AS_DRAWN);
    expect(new Set(NATURES.map(({ title }) => title)).size).toBe(NATURES.length);
  });

  it("take the rates of one program for all their logs", () => {
    const groups = groupsOf(logged);
    const written = accountOf(writeProgram(WORLD_MILL, SHIPPED, groups, AS_OF), 5, 7);
    const filled = accountOf(withAmounts(program, groups), 5, 7);
    for (const arm of ["pigment", "dye"] as const) {
      for (const [id, totals] of written.indicators[arm]) {
        totals.forEach((total, draw) => {
          const other = filled.indicators[arm].get(id)?.[draw] ?? NaN;
          expect(Math.abs(other - total)).toBeLessThanOrEqual(1e-9 * Math.abs(total));
        });
      }
    }
  });

  it("have for truth what the account would draw with the same factors", () => {
    const filled = withAmounts(program, groupsOf(logged));
    const account = accountOf(filled, 3, 7);
    const drawn = new Map(
      filled.nodes.leaves().map(({ leaf, at }) => [leaf, account.draws.of(at)] as const),
    );
    for (const draw of [0, 1, 2]) {
      const totals = totalsAt(filled, (leaf) => drawn.get(leaf)?.[draw] ?? NaN);
      for (const arm of ["pigment", "dye"] as const) {
        expect(totals[arm].size).toBeGreaterThan(15);
        for (const [id, total] of totals[arm]) {
          const other = account.indicators[arm].get(id)?.[draw] ?? NaN;
          expect(Math.abs(other - total)).toBeLessThanOrEqual(1e-9 * Math.abs(total));
        }
      }
    }
  });

  it("log a part of what lots were, and nothing else", () => {
    expect(actual).toHaveLength(LOTS_OF_A_WORLD);
    const kept = {
      coverage: 0.6,
      pickup: 0.4,
      fixTemp: 0.5,
      dwell: 0.5,
      liquorRatio: 0.3,
    } as const;
    for (const column of Object.keys(kept) as (keyof typeof kept)[]) {
      const had = actual.filter((lot) => lot[column] !== undefined).length;
      const filled = logged.filter((lot) => lot[column] !== undefined).length;
      expect(filled / had).toBeGreaterThan(kept[column] - 0.12);
      expect(filled / had).toBeLessThan(kept[column] + 0.12);
      logged.forEach((lot, at) => {
        if (lot[column] !== undefined) expect(lot[column]).toBe(actual[at]?.[column]);
      });
    }
    expect(logged.map(({ ink, length }) => [ink, length])).toEqual(
      actual.map(({ ink, length }) => [ink, length]),
    );
  });

  it("scatter lots about the true settings", () => {
    const truths = {
      coverage: setting("printer.coverage @ role main/printer/print"),
      pickup: setting("pad.pickup @ role main/pad-1/pretreat"),
      liquorRatio: setting("wash-range.fresh-water @ role main/range/wash"),
    };
    for (const column of ["coverage", "pickup", "liquorRatio"] as const) {
      const values = actual.flatMap((lot) => lot[column] ?? []);
      const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
      expect(Math.abs(mean / truths[column] - 1)).toBeLessThan(0.03);
      expect(new Set(values).size).toBe(values.length);
    }
  });
});
