import { describe, expect, it } from "vitest";
import { acceptedOf, armsUnder, rejectsUnder } from "../../src/compare/scenario-groups.js";
import { Ledger } from "../../src/ledger/ledger.js";
import type { Plant } from "../../src/plant/plant.js";
import { lotOf, PLANT } from "../ledger/made.js";

const STENTER = "pigment-stenter";

/** The house with a second pigment route. */
const WIDER: Plant = {
  ...PLANT,
  routes: {
    ...PLANT.routes,
    [STENTER]: { ...PLANT.routes["pigment-calender"]!, name: STENTER },
  },
};

function groupsOf(...lots: readonly Parameters<typeof lotOf>[0][]) {
  const ledger = new Ledger();
  lots.forEach((change, i) => {
    ledger.add(lotOf({ lot: `L-${i}`, ...change }), WIDER);
  });
  return ledger.settled().groups;
}

const { groups, wool } = {
  groups: groupsOf({ route: "pigment-calender" }, { route: "reactive" }),
  wool: groupsOf({ route: "pigment-calender", fibre: [{ fibre: "wool", share: 1 }] }),
};

function arms(scenario: Parameters<typeof armsUnder>[0], of = groups) {
  return armsUnder(scenario, of).map(({ key }) => [key.route, key.pigment, key.dye]);
}

describe("armsUnder", () => {
  it("keeps every arm where nothing differs", () => {
    expect(armsUnder({ plant: WIDER, instead: {} }, groups)).toEqual(groups);
  });

  it("follows other counterparts, which stand for lots of the other workflow alone", () => {
    const plant = { ...WIDER, counterparts: { reactive: STENTER } };
    expect(arms({ plant, instead: {} })).toEqual([
      ["pigment-calender", "pigment-calender", "reactive"],
      ["reactive", STENTER, "reactive"],
    ]);
  });

  it("puts a route in place of another on the lots' own arm too, and leaves the route logged", () => {
    expect(arms({ plant: WIDER, instead: { "pigment-calender": STENTER } })).toEqual([
      ["pigment-calender", STENTER, "reactive"],
      ["reactive", STENTER, "reactive"],
    ]);
  });

  it("compares no lot that the mill does not, and keeps the counterpart that a lot has there", () => {
    expect(arms({ plant: WIDER, instead: {} }, wool)).toEqual([["pigment-calender", "", ""]]);
    const routes = { "pigment-calender": WIDER.routes["pigment-calender"]! };
    expect(arms({ plant: { ...WIDER, routes }, instead: {} })).toEqual(
      groups.map(({ key }) => [key.route, key.pigment, key.dye]),
    );
  });
});

describe("rejectsUnder", () => {
  const lots = groupsOf(
    { route: "reactive", length: 200, rejected: 10, width: 1.5 },
    { route: "reactive", length: 50, rejected: 5, width: 1.5, kind: "overhead" },
  );

  it("takes as many times what was rejected off what was printed", () => {
    // By hand: 200 m printed and 10 m rejected, 1.5 m wide.
    expect(acceptedOf(lots)).toBeCloseTo(1.5 * 190, 9);
    expect(acceptedOf(rejectsUnder(lots, 2))).toBeCloseTo(1.5 * 180, 9);
    expect(acceptedOf(rejectsUnder(lots, 0))).toBeCloseTo(1.5 * 200, 9);
    expect(rejectsUnder(lots, 1)).toEqual(lots);
  });

  it("leaves overhead and reprints as they are", () => {
    const others = lots.filter(({ key }) => key.kind === "overhead");
    expect(others).toHaveLength(1);
    expect(rejectsUnder(others, 3)).toEqual(others);
  });
});
