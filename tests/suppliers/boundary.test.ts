import { describe, expect, it } from "vitest";
import { countedOf, dutiesOf, holesOf, leftOutOf } from "../../src/suppliers/boundary.js";

const step = (role: string, kind: string) => ({ role, kind, partner: kind === "outsourced" });
const DYE = {
  workflow: "dye" as const,
  steps: [
    step("pretreat", "pad"),
    step("pretreat-dry", "stenter-dry"),
    step("pretreat-store", "stored"),
    step("print", "printer"),
    step("steam", "steamer"),
    step("wash", "wash-range"),
    step("squeeze", "squeeze"),
    step("dry", "stenter-dry"),
  ],
};
const without = (...roles: readonly string[]) => ({
  ...DYE,
  steps: DYE.steps.filter(({ role }) => !roles.includes(role)),
});

describe("boundary", () => {
  it("tells steps by what they are for", () => {
    expect([...dutiesOf(DYE)]).toEqual([
      ["pretreat", "pretreatment"],
      ["pretreat-dry", "pretreatment"],
      ["print", "printing"],
      ["steam", "steaming"],
      ["wash", "washing"],
      ["squeeze", "drying"],
      ["dry", "drying"],
    ]);
    const finished = {
      ...DYE,
      steps: [...DYE.steps, step("finish", "pad"), step("finish-dry", "stenter-dry")],
    };
    expect(dutiesOf(finished).get("finish-dry")).toBe("finishing");
  });

  it("finds what cloth cannot do without", () => {
    expect(holesOf(DYE)).toEqual([]);
    expect(holesOf(without("wash"))).toEqual(["washing"]);
    expect(holesOf(without("steam", "wash"))).toEqual(["steaming", "washing"]);
    expect(holesOf({ workflow: "pigment", steps: [step("print", "printer")] })).toEqual([
      "dry fixation",
    ]);
    // Cloth that comes ready for printing is a boundary drawn elsewhere, not a hole.
    expect(holesOf(without("pretreat", "pretreat-dry"))).toEqual([]);
  });

  it("takes work of a partner for counted, by its role", () => {
    const sent = {
      ...DYE,
      steps: DYE.steps.map((one) => (one.role === "wash" ? step("wash", "outsourced") : one)),
    };
    expect(holesOf(sent)).toEqual([]);
    expect(countedOf(sent).washing).toBe("partner");
    expect(countedOf(sent).steaming).toBe("in");
    expect(countedOf(sent).finishing).toBe("out");
  });

  it("leaves out for all what one leaves out", () => {
    expect([...leftOutOf([DYE, without("pretreat", "pretreat-dry")])]).toEqual(["pretreatment"]);
    expect([...leftOutOf([DYE, DYE])]).toEqual([]);
  });
});
