import { describe, expect, it } from "vitest";
import type { Block, Figure, FigureTerm } from "../../../src/report/document.js";
import { tracesHtml } from "../../../src/report/html/traces.js";
import { pageOf, read } from "./made.js";
import { number, text } from "./sample-page.js";

const TERM: FigureTerm = {
  step: "wash-range",
  route: "reactive",
  flow: "water.process",
  amount: "conditioned mass",
  sum: 40_312.4,
  unit: "kg",
  rate: "fresh feed",
  median: 0.38,
  low: 0.32,
  high: 0.45,
  share: 0.624,
  reads: ["wash-range.feed @ machine range-1", "cotton.regain"],
};

const BLOCKS: readonly Block[] = [
  { kind: "heading", level: 2, text: "Water", id: "water" },
  { kind: "paragraph", runs: [text("It took "), number("w", "62 L")] },
];

function traces(figure: Partial<Figure>, blocks = BLOCKS): HTMLElement {
  const whole: Figure = {
    value: 61.5,
    low: 55.2,
    high: 68.9,
    unit: "L/m²",
    digits: 0,
    of: "median",
    ...figure,
  };
  const page = pageOf(blocks, { figures: { w: whole } });
  return read(tracesHtml(page) ?? { html: "" });
}

const cells = (html: HTMLElement, row: number): readonly (string | null)[] =>
  [...(html.querySelectorAll("tbody tr")[row]?.children ?? [])].map((cell) => cell.textContent);

describe("tracesHtml", () => {
  it("gives each number its value, interval, place and provenance", () => {
    const html = traces({
      provenance: { measured: 0.25, allocated: 0.25, modelled: 0.25, default: 0.25 },
    });
    expect(html.querySelector(".group > summary")?.textContent).toBe("Water 1 number");
    expect(html.querySelector("#fig-w > summary")?.textContent).toBe("62\u00a0L/m² It took 62 L");
    const said = [...html.querySelectorAll("dt")].map((term) => [
      term.textContent,
      term.nextElementSibling?.textContent,
    ]);
    expect(said.slice(0, 3)).toEqual([
      ["Median of the draws", "62\u00a0L/m²"],
      ["95 % interval", "55 to 69\u00a0L/m²"],
      ["Stands in", "Water"],
    ]);
    expect(said[3]?.[1]).toContain("measured 25\u00a0%");
    expect(html.querySelector("dd a")?.getAttribute("href")).toBe("#water");
    expect(html.querySelector("table")).toBeNull();
  });

  it("writes a term as amount times rate, with what it reads", () => {
    const html = traces({ terms: [TERM] });
    expect(cells(html, 0)).toEqual([
      "wash-rangereactive",
      "water.process",
      "40\u202f300\u00a0kg × 0.380 L/m² per kgconditioned mass × fresh feed (0.320 to 0.450)",
      "62.4\u00a0%",
      "wash-range.feed @ machine range-1, cotton.regain",
    ]);
  });

  it("keeps rates undivided, and says what their sum is divided by", () => {
    const over = { units: 894_213, words: "accepted m²", unit: "L" };
    const html = traces({ terms: [{ ...TERM, median: 0.5347, low: 0.2, high: 0.9 }], over });
    expect(cells(html, 0)[2]).toContain("× 0.535 L per kg");
    expect(html.querySelector("caption")?.textContent).toContain("÷ 894\u202f213 accepted m²");
  });

  it("sums what comes after the twelfth term", () => {
    const terms = Array.from({ length: 15 }, () => ({ ...TERM, share: 0.0501 }));
    const html = traces({ terms: [...terms, { ...TERM, share: 0.0001 }] });
    expect(html.querySelectorAll("tbody tr")).toHaveLength(13);
    expect(cells(html, 12)).toEqual(["4 further terms together", "15.0\u00a0%", ""]);
    expect(cells(traces({ terms: [{ ...TERM, share: 0.0001 }] }), 0)[3]).toBe("<\u00a00.1\u00a0%");
  });

  it("is left out where no number is shown", () => {
    expect(traces({}, [{ kind: "paragraph", runs: [text("none")] }]).innerHTML).toBe("");
  });
});
