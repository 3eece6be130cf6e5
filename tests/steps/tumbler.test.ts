import { describe, expect, it } from "vitest";
import { tumbler } from "../../src/steps/tumbler.js";
import { clothAt, contextFor, COTTON, flowsOf, storedCloth, valueOf, waterOn } from "./context.js";
import { dryerHeat } from "./whole-lot.js";

const DRY_MASS = 224 / 1.075;
const HOURS = (224 / 80) * 0.75;

describe("tumbler", () => {
  // By hand: 224 kg in batches of 80 kg, three quarters of an hour each, take 2.1 h.
  it("runs by the batch", () => {
    const context = contextFor(tumbler);
    const flow = flowsOf(tumbler.build(context, storedCloth(context)).terms);
    expect(flow("machine.hours")).toBeCloseTo(2.1 * 1.15, 12);
    expect(flow("electricity")).toBeCloseTo(9 * 2.1 * (1 + 0.15 * 0.4), 12);
  });

  it("draws what the balance of the whole lot says", () => {
    const context = contextFor(tumbler);
    const flow = flowsOf(tumbler.build(context, clothAt(context, 0.6, 20)).terms);
    const expected = dryerHeat({
      mass: 224,
      fibres: COTTON,
      X1: 0.6,
      X2: 0.06,
      t1: 20,
      t2: 65,
      tHall: 26,
      tExhaust: 70,
      W1: 0.0115,
      air: { W2: 0.04 },
      recovery: 0,
      standing: 6 * 3.6 * HOURS * 1.15,
      burner: { vapour: 0.045, efficiency: 0.995 },
    });
    expect(flow("heat.burner") / expected).toBeCloseTo(1, 9);
    expect(flow("water.process")).toBe(0);
  });

  // By hand: 10 L/kg are 2240 L; the cloth takes 0.525 kg per kg bone dry of it along.
  it("soaks cloth before, and dries off what it took up", () => {
    const context = contextFor(tumbler, { settings: { soak: 10 }, choices: { entry: "soaked" } });
    const { terms, cloth } = tumbler.build(context, storedCloth(context));
    const flow = flowsOf(terms);
    expect(flow("water.process")).toBeCloseTo(2240, 9);
    expect(flow("water.drained")).toBeCloseTo(2240 - 0.525 * DRY_MASS, 9);
    expect(flow("water.evaporated")).toBeCloseTo(0.54 * DRY_MASS, 9);
    expect(waterOn(cloth)).toBeCloseTo(0.06 * DRY_MASS, 9);
  });

  it("draws at least what the cloth takes up in the soak", () => {
    const context = contextFor(tumbler, { choices: { entry: "soaked" } });
    const flow = flowsOf(tumbler.build(context, storedCloth(context)).terms);
    expect(flow("water.process")).toBeCloseTo(0.525 * DRY_MASS, 9);
    expect(flow("water.drained")).toBeCloseTo(0, 9);
  });

  it("warms soaked cloth from the temperature of the supply", () => {
    const heat = (supply: number): number => {
      const context = contextFor(tumbler, {
        supply,
        choices: { entry: "soaked", heat: "oil" },
      });
      const { terms, cloth } = tumbler.build(context, storedCloth(context));
      expect(valueOf(cloth.temperature)).toBe(65);
      return flowsOf(terms)("heat.oil");
    };
    const perDegree = 224 * COTTON.heatCapacity + DRY_MASS * 4.186 * 0.6;
    expect(heat(10) - heat(20)).toBeCloseTo((10 * perDegree) / 1000, 9);
  });
});
