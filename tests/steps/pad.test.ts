import { describe, expect, it } from "vitest";
import { pad } from "../../src/steps/pad.js";
import { contextFor, flowsOf, LOT, storedCloth, type Told, valueOf, waterOn } from "./context.js";

function run(told: Told = {}, lots = [LOT]) {
  const context = contextFor(pad, told);
  const { terms, cloth } = pad.build(context, storedCloth(context));
  return { flow: flowsOf(terms, lots), water: waterOn(cloth, lots), cloth };
}

describe("pad", () => {
  // By hand: 224 kg take 168 kg of liquor, 6 % of it dry. 25 L are left over, 80 % go down the drain,
  // and a quarter of a 60 L rinse falls on each lot.
  it("takes liquor for the cloth and for what is left over", () => {
    const { flow } = run();
    expect(flow("water.process")).toBeCloseTo(0.94 * (168 + 25) + 15, 9);
    expect(flow("water.drained")).toBeCloseTo(0.94 * 25 * 0.8 + 15, 9);
    expect(flow("water.wasted")).toBeCloseTo(0.94 * 25 * 0.2, 9);
  });

  // X = X_in + (1 − s) p (1 + R), per kg of bone-dry cloth.
  it("leaves the cloth as wet as pick-up and solids say", () => {
    const { water, cloth } = run();
    expect((water * 1.075) / 224).toBeCloseTo(0.075 + 0.94 * 0.75 * 1.075, 12);
    expect(valueOf(cloth.temperature)).toBe(15);
    expect(cloth.moisture).toBeUndefined();
  });

  // By stoichiometry, as facts on urea in reactive print have it: a liquor with 100 g urea per kg at 70 %
  // pick-up lays 70 g on a kg of fabric.
  it("lays chemicals on by pick-up and lets the rest go with the liquor", () => {
    const { flow } = run({ settings: { pickup: 0.7 }, recipe: { urea: 100 } });
    expect(flow("urea@cloth") / 224).toBeCloseTo(70, 9);
    expect(flow("urea@drain")).toBeCloseTo(2000, 9);
    expect(flow("urea@waste")).toBeCloseTo(500, 9);
  });

  it("takes a logged pick-up for the lots that have one", () => {
    const lots = [LOT, { ...LOT, pickup: 0.6 }];
    const { flow, water } = run({ takes: ["pickup"], recipe: { urea: 100 } }, lots);
    expect(flow("urea@cloth")).toBeCloseTo(100 * 224 * (0.75 + 0.6), 9);
    expect(water).toBeCloseTo(448 * (0.075 / 1.075) + 0.94 * 224 * 1.35, 9);
    expect(flow("water.process")).toBeCloseTo(0.94 * (224 * 1.35 + 50) + 30, 9);
  });

  it("takes the setting when the logged pick-up belongs to another pad", () => {
    const { flow } = run({ recipe: { urea: 100 } }, [{ ...LOT, pickup: 0.6 }]);
    expect(flow("urea@cloth")).toBeCloseTo(100 * 224 * 0.75, 9);
  });

  it("draws power while it runs", () => {
    const { flow } = run();
    expect(flow("machine.hours")).toBeCloseTo(0.1 + 2 / 3, 12);
    expect(flow("electricity")).toBeCloseTo(6 * (0.1 + 2 / 3), 12);
  });
});
