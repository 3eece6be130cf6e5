import { describe, expect, it } from "vitest";
import { DYE_OF_FIBRE, FINISH, SHIPPED_ROUTES } from "../../src/plant/shipped-routes.js";
import { STEP_KINDS } from "../../src/steps/kinds.js";
import { SHIPPED } from "../tools/shipped-factors.js";

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
        expect(value).toBeGreaterThanOrEqual(low);
        expect(value).toBeLessThanOrEqual(high);
      }
    }
  });

  it("washes dye and only dye, and ends in the store", () => {
    expect(steps.some(({ kind }) => kind === "wash-range")).toBe(workflow === "dye");
    expect(dye !== undefined).toBe(workflow === "dye");
    expect(steps.at(-1)?.kind).toBe("stored");
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
