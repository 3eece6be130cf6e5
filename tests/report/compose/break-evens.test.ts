import { describe, expect, it } from "vitest";
import { accountOf } from "../../../src/account/account.js";
import { compareArms } from "../../../src/compare/compare.js";
import { turningBlocks } from "../../../src/report/compose/break-evens.js";
import { methodBlocks } from "../../../src/report/compose/comparison-methods.js";
import { ReportDesk } from "../../../src/report/compose/desk.js";
import type { ReportInput } from "../../../src/report/compose/input.js";
import type { Block, Cell } from "../../../src/report/document.js";
import { inputOf } from "./small-mill.js";

const INPUT = inputOf();
const blocksOf = (change: Partial<ReportInput> = {}) =>
  turningBlocks(new ReportDesk({ ...INPUT, ...change }));

const said = ({ runs }: Cell) =>
  runs.map((run) => (run.kind === "note-ref" ? "" : run.text)).join("");

function rowsOf(blocks: readonly Block[], id: string): readonly (readonly string[])[] {
  const table = blocks.find((block) => block.kind === "table" && block.id === id);
  return table?.kind === "table" ? table.rows.map((row) => row.map(said)) : [];
}

// A number as printed, with its sign and without the blanks between thousands.
const numberIn = (text: string) =>
  Number(
    /-?[\d.]+/.exec(
      text.replace(/(?<=\d)[\u00a0\u202f\u2009](?=\d{3})/g, "").replace("\u2212", "-"),
    )?.[0],
  );

describe("turningBlocks", () => {
  const blocks = blocksOf();
  const rows = rowsOf(blocks, "break-evens");

  it("lists up to three settings for each indicator with a share saved", () => {
    const heads = rows.filter(([indicator]) => indicator !== "").map(([indicator]) => indicator);
    expect(heads).toEqual(
      expect.arrayContaining(["Water withdrawn", "Final energy", "Electricity"]),
    );
    expect(new Set(heads).size).toBe(heads.length);
    expect(rows.length).toBeLessThanOrEqual(3 * heads.length);
  });

  it("prints values at which nothing is saved when the mill is worked out with them", () => {
    const { program } = INPUT.account;
    const row = rows.find(([, , , turns]) => /^[\d.]+/.test(turns ?? "") && !turns?.includes("*"));
    const at = rows.indexOf(row ?? []);
    const indicator = rows.slice(0, at + 1).findLast(([head]) => head !== "")?.[0];
    const id =
      ({ "Water withdrawn": "water", "COD load": "cod", "Final energy": "energy" } as const)[
        indicator ?? ""
      ] ?? "electricity";
    const [, named = "", today = "", turns = ""] = row ?? [];
    const value = numberIn(turns);
    const nodes = program.nodes.with((leaf) =>
      named.endsWith(` ${leaf.common ?? leaf.id}`)
        ? { ...leaf, spread: { shape: "fixed", value } }
        : leaf,
    );
    const held = compareArms(accountOf({ ...program, nodes }, 2000, INPUT.seed), id, 1);
    const now = Math.abs(INPUT.comparisons.get(id)?.saving?.median ?? NaN);
    expect(Number.isFinite(value) && today !== "").toBe(true);
    // Printed to three digits, found on fewer draws.
    expect(Math.abs(held.saving?.median ?? NaN)).toBeLessThan(Math.max(0.02, 0.1 * now));
  });

  it("counts every setting once for each indicator", () => {
    const counts = rowsOf(blocks, "break-even-counts").map(([, found, , none, , idle]) =>
      [found, none, idle].reduce((sum, text) => sum + numberIn(text ?? ""), 0),
    );
    expect(counts.length).toBeGreaterThan(3);
    expect(new Set(counts).size).toBe(1);
  });

  it("shows where a claim would fall below its level", () => {
    const low = INPUT.comparisons.get("water")?.saving?.low ?? NaN;
    const claims = {
      policy: "made",
      changes: [],
      verdicts: [
        {
          kind: {
            id: "less-water",
            words: "less process water",
            indicator: "water",
            needs: "meters",
          },
          verdict: "conditions",
          gates: [],
          cautious: low - 0.001,
          expires: "2027-11-25",
        },
        {
          kind: {
            id: "less-energy",
            words: "less final energy",
            indicator: "energy",
            needs: "meters",
          },
          verdict: "not-supported",
          gates: [],
          cautious: 0.1,
          expires: "2027-11-25",
        },
      ],
    } as const;
    const found = rowsOf(blocksOf({ claims }), "claim-break-evens");
    expect(found).toHaveLength(3);
    expect(found[0]?.[0]).toContain("less process water");
    // A level just below the lower end is lost by a small step.
    const [, , today = "", turns = ""] = found[0] ?? [];
    expect(Math.abs(numberIn(turns) / numberIn(today) - 1)).toBeLessThan(0.05);
    expect(rowsOf(blocks, "claim-break-evens")).toEqual([]);
  });

  it("draws both maps, today's share on them, or says why one is missing", () => {
    const figures = blocks.flatMap((block) => (block.kind === "figure" ? [block] : []));
    expect(figures.map(({ id }) => id)).toEqual(["map-wash-exhaust", "map-grid-fuel"]);
    for (const { chart, missing } of figures) {
      if (chart?.kind !== "two-way-map") {
        expect(missing).toMatch(/^The mill /);
        continue;
      }
      const { across, up, rows: shares, today } = chart.data;
      for (const side of [across, up]) {
        expect(side.low).toBeLessThanOrEqual(side.today);
        expect(side.high).toBeGreaterThanOrEqual(side.today);
      }
      const all = shares.flat().flatMap((share) => (share === null ? [] : [share]));
      expect(today).toBeGreaterThanOrEqual(Math.min(...all));
      expect(today).toBeLessThanOrEqual(Math.max(...all));
    }
  });
});

describe("methodBlocks", () => {
  const rows = rowsOf(methodBlocks(new ReportDesk(INPUT)), "comparison-methods");

  it("never says that all draws show something", () => {
    expect(rows.length).toBeGreaterThan(3);
    for (const [, share = ""] of rows) expect(share).not.toMatch(/^(100|0)\u00a0%$/);
  });

  it("calls by all three methods what page one calls resolved and saved", () => {
    const water = rows.find(([indicator]) => indicator === "Water withdrawn");
    expect(INPUT.comparisons.get("water")?.resolved).toBe(true);
    expect([water?.[2], water?.[4], water?.[6]]).toEqual([
      "pigment less",
      "pigment less",
      "pigment less",
    ]);
  });
});
