import { describe, expect, it } from "vitest";
import { STEP_KINDS } from "../../src/steps/kinds.js";
import { SHIPPED_ROUTES } from "../../src/plant/shipped-routes.js";
import { type Changes, faultOf, faultsOf, lineOf, plantFile } from "./plant-file.js";

function expectFault(changes: Changes, at: string, wanted: object): void {
  const { severity, file, line, remedy, ...rest } = faultOf(changes);
  expect(rest).toMatchObject(wanted);
  expect({ severity, file, line }).toEqual({
    severity: "refused",
    file: "plant.yaml",
    line: lineOf(changes, at),
  });
  expect(remedy).toMatch(/^[A-Z`].*\.$/s);
}

describe("judgeRoute", () => {
  it("finds no fault in a sound file", () => {
    expect(faultsOf(plantFile())).toEqual([]);
  });

  it("names a shipped route that is not known", () => {
    const changes = { like: "pigment-calendar" };
    const [first] = faultsOf(plantFile(changes));
    expect(first).toMatchObject({
      line: lineOf(changes, "like:"),
      value: "pigment-calendar",
      expected: `a shipped route: ${Object.keys(SHIPPED_ROUTES).join(", ")}`,
      remedy: "Write pigment-calender if that was meant.",
    });
  });

  it("asks for a route to be laid out in one way", () => {
    const more = "  bare:\n    workflow: dye\n    machines: {}\n";
    expectFault({ more }, "bare:", { code: "route-unclear", value: "bare" });
  });

  it("names the step without machine", () => {
    expect(faultOf({ fix: "# none" })).toMatchObject({
      code: "route-misses-step",
      value: "fix",
      expected: "a machine for step fix (calender)",
      key: "routes.pigment.machines.fix",
    });
  });

  it("names a machine that the site does not have", () => {
    expectFault({ fix: "fix: calandra" }, "fix: calandra", {
      code: "unknown-name",
      value: "calandra",
      key: "routes.pigment.machines.fix",
      expected: "a machine of site main: pad, stenter, printer, calender",
    });
  });

  it("names a machine of another kind", () => {
    expectFault({ fix: "fix: pad" }, "fix: pad", {
      code: "machine-of-other-kind",
      value: "pad",
      expected: "a machine that serves step kind calender, not pad",
    });
  });

  it("names a role that the route does not have", () => {
    expectFault({ fix: "fix: calender\n      steam: calender" }, "steam: calender", {
      value: "steam",
      expected: "a step of the route: pretreat, pretreat-dry, pretreat-store, print, fix, store",
    });
  });

  it("names an unknown setting, with those there are", () => {
    expectFault({ settings: "fix.dwel: 30" }, "fix.dwel", {
      value: "dwel",
      key: "routes.pigment.settings.fix.dwel",
      expected: `a setting of calender: ${Object.keys(STEP_KINDS["calender"]?.settings ?? {}).join(", ")}`,
    });
    expect(faultOf({ settings: "fix.dwel: 30" }).remedy).toBe("Write dwell if that was meant.");
  });

  it("names a setting or choice of no step", () => {
    expectFault({ settings: "cure.dwell: 30" }, "cure.dwell", { value: "cure.dwell" });
    expectFault({ choices: "cure.heat: oil" }, "cure.heat", { value: "cure.heat" });
  });

  it("names a value out of range with range and unit", () => {
    expectFault({ settings: "fix.dwell: 3000" }, "fix.dwell", {
      code: "setting-out-of-range",
      value: "3000",
      expected: "a value from 5 to 1200 in s",
    });
  });

  it("takes lines of the recipe as settings of the step, and knows no others", () => {
    expect(faultsOf(plantFile({ settings: "pretreat.dispersant: 12" }))).toEqual([]);
    expectFault({ settings: "pretreat.dispersant: 900" }, "pretreat.dispersant", {
      expected: "a value from 0 to 400 in g/kg",
    });
    expectFault({ settings: "pretreat.recipe.dispersant: 12" }, "pretreat.recipe", {
      value: "recipe.dispersant",
    });
  });

  it("names an unknown choice and an unknown word for one", () => {
    expectFault({ choices: "fix.heater: oil" }, "fix.heater", {
      value: "heater",
      expected: "a choice of calender: heat",
    });
    expectFault({ choices: "fix.heat: coal" }, "fix.heat", {
      value: "coal",
      expected: "a choice for heat: electric, oil, burner",
    });
  });

  it("names unknown kinds, recipes and inks of steps written out", () => {
    const more = `  own:
    workflow: pigment
    steps:
      - { role: a, kind: padd }
      - { role: b, kind: pad, recipe: secret }
      - { role: c, kind: printer, ink: invisible }
    machines: { a: pad, b: pad, c: printer }
`;
    expect(faultsOf(plantFile({ more })).map(({ value }) => value)).toEqual([
      "padd",
      "secret",
      "invisible",
    ]);
  });
});
