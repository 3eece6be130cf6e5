import { describe, expect, it } from "vitest";
import { accountOf } from "../../src/account/account.js";
import { drawInto, type Drawn } from "../../src/meters/drawn.js";
import { amountsUnder, meteredParts } from "../../src/meters/metered-flows.js";
import { madeMill } from "./made.js";

const { program, groups } = madeMill({});
const all = amountsUnder(program, groups, () => 1);
const DRAWS = 200;

function drawnSum(quantity: "water" | "electricity" | "gas"): Float64Array {
  const drawn: Drawn = new Map();
  const parts = meteredParts(program, { site: "main", quantity }, all, "test");
  drawInto(
    drawn,
    program,
    parts.map(({ amount }) => amount),
    DRAWS,
    1,
  );
  const sum = new Float64Array(DRAWS);
  for (const { amount } of parts) drawn.get(amount)!.forEach((v, i) => (sum[i] = sum[i]! + v));
  return sum;
}

describe("what a site meter counts", () => {
  const account = accountOf(program, DRAWS, 1);

  it.each([
    ["water", "water", 1],
    ["electricity", "electricity", 1],
    ["gas", "heat", 1],
  ] as const)("is what the account has of %s, draw by draw", (quantity, id, scale) => {
    const whole = account.indicators.actual.get(id) ?? new Float64Array(DRAWS);
    drawnSum(quantity).forEach((value, i) => {
      expect(value / (scale * whole[i]!)).toBeCloseTo(1, 9);
    });
  });

  it("takes each month in part", () => {
    const half = amountsUnder(program, groups, () => 0.5);
    half.forEach((row, i) => {
      row.forEach((value, k) => {
        expect(value).toBeCloseTo(all[i]![k]! / 2, 9);
      });
    });
  });
});
