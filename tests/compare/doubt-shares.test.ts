import { describe, expect, it } from "vitest";
import { doubtShares } from "../../src/compare/doubt-shares.js";
import { inputOf } from "../report/compose/small-mill.js";

const { account, swings } = inputOf();
const { program } = account;
const asked = { factors: 6, draws: 1000, seed: 1 };

describe("doubtShares", () => {
  const energy = swings.get("energy");
  const shares = energy === undefined ? [] : doubtShares(program, "energy", energy, asked);

  it("looks at as many groups of factors as asked for, each once", () => {
    expect(shares).toHaveLength(6);
    const all = shares.flatMap(({ factors }) => factors);
    expect(new Set(all).size).toBe(all.length);
  });

  it("never gives a factor less together with others than alone, nor all of them more than everything", () => {
    for (const side of ["pigment", "dye", "saving"] as const) {
      let sum = 0;
      let error = 0;
      for (const { of } of shares) {
        const { first, total } = of[side];
        expect(first.value - total.value).toBeLessThanOrEqual(4 * (first.error + total.error));
        sum += first.value;
        error += first.error;
      }
      expect(sum).toBeLessThan(1 + 4 * error);
    }
  });

  it("gives a route nothing of what only the other takes", () => {
    const steamer = shares.find(({ factors }) => factors.some((id) => id.startsWith("steamer.")));
    expect(steamer).toBeDefined();
    expect(steamer?.of.pigment.total.value).toBe(0);
    expect(steamer?.of.dye.total.value).toBeGreaterThan(0);
  });

  it("comes out the same for the same seed", () => {
    if (energy === undefined) return;
    expect(doubtShares(program, "energy", energy, asked)).toEqual(shares);
  });
});
