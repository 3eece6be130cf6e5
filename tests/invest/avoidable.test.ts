import { describe, expect, it } from "vitest";
import { addedBy, type Avoidable, avoidedBy } from "../../src/invest/avoidable.js";
import type { OfKind } from "../../src/meters/average-or-avoidable.js";

const charged = { running: Float64Array.of(5, 6), waiting: Float64Array.of(2, 1) };

describe("what goes when lots leave a machine", () => {
  it("is what runs for them; waiting goes with the machine alone", () => {
    expect([...avoidedBy(charged, false)]).toEqual([5, 6]);
    expect([...avoidedBy(charged, true)]).toEqual([7, 7]);
  });

  it("comes back with them, waiting included", () => {
    expect([...addedBy(charged)]).toEqual([7, 7]);
  });

  it("cannot be taken for what lots are allocated", () => {
    const spent = (draws: Avoidable): number => draws.length;
    const shared = Float64Array.of(1) as Float64Array & OfKind<"allocated">;
    // @ts-expect-error a purchase counts avoidable quantities alone
    expect(spent(shared)).toBe(1);
    // @ts-expect-error plain draws say nothing of their kind
    expect(spent(Float64Array.of(1, 2))).toBe(2);
  });
});
