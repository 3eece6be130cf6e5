import { describe, expect, it } from "vitest";
import { type Arms, armsOf } from "../../src/plant/counterpart.js";
import type { Plant } from "../../src/plant/plant.js";
import { EXACT_MILL, plantFrom } from "../account/exact-mill.js";

const PLANT = plantFrom(EXACT_MILL);

function arms(
  route: string,
  blend: Readonly<Record<string, number>>,
  plant: Plant = PLANT,
): string {
  const taken = plant.routes[route];
  if (taken === undefined) throw new Error(`no route ${route}`);
  const shares = Object.entries(blend).map(([fibre, share]) => ({ fibre, share }));
  const found: Arms = armsOf(plant, taken, shares);
  if ("without" in found) return `without ${found.without}`;
  return `${found.pigment.name} | ${found.dye.name}${found.partial ? " | partial" : ""}`;
}

function without(route: string): Plant {
  return {
    ...PLANT,
    routes: Object.fromEntries(Object.entries(PLANT.routes).filter(([name]) => name !== route)),
  };
}

describe("armsOf", () => {
  // Which dyes colour which fibre: common practice, no source.
  it.each([
    ["cotton", "reactive"],
    ["viscose", "reactive"],
    ["modal", "reactive"],
    ["lyocell", "reactive"],
    ["flax", "reactive"],
    ["hemp", "reactive"],
    ["silk", "acid"],
    ["wool", "acid"],
    ["polyamide", "acid"],
    ["polyester", "disperse"],
  ])("sets pigment on %s against %s dye", (fibre, dye) => {
    expect(arms("pigment-stenter", { [fibre]: 1 })).toBe(`pigment-stenter | ${dye}`);
  });

  it.each(["reactive", "acid", "disperse"])("sets %s dye against the calender", (dye) => {
    expect(arms(dye, { cotton: 1 })).toBe(`pigment-calender | ${dye}`);
  });

  it("takes the stenter where there is no calender", () => {
    expect(arms("reactive", { cotton: 1 }, without("pigment-calender"))).toBe(
      "pigment-stenter | reactive",
    );
  });

  it.each(["acrylic", "acetate", "elastane"])("has no dye route for %s", (fibre) => {
    expect(arms("pigment-calender", { [fibre]: 1 })).toBe("without fibre");
  });

  it("lets a main fibre of 60 % decide, and says that a part stays uncoloured", () => {
    expect(arms("pigment-calender", { cotton: 0.6, polyester: 0.4 })).toBe(
      "pigment-calender | reactive | partial",
    );
    expect(arms("pigment-calender", { polyester: 0.65, cotton: 0.35 })).toBe(
      "pigment-calender | disperse | partial",
    );
  });

  it("does not guess for a blend without main fibre", () => {
    expect(arms("pigment-calender", { cotton: 0.59, polyester: 0.41 })).toBe("without blend");
    expect(arms("pigment-calender", {})).toBe("without blend");
  });

  it("says so when the house has no such route", () => {
    expect(arms("pigment-calender", { silk: 1 }, without("acid"))).toBe("without route");
    const dyers = without("pigment-calender");
    const none = {
      ...dyers,
      routes: { reactive: PLANT.routes["reactive"] },
    } as unknown as Plant;
    expect(arms("reactive", { cotton: 1 }, none)).toBe("without route");
  });

  it("does as the plant file says, for any fibre", () => {
    const told: Plant = {
      ...PLANT,
      counterparts: { reactive: "pigment-stenter", "pigment-calender": "acid" },
    };
    expect(arms("reactive", { cotton: 1 }, told)).toBe("pigment-stenter | reactive");
    expect(arms("pigment-calender", { acrylic: 1 }, told)).toBe("pigment-calender | acid");
  });
});
