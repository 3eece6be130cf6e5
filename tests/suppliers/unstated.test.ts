import { describe, expect, it } from "vitest";
import { leafRange } from "../../src/account/draws.js";
import { type Candidate, candidateOf, isOwned } from "../../src/suppliers/candidate.js";
import { endsCounted, unsaidOf } from "../../src/suppliers/unstated.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { houseOf } from "./made.js";

const made = (settings = {}): Candidate =>
  candidateOf(houseOf("A", { settings }), SHIPPED, "2026-11-25") as Candidate;
const all = (): boolean => true;

describe("settings left unsaid", () => {
  const { program } = made();
  const unsaid = unsaidOf(program, all, ["water", "energy"], endsCounted([program], SHIPPED));

  it("count at the end of their interval at which more is taken", () => {
    const [first] = unsaid.get("water")!.settings;
    expect(first?.factor).toBe("wash-range.fresh-water");
    const { leaf } = program.nodes
      .leaves()
      .find((one) => one.leaf.factor === "wash-range.fresh-water")!;
    expect(first?.counted).toBe(leafRange(leaf).high);
    const boiler = unsaid
      .get("energy")!
      .settings.find(({ factor }) => factor === "boiler.efficiency");
    const efficiency = program.nodes
      .leaves()
      .find((one) => one.leaf.factor === "boiler.efficiency")!.leaf;
    expect(boiler?.counted).toBe(leafRange(efficiency).low);
    expect(unsaid.get("energy")!.settings.every(({ rise }) => rise >= -1e-9)).toBe(true);
  });

  it("are held there, and nothing else is", () => {
    const held = unsaid.get("energy")!.program.nodes.leaves();
    program.nodes.leaves().forEach(({ leaf }, i) => {
      const now = held[i]!.leaf;
      if (now.spread !== leaf.spread) {
        expect([leaf.provenance, isOwned(leaf), now.spread.shape]).toEqual([
          "default",
          true,
          "fixed",
        ]);
      }
    });
    expect(
      held.find(({ leaf }) => leaf.factor === "grid.PRT.intensity")?.leaf.spread.shape,
    ).not.toBe("fixed");
  });

  it("are no longer unsaid once stated", () => {
    const stated = made({ "boiler.efficiency": 0.9 });
    const names = unsaidOf(stated.program, all, ["energy"], endsCounted([stated.program], SHIPPED))
      .get("energy")!
      .settings.map(({ factor }) => factor);
    expect(names).not.toContain("boiler.efficiency");
  });

  it("count at the plausible limit where any supplier states them", () => {
    const other = made({ "boiler.efficiency": 0.9 });
    const ends = endsCounted([program, other.program], SHIPPED);
    const counted = unsaidOf(program, all, ["energy"], ends)
      .get("energy")!
      .settings.find(({ factor }) => factor === "boiler.efficiency");
    expect(counted?.counted).toBe(SHIPPED.factors.get("boiler.efficiency")!.plausible[0]);
    const { leaf } = other.program.nodes
      .leaves()
      .find((one) => one.leaf.factor === "boiler.efficiency")!;
    expect(ends(leaf)).toBeUndefined();
  });
});
