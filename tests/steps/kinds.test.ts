import { describe, expect, it } from "vitest";
import { STEP_FLOWS } from "../../src/steps/flows.js";
import { STEP_KINDS } from "../../src/steps/kinds.js";
import type { StepKind } from "../../src/steps/step.js";
import { flowName, type Term } from "../../src/steps/term.js";
import { sameUnit, unitProduct } from "../../src/units/dimension.js";
import { type Columns, contextFor, flowsOf, LOT, part, storedCloth, waterOn } from "./context.js";
import { USUAL } from "./usual.js";

const KINDS = Object.values(STEP_KINDS);

/** Every way the choices of a kind can be made. */
function answers(kind: StepKind): Readonly<Record<string, string>>[] {
  let all: Readonly<Record<string, string>>[] = [{}];
  for (const [name, { options }] of Object.entries(kind.choices)) {
    all = all.flatMap((made) => options.map((option) => ({ ...made, [name]: option })));
  }
  return all;
}

function unitOf(flow: Term["flow"]): string {
  return typeof flow === "string" ? STEP_FLOWS[flow].unit : "g";
}

describe("kinds of step", () => {
  it("are known by the words of plant files", () => {
    expect(Object.keys(STEP_KINDS).sort()).toEqual([
      "calender",
      "hot-flue",
      "outsourced",
      "oven",
      "pad",
      "preparation",
      "printer",
      "squeeze",
      "steamer",
      "stenter-cure",
      "stenter-dry",
      "stored",
      "tumbler",
      "vacuum-slot",
      "wash-range",
    ]);
    expect(Object.isFrozen(STEP_KINDS)).toBe(true);
    for (const [word, { kind }] of Object.entries(STEP_KINDS)) expect(kind).toBe(word);
  });

  it.each(KINDS)("$kind has settings with limits in order and readable units", (kind) => {
    for (const [name, { limits, unit, words }] of Object.entries(kind.settings)) {
      expect(limits[0], name).toBeLessThan(limits[1]);
      expect(sameUnit(unit, unit)).toBe(true);
      expect(words).not.toBe("");
      const usual = USUAL[kind.kind]?.[name];
      expect(usual, name).toBeGreaterThanOrEqual(limits[0]);
      expect(usual, name).toBeLessThanOrEqual(limits[1]);
    }
    for (const { options, usual } of Object.values(kind.choices)) expect(options).toContain(usual);
  });

  it.each(KINDS)("$kind has settings and choices of different names", (kind) => {
    const names = [...Object.keys(kind.settings), ...Object.keys(kind.choices)];
    expect(new Set(names).size).toBe(names.length);
  });

  it.each(KINDS)("$kind reads every setting it asks for", (kind) => {
    const read = new Set<string>();
    for (const choices of answers(kind)) {
      for (const takes of [[], kind.columns]) {
        const context = contextFor(kind, { choices, takes });
        for (const own of [true, false]) {
          const spied = {
            ...context,
            own,
            set: (name: string) => {
              read.add(name);
              return context.set(name);
            },
          };
          kind.build(spied, storedCloth(context));
        }
      }
    }
    expect([...read].sort()).toEqual(Object.keys(kind.settings).sort());
  });

  it.each(KINDS)("$kind has terms whose amount times rate has the unit of the flow", (kind) => {
    for (const choices of answers(kind)) {
      for (const takes of [[], kind.columns]) {
        const context = contextFor(kind, { choices, takes, recipe: { urea: 10, soda: 1 } });
        const cloth = {
          water: [part("mass", 0.07), part("mass·pickup", 0.9), part("mass[no pickup]", 0.7)],
          temperature: context.hall.temperature,
        };
        for (const incoming of [cloth, storedCloth(context)]) {
          const result = kind.build(context, incoming);
          for (const { flow, amount, rate } of result.terms) {
            const unit = unitProduct(amount.unit, rate.unit);
            const said = `${flowName(flow)}: ${amount.unit} × ${rate.unit} (${rate.id})`;
            expect(sameUnit(unit, unitOf(flow)), said).toBe(true);
          }
          for (const { amount, rate } of result.cloth.water) {
            expect(sameUnit(unitProduct(amount.unit, rate.unit), "kg"), rate.id).toBe(true);
          }
          expect(sameUnit(result.cloth.temperature.unit, "°C")).toBe(true);
        }
      }
    }
  });
});

/** For each kind and column, lots that log just what the settings say. */
const SAID: readonly (readonly [kind: string, what: string, logged: Partial<Columns>])[] = [
  ["pad", "pick-up", { pickup: 0.75 }],
  ["stenter-cure", "temperature", { fixTemp: 160 }],
  ["stenter-cure", "dwell", { dwell: 150 }],
  ["stenter-cure", "speed", { speed: 8 }],
  ["stenter-cure", "dwell and temperature", { dwell: 150, fixTemp: 160 }],
  ["stenter-cure", "speed and temperature", { speed: 8, fixTemp: 160 }],
  ["oven", "temperature", { fixTemp: 160 }],
  ["calender", "temperature", { fixTemp: 160 }],
  ["calender", "dwell", { dwell: 30 }],
  ["calender", "speed", { speed: 5 }],
  ["calender", "all three", { fixTemp: 160, dwell: 30, speed: 5 }],
  ["steamer", "dwell", { dwell: 600 }],
  ["steamer", "speed", { speed: 6 }],
  ["wash-range", "liquor ratio", { liquorRatio: 25 }],
  ["wash-range", "liquor ratio and baths", { liquorRatio: 5, baths: 5 }],
  ["wash-range", "baths alone", { baths: 6.25 }],
  ["printer", "ink", { ink: 0.55 * 0.02 * 1600 }],
  ["printer", "coverage", { coverage: 0.55 }],
];

describe("a logged column that says what the setting says", () => {
  it.each(SAID)("changes nothing: %s, %s", (word, _, logged) => {
    const kind = STEP_KINDS[word]!;
    for (const choices of answers(kind)) {
      const context = contextFor(kind, { choices, takes: kind.columns, recipe: { urea: 10 } });
      const padded = {
        water: [part("mass", 0.07), part("mass·pickup", 0.94), part("mass[no pickup]", 0.7)],
        temperature: context.hall.temperature,
      };
      // Liquor of an earlier pad is told by the pick-up, which the pad under test must be free to log.
      const comeIn = word === "pad" ? [storedCloth(context)] : [storedCloth(context), padded];
      const open: Columns = word === "pad" ? LOT : { ...LOT, pickup: 0.7 };
      for (const incoming of comeIn) {
        const { terms, cloth } = kind.build(context, incoming);
        const one = flowsOf(terms, [open]);
        const other = flowsOf(terms, [{ ...open, ...logged }]);
        for (const { flow } of terms) {
          const name = flowName(flow);
          expect(Math.abs(other(name) - one(name)), name).toBeLessThanOrEqual(
            1e-12 * Math.abs(one(name)),
          );
        }
        const water = waterOn(cloth, [open]);
        const same = waterOn(cloth, [{ ...open, ...logged }]);
        expect(Math.abs(same - water)).toBeLessThanOrEqual(1e-12 * water);
      }
    }
  });
});
