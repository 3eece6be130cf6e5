import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Problem } from "../../src/problems/problem.js";
import { sentence } from "../../src/problems/sentence.js";

const short: Problem = {
  code: "log-length",
  severity: "set-aside",
  expected: "a length above 0 m",
  remedy: "Correct the length or leave the row out.",
};

describe("sentence", () => {
  it("says place, value, expectation and remedy in that order", () => {
    expect(sentence({ ...short, file: "log.csv", line: 7, column: "length_m", value: "-3" })).toBe(
      'log.csv, line 7, column length_m: "-3"; expected a length above 0 m. ' +
        "Correct the length or leave the row out.",
    );
  });

  it("calls a place in a YAML file a key", () => {
    const place = { file: "plant.yaml", line: 12, key: "sites.main.boiler.pressure", value: "-3" };
    expect(sentence({ ...short, ...place })).toBe(
      'plant.yaml, line 12, key sites.main.boiler.pressure: "-3"; expected a length above 0 m. ' +
        "Correct the length or leave the row out.",
    );
  });

  it.each<[Partial<Problem>, string]>([
    [{}, "expected a length"],
    [{ file: "log.csv" }, "log.csv: expected a length"],
    [{ line: 7 }, "line 7: expected a length"],
    [{ file: "plant.yaml", key: "sites.main" }, "plant.yaml, key sites.main: expected a length"],
    [{ value: "" }, '""; expected a length'],
    [{ file: "log.csv", value: "wide" }, 'log.csv: "wide"; expected a length'],
  ])("leaves out what is not known: %j", (known, start) => {
    expect(sentence({ ...short, ...known }).startsWith(start)).toBe(true);
  });

  it("shows 60 characters of a value, and an ellipsis for the rest", () => {
    expect(sentence({ ...short, value: "x".repeat(60) })).toContain(`"${"x".repeat(60)}"`);
    expect(sentence({ ...short, value: "x".repeat(61) })).toContain(`"${"x".repeat(60)}…"`);
  });

  // Line ends as Unicode 15.0, section 5.8, table 5-1 counts them: LF, VT, FF, CR, NEL, LS, PS.
  it.each(["\n", "\u000b", "\f", "\r", "\u0085", "\u2028", "\u2029"])(
    "lets no value start a line of its own with %j",
    (end) => {
      expect(sentence({ ...short, value: `3${end}log.csv` })).toContain('"3 log.csv"; expected');
    },
  );

  it("is one line free of control characters, whatever the value", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 200 }), (value) => {
        const said = sentence({ ...short, value });
        expect(said).not.toMatch(/\p{Cc}|\p{Zl}|\p{Zp}/u);
        expect(said.endsWith("; expected a length above 0 m. " + short.remedy)).toBe(true);
      }),
      { seed: 1, numRuns: 300 },
    );
  });

  // A terminal obeys what follows an escape character (ECMA-48, 5th edition, section 5.4).
  it("takes the escape character from a value that would colour the terminal", () => {
    expect(sentence({ ...short, value: "\u001b[31mred" })).toContain('" [31mred"');
  });
});
