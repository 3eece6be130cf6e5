import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import { calender } from "../../src/steps/calender.js";
import {
  chosenSource,
  drawnFrom,
  HEAT_SOURCES,
  heatChoice,
  heatFlow,
} from "../../src/steps/heat-source.js";
import { STEP_FLOWS } from "../../src/steps/flows.js";
import { contextFor, valueOf } from "./context.js";

describe("heat source", () => {
  it.each(HEAT_SOURCES)("%s feeds a flow of heat", (source) => {
    expect(STEP_FLOWS[heatFlow(source)].unit).toBe("MJ");
  });

  it("leaves fuel unburnt in a burner and nowhere else", () => {
    const context = contextFor(calender, { burnerEfficiency: 0.98 });
    const needed = constant("heat", 49, "MJ/kg");
    expect(valueOf(drawnFrom(context, "burner", needed))).toBeCloseTo(50, 12);
    expect(drawnFrom(context, "burner", needed).unit).toBe("MJ/kg");
    expect(valueOf(drawnFrom(context, "oil", needed))).toBe(49);
    expect(valueOf(drawnFrom(context, "electric", needed))).toBe(49);
  });

  it("takes the first option for the usual one", () => {
    expect(heatChoice("what heats", ["oil", "burner"]).usual).toBe("oil");
  });

  it("refuses an answer that is no source", () => {
    const context = contextFor(calender, { choices: { heat: "sun" } });
    expect(() => chosenSource(context, "heat")).toThrow("heat = sun is no heat source");
    expect(chosenSource(contextFor(calender), "heat")).toBe("electric");
  });
});
