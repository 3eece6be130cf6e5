import { describe, expect, it } from "vitest";
import { constant, ONE } from "../../src/numbers/quantity.js";
import { chained } from "../../src/utilities/chain.js";
import type { Conversion } from "../../src/utilities/conversion.js";
import { valueOf } from "../steps/context.js";

const to = (flow: string, rate: number): Conversion => ({
  to: flow,
  rate: rate === 1 ? ONE : constant(`to ${flow}`, rate),
});

function totals(list: readonly Conversion[] | undefined): Record<string, number> {
  const sums: Record<string, number> = {};
  for (const conversion of list ?? []) {
    sums[conversion.to] = (sums[conversion.to] ?? 0) + valueOf(conversion.rate);
  }
  return sums;
}

const UTILITIES = new Map([
  ["coil", [to("steam", 2)]],
  ["steam", [to("fuel", 3), to("water", 1.5), to("electricity", 0.1)]],
  ["water", [to("withdrawn", 1.25), to("drain", 0.25), to("electricity", 0.2)]],
  ["drain", [to("discharged", 1), to("electricity", 0.4)]],
]);

describe("chained", () => {
  it("follows every flow to the fence and multiplies on the way", () => {
    const chains = chained(UTILITIES, ["coil", "drain", "ink"]);
    const coil = totals(chains.get("coil"));
    expect(Object.keys(coil).sort()).toEqual(["discharged", "electricity", "fuel", "withdrawn"]);
    expect(coil["fuel"]).toBeCloseTo(6, 12);
    expect(coil["withdrawn"]).toBeCloseTo(2 * 1.5 * 1.25, 12);
    expect(coil["discharged"]).toBeCloseTo(2 * 1.5 * 0.25, 12);
    // Steam, water works and effluent plant each draw some.
    expect(coil["electricity"]).toBeCloseTo(2 * (0.1 + 1.5 * (0.2 + 0.25 * 0.4)), 12);
    expect(totals(chains.get("drain"))).toEqual({ discharged: 1, electricity: 0.4 });
  });

  it("has no entry for what is at the fence already", () => {
    expect(chained(UTILITIES, ["ink"]).has("ink")).toBe(false);
  });

  it("lets a flow keep its name", () => {
    const own = new Map([["electricity", [to("electricity", 1.05)]]]);
    expect(totals(chained(own, ["electricity"]).get("electricity"))).toEqual({
      electricity: 1.05,
    });
  });

  it("refuses utilities that feed each other", () => {
    const loop = new Map([
      ["steam", [to("water", 1)]],
      ["water", [to("steam", 0.1)]],
    ]);
    expect(() => chained(loop, ["steam"])).toThrow(/form a loop/);
  });
});
