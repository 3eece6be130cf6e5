import { describe, expect, it } from "vitest";
import { leavesOf } from "../../src/numbers/quantity.js";
import { lookupIn } from "../../src/plant/quantities.js";
import { buildSite, type Site } from "../../src/plant/site.js";
import { FENCE_FLOWS } from "../../src/utilities/conversion.js";
import { valueOf } from "../steps/context.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { EXACT_MILL, plantFrom } from "../account/exact-mill.js";

const lookup = lookupIn(SHIPPED, "2026-03", "2026-11-25");
const main = EXACT_MILL.sites.main;

function siteWith(words: Readonly<Record<string, unknown>> = {}): Site {
  const text = plantFrom({ ...EXACT_MILL, sites: { main: { ...main, ...words } } }).sites["main"];
  if (text === undefined) throw new Error("no site");
  return buildSite("main", text, lookup);
}

function endsOf(site: Site, flow: string, washed = true): readonly string[] {
  return [...new Set((site.conversions(washed).get(flow) ?? []).map(({ to }) => to))].sort();
}

describe("buildSite", () => {
  it("gives air, water and steam", () => {
    const site = siteWith();
    expect(valueOf(site.hall.temperature)).toBe(25);
    // ASHRAE Handbook: Fundamentals, psychrometric chart no. 1: 25 °C, 50 %: 9.9 g/kg (from memory).
    expect(valueOf(site.hall.humidity)).toBeCloseTo(0.0099, 4);
    expect(valueOf(site.hall.pressure)).toBe(1.01325);
    expect(valueOf(site.supplyTemperature)).toBe(15);
    expect(valueOf(site.steamEnthalpy)).toBeCloseTo(2768.3, 1);
  });

  it("takes settings of the site before factors, facts of the world among them", () => {
    const site = siteWith();
    expect(site.at("fibre.cotton.regain")).toMatchObject({
      provenance: "plant",
      id: "fibre.cotton.regain @ site main",
    });
    expect(site.at("fibre.silk.regain")).toMatchObject({
      provenance: "default",
      id: "fibre.silk.regain",
    });
    expect(site.at("pad.power")).toMatchObject({ id: "pad.power @ site main" });
  });

  it("leads every flow of machines to the fence, and no further", () => {
    const known = new Set(Object.keys(FENCE_FLOWS));
    for (const washed of [true, false]) {
      for (const list of siteWith().conversions(washed).values()) {
        for (const { to } of list) {
          expect(known.has(to) || /^(fuel|used|to-\w+)\./.test(to), to).toBe(true);
        }
      }
    }
  });

  it("turns heat behind a coil into fuel, water and effluent", () => {
    const site = siteWith();
    const flows = ["electricity", "fuel.natural-gas", "salt"];
    const water = ["water.discharged", "water.evaporated", "water.withdrawn"];
    expect(endsOf(site, "heat.steam-coil")).toEqual([...flows, ...water]);
    expect(endsOf(site, "heat.burner")).toEqual(["fuel.natural-gas"]);
  });

  it("burns the fuels that the file names", () => {
    const site = siteWith({ burner: { fuel: "lpg" }, boiler: { fuel: "wood" } });
    expect(site.fuels).toEqual(["lpg", "natural-gas", "wood"]);
    expect(endsOf(site, "heat.burner")).toEqual(["fuel.lpg"]);
    expect(endsOf(site, "heat.oil")).toEqual(["electricity", "fuel.natural-gas"]);
    expect(endsOf(site, "steam.open")).toContain("fuel.wood");
    expect(leavesOf(site.burnerVapour).map(({ id }) => id)).toEqual(["fuel.lpg.vapour"]);
  });

  it("has no fuel for bought steam, and no effluent plant for a municipal drain", () => {
    const site = siteWith({ boiler: { fuel: "bought" }, effluent: "municipal" });
    expect(site.fuels).toEqual(["natural-gas"]);
    expect(endsOf(site, "heat.steam-coil")).toEqual([
      "steam.bought",
      "water.discharged",
      "water.evaporated",
      "water.steam-bought",
    ]);
    expect(endsOf(site, "water.drained")).toEqual(["water.discharged"]);
  });

  it("lets a route without a wash keep its substances on the cloth", () => {
    expect(endsOf(siteWith(), "binder@cloth", false)).not.toContain("cod");
    expect(endsOf(siteWith(), "binder@cloth", true)).toContain("cod");
  });
});
