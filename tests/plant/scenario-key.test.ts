import { describe, expect, it } from "vitest";
import { findKey } from "../../src/plant/scenario-key.js";
import { PlantFile } from "../../src/plant/schema.js";

const FILE = PlantFile.parse({
  millrace: 1,
  house: "House of keys (invented)",
  sites: {
    "hall.1": { place: "PRT", machines: {} },
    hall: { place: "PRT", machines: { pad: { kind: "pad" } } },
  },
  routes: { own: { like: "reactive", machines: {} } },
});

describe("findKey", () => {
  it.each<[string, unknown, readonly string[]]>([
    ["sites.hall.place", "NOR", ["sites", "hall", "place"]],
    ["sites.hall.1.place", "NOR", ["sites", "hall.1", "place"]],
    [
      "sites.hall.settings.boiler.efficiency",
      0.9,
      ["sites", "hall", "settings", "boiler.efficiency"],
    ],
    ["sites.hall.boiler.efficiency", 0.9, ["sites", "hall", "settings", "boiler.efficiency"]],
    ["sites.hall.boiler.fuel", "wood", ["sites", "hall", "boiler", "fuel"]],
    ["sites.hall.machines.pad.power", 4, ["sites", "hall", "machines", "pad", "settings", "power"]],
    [
      "sites.hall.machines.pad.heat",
      "oil",
      ["sites", "hall", "machines", "pad", "choices", "heat"],
    ],
    [
      "routes.own.wash.fresh-water",
      { value: 9 },
      ["routes", "own", "settings", "wash.fresh-water"],
    ],
    ["routes.own.wash.sequence", "four", ["routes", "own", "choices", "wash.sequence"]],
    ["routes.own.machines.wash", "range", ["routes", "own", "machines", "wash"]],
    ["counterparts.own", "other", ["counterparts", "own"]],
    ["rejects", 2, ["rejects"]],
    ["rejects", { dye: 2 }, ["rejects"]],
  ])("finds %s = %j", (key, value, path) => {
    expect(findKey(FILE, key, value)).toEqual({ path });
  });

  it.each<[string, unknown, string, readonly string[], string]>([
    ["stes.hall.place", "NOR", "stes", [], "sites"],
    ["sites.mill.place", "NOR", "mill", ["sites"], "hall.1"],
    ["sites.hall.plce", "NOR", "plce", ["sites", "hall"], "place"],
    ["sites.hall.boiler.feul", "wood", "feul", ["sites", "hall", "boiler"], "fuel"],
    ["sites.hall.machines.pda.power", 4, "pda", ["sites", "hall", "machines"], "pad"],
    ["house", "Other", "house", [], "routes"],
  ])("names the word of %s that leads nowhere", (key, value, word, under, known) => {
    const found = findKey(FILE, key, value);
    expect(found).toMatchObject({ word, under });
    expect("known" in found ? found.known : []).toContain(known);
    expect("known" in found ? found.known : []).not.toContain("note");
  });
});
