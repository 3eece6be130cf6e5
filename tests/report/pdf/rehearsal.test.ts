import { describe, expect, it } from "vitest";
import { rehearsal, textsOf } from "../../../src/report/pdf/rehearsal.js";
import type { Block } from "../../../src/report/document.js";
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

describe("textsOf", () => {
  it("finds every text of a report but the data of charts", () => {
    const data = { title: "hidden" };
    const texts = textsOf([
      { kind: "box", title: "Box", tone: "plain", blocks: [text("inside")] },
      { kind: "list", ordered: false, items: [[{ kind: "text", text: "item" }]] },
      { kind: "figure", id: "f", title: "Shown", description: "Told", chart: data } as never,
    ]);
    for (const word of ["Box", "inside", "item", "Shown", "Told"]) expect(texts).toContain(word);
    expect(texts).not.toContain("hidden");
  });
});

function text(words: string): Block {
  return { kind: "paragraph", runs: [{ kind: "text", text: words }] };
}

// A font file of its own is parsed anew.
function copied(): typeof inter {
  return {
    regular: inter.regular.slice(),
    semibold: inter.semibold.slice(),
    italic: inter.italic.slice(),
  };
}
