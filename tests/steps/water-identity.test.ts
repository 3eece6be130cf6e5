import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import { STEP_FLOWS } from "../../src/steps/flows.js";
import { STEP_KINDS } from "../../src/steps/kinds.js";
import type { StepKind } from "../../src/steps/step.js";
import { WATER_IN, WATER_OUT, waterGap } from "../../src/steps/water-identity.js";
import { type Columns, contextFor, flowsOf, LOT, part, waterOn } from "./context.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const maybe = (min: number, max: number) => fc.option(between(min, max), { nil: undefined });

const lots = fc.array(
  fc.record({
    length: between(1, 5000),
    width: between(0.5, 3.2),
    printWidth: between(0.5, 3.2),
    gsm: between(20, 600),
    ink: maybe(0, 100),
    coverage: maybe(0, 1),
    pickup: maybe(0.3, 1.5),
    fixTemp: maybe(100, 220),
    dwell: maybe(5, 1200),
    liquorRatio: maybe(1, 100),
    baths: maybe(1, 9),
    speed: maybe(1, 80),
  }),
  { minLength: 1, maxLength: 6 },
);

/** Cloth that comes in: some water common to all lots, and some by their pick-up. */
const water = fc.record({
  common: between(0, 1.2),
  padded: fc.boolean(),
  liquor: between(0, 1),
  temperature: between(5, 120),
});

function settingsOf(kind: StepKind) {
  return fc.record(
    Object.fromEntries(
      Object.entries(kind.settings).map(([name, { limits }]) => [name, between(...limits)]),
    ),
  );
}

function choicesOf(kind: StepKind) {
  return fc.record(
    Object.fromEntries(
      Object.entries(kind.choices).map(([name, { options }]) => [
        name,
        fc.constantFrom(...options),
      ]),
    ),
  );
}

describe("water identity", () => {
  it.each(Object.values(STEP_KINDS))("closes for $kind", (kind) => {
    fc.assert(
      fc.property(
        settingsOf(kind),
        choicesOf(kind),
        lots,
        water,
        fc.boolean(),
        fc.boolean(),
        (settings, choices, some, wet, takes, own) => {
          const context = contextFor(kind, {
            settings,
            choices,
            own,
            takes: takes ? kind.columns : [],
            hall: { humidity: 0.01 },
          });
          const cloth = {
            water: [
              part("mass", wet.common),
              ...(wet.padded ? [part("mass·pickup", wet.liquor)] : []),
            ],
            temperature: constant("cloth", wet.temperature, "°C"),
          };
          const all = some.map((lot): Columns => ({ ...LOT, ...lot }));
          const result = kind.build(context, cloth);
          const flow = flowsOf(result.terms, all);
          const before = waterOn(cloth, all);
          const after = waterOn(result.cloth, all);
          const moved = [...WATER_IN, ...WATER_OUT].reduce(
            (sum, name) => sum + Math.abs(flow(name)),
            before + after,
          );
          expect(Math.abs(waterGap(flow, before, after))).toBeLessThanOrEqual(
            1e-9 * Math.max(moved, Number.EPSILON),
          );
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });

  it("counts every flow of water, on one side", () => {
    const counted = [...WATER_IN, ...WATER_OUT];
    expect(new Set(counted).size).toBe(counted.length);
    const water = Object.keys(STEP_FLOWS).filter((name) => name.startsWith("water."));
    expect(counted.filter((name) => name !== "steam.open").sort()).toEqual(water.sort());
  });

  // By hand: 10 L drawn and 2 kg with the cloth, of which 9 L are drained and 2 kg go on: 1 kg is missing.
  it("says what is missing", () => {
    const flows: Readonly<Record<string, number>> = { "water.process": 10, "water.drained": 9 };
    expect(waterGap((name) => flows[name] ?? 0, 2, 2)).toBe(1);
    expect(waterGap((name) => flows[name] ?? 0, 2, 3)).toBe(0);
  });
});
