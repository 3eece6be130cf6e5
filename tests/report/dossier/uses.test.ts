import { describe, expect, it } from "vitest";
import { swingShares, usesOf } from "../../../src/report/dossier/uses.js";
import { inputOf } from "../compose/small-mill.js";

const input = inputOf();
const uses = usesOf(input.account.program);

describe("usesOf", () => {
  it("finds the step and the flow that a setting serves", () => {
    const use = uses.get("steamer.flush");
    expect(use?.steps).toEqual(["reactive · steam"]);
    expect(use?.flows).toContain("steam.open");
    expect(use?.conversion).toBe(false);
  });

  it("finds both routes of a setting that both take", () => {
    expect(uses.get("pad.pickup")?.steps).toEqual(
      expect.arrayContaining(["pigment-calender · pretreat", "reactive · pretreat"]),
    );
  });

  it("tells utilities and intensities from steps", () => {
    expect(uses.get("boiler.efficiency")).toMatchObject({ steps: [], conversion: true });
  });

  it("leaves out what the mill does not use", () => {
    expect(uses.has("tumbler.load")).toBe(false);
  });
});

describe("swingShares", () => {
  it("adds up to one over all factors", () => {
    for (const id of input.swings.keys()) {
      const sum = [...uses.keys()].reduce(
        (so, factor) => so + (swingShares(input.swings, factor).get(id) ?? 0),
        0,
      );
      expect(sum, id).toBeCloseTo(1, 9);
    }
  });
});
