import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { quantileOf } from "../../src/numbers/distributions.js";
import { evaluate, type Leaf, type Quantity } from "../../src/numbers/quantity.js";
import type { Spread } from "../../src/numbers/spread.js";
import { humidityRatio } from "../../src/physics/moist-air.js";
import { exhaustRise } from "../../src/steps/humidity-rise.js";
import { hotFlue, stenterDry } from "../../src/steps/stenter.js";
import type { StepContext, StepKind } from "../../src/steps/step.js";
import { tumbler } from "../../src/steps/tumbler.js";
import { amountOf, clothAt, contextFor, LOT, type Told, valueOf } from "./context.js";

/** A step whose exhaust humidity is drawn. */
function drawnExhaust(spread: Spread, told: Told = {}, kind: StepKind = stenterDry): StepContext {
  const context = contextFor(kind, told);
  const exhaust: Leaf = {
    kind: "leaf",
    id: "exhaust @ machine",
    factor: "exhaust",
    unit: "kg/kg",
    words: "exhaust",
    spread,
    provenance: "plant",
    source: "probe",
  };
  return { ...context, set: (name) => (name === "exhaust-humidity" ? exhaust : context.set(name)) };
}

const at = (quantity: Quantity, u: number): number =>
  evaluate(quantity, ({ spread }) => quantileOf(spread)(u));
const WIDE = { shape: "triangular", low: 0.04, value: 0.08, high: 0.15 } as const;

describe("rise of humidity", () => {
  it("is the difference, where the hall is dry", () => {
    const context = contextFor(stenterDry, {
      settings: { "exhaust-humidity": 0.1 },
      hall: { humidity: 0.01 },
    });
    expect(valueOf(exhaustRise(context))).toBeCloseTo(0.09, 12);
    const rise = exhaustRise(drawnExhaust(WIDE, { hall: { humidity: 0.01 } }));
    for (const u of [0.001, 0.5, 0.999]) {
      expect(at(rise, u)).toBeCloseTo(quantileOf(WIDE)(u) - 0.01, 12);
    }
  });

  // By hand: below 0.05 lie 0.01²/(0.11 × 0.04) = 1/44 of the triangle from 0.04 over 0.08 to 0.15; what is
  // drawn is the rest, rank for rank.
  it("is cut where air could hardly carry water, and heaps nothing there", () => {
    const hall = { humidity: 0.035 };
    const rise = exhaustRise(drawnExhaust(WIDE, { hall, choices: { heat: "oil" } }));
    for (const u of [0, 0.01, 0.3, 0.7, 0.99]) {
      expect(at(rise, u)).toBeCloseTo(quantileOf(WIDE)(1 / 44 + (43 / 44) * u) - 0.035, 9);
    }
    const low = [0.001, 0.002, 0.003].map((u) => at(rise, u));
    expect(new Set(low).size).toBe(3);
  });

  it.each<Spread>([
    { shape: "normal", value: 0.06, sd: 0.01, limits: [0.03, 0.25] },
    { shape: "lognormal", value: 0.06, gsd: 1.3, limits: [0.03, 0.25] },
    { shape: "uniform", low: 0.04, value: 0.06, high: 0.1 },
    { shape: "pert", low: 0.035, value: 0.06, high: 0.12 },
  ])("cuts a $shape doubt the same way", (spread) => {
    const rise = exhaustRise(drawnExhaust(spread, { hall: { humidity: 0.03 } }));
    const quantile = quantileOf(spread);
    // Rank of the cut, 0.045, by halving.
    let [low, high] = [0, 1];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (quantile(middle) < 0.045) low = middle;
      else high = middle;
    }
    expect(low).toBeGreaterThan(0);
    for (const u of [0.01, 0.5, 0.99]) {
      expect(at(rise, u)).toBeCloseTo(quantile(low + (1 - low) * u) - 0.03, 7);
    }
  });

  it("refuses an exhaust that is no damper than the hall, and says what to correct", () => {
    const build = (exhaust: number) => () =>
      exhaustRise(
        contextFor(stenterDry, {
          settings: { "exhaust-humidity": exhaust },
          hall: { humidity: 0.034 },
        }),
      );
    expect(build(0.03)).toThrow("exhaust humidity of step step = 0.03: expected at least 0.049");
    expect(build(0.034)).toThrow("temperature and relative humidity of the hall");
    expect(build(0.045)).toThrow("expected at least 0.049");
    expect(build(0.05)).not.toThrow();
  });

  // A hall of 35 °C and 95 % holds 0.0345 kg/kg; all of a hall's and an exhaust's doubt is met at any rank.
  it("never throws in a draw, nor gives heat without end, in the dampest hall", () => {
    const damp = humidityRatio(35, 0.95, 1.01325);
    const ranks = fc.array(fc.double({ min: 1e-9, max: 1 - 1e-9, noNaN: true }), {
      minLength: 5,
      maxLength: 5,
    });
    const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
    fc.assert(
      fc.property(
        fc.constantFrom(stenterDry, hotFlue, tumbler),
        fc.constantFrom("burner", "oil", "steam-coil"),
        between(0.051, 0.2),
        between(0.02, 0.05),
        between(5, 45),
        between(0, 0.1),
        ranks,
        (kind, heat, value, below, tHall, vapour, u) => {
          const spread: Spread = {
            shape: "triangular",
            low: Math.max(0.03, value - below),
            value,
            high: 0.25,
          };
          const context = drawnExhaust(
            spread,
            {
              hall: { humidity: damp, temperature: tHall },
              choices: { heat },
              burnerVapour: vapour,
              settings: { "exhaust-temperature": 220 },
            },
            kind,
          );
          let result;
          try {
            result = kind.build(context, clothAt(context, 0.8, 20));
          } catch (error) {
            // Refused before anything is drawn, which only a burner of very wet flue gas can bring about here.
            expect((error as Error).message).toContain("exhaust humidity");
            expect(vapour).toBeGreaterThan(0.045);
            return;
          }
          for (const rank of u) {
            let kilojoules = 0;
            for (const { flow, amount, rate } of result.terms) {
              if (typeof flow === "string" && flow.startsWith("heat."))
                kilojoules += 1000 * amountOf(amount, [LOT]) * at(rate, rank);
            }
            const perWater = kilojoules / ((224 / 1.075) * 0.74);
            expect(perWater).toBeGreaterThan(2400);
            expect(perWater).toBeLessThan(100000);
          }
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });

  // A burner in the hottest exhaust keeps at least a quarter of its heat: its own vapour takes no more.
  it("leaves a burner heat to spare at the least rise", () => {
    const told: Told = { hall: { humidity: 0.059, temperature: 5 }, choices: { heat: "burner" } };
    for (const vapour of [0, 0.035, 0.045, 0.075, 0.1]) {
      const wide: Spread = { shape: "uniform", low: 0.03, value: 0.14, high: 0.25 };
      const context = drawnExhaust(wide, { ...told, burnerVapour: vapour });
      const rise = at(exhaustRise(context), 0);
      expect(rise).toBeGreaterThanOrEqual(0.015);
      const own = (vapour / 1000) * (((1.006 + 1.86 * 0.059) * 215) / rise + 1.86 * 215);
      expect(own).toBeLessThan(0.8);
    }
  });
});
