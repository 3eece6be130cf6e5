import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { InputError, within } from "../../src/problems/input-error.js";

describe("input error", () => {
  it("keeps the reading beside the message", () => {
    const fault = new InputError("stenter.exhaust-humidity", 3, "wetter than steam");
    expect(fault).toBeInstanceOf(Error);
    expect(fault.where).toBe("stenter.exhaust-humidity");
    expect(fault.value).toBe(3);
    expect(String(fault)).toBe("InputError: stenter.exhaust-humidity = 3: wetter than steam");
  });
});

describe("within", () => {
  it.each([1, 1.5, 2])("lets %d through unchanged between 1 and 2", (value) => {
    expect(within("steam.pressure", value, 1, 2, "bar")).toBe(value);
  });

  it.each([
    [0.999999, "steam.pressure = 0.999999: expected 1 to 2 bar"],
    [2.000001, "steam.pressure = 2.000001: expected 1 to 2 bar"],
    [Number.NaN, "steam.pressure = NaN: expected 1 to 2 bar"],
    [Infinity, "steam.pressure = Infinity: expected 1 to 2 bar"],
    [-Infinity, "steam.pressure = -Infinity: expected 1 to 2 bar"],
  ])("names a reading of %d and what was expected", (value, message) => {
    const reading = (): number => within("steam.pressure", value, 1, 2, "bar");
    expect(reading).toThrow(InputError);
    expect(reading).toThrow(message);
  });

  it("refuses every reading when a limit is not a number", () => {
    expect(() => within("steam.pressure", 1, Number.NaN, 2, "bar")).toThrow(InputError);
    expect(() => within("steam.pressure", 1, 0, Number.NaN, "bar")).toThrow(InputError);
  });

  it("throws exactly when the reading lies outside", () => {
    fc.assert(
      fc.property(fc.double(), fc.double(), fc.double(), (value, low, high) => {
        const inside = !Number.isNaN(value) && Math.min(Math.max(value, low), high) === value;
        let passed = true;
        try {
          within("x", value, low, high, "1");
        } catch {
          passed = false;
        }
        expect(passed).toBe(inside && low <= high);
      }),
      { seed: 1, numRuns: 300 },
    );
  });
});
