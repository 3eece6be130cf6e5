import { describe, expect, it } from "vitest";
import { NOT_CHECKED, standingChecks } from "../../src/suppliers/standing-checks.js";
import { CODE, packOf, POLICY } from "./made.js";

const pack = packOf();
const outcomes = (change: object, policy: typeof POLICY | undefined = POLICY) =>
  standingChecks({ ...pack, ...change }, CODE, policy).map(({ id, outcome }) => `${id} ${outcome}`);

describe("what cannot be proved", () => {
  it("is named and fails nothing", () => {
    expect(outcomes({})).toEqual([
      "program pass",
      "policy pass",
      "fastness not present",
      "stated pass",
    ]);
    expect(outcomes({ generator: { ...pack.generator, code: "2".repeat(64) } })[0]).toBe(
      "program flag",
    );
    expect(outcomes({ fastness: { pigment: true, dye: true } })[2]).toBe("fastness flag");
    expect(standingChecks(pack, CODE, undefined)[1]!.outcome).toBe("not present");
    expect(NOT_CHECKED).toMatch(/^Not checked, cannot be checked from a pack: /);
  });

  it("fails a version that the program of its digest does not have", () => {
    const check = (version: string): string =>
      standingChecks(pack, CODE, POLICY, version)[0]!.outcome;
    expect([check(pack.generator.version), check("9.9.9")]).toEqual(["pass", "fail"]);
  });

  it("names each threshold that is not as shipped, and which way it goes", () => {
    const policy = { ...pack.policy, gap: { pass: 0.5, conditional: 0.05 } };
    const [, found] = standingChecks({ ...pack, policy }, CODE, POLICY);
    expect(found!.found).toContain("gap.pass 0.5 for 0.05, loosened");
    expect(found!.found).toContain("gap.conditional 0.05 for 0.1, tightened");
    expect(found!.places).toEqual(["/pack/policy/gap/pass", "/pack/policy/gap/conditional"]);
    const renamed = { ...pack.policy, version: "ours 3" };
    expect(standingChecks({ ...pack, policy: renamed }, CODE, POLICY)[1]!.outcome).toBe("flag");
  });
});
