import { describe, expect, it } from "vitest";
import { CAUTIONS, cautionsFor } from "../../src/report/cautions.js";
import { lintWording } from "../../src/report/wording.js";

describe("cautions", () => {
  it("always print the general one, last", () => {
    const [only, ...more] = cautionsFor([]);
    expect(more).toEqual([]);
    expect(only?.when).toBe("all");
    expect(only?.text).toContain("no legal, financial, engineering or safety advice");
    expect(cautionsFor(["urea", "calender"]).map(({ when }) => when)).toEqual([
      "calender",
      "urea",
      "all",
    ]);
  });

  it("keep to the words a report may use", () => {
    for (const { text } of CAUTIONS) expect(lintWording(text)).toEqual([]);
  });

  it("name where a fact was read, and nothing for what nobody published", () => {
    for (const { mark, source, text } of CAUTIONS) {
      expect([text, source !== undefined]).toEqual([
        text,
        mark === "read" || mark === "second-hand",
      ]);
    }
  });

  it("cite laws and limits only where they were read", () => {
    for (const { mark, text } of CAUTIONS.filter(({ source }) => source === undefined)) {
      expect([mark, text]).toEqual([mark, expect.not.stringMatching(/\d|CFR|REACH|BAT/)]);
    }
  });
});
