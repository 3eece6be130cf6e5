import { describe, expect, it } from "vitest";
import { type Account, accountOf, BROKEN_DOWN, coefficientsOf } from "../../src/account/account.js";
import { byGroup, byStep, dot, provenanceOf, rolesOf } from "../../src/account/breakdown.js";
import { writeProgram } from "../../src/account/program.js";
import { type Group, Ledger } from "../../src/ledger/ledger.js";
import { ACCEPTED } from "../../src/ledger/tally.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { EXACT_MILL, plantFrom } from "./exact-mill.js";
import { MANY_LOTS, MANY_ROUTES } from "./many-routes.js";

function accountFor(file: typeof EXACT_MILL): { account: Account; groups: readonly Group[] } {
  const plant = plantFrom(file);
  const ledger = new Ledger();
  MANY_LOTS.filter(({ route }) => Object.hasOwn(plant.routes, route)).forEach((lot) => {
    ledger.add(lot, plant);
  });
  const { groups } = ledger.settled();
  return {
    account: accountOf(writeProgram(plant, SHIPPED, groups, "2026-11-25"), 16, 3),
    groups,
  };
}

const { account, groups } = accountFor(MANY_ROUTES);

function meanOf(id: (typeof BROKEN_DOWN)[number], side: "pigment" | "dye" | "actual"): number {
  const draws = account.indicators[side].get(id) ?? new Float64Array(0);
  return draws.reduce((sum, value) => sum + value, 0) / draws.length;
}

describe.each(BROKEN_DOWN)("means of %s", (id) => {
  it.each(["pigment", "dye"] as const)("add up over the steps of the %s arm", (arm) => {
    const sum = byStep(account, id).reduce((total, step) => total + step[arm], 0);
    expect(sum / meanOf(id, arm)).toBeCloseTo(1, 9);
  });

  it("add up over groups of lots, what was done among them", () => {
    const means = [...byGroup(account, groups, id, ({ blend }) => blend, ACCEPTED).values()];
    const sum = (pick: (mean: (typeof means)[number]) => number): number =>
      means.reduce((total, mean) => total + pick(mean), 0);
    expect(sum((mean) => mean.pigment) / meanOf(id, "pigment")).toBeCloseTo(1, 9);
    expect(sum((mean) => mean.dye) / meanOf(id, "dye")).toBeCloseTo(1, 9);
    const actual = sum((mean) => mean.actual.pigment + mean.actual.dye);
    expect(actual / meanOf(id, "actual")).toBeCloseTo(1, 9);
    expect(sum((mean) => mean.actualLots.pigment + mean.actualLots.dye)).toBe(
      sum((mean) => mean.lots),
    );
  });
});

describe("byGroup", () => {
  it("counts lots with a counterpart, and sorts by the property", () => {
    const means = byGroup(account, groups, "water", ({ blend }) => blend, ACCEPTED);
    const counted = groups.filter(({ key }) => key.pigment !== "");
    const lots = counted.reduce((sum, group) => sum + group.lots, 0);
    expect([...means.values()].reduce((sum, mean) => sum + mean.lots, 0)).toBe(lots);
    expect([...means.keys()]).toEqual([...means.keys()].sort());
  });
});

describe("rolesOf", () => {
  it("keeps the order of every route, each role once", () => {
    const roles = rolesOf(account);
    expect(new Set(roles).size).toBe(roles.length);
    for (const [before, after] of [
      ["pretreat", "print"],
      ["print", "steam"],
      ["steam", "wash"],
      ["wash", "squeeze"],
      ["print", "fix"],
      ["fix", "store"],
    ] as const) {
      expect(roles.indexOf(before), `${before} and ${after}`).toBeLessThan(roles.indexOf(after));
    }
  });
});

describe("provenanceOf", () => {
  it("counts nothing as default where the mill gave every setting", () => {
    const exact = accountFor(EXACT_MILL).account;
    const shares = provenanceOf(exact, "water", "dye");
    expect(shares).toMatchObject({ measured: 0, allocated: 0 });
    expect(shares.modelled).toBeCloseTo(1, 12);
    expect(shares.default).toBeCloseTo(0, 12);
  });

  it("adds up to 1", () => {
    for (const arm of ["pigment", "dye"] as const) {
      const shares = provenanceOf(account, "energy", arm);
      expect(shares.modelled + shares.default + shares.measured + shares.allocated).toBe(1);
      expect(shares.default).toBeGreaterThan(0.5);
    }
  });
});

describe("coefficientsOf and dot", () => {
  it("give the mean of any lots of a class", () => {
    const of = coefficientsOf(account, "water");
    const sum = account.program.classes.reduce(
      (total, { amounts }, i) => total + dot(of(i, "dye"), amounts),
      0,
    );
    expect(sum / meanOf("water", "dye")).toBeCloseTo(1, 9);
    expect(dot([1, 2, 3], [4, 5])).toBe(14);
  });
});
