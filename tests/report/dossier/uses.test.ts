import { describe, expect, it } from "vitest";
import { swingShares, usesOf } from "../../../src/report/dossier/uses.js";
import { inputOf, smallMill } from "../compose/small-mill.js";

const input = inputOf();
const uses = usesOf(input.account.program);

describe("usesOf", () => {
  it("finds the step and the flow that a setting serves", () => {
    const use = uses.get("steamer.flush");
    expect([...(use?.steps.keys() ?? [])]).toEqual(["reactive · steam"]);
    expect(use?.steps.get("reactive · steam")).toContain("steam.open");
    expect(use).toMatchObject({ conversions: [], indicators: [], given: [] });
    expect(use?.terms).toBeGreaterThan(0);
  });

  it("finds both routes of a setting that both take", () => {
    expect([...(uses.get("pad.pickup")?.steps.keys() ?? [])]).toEqual(
      expect.arrayContaining(["pigment-calender · pretreat", "reactive · pretreat"]),
    );
  });

  it("finds what utilities turn into what, and the indicators an intensity is for", () => {
    const boiler = uses.get("boiler.efficiency");
    expect(boiler?.steps.size).toBe(0);
    expect(boiler?.conversions).toContain("steam.open to fuel.natural-gas");
    expect(uses.get("grid.PRT.intensity")?.indicators).toContain("co2-location");
    expect(uses.get("grid.PRT.intensity")?.indicators).not.toContain("scope-1");
  });

  it("tells where the mill gives a value of its own", () => {
    const own = inputOf(smallMill({ settings: { "hall.temperature": 31 } }));
    const { given } = usesOf(own.account.program).get("hall.temperature") ?? { given: [] };
    expect(given).toHaveLength(1);
    expect(given[0]).toMatch(/plant\.yaml.*hall\.temperature/);
    expect(uses.get("hall.relative-humidity")?.given).toEqual([]);
  });

  it("leaves out what the mill does not use", () => {
    expect(uses.has("tumbler.load")).toBe(false);
  });
});

describe("swingShares", () => {
  const shares = swingShares(input.swings);

  it("adds up to one over all that swings", () => {
    for (const id of input.swings.keys()) {
      const sum = [...shares.values()].reduce((so, own) => so + (own.get(id) ?? 0), 0);
      expect(sum, id).toBeCloseTo(1, 9);
    }
  });

  it("is the square of a swing over the sum of squares, owners of one default added", () => {
    const swing = (factor: string, width: number) => ({
      factor,
      unit: "1",
      words: factor,
      own: false,
      low: { value: 0, saving: 0 },
      high: { value: 1, saving: width },
      width,
    });
    const factors = [
      swing("a.b @ machine one", 3),
      swing("c.d", 4),
      swing("a.b @ machine two", 12),
    ];
    const found = swingShares(new Map([["water", { base: 0.5, factors }]] as const));
    // 9 + 16 + 144 = 169.
    expect(found.get("a.b")?.get("water")).toBeCloseTo(153 / 169, 12);
    expect(found.get("c.d")?.get("water")).toBeCloseTo(16 / 169, 12);
    expect([...found.keys()]).toEqual(["a.b", "c.d"]);
  });
});
