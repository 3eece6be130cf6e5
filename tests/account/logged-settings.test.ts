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

interface Lots {
  readonly logged: number;
  readonly open: number;
  readonly settings: string;
  readonly setting: Leaf;
}

function programOf(parts: readonly Lots[]): Program {
  const nodes = new Nodes();
  return {
    nodes,
    classes: parts.map(({ logged, open, settings }) => {
      const amounts = new Float64Array(AMOUNTS.length);
      amounts[place("mass")] = 100 + open;
      amounts[place("mass·pickup")] = 100 * logged;
      amounts[place("mass[no pickup]")] = open;
      return { key: { route: "reactive", own: "dye", settings }, amounts };
    }),
    terms: parts.map(({ setting }, lotClass) => ({
      lotClass,
      arm: "dye",
      role: "pretreat",
      kind: "pad",
      flow: "water.process",
      amount: place("mass[no pickup]"),
      rate: nodes.number(setting),
    })),
  } as unknown as Program;
}

function programWith(logged: number, open: number): Program {
  return programOf([{ logged, open, settings: "", setting: pickup }]);
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

  it("holds lots before and after a change of the plant file against their own setting", () => {
    const low: Leaf = {
      ...pickup,
      spread: { shape: "triangular", low: 0.45, value: 0.5, high: 0.55 },
      source: "plant.yaml, changes from 2026-07-01, sites.main.machines.pad-1.settings.pickup",
    };
    const lots = (before: number, after: number): Program =>
      programOf([
        { logged: before, open: 50, settings: "", setting: pickup },
        { logged: after, open: 50, settings: "2026-07-01", setting: low },
      ]);
    expect(disagreements(lots(0.75, 0.5))).toEqual([]);
    expect(disagreements(lots(0.5, 0.5)).map(({ setting }) => setting)).toEqual([pickup.id]);
    expect(disagreements(lots(0.75, 0.75)).map(({ setting }) => setting)).toEqual([
      `${pickup.id}, from 2026-07-01`,
    ]);
  });
});
