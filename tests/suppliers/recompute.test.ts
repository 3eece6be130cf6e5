import { describe, expect, it } from "vitest";
import { recompute } from "../../src/suppliers/recompute.js";
import { CODE, packOf } from "./made.js";

const pack = packOf();

describe("working a pack out anew", () => {
  it("passes what was worked out honestly", () => {
    expect(recompute(pack, CODE).map(({ id, outcome }) => [id, outcome])).toEqual([
      ["boundary", "pass"],
      ["figures", "pass"],
      ["coverage", "pass"],
      ["claims", "pass"],
    ]);
  });

  it("says when another version made it", () => {
    const other = { ...pack, figures: pack.figures.slice(1) };
    expect(recompute(other, "f".repeat(64))[1]?.found).toContain("another version of the program");
    expect(recompute(other, CODE)[1]?.found).not.toContain("another version");
  });

  it("has nothing to check where no claims are made", () => {
    expect(recompute({ ...pack, claims: [] }, CODE)[3]?.outcome).toBe("not present");
  });

  it("says what stands in the way", () => {
    const made = recompute(
      { ...pack, plant: { ...pack.plant, routes: { x: { like: "reactive", machines: {} } } } },
      CODE,
    );
    expect(made.map(({ outcome }) => outcome)).toEqual(["fail", "fail", "fail", "fail"]);
    const draws = recompute(
      { ...pack, strata: pack.strata.map((one) => ({ ...one, route: "gone" })) },
      CODE,
    );
    expect(draws[1]?.found).toContain("cannot be worked out");
  });
});
