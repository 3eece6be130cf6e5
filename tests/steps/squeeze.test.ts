import { describe, expect, it } from "vitest";
import { squeeze, vacuumSlot } from "../../src/steps/squeeze.js";
import { flowName } from "../../src/steps/term.js";
import { clothAt, contextFor, flowsOf, LOT, part, valueOf, waterOn } from "./context.js";

// A review of pollution prevention in textiles, page "Mechanical removal of water": fabric of 0.2 kg/m² at
// 150 % holds 0.300 kg/m² of water, a squeeze leaves 0.150 (75 %), a vacuum slot 0.072 (36 %). Moisture is
// on dry fabric, so the lot is bone dry: 1 m² of 200 g/m².
const DRY = { dryShare: 1, regain: 0 };
const SQUARE = { ...LOT, length: 1, width: 1, gsm: 200 };

describe("squeeze and vacuum slot", () => {
  it("[W5] leave what the published example has", () => {
    const wet = clothAt(contextFor(squeeze, { cloth: DRY }), 1.5, 30);
    expect(waterOn(wet, [SQUARE])).toBeCloseTo(0.3, 12);
    const nip = squeeze.build(contextFor(squeeze, { cloth: DRY }), wet);
    expect(waterOn(nip.cloth, [SQUARE])).toBeCloseTo(0.15, 12);
    expect(flowsOf(nip.terms, [SQUARE])("water.drained")).toBeCloseTo(0.15, 12);
    const slot = vacuumSlot.build(contextFor(vacuumSlot, { cloth: DRY }), nip.cloth);
    expect(waterOn(slot.cloth, [SQUARE])).toBeCloseTo(0.072, 12);
    expect(flowsOf(slot.terms, [SQUARE])("water.drained")).toBeCloseTo(0.078, 12);
  });

  it("never wet cloth", () => {
    const context = contextFor(squeeze);
    for (const asNumber of [true, false]) {
      const { terms, cloth } = squeeze.build(context, clothAt(context, 0.4, 30, asNumber));
      expect(valueOf(cloth.moisture!)).toBeCloseTo(0.4, 12);
      expect(flowsOf(terms)("water.drained")).toBeCloseTo(0, 9);
    }
  });

  it("drain what each lot brings above the setting", () => {
    const context = contextFor(squeeze);
    const { terms } = squeeze.build(context, {
      water: [part("mass", 0.07), part("mass·pickup", 0.94), part("mass[no pickup]", 0.9)],
      temperature: context.hall.temperature,
    });
    const lots = [LOT, { ...LOT, pickup: 1 }];
    expect(flowsOf(terms, lots)("water.drained")).toBeCloseTo(
      224 * (2 * (0.07 - 0.75 / 1.075) + 0.9 + 0.94),
      9,
    );
  });

  // By hand: 1000 m at 25 m/min take 40 min; 2 kW.
  it("take a little power and no heat, and leave the temperature", () => {
    const context = contextFor(squeeze);
    const { terms, cloth } = squeeze.build(context, clothAt(context, 1.5, 60));
    const flow = flowsOf(terms);
    expect(flow("electricity")).toBeCloseTo(4 / 3, 12);
    expect(flow("machine.hours")).toBeCloseTo(2 / 3, 12);
    expect(valueOf(cloth.temperature)).toBe(60);
    expect(terms.filter((term) => flowName(term.flow).startsWith("heat"))).toEqual([]);
  });
});
