import { describe, expect, it } from "vitest";
import { type Changes, faultOf, faultsOf, lineOf, plantFile } from "./plant-file.js";

function expectFault(changes: Changes, at: string, wanted: object): void {
  const fault = faultOf(changes);
  expect(fault).toMatchObject(wanted);
  expect(fault.line).toBe(lineOf(changes, at));
}

describe("judgeSite", () => {
  it("names a factor that is not known, and the nearest", () => {
    expectFault({ site: "settings: { boiler.eficiency: 0.9 }" }, "boiler.eficiency", {
      code: "unknown-name",
      value: "boiler.eficiency",
      expected: "the id of a factor",
      remedy: "Write boiler.efficiency if that was meant.",
    });
  });

  it("names a setting out of range", () => {
    expectFault({ site: "settings: { boiler.efficiency: 87 }" }, "boiler.efficiency", {
      code: "setting-out-of-range",
      value: "87",
      expected: "a value from 0.5 to 1",
    });
    const ends = "settings: { boiler.efficiency: { value: 0.9, low: 0.95, high: 0.97 } }";
    expectFault({ site: ends }, "boiler.efficiency", {
      value: "0.95 … 0.9 … 0.97",
      expected: "low ≤ value ≤ high",
    });
  });

  it("names unknown settings, kinds and choices of machines", () => {
    expectFault({ padSettings: "powr: 5" }, "powr", {
      key: "sites.main.machines.pad.settings.powr",
      value: "powr",
      remedy: "Write power if that was meant.",
    });
    expectFault({ padSettings: "power: 5000" }, "power", {
      expected: "a value from 0 to 200 in kW",
    });
    expectFault({ calenderChoices: "heated: oil" }, "heated", {
      value: "heated",
      expected: "a choice of calender: heat",
    });
    expectFault({ calenderChoices: "heat: coal" }, "heat: coal", {
      value: "coal",
      expected: "a choice for heat: electric, oil, burner",
    });
    const kinds = faultsOf(plantFile({ calenderKind: "calandra" }));
    expect(kinds[0]).toMatchObject({ value: "calandra" });
    expect(kinds[0]?.expected).toMatch(/^a kind of machine: preparation, pad, .*, stenter$/);
  });

  it("asks for an intensity where the grid of a place is not shipped", () => {
    expectFault({ place: "ATA" }, "place:", {
      code: "place-not-listed",
      value: "ATA",
    });
    const own = { place: "ATA", site: "electricity: { intensity: 0.9 }" };
    expect(faultsOf(plantFile(own))).toEqual([]);
  });

  it.each(["oil_heater", "boiler"])("names an unknown fuel of the %s", (key) => {
    expectFault({ site: `${key}: { fuel: peat }` }, "peat", {
      value: "peat",
      key: `sites.main.${key}.fuel`,
    });
    expect(faultsOf(plantFile({ site: `${key}: { fuel: wood }` }))).toEqual([]);
  });

  it("lets steam be bought, and burn beside cloth only what its vapour is known of", () => {
    expect(faultsOf(plantFile({ site: "boiler: { fuel: bought }" }))).toEqual([]);
    expectFault({ site: "oil_heater: { fuel: bought }" }, "bought", { value: "bought" });
    expectFault({ site: "burner: { fuel: wood }" }, "wood", {
      expected: "a fuel for direct burners: natural-gas, lpg",
    });
  });
});
