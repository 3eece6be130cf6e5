import { describe, expect, it } from "vitest";
import { differsFrom } from "../../src/plant/scenario-words.js";
import { PlantFile } from "../../src/plant/schema.js";

const BEFORE = PlantFile.parse({
  millrace: 1,
  house: "House of words (invented)",
  sites: {
    main: {
      place: "PRT",
      settings: { "boiler.efficiency": { value: 0.86, low: 0.8, high: 0.9, source: "sheet" } },
      machines: { pad: { kind: "pad" } },
    },
  },
  routes: { own: { like: "reactive", machines: { wash: "range" } } },
});

describe("differsFrom", () => {
  it("says both values of a key, with their ends", () => {
    expect(
      differsFrom(BEFORE, {
        sites: { main: { place: "NOR", settings: { "boiler.efficiency": 0.9 } } },
      }),
    ).toEqual([
      "sites.main.place: NOR instead of PRT",
      "sites.main.settings.boiler.efficiency: 0.9 instead of 0.86 (0.8 to 0.9)",
    ]);
  });

  it("says where the file had nothing, and what is new altogether", () => {
    expect(
      differsFrom(BEFORE, {
        sites: {
          main: { machines: { pad: { settings: { power: 5 } }, flue: { kind: "hot-flue" } } },
        },
        routes: { other: { like: "acid", machines: {} } },
        counterparts: { own: "other" },
      }),
    ).toEqual([
      "sites.main.machines.pad.settings.power: 5, where the file gives none",
      "sites.main.machines.flue: new",
      "routes.other: new",
      "counterparts.own: other, where the file gives none",
    ]);
  });

  it("says what is not in the file at all", () => {
    expect(
      differsFrom(BEFORE, { instead: { own: "other" }, finish: "every", rejects: { dye: 2 } }),
    ).toEqual([
      "other instead of own for every lot",
      "soft finish on every route",
      "rejects on dye: 2 times as logged",
    ]);
    expect(differsFrom(BEFORE, { rejects: 0.5 })).toEqual(["rejects: 0.5 times as logged"]);
  });

  it("says nothing of what stays", () => {
    const same = { sites: { main: { place: "PRT" } }, rejects: { pigment: 1 } };
    expect(differsFrom(BEFORE, same)).toEqual([]);
    expect(differsFrom(BEFORE, { note: "as it is" })).toEqual([]);
  });
});
