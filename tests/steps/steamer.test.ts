import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { steamer } from "../../src/steps/steamer.js";
import { saturationPressure, vapourEnthalpy } from "../../src/physics/steam.js";
import {
  clothAt,
  contextFor,
  COTTON,
  flowsOf,
  LOT,
  part,
  storedCloth,
  type Told,
  valueOf,
  waterOn,
} from "./context.js";

/** Air in which water boils at 100.00 °C: 1.0142 bar, a fine day at sea level. */
const FINE_DAY = { pressure: saturationPressure(100) };
const FLOOR: Told = {
  settings: { temperature: 100, flush: 0, "idle-steam": 0 },
  hall: FINE_DAY,
};

describe("steamer", () => {
  // Worked by hand for cotton of 8 % moisture from 20 to 102 °C: 1.3 × 82 + 0.08 × 4.19 × 82 = 134.1 kJ/kg,
  // 0.0596 kg of condensing steam per kg at 2251 kJ/kg. Ours condenses up to 100 °C, at 2257 kJ/kg.
  it("[W8] needs the least that the laws of nature ask for", () => {
    const context = contextFor(steamer, {
      ...FLOOR,
      cloth: { dryShare: 1, heatCapacity: 1.3 },
      steam: vapourEnthalpy(1.01325),
    });
    const flow = flowsOf(steamer.build(context, clothAt(context, 0.08, 20)).terms);
    const perMass = flow("steam.open") / 224;
    expect(perMass / ((0.0596 * 80) / 82)).toBeCloseTo(1, 2);
    expect((perMass * (vapourEnthalpy(1.01325) - 4.186 * 100)) / 80).toBeCloseTo(134.1 / 82, 3);
  });

  it("condenses that on the cloth, which gets as much wetter", () => {
    const context = contextFor(steamer, FLOOR);
    const cloth = storedCloth(context);
    const result = steamer.build(context, cloth);
    const flow = flowsOf(result.terms);
    expect(waterOn(result.cloth)).toBeCloseTo(waterOn(cloth) + flow("steam.open"), 12);
    expect(flow("water.evaporated")).toBe(0);
  });

  // The floor as a balance of energy: steam brings h_g, cloth and all water leave at 100 °C.
  it("closes its balance of energy, whatever moisture the lots bring", () => {
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        between(0, 1),
        between(0, 1),
        between(5, 99),
        between(2600, 2800),
        (common, liquor, t1, enthalpy) => {
          const context = contextFor(steamer, { ...FLOOR, steam: enthalpy });
          const cloth = {
            water: [part("mass", common), part("mass·pickup", liquor)],
            temperature: clothAt(context, 0, t1).temperature,
          };
          const lots = [LOT, { ...LOT, pickup: 0.7 }];
          const result = steamer.build(context, cloth);
          const steam = flowsOf(result.terms, lots)("steam.open");
          const fibres = 448 * COTTON.heatCapacity;
          const before = (fibres + 4.186 * waterOn(cloth, lots)) * t1 + steam * enthalpy;
          const after = (fibres + 4.186 * waterOn(result.cloth, lots)) * 100;
          expect(Math.abs(before / after - 1)).toBeLessThan(1e-9);
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });

  // By hand: 0.8 kg/kg for 224 kg; 1000 m × 600 s on 60 m take 2.7778 h, with set-up 2.8778 h, and 15 % of
  // that is spent waiting at 60 kg/h.
  it("flushes and waits with steam that is vented", () => {
    const context = contextFor(steamer);
    const flow = flowsOf(steamer.build(context, clothAt(context, 0.075, 100)).terms);
    const hours = 1000 / 360 + 0.1;
    expect(flow("steam.open")).toBeCloseTo(179.2 + 60 * 0.15 * hours, 9);
    expect(flow("water.evaporated")).toBeCloseTo(179.2 + 60 * 0.15 * hours, 9);
    expect(flow("electricity")).toBeCloseTo(7 * hours, 12);
    expect(flow("machine.hours")).toBeCloseTo(1.15 * hours, 12);
  });

  it("condenses nothing on cloth that comes in hotter", () => {
    const context = contextFor(steamer, FLOOR);
    const flow = flowsOf(steamer.build(context, clothAt(context, 0.05, 115)).terms);
    expect(flow("steam.open")).toBe(0);
  });

  // By hand: above 100 °C, 224 kg × 1.2093 kJ/(kg K) × 75 K = 20.3 MJ, and every kg of steam 2.0 × 75 kJ.
  it("heats cloth and steam on above 100 °C", () => {
    const at = (temperature: number) => {
      const context = contextFor(steamer, {
        settings: { temperature, "idle-steam": 0 },
        choices: { superheat: "oil" },
        hall: FINE_DAY,
      });
      const result = steamer.build(context, storedCloth(context));
      expect(valueOf(result.cloth.temperature)).toBe(temperature);
      return flowsOf(result.terms);
    };
    const hot = at(175);
    expect(hot("heat.oil")).toBeCloseTo(
      (224 * COTTON.heatCapacity * 75 + hot("steam.open") * 2.0 * 75) / 1000,
      9,
    );
    expect(hot("steam.open")).toBeCloseTo(at(100)("steam.open"), 12);
    expect(at(100)("heat.oil")).toBe(0);
    expect(at(98)("heat.oil")).toBe(0);
    expect(at(98)("steam.open")).toBeLessThan(at(100)("steam.open"));
  });

  // Steam tables: water boils at 99.97 °C under 1.01325 bar and at 96.69 °C under 0.9 bar, about 1000 m up.
  it.each([
    [1.01325, 99.974],
    [0.9, 96.69],
  ])("boils under %d bar at %d °C, and heats cloth on from there", (pressure, boiling) => {
    const told = { settings: { ...FLOOR.settings, temperature: 102 }, hall: { pressure } };
    const context = contextFor(steamer, { ...told, choices: { superheat: "oil" } });
    const cloth = clothAt(context, 0.08, 20);
    const flow = flowsOf(steamer.build(context, cloth).terms);
    const capacity = 224 * COTTON.heatCapacity + 4.186 * waterOn(cloth);
    const perKelvin = 2768.3 - 4.186 * boiling;
    const condensed = (capacity * (boiling - 20)) / perKelvin;
    expect(flow("steam.open") / condensed).toBeCloseTo(1, 4);
    const rise = 102 - boiling;
    const heat = (224 * COTTON.heatCapacity * rise + condensed * 2 * rise) / 1000;
    expect(flow("heat.oil")).toBeCloseTo(heat, 2);
  });

  // By hand: 1000 m in charges of 250 m are 4; 4 × 0.7 h and 0.1 h to set up, 2.9 h; 4 × 10 kg to fill, 0.8
  // kg/kg to flush, and 60 kg/h over 15 % of 2.9 h. Two lots share charges by their length.
  it("takes cloth in charges, as chests and star steamers do", () => {
    const context = contextFor(steamer, {
      settings: { "batch-length": 250, cycle: 0.7, "charge-steam": 10, crew: 2 },
      choices: { loading: "batch" },
      takes: steamer.columns,
    });
    const { terms } = steamer.build(context, clothAt(context, 0.075, 100));
    const flow = flowsOf(terms, [{ ...LOT, dwell: 1200, speed: 3 }]);
    expect(flow("electricity")).toBeCloseTo(7 * 2.9, 12);
    expect(flow("machine.hours")).toBeCloseTo(1.15 * 2.9, 12);
    expect(flow("labour.hours")).toBeCloseTo(2 * 1.15 * 2.9, 12);
    expect(flow("steam.open")).toBeCloseTo(179.2 + 40 + 60 * 0.15 * 2.9, 9);
    expect(flow("water.evaporated")).toBeCloseTo(flow("steam.open"), 12);
    expect(flowsOf(terms, [LOT, { ...LOT, length: 125 }])("electricity")).toBeCloseTo(
      7 * (4.5 * 0.7 + 0.2),
      9,
    );
  });

  it("condenses as much in charges as in one run", () => {
    const floor = (loading: string): number => {
      const settings = { ...FLOOR.settings, "charge-steam": 0 };
      const context = contextFor(steamer, { settings, choices: { loading } });
      return flowsOf(steamer.build(context, storedCloth(context)).terms)("steam.open");
    };
    expect(floor("batch")).toBe(floor("continuous"));
  });

  it("tells the steam of waiting apart", () => {
    const context = contextFor(steamer);
    const { terms } = steamer.build(context, clothAt(context, 0.075, 100));
    const idle = flowsOf(terms.filter(({ part }) => part === "waiting"));
    expect(idle("steam.open")).toBeCloseTo(60 * 0.15 * (1000 / 360 + 0.1), 9);
    expect(idle("machine.hours")).toBeCloseTo(0.15 * (1000 / 360 + 0.1), 12);
    expect(idle("electricity")).toBe(0);
  });

  it("takes a logged dwell, and keeps a logged temperature from later steps without using it", () => {
    expect(steamer.columns).toEqual(["fixTemp", "dwell", "speed"]);
    const context = contextFor(steamer, { takes: steamer.columns });
    const { terms } = steamer.build(context, storedCloth(context));
    expect(flowsOf(terms, [{ ...LOT, dwell: 1200 }])("electricity")).toBeCloseTo(
      7 * (2000 / 360 + 0.1),
      9,
    );
    expect(flowsOf(terms, [{ ...LOT, fixTemp: 99 }])("steam.open")).toBe(
      flowsOf(terms)("steam.open"),
    );
  });
});
