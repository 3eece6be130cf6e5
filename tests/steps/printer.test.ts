import { describe, expect, it } from "vitest";
import { printer } from "../../src/steps/printer.js";
import { contextFor, flowsOf, LOT, storedCloth, type Told } from "./context.js";

function run(told: Told = {}, lots = [LOT]) {
  const context = contextFor(printer, told);
  return flowsOf(printer.build(context, storedCloth(context)).terms, lots);
}

const INKS = { recipe: { pigment: 40, humectant: 250 } } as const;

describe("printer", () => {
  // Coloration Technology, a study of pre-treatment in ink-jet pigment printing (abstract): an industrial
  // machine ran 55 m/h at 1.80 m, which is 99 m²/h.
  it("needs as long as its rate says", () => {
    const lot = { ...LOT, width: 1.8, printWidth: 1.8 };
    const flow = run({ settings: { rate: 99, setup: 0 } }, [lot]);
    expect(flow("machine.hours")).toBeCloseTo(1000 / 55, 9);
  });

  // By hand: 1600 m² at 200 m²/h take 8 h.
  it("draws power for printing, for its dryer and on standby", () => {
    const flow = run();
    expect(flow("electricity")).toBeCloseTo((9 + 26) * 8 + 2.5 * 0.25, 9);
    expect(flow("machine.hours")).toBeCloseTo(8.2, 12);
    expect(flow("labour.hours")).toBeCloseTo(4.1, 12);
  });

  it("waits on standby", () => {
    const context = contextFor(printer);
    const { terms } = printer.build(context, storedCloth(context));
    const idle = flowsOf(terms.filter(({ part }) => part === "waiting"));
    expect(idle("electricity")).toBeCloseTo(2.5 * 0.25, 12);
    expect(idle("machine.hours")).toBe(0);
  });

  // By hand: 120 L/h over 8 h, 5 L to flush, and of 0.15 L of ink purged 70 % to the drain; 0.7 L water per L.
  it("washes its belt and heads, and drains all of that water", () => {
    const flow = run();
    expect(flow("water.process")).toBeCloseTo(965, 9);
    expect(flow("water.drained")).toBeCloseTo(965 + 0.15 * 0.7 * 0.7, 9);
    expect(flow("water.wasted")).toBeCloseTo(0.15 * 0.3 * 0.7, 9);
  });

  // By hand: 20 g/m² of ink that is three quarters water brings 15 g/m² of it, which the dryer drives off.
  it("brings water in with ink and drives it off", () => {
    const flow = run({
      settings: { "ink-laydown": 0.02, coverage: 1, purge: 0 },
      inkWater: 0.75,
    });
    expect(flow("ink") / 1600).toBeCloseTo(0.02, 12);
    expect(flow("water.in-ink") / 1600).toBeCloseTo(0.015, 12);
    expect(flow("water.evaporated") / 1600).toBeCloseTo(0.015, 12);
  });

  it("takes the ink from the log, from coverage, or from the mean", () => {
    const lots = [
      { ...LOT, ink: 11 },
      { ...LOT, ink: 12, coverage: 0.9 },
      { ...LOT, coverage: 0.4 },
      LOT,
    ];
    const flow = run({ ...INKS, settings: { purge: 0 } }, lots);
    const ink = 11 + 12 + 1600 * 0.4 * 0.02 + 1600 * 0.55 * 0.02;
    expect(flow("ink")).toBeCloseTo(ink, 9);
    expect(flow("pigment@cloth")).toBeCloseTo(40 * ink, 6);
    expect(flow("humectant@cloth")).toBeCloseTo(250 * ink, 6);
  });

  it("lets logged ink, and nothing else, cross to the other arm by the ink ratio", () => {
    const lots = [{ ...LOT, ink: 11 }, LOT];
    const settings = { purge: 0, "ink-ratio": 1.3 };
    expect(run({ settings, own: true }, lots)("ink")).toBeCloseTo(11 + 17.6, 9);
    expect(run({ settings, own: false }, lots)("ink")).toBeCloseTo(14.3 + 17.6, 9);
  });

  it("parts purged ink between drain and waste", () => {
    const flow = run(INKS);
    expect(flow("ink")).toBeCloseTo(17.6 + 0.15, 9);
    expect(flow("pigment@drain")).toBeCloseTo(40 * 0.15 * 0.7, 9);
    expect(flow("pigment@waste")).toBeCloseTo(40 * 0.15 * 0.3, 9);
  });

  it("passes the cloth on as it came", () => {
    const context = contextFor(printer);
    const cloth = storedCloth(context);
    expect(printer.build(context, cloth).cloth).toBe(cloth);
  });
});
