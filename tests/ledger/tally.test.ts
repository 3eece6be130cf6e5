import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ACCEPTED, acceptedArea, tally } from "../../src/ledger/tally.js";
import type { Lot } from "../../src/log/lot.js";
import { AMOUNTS } from "../../src/steps/amounts.js";
import { anyLot, lotOf } from "./made.js";

function amountsOf(lot: Lot, printWidth?: number): (name: string) => number {
  const row = tally(lot, printWidth);
  return (name) => {
    const at = AMOUNTS.findIndex((amount) => amount.name === name);
    if (at < 0) throw new Error(`no amount ${name}`);
    return row[at] ?? NaN;
  };
}

describe("tally", () => {
  it("gives the amounts of a lot worked out by hand", () => {
    const lot = lotOf({ rejected: 10, pickup: 0.7, dwell: 36, liquorRatio: 30, baths: 4, ink: 5 });
    const amount = amountsOf(lot, 1.2);
    expect(amount("lots")).toBe(1);
    expect(amount("area")).toBeCloseTo(300, 12);
    expect(amount("printed")).toBeCloseTo(240, 12);
    expect(amount("accepted")).toBeCloseTo(190 * 1.2, 12);
    expect(amount("mass")).toBeCloseTo(42, 12);
    expect(amount("mass·pickup")).toBeCloseTo(29.4, 12);
    expect(amount("length·dwell")).toBeCloseTo(2, 12);
    expect(amount("mass·liquorRatio·baths")).toBeCloseTo(42 * 120, 9);
    expect(amount("ink")).toBe(5);
    expect(amount("printed[no ink, coverage]")).toBe(0);
  });

  it("prints no wider than the cloth", () => {
    expect(amountsOf(lotOf(), 2)("printed")).toBe(300);
    expect(amountsOf(lotOf())("printed")).toBe(300);
  });

  it("leaves the accepted area of a reprint open, and gives none to overhead", () => {
    for (const kind of ["reprint", "overhead"] as const) {
      expect(tally(lotOf({ kind }), undefined)[ACCEPTED]).toBe(0);
      expect(amountsOf(lotOf({ kind }))("area")).toBe(300);
    }
  });

  it("writes over the row it is given, nothing of the lot before stays", () => {
    const row = new Float64Array(AMOUNTS.length);
    tally(lotOf({ pickup: 0.7, ink: 5, coverage: 0.5, dwell: 60 }), 1.2, row);
    expect(tally(lotOf(), undefined, row)).toBe(row);
    expect(row).toEqual(tally(lotOf(), undefined));
  });

  it("parts every lot into the ways in which it was logged, without rest or overlap", () => {
    fc.assert(
      fc.property(anyLot, fc.option(fc.double({ min: 0.8, max: 2, noNaN: true })), (lot, width) => {
        const amount = amountsOf(lot, width ?? undefined);
        const close = (part: number, whole: number): void => {
          expect(Math.abs(part - whole)).toBeLessThanOrEqual(1e-12 * Math.abs(whole));
        };
        const mass = amount("mass");
        close(amount("mass·pickup") / (lot.pickup ?? 1) + amount("mass[no pickup]"), mass);
        close(amount("mass·fixTemp") / (lot.fixTemp ?? 1) + amount("mass[no fixTemp]"), mass);
        const bath = (lot.liquorRatio ?? 1) * (lot.baths ?? 1);
        close(
          amount("mass·liquorRatio·baths") / (bath * 1) +
            amount("mass·liquorRatio[no baths]") / (lot.liquorRatio ?? 1) +
            amount("mass·baths[no liquorRatio]") / (lot.baths ?? 1) +
            amount("mass[no liquorRatio, baths]"),
          mass,
        );
        const printed = amount("printed");
        close(
          (lot.ink === undefined ? 0 : printed * (amount("ink") / lot.ink)) +
            amount("printed·coverage[no ink]") / (lot.coverage ?? 1) +
            amount("printed[no ink, coverage]"),
          printed,
        );
        const dwell = (3600 * amount("length·dwell")) / (lot.dwell ?? 1);
        const speed = 60 * amount("length/speed[no dwell]") * (lot.speed ?? 1);
        const neither = amount("length[no dwell, speed]");
        close(dwell + speed + neither, lot.length);
        const ways = [dwell, speed, neither].filter((part) => part !== 0);
        expect(ways).toHaveLength(1);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe("acceptedArea", () => {
  it("is the length of first quality times the printed width", () => {
    expect(acceptedArea(lotOf({ rejected: 10 }), 1.2)).toBeCloseTo(228, 12);
    expect(acceptedArea(lotOf(), undefined)).toBe(300);
    expect(acceptedArea(lotOf({ kind: "reprint" }), 2)).toBe(300);
    expect(acceptedArea(lotOf({ kind: "overhead" }), undefined)).toBe(0);
  });
});
