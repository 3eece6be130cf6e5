import { describe, expect, it } from "vitest";
import type { Figure } from "../../../src/report/document.js";
import { figureWords, intervalWords, valueWords } from "../../../src/report/html/figure-words.js";
import { ENGLISH } from "../../../src/report/html/words.js";

const SAVING: Figure = {
  value: -41.32,
  low: -48,
  high: -35.1,
  unit: "L/m²",
  digits: 1,
  of: "median",
};
const LOTS: Figure = { value: 1284, unit: "", digits: 0, of: "count" };

describe("figure words", () => {
  it("give value, unit and interval with the figure's digits", () => {
    expect(valueWords(SAVING)).toBe("\u221241.3\u00a0L/m²");
    expect(intervalWords(SAVING)).toBe("\u221248.0 to \u221235.1");
    expect(figureWords(SAVING, ENGLISH)).toBe(
      "\u221241.3\u00a0L/m²; 95 % interval \u221248.0 to \u221235.1; median of the draws",
    );
  });

  it("say nothing of an interval that a count does not have", () => {
    expect(valueWords(LOTS)).toBe("1\u202f284");
    expect(intervalWords(LOTS)).toBeUndefined();
    expect(figureWords(LOTS, ENGLISH)).toBe("1\u202f284; count");
  });
});
