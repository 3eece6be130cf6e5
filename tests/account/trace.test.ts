import { describe, expect, it } from "vitest";
import { accountOf } from "../../src/account/account.js";
import { writeProgram } from "../../src/account/program.js";
import { traceOf } from "../../src/account/trace.js";
import { Ledger } from "../../src/ledger/ledger.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { EXACT_MILL, PLAIN_LOT, plantFrom } from "./exact-mill.js";

const plant = plantFrom(EXACT_MILL);
const ledger = new Ledger();
ledger.add(PLAIN_LOT, plant);
const account = accountOf(
  writeProgram(plant, SHIPPED, ledger.settled().groups, "2026-11-25"),
  3,
  1,
);

describe("traceOf", () => {
  const lines = traceOf(account, "water", "dye", 1000);

  it("leaves nothing of the total out", () => {
    const total = account.indicators.dye.get("water")?.[0] ?? NaN;
    expect(lines.reduce((sum, { mean }) => sum + mean, 0) / total).toBeCloseTo(1, 9);
    expect(lines.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
  });

  it("says each line as amount times rate", () => {
    for (const { sum, median, mean, low, high } of lines) {
      expect((sum * median) / mean).toBeCloseTo(1, 9);
      expect(low).toBe(median);
      expect(high).toBe(median);
    }
  });

  it("puts the largest first, and shows no more than asked for", () => {
    const means = lines.map(({ mean }) => Math.abs(mean));
    expect(means).toEqual([...means].sort((a, b) => b - a));
    expect(traceOf(account, "water", "dye", 2)).toEqual(lines.slice(0, 2));
  });

  it("names route, step, amount and the settings read", () => {
    // 25 L/kg fresh water of 224 kg, 1/(1 − 0.05) withdrawn for each: by far the most.
    const [first] = lines;
    expect(first).toMatchObject({
      route: "reactive",
      step: "wash",
      unit: "kg",
      flow: "water.process",
    });
    expect(first?.sum).toBeCloseTo(224, 9);
    expect(first?.mean).toBeCloseTo((25 * 224) / 0.95, 6);
    expect(first?.reads.join()).toContain("wash-range.fresh-water");
  });
});
