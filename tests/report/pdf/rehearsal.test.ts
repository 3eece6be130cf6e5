import { describe, expect, it } from "vitest";
import { rehearsal } from "../../../src/report/pdf/rehearsal.js";
import { setPdf } from "../../../src/report/pdf/write-pdf.js";
import { sample } from "./sample-report.js";
import { inter } from "./sample-text.js";

describe("rehearsal", () => {
  it("loses nothing, and changes nothing of what is set after it", async () => {
    const before = await setPdf(sample, copied());
    const fonts = copied();
    const { replaced, dead } = await setPdf(rehearsal(["wash-range.fresh-water 2x3 -> fi"]), fonts);
    expect([...replaced]).toEqual([]);
    expect(dead).toEqual([]);
    const after = await setPdf(sample, fonts);
    expect(Buffer.from(after.bytes).equals(before.bytes)).toBe(true);
  });
});

// A font file of its own is parsed anew.
function copied(): typeof inter {
  return {
    regular: inter.regular.slice(),
    semibold: inter.semibold.slice(),
    italic: inter.italic.slice(),
  };
}
