import { describe, expect, it } from "vitest";
import { meterFaults, monthsInPart } from "../../src/meters/faults.js";
import type { Reading } from "../../src/meters/reading.js";
import { inUse, madeMill, monthly } from "./made.js";

const water = (
  rest: Readonly<Record<string, unknown>> = {},
): Readonly<Record<string, unknown>> => ({
  quantity: "water",
  unit: "L",
  covers: "site",
  ...rest,
});

function codesOf(
  meters: Readonly<Record<string, unknown>>,
  readings: readonly Reading[],
): readonly string[] {
  const mill = madeMill(meters);
  return meterFaults(mill.plant, readings, inUse(mill, readings)).map(({ code, remedy }) => {
    expect(remedy.length).toBeGreaterThan(10);
    return code;
  });
}

describe("meterFaults", () => {
  it("finds none where all fits", () => {
    const meters = { main: water(), range: water({ within: "main" }) };
    const readings = [...monthly("main", () => 100), ...monthly("range", () => 60)];
    expect(codesOf(meters, readings)).toEqual([]);
  });

  it("finds months that are missing", () => {
    const readings = monthly("main", () => 100).filter((_, i) => i !== 4);
    expect(codesOf({ main: water() }, readings)).toEqual(["meter-months-missing"]);
  });

  it("finds more below a meter than it counts", () => {
    const meters = { main: water(), range: water({ within: "main" }) };
    const readings = [...monthly("main", () => 100), ...monthly("range", () => 130)];
    expect(codesOf(meters, readings)).toEqual(["meter-above-parent"]);
  });

  it("finds more effluent than water", () => {
    const meters = { main: water(), drain: { ...water(), quantity: "effluent" } };
    const readings = [...monthly("main", () => 100), ...monthly("drain", () => 120)];
    expect(codesOf(meters, readings)).toEqual(["meter-more-out-than-in"]);
  });

  it("finds a base load that came out below 0", () => {
    const mill = madeMill({ main: water() });
    const mean = mill.takes("2025-07", "water");
    const readings = monthly("main", (month) => 1.5 * mill.takes(month, "water") - 0.2 * mean);
    const faults = meterFaults(mill.plant, readings, inUse(mill, readings));
    expect(faults.map(({ code }) => code)).toEqual(["meter-base-below-zero"]);
  });
});

describe("monthsInPart", () => {
  const { groups } = madeMill({ main: water() });

  it("names months of which lots are known in part, where a meter counts all of them", () => {
    const [found, ...more] = monthsInPart(
      groups,
      monthly("main", () => 100),
      (month) => month !== "2025-01" && month !== "2025-12",
    );
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: "meter-month-in-part", value: "2025-01, 2025-12" });
  });

  it("says nothing of months without a reading, or where all are whole", () => {
    const later = monthly("main", () => 100).slice(1);
    expect(monthsInPart(groups, later, (month) => month !== "2025-01")).toEqual([]);
    expect(monthsInPart(groups, later, () => true)).toEqual([]);
  });
});
