import { describe, expect, it } from "vitest";
import { drawInto, type Drawn } from "../../src/meters/drawn.js";
import { machineAmount } from "../../src/meters/machine-amount.js";
import { amountsUnder, meteredParts } from "../../src/meters/metered-flows.js";
import { mean } from "../../src/numbers/quantiles.js";
import { madeMill } from "./made.js";

const { program, groups } = madeMill({});
const all = amountsUnder(program, groups, () => 1);
const DRAWS = 200;

describe("machineAmount", () => {
  it("is what a meter at the machine counts", () => {
    const drawn: Drawn = new Map();
    const asked = { site: "main", machine: "range", carrier: "steam" } as const;
    const amount = machineAmount(program, asked, all);
    const [part] = meteredParts(
      program,
      { site: "main", quantity: "steam", machines: ["range"] },
      all,
      "test of a machine",
    );
    drawInto(drawn, program, [amount, part!.amount], DRAWS, 1);
    expect(mean(drawn.get(amount)!)).toBeCloseTo(mean(drawn.get(part!.amount)!), 6);
  });
});
