import { describe, expect, it } from "vitest";
import { amountPerUnit, normalVolume } from "../../src/meters/reading-amount.js";
import type { MeterText } from "../../src/plant/meter-part.js";
import { CONDITIONS } from "./made.js";

const meter = (rest: Partial<MeterText>): MeterText => ({
  quantity: "gas",
  unit: "m3",
  covers: "site",
  ...rest,
});

describe("cubic metres of gas", () => {
  // By hand: 288.15 K / 273.15 K.
  it("[P20] at 15 and at 0 °C", () => {
    expect(1 / normalVolume("standard")).toBeCloseTo(1.0549149, 7);
    expect(normalVolume("normal")).toBe(1);
    expect(normalVolume({ temperature: 15, pressure: 1.01325 })).toBeCloseTo(
      normalVolume("standard"),
      12,
    );
  });

  it("are heat by their heating value, net where that is gross", () => {
    const given = { heating_value: 11.3, volume: "normal", basis: "gross" } as const;
    expect(amountPerUnit(meter(given), "m3", CONDITIONS)).toBeCloseTo(11.3 * 0.9, 12);
    const net = { ...given, basis: "net" } as const;
    expect(amountPerUnit(meter(net), "Sm3", CONDITIONS)).toBeCloseTo(11.3 / 1.0549149, 5);
    expect(amountPerUnit(meter({ ...net, multiplier: 10 }), "Nm3", CONDITIONS)).toBe(113);
  });

  it("are nothing without one", () => {
    expect(amountPerUnit(meter({ basis: "net" }), "m3", CONDITIONS)).toHaveProperty("reason");
  });
});

describe("steam", () => {
  it("counted as heat is kilograms by its enthalpy", () => {
    const steam = meter({ quantity: "steam", unit: "GJ" });
    expect(amountPerUnit(steam, "GJ", CONDITIONS)).toBeCloseTo(1e6 / 2768, 9);
    expect(amountPerUnit({ ...steam, enthalpy: 2500 }, "GJ", CONDITIONS)).toBeCloseTo(400, 9);
    expect(amountPerUnit(steam, "t", CONDITIONS)).toBe(1000);
    expect(amountPerUnit(meter({ quantity: "condensate" }), "GJ", CONDITIONS)).toHaveProperty(
      "reason",
    );
  });
});
