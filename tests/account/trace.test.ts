import { describe, expect, it } from "vitest";
import { BROKEN_DOWN } from "../../src/account/account.js";
import { waitingOf } from "../../src/account/breakdown.js";
import { traceOf, tracesOf } from "../../src/account/trace.js";
import { mean } from "../../src/numbers/quantiles.js";
import { inputOf } from "../report/compose/small-mill.js";
import { EXACT_MILL, PLAIN_LOT, plantFrom } from "./exact-mill.js";

const { account } = inputOf();
const ALL = 100_000;

describe("traceOf", () => {
  it.each(BROKEN_DOWN)("adds up to the mean of %s when no line is left out", (id) => {
    for (const arm of ["pigment", "dye"] as const) {
      const lines = traceOf(account, id, arm, ALL);
      const total = mean(account.indicators[arm].get(id) ?? new Float64Array(0));
      expect(lines.reduce((sum, line) => sum + line.mean, 0) / total).toBeCloseTo(1, 12);
      expect(lines.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
    }
  });

  it("gives the largest lines first, no more than asked for", () => {
    const all = traceOf(account, "energy", "dye", ALL);
    const few = traceOf(account, "energy", "dye", 5);
    expect(few).toEqual(all.slice(0, 5));
    all.slice(1).forEach((line, at) => {
      expect(Math.abs(line.mean)).toBeLessThanOrEqual(Math.abs(all[at]?.mean ?? NaN));
    });
  });

  it("keeps the median of each line between its ends", () => {
    for (const { low, median, high } of traceOf(account, "water", "dye", ALL)) {
      expect(low).toBeLessThanOrEqual(median);
      expect(high).toBeGreaterThanOrEqual(median);
    }
  });

  it("multiplies out where there is no doubt: sum of the amount × rate is the line", () => {
    const exact = inputOf(plantFrom(EXACT_MILL), [PLAIN_LOT], { draws: 3 });
    const lines = traceOf(exact.account, "water", "dye", ALL);
    expect(lines.length).toBeGreaterThan(3);
    for (const { sum, median, mean: line } of lines) expect(sum * median).toBeCloseTo(line, 6);
    // 25 L/kg on 224 kg, with 5 % lost as the softener is regenerated.
    const wash = lines.filter(
      ({ step, rate }) => step === "wash" && rate === "wash-range.fresh-water",
    );
    expect(wash).toHaveLength(1);
    expect(wash[0]?.mean).toBeCloseTo((25 * 224) / 0.95, 6);
    expect(wash[0]?.reads).toEqual([
      expect.stringContaining("wash-range.fresh-water @ ") as string,
    ]);
  });
});

describe("time of waiting", () => {
  it("has lines of its own, which add up to the mean told by step", () => {
    for (const arm of ["pigment", "dye"] as const) {
      const lines = traceOf(account, "energy", arm, ALL).filter(({ part }) => part === "waiting");
      expect(lines.length).toBeGreaterThan(0);
      expect(lines.map(({ step }) => step)).toContain("print");
      const sum = lines.reduce((all, line) => all + line.mean, 0);
      expect(sum / waitingOf(account, "energy")[arm]).toBeCloseTo(1, 12);
    }
  });
});

describe("tracesOf", () => {
  it("gives each asked for what it would give alone", () => {
    const wanted = [
      { id: "water", arm: "dye" },
      { id: "cod", arm: "pigment" },
    ] as const;
    expect(tracesOf(account, wanted, 4)).toEqual(
      wanted.map(({ id, arm }) => traceOf(account, id, arm, 4)),
    );
  });
});
