import { describe, expect, it } from "vitest";
import { STEP_KINDS } from "../src/steps/kinds.js";
import { sameUnit } from "../src/units/dimension.js";
import { SHIPPED, shippedFactor } from "./tools/shipped-factors.js";

const settings = Object.values(STEP_KINDS).flatMap(({ kind, settings }) =>
  Object.entries(settings).map(([name, spec]) => ({ id: `${kind}.${name}`, spec })),
);

describe("every setting of every kind of step", () => {
  it("is among those looked at", () => {
    expect(settings.length).toBeGreaterThan(100);
  });

  it.each(settings)("$id has a factor for its default", ({ id, spec }) => {
    const factor = shippedFactor(id);
    expect(sameUnit(factor.unit, spec.unit), `${factor.unit} is not ${spec.unit}`).toBe(true);
    // Wider, and a default could be drawn that the step refuses; narrower, and a plant file could not say
    // what the step allows.
    expect(factor.plausible).toEqual(spec.limits);
  });

  it("leaves no factor of a kind unused", () => {
    const ids = new Set(settings.map(({ id }) => id));
    const kinds = new Set(Object.keys(STEP_KINDS));
    const unused = [...SHIPPED.factors.keys()].filter(
      (id) => kinds.has(id.split(".", 1)[0] ?? "") && !ids.has(id),
    );
    expect(unused).toEqual([]);
  });
});
