import { describe, expect, it } from "vitest";
import { recompute } from "../../src/suppliers/recompute.js";
import { CODE, packOf } from "./made.js";

const pack = packOf();

describe("working a pack out anew", () => {
  it("passes what was worked out honestly", () => {
    expect(recompute(pack, { code: CODE }).checks.map(({ id, outcome }) => [id, outcome])).toEqual([
      ["boundary", "pass"],
      ["figures", "pass"],
      ["coverage", "pass"],
      ["claims", "pass"],
    ]);
  });

  it("says when another version made it", () => {
    const other = { ...pack, figures: pack.figures.slice(1) };
    expect(recompute(other, { code: "f".repeat(64) }).checks[1]?.found).toContain(
      "another version of the program",
    );
    expect(recompute(other, { code: CODE }).checks[1]?.found).not.toContain("another version");
  });

  it("has nothing to check where no claims are made", () => {
    expect(recompute({ ...pack, claims: [] }, { code: CODE }).checks[3]?.outcome).toBe(
      "not present",
    );
  });

  it("leaves claims and both routes to who asks for all of it", () => {
    const { checks, printed } = recompute(pack, { code: CODE, part: "as printed" });
    expect(checks.map(({ outcome }) => outcome)).toEqual(["pass", "pass", "pass", "not present"]);
    expect(printed?.terms.every(({ arm }) => arm === "pigment")).toBe(true);
    const raised = pack.figures.map((one) => ({ ...one, median: one.median * 1.01 }));
    const odd = recompute({ ...pack, figures: raised }, { code: CODE, part: "as printed" });
    expect(odd.checks[1]?.outcome).toBe("fail");
  });

  it("says what stands in the way", () => {
    const made = recompute(
      { ...pack, plant: { ...pack.plant, routes: { x: { like: "reactive", machines: {} } } } },
      { code: CODE },
    );
    expect(made.checks.map(({ outcome }) => outcome)).toEqual(["fail", "fail", "fail", "fail"]);
    const draws = recompute(
      { ...pack, strata: pack.strata.map((one) => ({ ...one, route: "gone" })) },
      { code: CODE },
    );
    expect(draws.checks[1]?.found).toContain("cannot be worked out");
  });
});
