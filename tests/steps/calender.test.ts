import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { calender } from "../../src/steps/calender.js";
import {
  clothAt,
  type Columns,
  contextFor,
  COTTON,
  flowsOf,
  LOT,
  massOf,
  storedCloth,
} from "./context.js";
import { dryerHeat } from "./whole-lot.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = (min: number, max: number) => fc.option(between(min, max), { nil: undefined });

function byHand(lot: Columns, X1: number, setup: number): number {
  const t2 = lot.fixTemp ?? 160;
  let hours = (lot.length * (lot.dwell ?? 30)) / 2.5 / 3600;
  if (lot.dwell === undefined && lot.speed !== undefined) hours = lot.length / lot.speed / 60;
  return dryerHeat({
    mass: massOf(lot),
    fibres: COTTON,
    X1,
    X2: Math.min(X1, 0.01),
    t1: 26,
    t2,
    tHall: 26,
    tExhaust: t2,
    W1: 0.0115,
    air: undefined,
    recovery: 0,
    standing: 15 * 3.6 * (hours + setup) * 1.15,
  });
}

describe("calender", () => {
  it("draws what the balances of all lots add up to, whatever each logged", () => {
    const logged = fc.record({
      length: between(10, 3000),
      fixTemp: maybe(140, 210),
      dwell: maybe(10, 90),
      speed: maybe(1, 30),
    });
    fc.assert(
      fc.property(fc.array(logged, { minLength: 1, maxLength: 8 }), between(0, 0.1), (some, X1) => {
        const lots = some.map((lot): Columns => ({ ...LOT, ...lot }));
        const context = contextFor(calender, { takes: ["fixTemp", "dwell", "speed"] });
        const flow = flowsOf(calender.build(context, clothAt(context, X1, 26)).terms, lots);
        const expected = lots.reduce((sum, lot) => sum + byHand(lot, X1, 0.1), 0);
        expect(flow("heat.electric") / expected).toBeCloseTo(1, 9);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  // By hand: 1000 m at 30 s on 2.5 m take 3.333 h, with set-up 3.433 h. Cloth takes 279.6 kJ/K × 134 K =
  // 37.5 MJ, its water 13.54 kg × 2.690 MJ = 36.4 MJ, binding 208.4 kg × 34.4 kJ = 7.2 MJ, and the loss of
  // 15 kW over 3.948 h 213.2 MJ.
  it("spends more on standing than on cloth when it runs slowly", () => {
    const context = contextFor(calender);
    const flow = flowsOf(calender.build(context, storedCloth(context)).terms);
    const standing = 15 * 3.6 * (1 / 0.3 + 0.1) * 1.15;
    expect(flow("machine.hours")).toBeCloseTo((1 / 0.3 + 0.1) * 1.15, 12);
    expect(flow("electricity")).toBeCloseTo(4 * (1 / 0.3 + 0.1) * 1.15, 12);
    expect(standing).toBeGreaterThan(flow("heat.electric") - standing);
    expect(Math.abs(flow("heat.electric") - 294.3)).toBeLessThan(0.1);
  });

  // By hand: 1600 m² of cloth with 1.02 m² of paper each, every length used three times.
  it("uses up paper", () => {
    const context = contextFor(calender);
    const flow = flowsOf(calender.build(context, storedCloth(context)).terms);
    expect(flow("paper")).toBeCloseTo(544, 9);
  });

  it("has a burner leave fuel unburnt", () => {
    const heat = (choice: string): number => {
      const context = contextFor(calender, {
        choices: { heat: choice },
        burnerEfficiency: 0.98,
      });
      return flowsOf(calender.build(context, storedCloth(context)).terms)(`heat.${choice}`);
    };
    expect(heat("burner") * 0.98).toBeCloseTo(heat("oil"), 9);
  });

  it("drives off the regain", () => {
    const context = contextFor(calender);
    const flow = flowsOf(calender.build(context, storedCloth(context)).terms);
    expect(flow("water.evaporated")).toBeCloseTo((0.065 * 224) / 1.075, 9);
  });
});
