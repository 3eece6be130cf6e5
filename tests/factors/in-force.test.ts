import { describe, expect, it } from "vitest";
import type { Factor, FactorValue } from "../../src/factors/factor.js";
import { valueInForce } from "../../src/factors/in-force.js";

function vintage(from: string, entered: string, value: number): FactorValue {
  return {
    from,
    entered,
    spread: { shape: "fixed", value },
    source: "meter",
    page: undefined,
    year: 2024,
    region: "here",
    quality: { reliability: 1, completeness: 1, time: 1, place: 1, technology: 1 },
    note: undefined,
  };
}

function factor(...values: readonly FactorValue[]): Factor {
  return {
    id: "grid.ITA.intensity",
    unit: "kg CO2e/kWh",
    words: "intensity",
    basis: undefined,
    plausible: [0, 10],
    values,
    overruled: false,
  };
}

// The figure of 2024 was corrected in May 2026; that of 2022 came in together with its first version.
const grid = factor(
  vintage("2024-01-01", "2026-05-10", 3),
  vintage("2024-01-01", "2025-02-01", 2),
  vintage("2022-01-01", "2025-02-01", 1),
);

describe("valueInForce", () => {
  it.each([
    ["2026-03", "2026-12-01", 3, false],
    ["2026-03", "2026-05-10", 3, false],
    // Before the correction was entered the old figure holds.
    ["2026-03", "2026-05-09", 2, false],
    ["2024-01", "2026-12-01", 3, false],
    ["2023-12", "2026-12-01", 1, false],
    ["2022-01", "2026-12-01", 1, false],
    // Older than any value.
    ["2021-12", "2026-12-01", 1, true],
  ])("in %s, as known on %s, is %d (early: %s)", (month, asOf, value, early) => {
    expect(valueInForce(grid, month, asOf)).toMatchObject({ value: { spread: { value } }, early });
  });

  it("is none before the first was entered", () => {
    expect(valueInForce(grid, "2026-03", "2025-01-31")).toBeUndefined();
    expect(valueInForce(factor(), "2026-03", "2026-12-01")).toBeUndefined();
  });

  it("does not hold in a month it starts in the middle of", () => {
    const late = factor(
      vintage("2026-03-02", "2026-01-01", 2),
      vintage("2020-01-01", "2026-01-01", 1),
    );
    expect(valueInForce(late, "2026-03", "2026-12-01")).toMatchObject({
      value: { spread: { value: 1 } },
    });
    expect(valueInForce(late, "2026-04", "2026-12-01")).toMatchObject({
      value: { spread: { value: 2 } },
    });
  });

  it("takes the correction of the oldest for a month that is older still", () => {
    const corrected = factor(
      vintage("2022-01-01", "2026-05-10", 3),
      vintage("2022-01-01", "2025-02-01", 2),
    );
    expect(valueInForce(corrected, "2021-06", "2026-12-01")).toMatchObject({
      value: { spread: { value: 3 } },
      early: true,
    });
  });

  it("takes the oldest of those entered by then", () => {
    const backdated = factor(
      vintage("2024-01-01", "2025-01-01", 2),
      vintage("2020-01-01", "2026-01-01", 1),
    );
    expect(valueInForce(backdated, "2021-06", "2025-06-01")).toMatchObject({
      value: { spread: { value: 2 } },
      early: true,
    });
  });
});
