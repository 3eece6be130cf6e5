import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import { moistureOf, noWetter, released, waterAt, waterTerms } from "../../src/steps/water.js";
import { pad } from "../../src/steps/pad.js";
import {
  amountOf,
  clothAt,
  contextFor,
  flowsOf,
  LOT,
  part,
  storedCloth,
  valueOf,
} from "./context.js";

const context = contextFor(pad);
const padded = {
  ...storedCloth(context),
  water: [part("mass", 0.07), part("mass·pickup", 0.94), part("mass[no pickup]", 0.7)],
  moisture: undefined,
};

describe("water on cloth", () => {
  // By hand: conditioned cotton of 7.5 % regain holds 0.075/1.075 kg of water per kg.
  it("is moisture times the bone-dry share", () => {
    const water = waterAt(context, constant("moisture", 0.075, "kg/kg"));
    expect(valueOf(water)).toBeCloseTo(0.0697674, 6);
  });

  it("has one moisture when no lot has its own", () => {
    expect(valueOf(moistureOf(context, storedCloth(context))!)).toBe(0.075);
    expect(valueOf(moistureOf(context, clothAt(context, 0.6, 20, false))!)).toBeCloseTo(0.6, 12);
    const { moisture: _, ...open } = padded;
    expect(moistureOf(context, open)).toBeUndefined();
  });

  it("gets no more in a machine that takes water off", () => {
    const setting = constant("moisture-out", 0.75, "kg/kg");
    expect(valueOf(noWetter(context, clothAt(context, 1.5, 20), setting))).toBe(0.75);
    expect(valueOf(noWetter(context, clothAt(context, 0.36, 20), setting))).toBe(0.36);
    const { moisture: _, ...open } = padded;
    expect(noWetter(context, open, setting)).toBe(setting);
  });

  it("leaves part by part, what stays being taken off the common part", () => {
    const { moisture: _, ...open } = padded;
    const parts = released(open, constant("left", 0.05, "kg/kg"));
    const lots = [LOT, { ...LOT, pickup: 0.6 }];
    const left = parts.reduce(
      (sum, { amount, rate }) => sum + amountOf(amount, lots) * valueOf(rate),
      0,
    );
    expect(left).toBeCloseTo(448 * (0.07 - 0.05) + 224 * 0.7 + 224 * 0.6 * 0.94, 9);
  });

  it("counts a litre for a kilogram", () => {
    const terms = waterTerms("water.evaporated", [part("mass", 0.5)]);
    expect(flowsOf(terms)("water.evaporated")).toBeCloseTo(112, 12);
    expect(terms[0]!.rate.unit).toBe("L/kg");
  });
});
