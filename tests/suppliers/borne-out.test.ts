import { describe, expect, it } from "vitest";
import { borneOut, LEAST_METERED, MOST_UNEXPLAINED } from "../../src/suppliers/borne-out.js";
import type { MeterSum } from "../../src/suppliers/meter-sums.js";

const sums = (metered: number, lots = 100): readonly MeterSum[] => [
  { quantity: "water", months: 12, metered, lots, area: 50 },
];

describe("what meters bear out", () => {
  it("holds up to the share that lots may leave unexplained, and not beyond", () => {
    expect(MOST_UNEXPLAINED).toBe(0.5);
    expect(borneOut(sums(130), "water")).toEqual({
      quantity: "water",
      perArea: 2.6,
      ratio: 1.3,
      unexplained: 1 - 1 / 1.3,
      holds: true,
    });
    expect([199, 201].map((metered) => borneOut(sums(metered), "water").holds)).toEqual([
      true,
      false,
    ]);
  });

  it("does not hold where the meter shows less than the lots must have taken", () => {
    expect(LEAST_METERED).toBe(0.8);
    expect([79, 81].map((metered) => borneOut(sums(metered), "water").holds)).toEqual([
      false,
      true,
    ]);
  });

  it("stands without readings as with the worst ones, and is not asked where no meter bears on it", () => {
    expect(borneOut([], "water")).toEqual({ quantity: "water", unexplained: 1, holds: false });
    expect(borneOut(sums(130), "electricity").holds).toBe(false);
    expect(borneOut([], "salt")).toEqual({ holds: true });
  });
});
