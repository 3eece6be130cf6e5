import { describe, expect, it } from "vitest";
import { interval95, medianOf } from "../../src/numbers/distributions.js";
import { lookupIn, MissingFactor } from "../../src/plant/quantities.js";
import { SHIPPED, shippedFactor } from "../tools/shipped-factors.js";

const lookup = lookupIn(SHIPPED, "2026-03", "2026-11-25");

describe("lookupIn", () => {
  it("gives the same leaf for the same question", () => {
    const asked = { id: "pad.power", owner: "machine main/pad" };
    expect(lookup(asked)).toBe(lookup({ ...asked }));
    expect(lookup(asked)).not.toBe(lookup({ ...asked, owner: "machine main/other" }));
  });

  it("names the stream by factor and owner, and shares part of a default between owners", () => {
    const leaf = lookup({ id: "pad.power", owner: "machine main/pad" });
    expect(leaf).toMatchObject({
      id: "pad.power @ machine main/pad",
      common: "pad.power",
      provenance: "default",
      spread: shippedFactor("pad.power").values[0]?.spread,
    });
  });

  it("has facts of the world once, whoever asks", () => {
    const leaf = lookup({ id: "fuel.natural-gas.co2", owner: "" });
    expect(leaf.id).toBe("fuel.natural-gas.co2");
    expect(leaf.common).toBeUndefined();
  });

  it("puts the plant file before what is usual, and that before the factor", () => {
    const asked = { id: "pad.power", owner: "machine main/pad", usual: 7 };
    const usual = lookup(asked);
    expect(usual.spread).toMatchObject({ shape: "normal", value: 7 });
    expect(usual.provenance).toBe("default");
    const given = lookup({ ...asked, given: { value: 9, exact: true }, where: "somewhere" });
    expect(given).toMatchObject({
      spread: { shape: "fixed", value: 9 },
      provenance: "plant",
      source: "plant.yaml, somewhere",
    });
    expect(given.common).toBeUndefined();
  });

  it("keeps the doubt of a usual setting that sources disagree on", () => {
    const asked = { id: "wash-range.fresh-water", owner: "role main/range/wash" };
    const usual = lookup({ ...asked, usual: { value: 15, low: 5, high: 45 } });
    const [low, high] = interval95(usual.spread);
    expect(low).toBeCloseTo(5, 2);
    expect(high).toBeCloseTo(45, 1);
    expect(medianOf(usual.spread)).toBeCloseTo(15, 3);
    expect(usual).toMatchObject({ common: asked.id, source: "own-estimate" });
    const other = lookup({ ...asked, usual: { value: 20, low: 5, high: 80 } });
    expect(other.id).not.toBe(usual.id);
  });

  it("takes the bond it is asked with", () => {
    const bond = { stream: "pair", weight: 0.7 };
    const asked = { id: "pad.power", owner: "machine main/pad-9", bond };
    expect(lookup(asked).bond).toBe(bond);
    expect(lookup({ ...asked, given: 5, where: "somewhere" }).bond).toBe(bond);
    expect(lookup({ ...asked, usual: 5 }).bond).toBe(bond);
  });

  it("takes the vintage of the month, as far as it was known", () => {
    const [newest, older] = shippedFactor("grid.DEU.intensity").values;
    if (newest === undefined || older === undefined) throw new Error("one vintage only");
    const of = (month: string): unknown =>
      lookupIn(SHIPPED, month, "2026-11-25")({ id: "grid.DEU.intensity", owner: "" }).spread;
    expect(of(newest.from.slice(0, 7))).toEqual(newest.spread);
    expect(of(older.from.slice(0, 7))).toEqual(older.spread);
  });

  it("counts a factor overruled by the user as the mill's own", () => {
    const factors = new Map(SHIPPED.factors);
    factors.set("pad.power", { ...shippedFactor("pad.power"), overruled: true });
    const own = lookupIn({ ...SHIPPED, factors }, "2026-03", "2026-11-25");
    expect(own({ id: "pad.power", owner: "machine main/pad" }).provenance).toBe("plant");
  });

  it("refuses what no set holds, or was not known by then", () => {
    expect(() => lookup({ id: "pad.colour", owner: "" })).toThrow(MissingFactor);
    const early = lookupIn(SHIPPED, "2026-03", "1990-01-01");
    expect(() => early({ id: "pad.power", owner: "" })).toThrow(
      "pad.power: no value had been entered by 1990-01-01",
    );
  });
});
