import { Nodes } from "../../src/account/nodes.js";
import type { Program } from "../../src/account/program.js";
import type { Factor, FactorSet } from "../../src/factors/factor.js";
import { type Leaf, ONE, type Quantity } from "../../src/numbers/quantity.js";
import type { Spread } from "../../src/numbers/spread.js";
import { AMOUNTS } from "../../src/steps/amounts.js";

/** A setting of a made-up program. */
export function setting(id: string, spread: Spread, more: Partial<Leaf> = {}): Leaf {
  return {
    kind: "leaf",
    id,
    factor: id,
    unit: "kWh/m2",
    words: `${id} of the test`,
    spread,
    provenance: "plant",
    source: "test",
    ...more,
  };
}

/** Final energy of both arms as two formulas, over one unit of area. */
export function programOf(pigment: Quantity, dye: Quantity): Program {
  const nodes = new Nodes();
  const unity = nodes.number(ONE);
  const rates = { pigment: nodes.number(pigment), dye: nodes.number(dye) };
  const outlet = {
    fence: new Map(),
    indicators: new Map([["energy", new Map([["electricity", unity]])]]),
  };
  const amounts = new Float64Array(AMOUNTS.length).fill(1);
  // What the account does not read is left out.
  return {
    nodes,
    classes: [{ amounts, outlets: { pigment: outlet, dye: outlet } }],
    terms: (["pigment", "dye"] as const).map((arm) => ({
      lotClass: 0,
      arm,
      role: "print",
      kind: "printer",
      flow: "electricity",
      amount: 0,
      rate: rates[arm],
    })),
    classOf: () => 0,
    indicators: new Map([["energy", { unit: "kWh", words: "energy", intensities: new Map() }]]),
  } as unknown as Program;
}

/** Factors that say nothing but how far each setting may go. */
export function factorsOf(
  plausible: Readonly<Record<string, readonly [number, number]>>,
): FactorSet {
  const factors = Object.entries(plausible).map(
    ([id, range]) => [id, { id, plausible: range, values: [] } as unknown as Factor] as const,
  );
  return { factors: new Map(factors), sources: new Map(), digest: "" };
}
