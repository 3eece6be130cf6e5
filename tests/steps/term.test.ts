import { describe, expect, it } from "vitest";
import { flowName } from "../../src/steps/term.js";

describe("name of a flow", () => {
  it("is the flow, or the substance with its place", () => {
    expect(flowName("water.process")).toBe("water.process");
    expect(flowName({ substance: "urea", placement: "bath" })).toBe("urea@bath");
  });
});
