import { describe, expect, it } from "vitest";
import { writeProgram } from "../../src/account/program.js";
import { Workshop } from "../../src/account/workshop.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { inputOf, smallMill } from "../report/compose/small-mill.js";

const AS_OF = "2026-11-25";

describe("Workshop", () => {
  const { groups } = inputOf(smallMill());

  it("puts a house that says the same together once", () => {
    const workshop = new Workshop();
    const [one, two] = [smallMill(), smallMill()].map((plant) =>
      writeProgram(plant, SHIPPED, groups, AS_OF, workshop),
    );
    expect(two?.classes[0]?.arms.dye).toBe(one?.classes[0]?.arms.dye);
    expect(two?.classes[0]?.outlets.dye).toBe(one?.classes[0]?.outlets.dye);
    expect(two?.terms).toEqual(one?.terms);
    expect([...(two?.indicators.keys() ?? [])]).toEqual([...(one?.indicators.keys() ?? [])]);
  });

  it("tells a house apart that says something else of its site", () => {
    const workshop = new Workshop();
    const mill = smallMill();
    const site = mill.sites["main"]!;
    const warm = {
      ...mill,
      sites: { main: { ...site, settings: { ...site.settings, "hall.temperature": 33 } } },
    };
    const [one, two] = [mill, warm].map((plant) =>
      writeProgram(plant, SHIPPED, groups, AS_OF, workshop),
    );
    expect(two?.classes[0]?.arms.dye).not.toBe(one?.classes[0]?.arms.dye);
    // What it leaves alone keeps its node.
    const shared = new Set(one?.terms.map(({ rate }) => rate));
    expect(two?.terms.some(({ rate }) => shared.has(rate))).toBe(true);
    expect(two?.terms.some(({ rate }) => !shared.has(rate))).toBe(true);
  });

  it("tells routes apart that differ in one setting", () => {
    const workshop = new Workshop();
    const mill = smallMill();
    const route = mill.routes["reactive"]!;
    const steps = route.steps.map((step) =>
      step.kind === "wash-range"
        ? { ...step, settings: { ...step.settings, recovery: 0.3 } }
        : step,
    );
    const other = { ...mill, routes: { ...mill.routes, reactive: { ...route, steps } } };
    const [one, two] = [mill, other].map((plant) =>
      writeProgram(plant, SHIPPED, groups, AS_OF, workshop),
    );
    const at = one?.classes.findIndex(({ key }) => key.dye === "reactive") ?? -1;
    expect(two?.classes[at]?.arms.dye).not.toBe(one?.classes[at]?.arms.dye);
  });

  it("writes the same text for parts that say the same", () => {
    const workshop = new Workshop();
    expect(workshop.textOf({ a: 1 })).toBe(workshop.textOf({ a: 1 }));
    expect(workshop.textOf({ a: 1 })).not.toBe(workshop.textOf({ a: 2 }));
    expect(workshop.textOf(undefined)).toBe("");
  });
});
