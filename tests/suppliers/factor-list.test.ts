import { describe, expect, it } from "vitest";
import type { Factor, FactorValue } from "../../src/factors/factor.js";
import { valueInForce } from "../../src/factors/in-force.js";
import {
  factorDifferences,
  factorList,
  factorSetOf,
  remembering,
} from "../../src/suppliers/factor-list.js";
import { newest, SHIPPED, shippedFactor } from "../tools/shipped-factors.js";

const ID = "boiler.efficiency";
const dated = (from: string, entered: string, value: number): FactorValue => ({
  ...newest(ID),
  from,
  entered,
  spread: { shape: "fixed", value },
});
const VINTAGES: Factor = {
  ...shippedFactor(ID),
  values: [
    dated("2026-06-01", "2026-06-01", 0.94),
    dated("2026-02-01", "2026-09-01", 0.93),
    dated("2026-02-01", "2026-01-01", 0.92),
    dated("2025-01-01", "2025-01-01", 0.91),
    dated("2024-01-01", "2024-01-01", 0.9),
  ],
};
const SET = { ...SHIPPED, factors: new Map([...SHIPPED.factors, [ID, VINTAGES]]) };

describe("factors of a pack", () => {
  it("are those that were asked for", () => {
    const { set, asked } = remembering(SHIPPED);
    expect(set.factors.get(ID)).toBe(SHIPPED.factors.get(ID));
    expect(set.factors.has("hall.temperature")).toBe(true);
    expect(set.factors.get("nothing")).toBeUndefined();
    expect(set.factors.size).toBe(SHIPPED.factors.size);
    expect([...asked].sort()).toEqual([ID, "hall.temperature"]);
  });

  it.each([
    ["2025-03", "2026-11-25"],
    ["2026-01", "2026-11-25"],
    ["2026-03", "2026-11-25"],
    ["2026-03", "2026-05-01"],
    ["2026-08", "2026-11-25"],
    ["2023-08", "2026-11-25"],
  ])("serve month %s on %s as the whole set does", (month, asOf) => {
    const list = factorList(SET, new Set([ID]), [month], asOf);
    const back = factorSetOf({ ...list, factorSet: SET.digest }).factors.get(ID)!;
    expect(valueInForce(back, month, asOf)?.value.spread).toEqual(
      valueInForce(VINTAGES, month, asOf)?.value.spread,
    );
  });

  it("leave out vintages that no month reads, and keep sources of the rest", () => {
    const { factors, sources } = factorList(
      SET,
      new Set([ID]),
      ["2026-03", "2026-07"],
      "2026-11-25",
    );
    expect(factors[0]?.values.map(({ from }) => from)).toEqual(["2026-06-01", "2026-02-01"]);
    expect(Object.keys(sources)).toEqual([newest(ID).source]);
    expect(sources[newest(ID).source]?.title).toBe(SHIPPED.sources.get(newest(ID).source)?.title);
  });

  it("are told from shipped ones: the supplier's own, altered, unknown", () => {
    const plain = factorList(
      SHIPPED,
      new Set([ID, "hall.temperature"]),
      ["2026-03"],
      "2026-11-25",
    ).factors;
    expect(factorDifferences(plain, SHIPPED)).toEqual([]);
    const better = plain.map((one) => ({
      ...one,
      values: one.values.map((value) => ({
        ...value,
        spread: { shape: "fixed" as const, value: 0.99 },
      })),
    }));
    expect(factorDifferences(better.slice(0, 1), SHIPPED)).toEqual([
      { id: ID, how: "altered", value: 0.99, shipped: newest(ID).spread.value },
    ]);
    expect(
      factorDifferences(
        better.slice(0, 1).map((one) => ({ ...one, own: true })),
        SHIPPED,
      )[0]?.how,
    ).toBe("own");
    expect(
      factorDifferences(
        better.slice(0, 1).map((one) => ({ ...one, id: "x.y" })),
        SHIPPED,
      )[0]?.how,
    ).toBe("unknown");
    expect(
      factorDifferences(
        plain.map((one) => ({ ...one, unit: "MJ" })),
        SHIPPED,
      ),
    ).toHaveLength(2);
  });
});
