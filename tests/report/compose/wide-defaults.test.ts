import { describe, expect, it } from "vitest";
import { Nodes } from "../../../src/account/nodes.js";
import { leafRange } from "../../../src/account/draws.js";
import { ReportDesk } from "../../../src/report/compose/desk.js";
import { wideDefaults } from "../../../src/report/compose/wide-defaults.js";
import { inputOf, LOTS, smallMill } from "./small-mill.js";

const INPUT = inputOf(smallMill(), LOTS, { draws: 2000 });
const [TABLE] = wideDefaults(new ReportDesk(INPUT));
const ROWS = (TABLE?.kind === "table" ? TABLE.rows : []).map((row) =>
  row.map(({ runs }) => runs.map((run) => (run.kind === "note-ref" ? "" : run.text)).join("")),
);
const LEAVES = INPUT.account.program.nodes.leaves().map(({ leaf }) => leaf);

describe("wideDefaults", () => {
  it("lists defaults whose interval is wide and whose scores are low, and no number of the mill", () => {
    expect(ROWS.length).toBeGreaterThan(0);
    for (const [factor = "", , , scores = ""] of ROWS) {
      const leaf = LEAVES.find((one) => one.factor === factor && one.provenance === "default");
      if (leaf === undefined) throw new Error(`${factor} is no default in use`);
      const { low, high } = leafRange(leaf);
      expect(high / low).toBeGreaterThanOrEqual(2);
      // Reliability, completeness, time, place, technology.
      const [reliability = NaN, , , , technology = NaN] = scores.split(" ").map(Number);
      expect(Math.max(reliability, technology)).toBeGreaterThanOrEqual(4);
    }
  });

  it("puts first what moves a saving most", () => {
    const shares = ROWS.map((row) => Number(/\d+/.exec(row[4] ?? "")?.[0] ?? 0));
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
  });

  it("has no row for a default that the mill replaced by its own number", () => {
    const [first] = ROWS;
    const factor = first?.[0] ?? "";
    const nodes = new Nodes();
    for (const leaf of LEAVES) {
      nodes.number(leaf.factor === factor ? { ...leaf, provenance: "plant" } : leaf);
    }
    const account = { ...INPUT.account, program: { ...INPUT.account.program, nodes } };
    const [table] = wideDefaults(new ReportDesk({ ...INPUT, account }));
    const names = table?.kind === "table" ? table.rows.map((row) => row[0]?.runs[0]) : [];
    expect(names.length).toBeGreaterThan(0);
    expect(JSON.stringify(names)).not.toContain(`"${factor}"`);
  });
});
