import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { breakLines, extent } from "../../../src/report/pdf/lines.js";
import type { Line } from "../../../src/report/pdf/lines.js";
import { Paper } from "../../../src/report/pdf/paper.js";
import type { Span } from "../../../src/report/pdf/spans.js";
import { words } from "../../../src/report/pdf/words.js";
import { inter, report } from "./sample-text.js";

const { faces } = new Paper(report([]), inter).pen;

function span(text: string, rest: Partial<Span> = {}): Span {
  return {
    text,
    face: faces.regular,
    size: 10,
    colour: "#000000",
    rise: 0,
    digits: false,
    code: false,
    ...rest,
  };
}

/** Width of a text on one line, blanks at its ends left out. */
function wide(text: string): number {
  return faces.regular.set(text, false).width * 10;
}

function count(lines: readonly Line[]): number {
  return lines.length;
}

describe("words", () => {
  it("parts at blanks and after hyphens between letters", () => {
    const texts = words([span("a pick-up of 1-2 or -5 end-")]).map(({ bits }) =>
      bits.map(({ text }) => text).join(""),
    );
    expect(texts).toEqual(["a", "pick-", "up", "of", "1-2", "or", "-5", "end-"]);
  });

  it("keeps a word together that runs through several spans", () => {
    const bold = span("bold", { face: faces.semibold });
    expect(words([span("half"), bold, span(", next")]).map(({ bits }) => bits.length)).toEqual([
      3, 1,
    ]);
  });

  it("does not part at blanks that hold together", () => {
    expect(words([span("95\u00a0% 12\u202f345")])).toHaveLength(2);
  });
});

describe("breakLines", () => {
  it("fills a line to the last word that fits", () => {
    const width = wide("one two three");
    expect(count(breakLines([span("one two three")], width))).toBe(1);
    expect(count(breakLines([span("one two three")], width - 0.5))).toBe(2);
  });

  it("gives one empty line for an empty text", () => {
    expect(breakLines([], 100)).toEqual([{ pieces: [], width: 0 }]);
    expect(breakLines([span("   ")], 100)).toHaveLength(1);
  });

  it("parts a word that is longer than a line, at a pause if one is near", () => {
    const [first, second] = words([span("https://example.org/lots/june")]);
    expect(second).toBeUndefined();
    const lines = breakLines(
      [span("https://example.org/lots/june")],
      wide("https://example.org/lo"),
    );
    expect(lines).toHaveLength(2);
    expect(lines[0]?.width).toBeCloseTo(wide("https://example.org/"), 0);
    expect(first?.width).toBeGreaterThan(0);
  });

  it("never exceeds the width, and loses no letter", () => {
    fc.assert(
      fc.property(
        fc.array(fc.string({ unit: "grapheme-ascii", maxLength: 40 }), { maxLength: 12 }),
        fc.integer({ min: 20, max: 300 }),
        (texts, width) => {
          const spans = texts.map((text, index) =>
            span(text, { face: index % 2 === 0 ? faces.regular : faces.semibold }),
          );
          const lines = breakLines(spans, width);
          for (const line of lines) expect(line.width).toBeLessThanOrEqual(width + 0.1);
          const letters = texts.join("").replace(/ /g, "").length;
          const glyphs = lines
            .flatMap(({ pieces }) => pieces.filter(({ blank }) => blank !== true))
            .flatMap(({ setting }) => setting.parts.map(({ items }) => items))
            .join("")
            .match(/<[0-9a-f]+>/g);
          const set = (glyphs ?? []).reduce((sum, row) => sum + (row.length - 2) / 4, 0);
          expect(set).toBeGreaterThanOrEqual(letters);
        },
      ),
      { seed: 1, numRuns: 100 },
    );
  });
});

describe("extent", () => {
  it("measures the longest word and the whole text", () => {
    const { least, full } = extent([span("a longest word")]);
    expect(least).toBeCloseTo(wide("longest"), 6);
    expect(full).toBeCloseTo(wide("a longest word"), 6);
  });
});
