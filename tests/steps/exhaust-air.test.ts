import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import { exhaustAir } from "../../src/steps/exhaust-air.js";
import { stenterDry } from "../../src/steps/stenter.js";
import { amountNamed } from "../../src/steps/amounts.js";
import type { CheckPart } from "../../src/steps/step.js";
import { tumbler } from "../../src/steps/tumbler.js";
import { amountOf, clothAt, contextFor, flowsOf, LOT, type Told, valueOf } from "./context.js";

const sum = (parts: readonly CheckPart[]): number =>
  parts.reduce((all, { amount, rate }) => all + amountOf(amount, [LOT]) * valueOf(rate), 0);

function checkOf(told: Told) {
  const context = contextFor(stenterDry, told);
  const { checks, terms } = stenterDry.build(context, clothAt(context, 0.8, 20));
  const [check] = checks ?? [];
  if (check === undefined) throw new Error("no check");
  return { check, value: sum(check.above) / sum(check.below), flow: flowsOf(terms) };
}

describe("exhaust air of a dryer", () => {
  const told = {
    settings: { "exhaust-humidity": 0.1, "moisture-out": 0.05, setup: 0, fan: 10000 },
    hall: { humidity: 0.01 },
  };

  // By hand: 224 kg conditioned, 208.37 kg dry, lose 0.75 kg/kg: 156.28 kg in 40 min; each kg needs 1/0.09 kg
  // of dry air: 2604.7 kg an hour.
  it("is water over rise and hours", () => {
    const { check, value } = checkOf({ ...told, choices: { heat: "oil" } });
    expect(value).toBeCloseTo(((224 / 1.075) * 0.75) / 0.09 / (2 / 3), 6);
    expect(check.unit).toBe("kg/h");
    expect(valueOf(check.most)).toBe(10000);
  });

  // The vapour of a burner is 0.045 kg/MJ of its fuel, of which 0.5 % stays unburnt; waiting adds none.
  it("carries the vapour of a burner as well", () => {
    const burnt = checkOf({ ...told, choices: { heat: "burner" } });
    const idle = 35 * 3.6 * 0.15 * (2 / 3);
    const gain = 1 / (1 - 0.045e-3 * (((1.006 + 1.86 * 0.01) * 99) / 0.09 + 1.86 * 99));
    const fuel = burnt.flow("heat.burner") - (idle * gain) / 0.995;
    const air = ((224 / 1.075) * 0.75 + 0.045 * fuel * 0.995) / 0.09;
    expect(burnt.value).toBeCloseTo(air / (2 / 3), 6);
  });

  it("is asked of a tumbler, and of no machine whose air is a setting", () => {
    const context = contextFor(tumbler, { choices: { entry: "soaked" } });
    expect(tumbler.build(context, clothAt(context, 0.075, 26)).checks).toHaveLength(1);
    const air = {
      flow: constant("flow", 3000, "kg/h"),
      approach: constant("approach", 10, "°C"),
      recovery: constant("recovery", 0),
    };
    const water = [{ amount: amountNamed("mass"), rate: constant("water", 0.7, "kg/kg") }];
    expect(exhaustAir(context, air, water, [], [])).toEqual([]);
    expect(exhaustAir(context, "still", water, [], [])).toEqual([]);
  });
});
