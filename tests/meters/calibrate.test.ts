import { describe, expect, it } from "vitest";
import { type Account, accountOf } from "../../src/account/account.js";
import { provenanceOf } from "../../src/account/breakdown.js";
import { calibrated } from "../../src/account/calibration.js";
import { swingsOf } from "../../src/account/swings.js";
import { compareArms } from "../../src/compare/compare.js";
import { type Calibrated, calibrate } from "../../src/meters/calibrate.js";
import type { Reading } from "../../src/meters/reading.js";
import { quantile, quantiles } from "../../src/numbers/quantiles.js";
import { inUse, type MadeMill, madeMill, monthly } from "./made.js";

const DRAWS = 2000;
const NO_BASE = { value: 0, low: 0, high: 0, source: "valves shut" };
const RANGE = {
  quantity: "water",
  unit: "L",
  covers: { machines: ["range"] },
  accuracy: 1,
  base: NO_BASE,
};
const MAIN = { quantity: "water", unit: "L", covers: "site", accuracy: 1, base: NO_BASE };

function corrected(
  mill: MadeMill,
  readings: readonly Reading[],
): { readonly found: Calibrated; readonly before: Account; readonly after: Account } {
  const { program, groups } = mill;
  const meters = inUse(mill, readings);
  const before = accountOf(program, DRAWS, 1);
  const found = calibrate({ program, groups, meters, draws: DRAWS, seed: 1 });
  if (found === undefined) throw new Error("Nothing was corrected.");
  const after = accountOf(calibrated(program, found.calibration), DRAWS, 1);
  return { found, before, after };
}

const middle = (draws: Float64Array | undefined): number =>
  quantile(draws ?? new Float64Array(1), 0.5);
const width = (draws: Float64Array): number => {
  const [low = NaN, high = NaN] = quantiles(draws, [0.025, 0.975]);
  return high - low;
};

describe("a meter of one machine", () => {
  const mill = madeMill({ range: RANGE });
  const readings = monthly("range", (month) => 1.4 * mill.takes(month, "water", ["range"]));
  const { found, before, after } = corrected(mill, readings);
  const read = readings.reduce((sum, { amount }) => sum + amount, 0);

  it("brings the model of the machine to the reading, in every draw within the error of the meter", () => {
    const [meter] = found.meters;
    expect(middle(meter?.after) / read).toBeCloseTo(1, 2);
    expect(width(meter?.after ?? new Float64Array(1)) / read).toBeLessThan(0.04);
    expect(width(meter?.before ?? new Float64Array(1)) / read).toBeGreaterThan(0.1);
  });

  it("corrects the machine on both arms, whoever printed the lots", () => {
    const [state] = found.states;
    expect(state).toMatchObject({ machine: "range", carrier: "water", by: "measured" });
    expect(middle(state?.corrections)).toBeCloseTo(1.4, 1);
    const ratio = (side: "dye" | "actual"): number =>
      middle(after.indicators[side].get("water")) / middle(before.indicators[side].get("water"));
    expect(ratio("dye")).toBeGreaterThan(1.2);
    // Half of the dye arm is lots that were printed by pigment: both halves are corrected by the same factor.
    expect(ratio("dye") / ratio("actual")).toBeGreaterThan(0.95);
  });

  it("keeps water balanced: what comes in more goes out more", () => {
    const consumed = (account: Account): Float64Array =>
      account.indicators.dye.get("consumed") ?? new Float64Array(1);
    consumed(after).forEach((value, i) => {
      expect(value / consumed(before)[i]!).toBeCloseTo(1, 9);
    });
    expect(middle(after.indicators.dye.get("discharged"))).toBeGreaterThan(
      1.2 * middle(before.indicators.dye.get("discharged")),
    );
  });

  it("narrows the saving and is counted as measured", () => {
    const saving = (account: Account): Float64Array =>
      compareArms(account, "water", 1).draws ?? new Float64Array(1);
    expect(width(saving(after))).toBeLessThan(width(saving(before)));
    expect(provenanceOf(after, "water", "dye").measured).toBeGreaterThan(0.7);
    expect(provenanceOf(before, "water", "dye").measured).toBe(0);
    expect(provenanceOf(after, "water", "dye").allocated).toBe(0);
  });

  it("takes away what a setting of the machine moved, and leaves the meter's error in its place", () => {
    const reach = (account: Account, name: string): number =>
      swingsOf(account.program, ["water"])
        .get("water")
        ?.factors.find(({ factor }) => factor.startsWith(name))?.width ?? 0;
    expect(reach(before, "wash-range.fresh-water")).toBeGreaterThan(0.02);
    expect(reach(after, "wash-range.fresh-water")).toBeLessThan(
      0.1 * reach(before, "wash-range.fresh-water"),
    );
    expect(reach(after, "meter.reading")).toBeGreaterThan(0);
  });
});

describe("meters in a tree", () => {
  const mill = madeMill({ main: MAIN, range: { ...RANGE, within: "main" } });
  const truth = (month: string): number => mill.takes(month, "water", ["range"]);

  it("are reconciled at once, so that all balances close", () => {
    const { found } = corrected(mill, [
      ...monthly("main", (month) => mill.takes(month, "water") + 0.3 * truth(month)),
      ...monthly("range", (month) => 1.3 * truth(month)),
    ]);
    for (const { use, after, reading } of found.meters) {
      expect(middle(after) / middle(reading), use.name).toBeCloseTo(1, 2);
    }
    expect(found.test.chance).toBeGreaterThan(0.05);
    const by = new Map(found.states.map((state) => [`${state.machine} ${state.carrier}`, state]));
    expect(by.get("range water")?.by).toBe("measured");
    expect(by.get("printer water")?.by).toBe("allocated");
  });

  it("name a reading that cannot be: more below than above", () => {
    const { found } = corrected(mill, [
      ...monthly("main", (month) => mill.takes(month, "water")),
      ...monthly("range", (month) => 1.6 * mill.takes(month, "water")),
    ]);
    expect(found.test.chance).toBeLessThan(0.001);
    expect(Math.max(...found.meters.map(({ score }) => Math.abs(score)))).toBeGreaterThan(1.96);
  });
});

describe("a meter of the site", () => {
  const mill = madeMill({
    gas: { quantity: "gas", unit: "kWh", basis: "net", covers: "site", accuracy: 1, base: NO_BASE },
  });

  it("shares its gap among machines and the boiler, none of it below 0", () => {
    const readings = monthly("gas", (month) => 0.7 * mill.takes(month, "gas"));
    const { found, before, after } = corrected(mill, readings);
    expect(middle(found.meters[0]?.after) / middle(found.meters[0]?.reading)).toBeCloseTo(1, 2);
    expect(found.states.map(({ machine }) => machine)).toContain("boiler");
    for (const { corrections } of found.states)
      expect(corrections.every((value) => value > 0)).toBe(true);
    expect(
      middle(after.indicators.actual.get("energy")) /
        middle(before.indicators.actual.get("energy")),
    ).toBeLessThan(0.9);
    expect(provenanceOf(after, "energy", "dye").allocated).toBeGreaterThan(0.4);
  });

  it("corrects nothing without readings", () => {
    const { program, groups } = mill;
    expect(inUse(mill, [])).toEqual([]);
    expect(calibrate({ program, groups, meters: [], draws: 100, seed: 1 })).toBeUndefined();
  });
});
