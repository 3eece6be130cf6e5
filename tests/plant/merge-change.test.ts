import { describe, expect, it } from "vitest";
import { placeInChange } from "../../src/plant/dated.js";
import { mergeChange } from "../../src/plant/merge-change.js";
import { type ChangeText, PlantFile } from "../../src/plant/schema.js";

const BEFORE = PlantFile.parse({
  millrace: 1,
  house: "House of changes (invented)",
  sites: {
    main: {
      place: "PRT",
      settings: {
        "hall.temperature": 24,
        "boiler.efficiency": { value: 0.86, low: 0.8, high: 0.9 },
      },
      boiler: { fuel: "natural-gas" },
      tariffs: { currency: "EUR", date: "2026-01-01", water: 1.4, electricity: 0.1 },
      machines: { pad: { kind: "pad", words: "old pad" }, nip: { kind: "squeeze" } },
    },
  },
  routes: { own: { workflow: "dye", steps: [{ role: "a", kind: "pad" }], machines: { a: "pad" } } },
  counterparts: { own: "other" },
});

function after(change: Omit<ChangeText, "from">): typeof BEFORE {
  return mergeChange(BEFORE, change, (where) => placeInChange("2026-07-01", where));
}

const PLACE = "plant.yaml, changes from 2026-07-01, sites.main";

describe("mergeChange", () => {
  it("merges mappings key by key, and leaves the rest of the file alone", () => {
    const { sites, routes, house } = after({
      sites: { main: { boiler: { fuel: "wood" }, machines: { pad: { kind: "tumbler" } } } },
    });
    const main = BEFORE.sites["main"];
    expect(sites["main"]).toEqual({
      ...main,
      boiler: { fuel: "wood" },
      machines: { pad: { kind: "tumbler", words: "old pad" }, nip: { kind: "squeeze" } },
    });
    expect({ routes, house }).toEqual({ routes: BEFORE.routes, house: BEFORE.house });
    expect(BEFORE.sites["main"]?.boiler).toEqual({ fuel: "natural-gas" });
  });

  it("keeps the order of names, new ones last", () => {
    const { sites } = after({
      sites: { main: { machines: { flue: { kind: "hot-flue" }, nip: { words: "nip" } } } },
    });
    expect(Object.keys(sites["main"]?.machines ?? {})).toEqual(["pad", "nip", "flue"]);
  });

  it("puts a number in place of the old one with its ends, and says since when it holds", () => {
    const { sites } = after({ sites: { main: { settings: { "boiler.efficiency": 0.92 } } } });
    expect(sites["main"]?.settings).toEqual({
      "hall.temperature": 24,
      "boiler.efficiency": { value: 0.92, source: `${PLACE}.settings.boiler.efficiency` },
    });
  });

  it("keeps the mill's own source of a number behind the place", () => {
    const price = { value: 0.2, exact: true, source: "bill" };
    const { sites } = after({
      sites: { main: { tariffs: { date: "2026-07-01", electricity: price } } },
    });
    expect(sites["main"]?.tariffs).toEqual({
      currency: "EUR",
      date: "2026-07-01",
      water: 1.4,
      electricity: { ...price, source: `${PLACE}.tariffs.electricity: bill` },
    });
  });

  it("puts lists and plain numbers in place of the old ones", () => {
    const steps = [{ role: "b", kind: "squeeze" }];
    const { routes, counterparts } = after({
      routes: { own: { steps, print_width: 1.4, machines: { b: "nip" } } },
      counterparts: { other: "own" },
    });
    expect(routes["own"]).toMatchObject({
      steps,
      print_width: 1.4,
      machines: { a: "pad", b: "nip" },
    });
    expect(counterparts).toEqual({ own: "other", other: "own" });
  });
});
