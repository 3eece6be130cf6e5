import { describe, expect, it } from "vitest";
import { drawInto, type Drawn, workedOut } from "../../src/meters/drawn.js";
import { machineAmount } from "../../src/meters/machine-amount.js";
import { amountsUnder } from "../../src/meters/metered-flows.js";
import { derive } from "../../src/numbers/quantity.js";
import { madeMill } from "./made.js";

const { program, groups } = madeMill({});
const all = amountsUnder(program, groups, () => 1);
const DRAWS = 200;

describe("workedOut", () => {
  it("works out what rests on draws, once", () => {
    const drawn: Drawn = new Map();
    const amount = machineAmount(
      program,
      { site: "main", machine: "range", carrier: "water" },
      all,
    );
    drawInto(drawn, program, [amount], DRAWS, 1);
    const twice = derive("twice", "1", "2 x", [amount], (x = 0) => 2 * x);
    const found = workedOut(drawn, twice, DRAWS);
    expect(found[3]).toBeCloseTo(2 * drawn.get(amount)![3]!, 9);
    expect(workedOut(drawn, twice, DRAWS)).toBe(found);
  });
});
