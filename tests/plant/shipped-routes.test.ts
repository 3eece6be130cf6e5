import { describe, expect, it } from "vitest";
import {
  DYE_OF_FIBRE,
  FINISH,
  SHIPPED_ROUTES,
  type UsualRange,
} from "../../src/plant/shipped-routes.js";
import { STEP_KINDS } from "../../src/steps/kinds.js";
import { SHIPPED, shippedFactor } from "../tools/shipped-factors.js";

const ids = [...SHIPPED.factors.keys()];

describe.each(Object.entries(SHIPPED_ROUTES))("%s", (_, { workflow, dye, steps }) => {
  const all = [...steps, ...FINISH];

  it("has roles of its own, kinds that exist, and recipes and inks with factors", () => {
    expect(new Set(all.map(({ role }) => role)).size).toBe(all.length);
    for (const { kind, recipe, ink } of all) {
      expect(Object.keys(STEP_KINDS)).toContain(kind);
      if (recipe !== undefined) {
        expect(ids.some((id) => id.startsWith(`recipe.${recipe}.`))).toBe(true);
      }
      if (ink !== undefined) expect(ids).toContain(`ink.${ink}.water`);
    }
  });

  it("is usual only in settings that its kinds have, inside their limits", () => {
    for (const { kind, usual } of all) {
      for (const [name, value] of Object.entries(usual ?? {})) {
        const [low, high] = STEP_KINDS[kind]?.settings[name]?.limits ?? [NaN, NaN];
        const numbers = typeof value === "number" ? [value] : [value.low, value.value, value.high];
        expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
        for (const number of numbers) {
          expect(number).toBeGreaterThanOrEqual(low);
          expect(number).toBeLessThanOrEqual(high);
        }
      }
    }
  });

  it("washes dye and only dye, and ends in the store", () => {
    expect(steps.some(({ kind }) => kind === "wash-range")).toBe(workflow === "dye");
    expect(dye !== undefined).toBe(workflow === "dye");
    expect(steps.at(-1)?.kind).toBe("stored");
  });
});

describe("water of the wash", () => {
  const usual = (name: string): unknown =>
    SHIPPED_ROUTES[name]?.steps.find(({ role }) => role === "wash")?.usual?.["fresh-water"];

  // Implementing Decision (EU) 2022/2508, table 1.1, washing of synthetic material: 5 to 20 m³/t, from memory.
  it("holds the published range for synthetic cloth on the disperse route", () => {
    const { value, low, high } = usual("disperse") as UsualRange;
    expect(low).toBeLessThanOrEqual(5);
    expect(high).toBeGreaterThanOrEqual(20);
    expect(value).toBeGreaterThan(5);
    expect(value).toBeLessThan(20);
  });

  it("is less for acid dye than for reactive, and still less for disperse", () => {
    const { value } = usual("disperse") as UsualRange;
    const acid = (usual("acid") as UsualRange).value;
    const spread = shippedFactor("wash-range.fresh-water").values[0]?.spread;
    if (spread === undefined) throw new Error("no value");
    expect(value).toBeLessThan(acid);
    expect(acid).toBeLessThan(spread.shape === "uniform" ? NaN : spread.value);
    expect(usual("reactive")).toBeUndefined();
  });
});

describe("DYE_OF_FIBRE", () => {
  it("names fibres with factors, and dyes with a route", () => {
    for (const [fibre, dye] of Object.entries(DYE_OF_FIBRE)) {
      expect(ids).toContain(`fibre.${fibre}.regain`);
      expect(SHIPPED_ROUTES[dye]?.dye).toBe(dye);
    }
  });
});
