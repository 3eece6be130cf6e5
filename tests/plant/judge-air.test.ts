import { describe, expect, it } from "vitest";
import { readPlant } from "../../src/plant/read-plant.js";
import { sentence } from "../../src/problems/sentence.js";
import { EXACT_MILL, exactly } from "../account/exact-mill.js";
import { SHIPPED } from "../tools/shipped-factors.js";

const main = EXACT_MILL.sites.main;

/** Faults of the exact mill in a hall and with an exhaust of its stenter, or of its pre-treatment dryer alone. */
function faults(hall: Readonly<Record<string, number>>, own: object = {}): readonly string[] {
  const settings = { ...(main["settings"] as object), ...exactly(hall) };
  const sites = { main: { ...main, settings } };
  const file = { ...EXACT_MILL, sites, ...own };
  const { problems } = readPlant({ name: "plant.yaml", text: JSON.stringify(file) }, SHIPPED);
  return problems.map((problem) => `${problem.code}: ${sentence(problem)}`);
}

describe("air of dryers", () => {
  it("is well in a usual hall", () => {
    expect(faults({ "hall.temperature": 30, "hall.relative-humidity": 0.7 })).toEqual([]);
  });

  // Steam tables: water at 45 °C boils under 9.59 kPa; 90 % of that in 101.325 kPa are 0.0579 kg/kg, so that an
  // exhaust of 0.06 carries hardly any.
  it("is refused where the exhaust could hardly take up water, once for each machine", () => {
    const found = faults({ "hall.temperature": 45, "hall.relative-humidity": 0.9 });
    expect(found).toHaveLength(1);
    expect(found[0]).toContain("exhaust-too-dry: plant.yaml, line");
    expect(found[0]).toContain('"0.06"; expected at least 0.0729');
    expect(found[0]).toContain("hall of site main holds 0.0579");
    expect(found[0]).toContain("hall.relative-humidity");
  });

  it("is refused at the number of the route or machine that is at fault", () => {
    const routes = structuredClone(EXACT_MILL.routes) as Record<string, { settings?: object }>;
    const reactive = routes["reactive"];
    if (reactive === undefined) throw new Error("no route");
    reactive.settings = { ...reactive.settings, "dry.exhaust-humidity": 0.035 };
    const found = faults({ "hall.temperature": 30, "hall.relative-humidity": 0.8 }, { routes });
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('"0.035"');
    expect(found[0]).toContain("step dry (reactive)");
  });
});
