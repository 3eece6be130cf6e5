import { describe, expect, it } from "vitest";
import { playScenarios } from "../../../src/compare/scenarios.js";
import type { ScenarioText } from "../../../src/plant/schema.js";
import { ReportDesk } from "../../../src/report/compose/desk.js";
import { scenarioBlocks } from "../../../src/report/compose/scenarios.js";
import type { Block, Run } from "../../../src/report/document.js";
import { lintWording } from "../../../src/report/wording.js";
import { plantFrom } from "../../account/plant-file.js";
import { SHIPPED } from "../../tools/shipped-factors.js";
import { AS_OF, inputOf, smallMill } from "./small-mill.js";

const runText = (runs: readonly Run[]): string =>
  runs.map((run) => (run.kind === "note-ref" ? "" : run.text)).join("");

const MILL = inputOf();

/** Blocks of a report on the small mill with scenarios. */
function blocksOf(
  scenarios: Readonly<Record<string, ScenarioText>>,
  more: { readonly asked?: boolean; readonly draws?: number } = {},
): { readonly blocks: readonly Block[]; readonly desk: ReportDesk } {
  const { text } = smallMill();
  const plant = plantFrom({ ...text, sites: { main: { ...text.sites["main"] } }, scenarios });
  const stage = {
    plant,
    factors: SHIPPED,
    groups: MILL.groups,
    program: MILL.account.program,
    uncovered: 0,
    asOf: AS_OF,
    draws: more.draws ?? 200,
    seed: 1,
  };
  const all = (plant.scenarios ?? []).map((one) => ({ ...one, asked: more.asked === true }));
  const played = playScenarios(stage, all);
  if ("without" in played) throw new Error("No area is left.");
  const desk = new ReportDesk({ ...MILL, plant, scenarios: played });
  return { blocks: scenarioBlocks(desk), desk };
}

function cells(blocks: readonly Block[], id: string): readonly (readonly string[])[] {
  const table = blocks.find((block) => block.kind === "table" && block.id === id);
  if (table?.kind !== "table") throw new Error(`There is no table ${id}.`);
  return table.rows.map((row) => row.map(({ runs }) => runText(runs)));
}

const SCENARIOS = {
  "other grid": { note: "as elsewhere", sites: { main: { place: "NOR" } } },
  "no heat lost": { rejects: { pigment: 2 } },
} satisfies Record<string, ScenarioText>;

describe("scenarioBlocks", () => {
  const { blocks, desk } = blocksOf(SCENARIOS);

  it("say how to ask for a scenario where there is none", () => {
    const [only, ...others] = scenarioBlocks(new ReportDesk(MILL));
    expect(others).toEqual([]);
    expect(only?.kind === "paragraph" ? runText(only.runs) : "").toContain("--set KEY=VALUE");
  });

  it("set the mill's saving beside that of each scenario", () => {
    const rows = cells(blocks, "scenario-savings");
    expect(rows.map(([name]) => name)).toEqual(["The mill", "other grid", "no heat lost"]);
    for (const [, ...savings] of rows)
      for (const saving of savings) expect(saving).toMatch(/^−?\d+ \(−?\d+ to −?\d+\)$/);
    // The grid moves carbon dioxide and nothing else of the table.
    const [mill = [], grid = []] = rows;
    expect(grid.map((cell, i) => cell === mill[i])).toEqual([
      ...[false, true, true, true],
      ...[false, true],
    ]);
  });

  it("say what changes draw by draw, and where nothing does", () => {
    const [grid = [], rejects = []] = cells(blocks, "scenario-changes");
    expect(grid.slice(1)).toEqual(["none", "none", "none", expect.stringMatching(/ to /), "none"]);
    for (const change of rejects.slice(1)) expect(change).toMatch(/^−\d/);
  });

  it("hold figures for what they print", () => {
    const { "scenario.mill.water.saving": mill, "scenario.2.water.change": change } =
      desk.figures.figures;
    const water = MILL.comparisons.get("water")?.saving;
    expect(mill?.value).toBeCloseTo(100 * (water?.median ?? NaN), 9);
    expect(change?.unit).toBe("points");
  });

  it("list what differs, in the words of the mill first", () => {
    const list = blocks.find(({ kind }) => kind === "list");
    expect(list?.kind === "list" ? list.items.map(runText) : []).toEqual([
      "other grid: as elsewhere. sites.main.place: NOR instead of PRT.",
      "no heat lost: rejects on pigment: 2 times as logged.",
    ]);
  });

  it("warn of what was set on the command line, and of fewer draws", () => {
    const warned = (more: Parameters<typeof blocksOf>[1]): readonly string[] =>
      blocksOf({ other: {} }, more).blocks.flatMap((block) =>
        block.kind === "box" ? [block.title] : [],
      );
    expect(warned({})).toEqual([]);
    expect(warned({ asked: true })).toEqual(["Not the mill"]);
    const first = (draws: number): string => {
      const [block] = blocksOf({ other: {} }, { draws }).blocks;
      return block?.kind === "paragraph" ? runText(block.runs) : "";
    };
    expect(first(100)).toContain("fewer draws");
    expect(first(200)).not.toContain("fewer draws");
  });

  it("use no words of praise", () => {
    const said = JSON.stringify(blocks);
    expect(lintWording(said)).toEqual([]);
  });
});
