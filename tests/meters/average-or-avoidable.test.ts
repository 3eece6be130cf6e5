import { describe, expect, it } from "vitest";
import {
  type Allocated,
  allocated,
  type Avoidable,
  avoidable,
  sumOf,
} from "../../src/meters/average-or-avoidable.js";

describe("allocated and avoidable", () => {
  it("do not mix", () => {
    const share: Allocated = allocated(5);
    const saved: Avoidable = avoidable(3);
    // @ts-expect-error -- what is allocated on average is not what a change avoids
    const wrong: Avoidable = share;
    // @ts-expect-error -- nor the other way round
    const alsoWrong: Allocated = saved;
    // @ts-expect-error -- a bare number says neither
    const bare: Allocated = 7;
    // @ts-expect-error -- and no sum is formed of both
    sumOf([share, saved]);
    expect([wrong, alsoWrong, bare]).toEqual([5, 3, 7]);
  });

  it("add up among their own", () => {
    const sum: Allocated = sumOf([allocated(1), allocated(2.5)]);
    expect(sum).toBe(3.5);
  });
});
