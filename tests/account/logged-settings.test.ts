import { describe, expect, it } from "vitest";
import { disagreements } from "../../src/account/logged-settings.js";
import { Nodes } from "../../src/account/nodes.js";
import type { Program } from "../../src/account/program.js";
import type { Leaf } from "../../src/numbers/quantity.js";
import { AMOUNTS } from "../../src/steps/amounts.js";

const place = (name: string): number => AMOUNTS.findIndex((amount) => amount.name === name);

const pickup: Leaf = {
  kind: "leaf",
  id: "pad.pickup @ role main/pad-1/pretreat",
  factor: "pad.pickup",
  unit: "kg/kg",
  words: "pick-up",
  spread: { shape: "triangular", low: 0.6, value: 0.75, high: 0.9 },
  provenance: "default",
  source: "own-estimate",
};

function programWith(logged: number, openMass: number): Program {
  const nodes = new Nodes();
  const amounts = new Float64Array(AMOUNTS.length);
  amounts[place("mass")] = 100 + openMass;
  amounts[place("mass·pickup")] = 100 * logged;
  amounts[place("mass[no pickup]")] = openMass;
  const key = { route: "reactive", own: "dye" };
  return {
    nodes,
    classes: [{ key, amounts }],
    terms: [
      {
        lotClass: 0,
        arm: "dye",
        role: "pretreat",
        kind: "pad",
        flow: "water.process",
        amount: place("mass[no pickup]"),
        rate: nodes.number(pickup),
      },
    ],
  } as unknown as Program;
}

describe("disagreements", () => {
  it("names a logged mean outside the interval of the setting", () => {
    const found = disagreements(programWith(0.5, 50));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatchObject({ route: "reactive", setting: pickup.id, logged: 0.5 });
  });

  it("is silent when the log agrees", () => {
    expect(disagreements(programWith(0.75, 50))).toEqual([]);
  });

  it("is silent when every lot is logged, for the setting is then not used", () => {
    expect(disagreements(programWith(0.5, 0))).toEqual([]);
  });
});
