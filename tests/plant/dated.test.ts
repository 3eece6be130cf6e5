import { describe, expect, it } from "vitest";
import { datedStream, placeInChange, plantOn, plantUnder } from "../../src/plant/dated.js";
import type { Plant } from "../../src/plant/plant.js";
import { EXACT_MILL, PLAIN_LOT, plantFrom } from "../account/exact-mill.js";

const { acid, ...others } = EXACT_MILL.routes;

function mill(changes: readonly object[]): Plant {
  return plantFrom({ ...EXACT_MILL, routes: others, changes });
}

const TWO = mill([
  { from: "2026-07-01", note: "acid dye", routes: { acid } },
  { from: "2026-04-01", sites: { main: { effluent: "municipal" } } },
]);

function settingsOf(plant: Plant, date: string, route = "reactive"): string {
  return plantOn(plant, { ...PLAIN_LOT, date, route }).from;
}

describe("plantOn", () => {
  it("takes the newest change that has begun, whatever the order in the file", () => {
    expect(
      ["2026-01-01", "2026-03-31", "2026-04-01", "2026-06-30", "2026-07-01", "2027-01-01"].map(
        (date) => settingsOf(TWO, date),
      ),
    ).toEqual(["", "", "2026-04-01", "2026-04-01", "2026-07-01", "2026-07-01"]);
    expect(plantOn(TWO, { ...PLAIN_LOT, date: "2026-07-02" }).note).toBe("acid dye");
  });

  it("gives the house with all changes up to the day", () => {
    const of = (date: string): unknown =>
      plantOn(TWO, { ...PLAIN_LOT, date }).plant.sites["main"]?.effluent;
    expect(["2026-03-31", "2026-04-01", "2026-07-01"].map(of)).toEqual([
      "own",
      "municipal",
      "municipal",
    ]);
  });

  it("takes the first settings that know the route, where a change adds it later", () => {
    expect(settingsOf(TWO, "2026-01-01", "acid")).toBe("2026-07-01");
    expect(Object.keys(TWO.routes)).toEqual([...Object.keys(others), "acid"]);
    expect(Object.keys(plantUnder(TWO, "").routes)).toEqual(Object.keys(others));
  });

  it("knows one house where the file states no changes", () => {
    const plain = plantFrom(EXACT_MILL);
    const found = plantOn(plain, PLAIN_LOT);
    expect(found.from).toBe("");
    expect(found.plant).toBe(plain);
    expect(plantUnder(plain, "")).toBe(plain);
  });
});

describe("plantUnder", () => {
  it("finds the house again by the key of the ledger", () => {
    for (const date of ["2026-01-01", "2026-05-01", "2026-08-01"]) {
      const { from, plant } = plantOn(TWO, { ...PLAIN_LOT, date });
      expect(plantUnder(TWO, from)).toBe(plant);
    }
  });

  it("refuses a day on which nothing changes", () => {
    expect(() => plantUnder(TWO, "2026-05-01")).toThrow("no change from 2026-05-01");
    expect(() => plantUnder(plantFrom(EXACT_MILL), "2026-05-01")).toThrow("no change");
  });
});

describe("datedStream", () => {
  const id = "boiler.efficiency @ site main";

  it("adds the day that a number of a change is from", () => {
    const source = placeInChange("2026-07-01", "sites.main.settings.boiler.efficiency");
    expect(datedStream({ id, source })).toBe(`${id}, from 2026-07-01`);
    expect(datedStream({ id, source: `${source}: service sheet` })).toBe(`${id}, from 2026-07-01`);
  });

  it("leaves other streams as they are", () => {
    expect(datedStream({ id, source: "plant.yaml, sites.main" })).toBe(id);
    expect(datedStream({ id, source: "common-practice" })).toBe(id);
  });
});
