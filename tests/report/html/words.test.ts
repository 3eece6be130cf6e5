import { describe, expect, it } from "vitest";
import { ENGLISH } from "../../../src/report/html/words.js";
import { lintWording } from "../../../src/report/wording.js";

describe("ENGLISH", () => {
  it("counts one and many", () => {
    expect(ENGLISH.rest(1)).toBe("One further term");
    expect(ENGLISH.rest(4)).toBe("4 further terms together");
    expect([ENGLISH.many(1), ENGLISH.many(2)]).toEqual(["1 number", "2 numbers"]);
    expect([ENGLISH.note(3), ENGLISH.back(3)]).toEqual(["Note 3", "Back to the text of note 3"]);
  });

  it("keeps to the words a report may use", () => {
    expect(lintWording(JSON.stringify(ENGLISH))).toEqual([]);
  });
});
