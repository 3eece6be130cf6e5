import { describe, expect, it } from "vitest";
import { type Candidate, candidateOf, type Given } from "../../src/suppliers/candidate.js";
import { type Gate, gateOf } from "../../src/suppliers/gate.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { houseOf } from "./made.js";

const ready = (given: Given): Candidate => candidateOf(given, SHIPPED, "2026-11-25") as Candidate;
const [a, b] = [houseOf("A"), houseOf("B", { lots: [8, 16] })];
const line = (gate: Gate, id: string) => gate.lines.find((one) => one.id === id);

/** The same supplier without steps of some roles in its dye route. */
function cut({ alias, pack }: Given, ...roles: readonly string[]): Given {
  const routes = pack.boundary.routes.map((route) => ({
    ...route,
    steps: route.steps.filter(({ role }) => !roles.includes(role)),
  }));
  return { alias, pack: { ...pack, boundary: { ...pack.boundary, routes } } };
}

describe("the gate", () => {
  it("lets like and like be compared", () => {
    const gate = gateOf([ready(a), ready(b)], []);
    expect(gate.verdict).toBe("comparable");
    expect(gate.lines.every(({ outcome }) => outcome === "same")).toBe(true);
  });

  it("narrows to what all count", () => {
    const gate = gateOf([ready(a), ready(cut(b, "pretreat", "pretreat-dry"))], []);
    expect(gate.verdict).toBe("partly comparable");
    expect(line(gate, "boundary")).toMatchObject({
      outcome: "narrowed",
      concerns: ["pigment: pretreatment", "reactive: pretreatment"],
    });
    expect([...gate.leftOut.get("reactive")!]).toEqual(["pretreatment"]);
  });

  it("names holes, and does not leave out for all what only a hole lacks", () => {
    const gate = gateOf([ready(a), ready(cut(b, "wash"))], []);
    expect(line(gate, "boundary")).toMatchObject({ outcome: "not met", concerns: ["B"] });
    expect(
      gate.boundary.find(({ alias, routeClass }) => alias === "B" && routeClass === "reactive")
        ?.holes,
    ).toEqual(["washing"]);
    expect(gate.leftOut.get("reactive")?.size).toBe(0);
  });

  it("asks for nine months in common", () => {
    const short = { ...b, pack: { ...b.pack, months: b.pack.months.slice(0, 4) } };
    const gate = gateOf([ready(a), ready(short)], []);
    expect([...gate.short]).toEqual([["B", 4]]);
    expect(line(gate, "period")?.outcome).toBe("not met");
  });

  it("says what was made the same", () => {
    const ar5 = { ...b, pack: { ...b.pack, plant: { ...b.pack.plant, gwp: "AR5" as const } } };
    const gate = gateOf([ready(a), ready(ar5)], []);
    expect(line(gate, "warming")).toEqual({
      id: "warming",
      outcome: "made the same",
      concerns: ["B"],
    });
    expect(gate.verdict).toBe("comparable");
  });

  it("compares nobody alone, and not in full where one was refused", () => {
    expect(gateOf([ready(a)], []).verdict).toBe("not comparable");
    expect(
      gateOf([ready(a), ready(b)], [{ alias: "C", cause: "not verified", why: "", places: [] }])
        .verdict,
    ).toBe("partly comparable");
  });
});
