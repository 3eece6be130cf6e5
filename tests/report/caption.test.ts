import { describe, expect, it } from "vitest";
import { captionParts } from "../../src/report/caption.js";

describe("captionParts", () => {
  it.each([
    ["Water by step, L/m².", ["Water by step, L/m².", ""]],
    ["Water by step, L/m². Means, which add up.", ["Water by step, L/m².", "Means, which add up."]],
    [
      "Break-even values: where 0.5 is met. All else.",
      ["Break-even values:", "where 0.5 is met. All else."],
    ],
    ["Over 2.5 m", ["Over 2.5 m", ""]],
    ["", ["", ""]],
  ])("parts %j after its name", (caption, parts) => {
    expect(captionParts(caption)).toEqual(parts);
  });
});
