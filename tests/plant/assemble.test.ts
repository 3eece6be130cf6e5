import { describe, expect, it } from "vitest";
import { leavesOf } from "../../src/numbers/quantity.js";
import { type Arm, assembleArm } from "../../src/plant/assemble.js";
import { clothKind } from "../../src/plant/cloth-kind.js";
import { lookupIn } from "../../src/plant/quantities.js";
import { buildSite } from "../../src/plant/site.js";
import { flowName, type Term } from "../../src/steps/term.js";
import { valueOf } from "../steps/context.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { EXACT_MILL, exactly, type MillFile, plantFrom } from "../account/exact-mill.js";

const lookup = lookupIn(SHIPPED, "2026-03", "2026-11-25");

function armOf(
  route: string,
  { own = true, other, file = EXACT_MILL }: { own?: boolean; other?: string; file?: MillFile } = {},
): Arm {
  const plant = plantFrom(file);
  const text = plant.sites["main"];
  const taken = plant.routes[route];
  if (text === undefined || taken === undefined) throw new Error(`no route ${route}`);
  const site = buildSite("main", text, lookup);
  return assembleArm(plant, site, lookup, SHIPPED, {
    route: taken,
    other: other === undefined ? undefined : plant.routes[other],
    own,
    kind: clothKind([{ fibre: "cotton", share: 1 }], ({ id }) => site.at(id)),
  });
}

function termsOf(arm: Arm, role: string): readonly Term[] {
  return arm.steps.find((step) => step.role === role)?.terms ?? [];
}

function amountsOf(arm: Arm, role: string): ReadonlySet<string> {
  return new Set(termsOf(arm, role).map(({ amount }) => amount.name));
}

/** Value of the first term of a flow. */
function rateOf(arm: Arm, role: string, flow: string): number {
  const found = termsOf(arm, role).find((term) => flowName(term.flow) === flow);
  if (found === undefined) throw new Error(`${role} has no ${flow}`);
  return valueOf(found.rate);
}

describe("assembleArm", () => {
  it("puts the steps in a row, and knows whether they wash", () => {
    expect(armOf("reactive").washed).toBe(true);
    expect(armOf("pigment-calender").washed).toBe(false);
    expect(armOf("pigment-calender").steps.map(({ role }) => role)).toEqual([
      "pretreat",
      "pretreat-dry",
      "pretreat-store",
      "print",
      "fix",
      "store",
    ]);
  });

  it("takes logged columns on the route the lots took", () => {
    const arm = armOf("pigment-calender");
    expect(amountsOf(arm, "pretreat")).toContain("mass·pickup");
    expect(amountsOf(arm, "fix")).toContain("length·dwell");
    expect(amountsOf(arm, "fix")).toContain("mass·fixTemp");
  });

  it("lets a logged setting cross only to a step that both arms share", () => {
    const arm = armOf("reactive", { own: false, other: "pigment-calender" });
    expect(amountsOf(arm, "pretreat")).toContain("mass·pickup");
    expect(amountsOf(arm, "steam")).not.toContain("length·dwell");
    expect(amountsOf(arm, "wash")).not.toContain("mass·liquorRatio·baths");
    const alone = armOf("reactive", { own: false });
    expect(amountsOf(alone, "pretreat")).not.toContain("mass·pickup");
  });

  it("multiplies logged ink by the ink ratio on the other arm alone", () => {
    expect(rateOf(armOf("reactive"), "print", "ink")).toBe(1);
    expect(rateOf(armOf("reactive", { own: false }), "print", "ink")).toBe(0.9);
  });

  it("puts the route's setting before the machine's, and that before the site's", () => {
    const main = EXACT_MILL.sites.main;
    const machines = main["machines"] as Readonly<Record<string, object>>;
    const byMachine: MillFile = {
      ...EXACT_MILL,
      sites: {
        main: {
          ...main,
          machines: { ...machines, pad: { kind: "pad", settings: exactly({ pickup: 0.8 }) } },
        },
      },
    };
    const reactive = EXACT_MILL.routes["reactive"] as object;
    const byRoute: MillFile = {
      ...byMachine,
      routes: {
        ...EXACT_MILL.routes,
        reactive: { ...reactive, settings: exactly({ "pretreat.pickup": 0.9 }) },
      },
    };
    // No pick-up is logged: solids 0.1 leave 0.9 of it as water.
    const water = (file: MillFile): number =>
      rateOf(armOf("reactive", { own: false, file }), "pretreat", "water.process");
    expect(water(EXACT_MILL)).toBeCloseTo(0.9 * 0.7, 12);
    expect(water(byMachine)).toBeCloseTo(0.9 * 0.8, 12);
    expect(water(byRoute)).toBeCloseTo(0.9 * 0.9, 12);
  });

  it("puts the route's recipe before the site's", () => {
    const urea = (file: MillFile): number =>
      rateOf(armOf("reactive", { own: false, file }), "pretreat", "urea@cloth");
    expect(urea(EXACT_MILL)).toBeCloseTo(0.7 * 100, 9);
    const reactive = EXACT_MILL.routes["reactive"] as object;
    const file = {
      ...EXACT_MILL,
      routes: {
        ...EXACT_MILL.routes,
        reactive: { ...reactive, settings: exactly({ "pretreat.urea": 60 }) },
      },
    };
    expect(urea(file)).toBeCloseTo(0.7 * 60, 9);
  });

  it("names each stream by its owner: machine, or role on a machine", () => {
    const plain: MillFile = {
      ...EXACT_MILL,
      sites: { main: { ...EXACT_MILL.sites.main, settings: {} } },
    };
    const ids = new Set(
      termsOf(armOf("reactive", { file: plain }), "dry").flatMap(({ rate }) =>
        leavesOf(rate).map(({ id }) => id),
      ),
    );
    expect(ids).toContain("stenter-dry.standing @ machine main/steam stenter");
    expect(ids).toContain("stenter-dry.cloth-out @ role main/steam stenter/dry");
  });
});
