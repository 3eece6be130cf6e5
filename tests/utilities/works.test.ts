import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import type { Conversion } from "../../src/utilities/conversion.js";
import {
  drainConversions,
  electricHeatConversions,
  oilConversions,
  waterConversions,
} from "../../src/utilities/works.js";
import { valueOf } from "../steps/context.js";

function asNumbers(list: readonly Conversion[]): Record<string, number> {
  return Object.fromEntries(list.map(({ to, rate }) => [to, valueOf(rate)]));
}

describe("waterConversions", () => {
  const works = asNumbers(
    waterConversions({
      electricity: constant("electricity", 0.4, "kWh/m3"),
      reject: constant("reject", 0.2),
      salt: constant("salt", 0.5, "g/L"),
    }),
  );

  it("withdraws what is used and what is rejected, and drains the latter", () => {
    // Of 1.25 L withdrawn a fifth is rejected: 0.25 L.
    expect(works["water.withdrawn"]).toBeCloseTo(1.25, 12);
    expect(works["water.drained"]).toBeCloseTo(0.25, 12);
  });

  it("pumps what is withdrawn, and uses salt for what is softened", () => {
    expect(works["electricity"]).toBeCloseTo((1.25 * 0.4) / 1000, 15);
    expect(works["salt"]).toBe(0.5);
  });
});

describe("drainConversions", () => {
  it("discharges all, with electricity where the house treats it", () => {
    expect(asNumbers(drainConversions(constant("plant", 0.8, "kWh/m3")))).toEqual({
      "water.discharged": 1,
      electricity: 0.0008,
    });
    expect(asNumbers(drainConversions(undefined))).toEqual({ "water.discharged": 1 });
  });
});

describe("oilConversions", () => {
  it("burns for the heat, the heater's loss and the loop's", () => {
    const oil = asNumbers(
      oilConversions(
        "lpg",
        constant("eta", 0.8),
        constant("loss", 0.1),
        constant("pump", 0.004, "kWh/MJ"),
      ),
    );
    // 1 / (0.8 × 0.9).
    expect(oil["fuel.lpg"]).toBeCloseTo(1.388889, 6);
    expect(oil["electricity"]).toBe(0.004);
  });
});

describe("electricHeatConversions", () => {
  it("turns megajoules into kilowatt-hours, more of them at a lower efficiency", () => {
    expect(asNumbers(electricHeatConversions(constant("eta", 1)))["electricity"]).toBeCloseTo(
      0.2777778,
      6,
    );
    expect(asNumbers(electricHeatConversions(constant("eta", 0.5)))["electricity"]).toBeCloseTo(
      0.5555556,
      6,
    );
  });
});
