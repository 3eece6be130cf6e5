import { describe, expect, it } from "vitest";
import { accountOf } from "../../src/account/account.js";
import type { Account } from "../../src/account/account.js";
import { calibrated } from "../../src/account/calibration.js";
import { compareArms } from "../../src/compare/compare.js";
import { type Blindness, blindness, widest } from "../../src/meters/blindness.js";
import { calibrate } from "../../src/meters/calibrate.js";
import { quantiles } from "../../src/numbers/quantiles.js";
import { inUse, type MadeMill, madeMill, monthly } from "./made.js";

const DRAWS = 2000;

function rank(
  { groups }: MadeMill,
  account: Account,
  measured: readonly string[] = [],
): readonly Blindness[] {
  const comparisons = new Map([["water", compareArms(account, "water", 1)] as const]);
  return blindness({
    account,
    groups,
    comparisons,
    ids: ["water"],
    isMeasured: (_, machine, carrier) => measured.includes(`${machine} ${carrier}`),
    seed: 1,
  });
}

function width(account: Account): number {
  const [low = NaN, high = NaN] = quantiles(
    compareArms(account, "water", 1).draws ?? new Float64Array(1),
    [0.025, 0.975],
  );
  return 100 * (high - low);
}

describe("blindness", () => {
  const mill = madeMill({
    belt: { quantity: "water", unit: "L", covers: { machines: ["printer"] }, accuracy: 2 },
  });
  const before = accountOf(mill.program, DRAWS, 1);
  const ranked = rank(mill, before);

  it("ranks machines by what a meter there would narrow", () => {
    const [first] = ranked;
    expect(first?.carrier).toBe("water");
    expect(ranked.map(widest)).toEqual([...ranked.map(widest)].sort((a, b) => b - a));
    const power = ranked.find(({ carrier }) => carrier === "electricity");
    expect(power === undefined ? 0 : widest(power)).toBeLessThan(0.3 * widest(first!));
  });

  it("foresees what the meter does once it is read", () => {
    const { program, groups } = mill;
    const readings = monthly("belt", (month) => mill.takes(month, "water", ["printer"]));
    const meters = inUse(mill, readings);
    const found = calibrate({ program, groups, meters, draws: DRAWS, seed: 1 });
    const after = accountOf(calibrated(program, found!.calibration), DRAWS, 1);
    const foreseen = ranked.find(
      ({ machine, carrier }) => machine === "printer" && carrier === "water",
    );
    const narrowed = width(before) - width(after);
    expect(narrowed).toBeGreaterThan(1);
    // A straight line cannot say it to the point.
    expect(Math.abs(widest(foreseen!) - narrowed)).toBeLessThan(0.35 * width(before));
  });

  it("leaves out what has a meter of its own", () => {
    const rest = rank(mill, before, ["printer water"]);
    expect(rest).toHaveLength(ranked.length - 1);
    expect(rest.some(({ machine, carrier }) => machine === "printer" && carrier === "water")).toBe(
      false,
    );
  });
});
