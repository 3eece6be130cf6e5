import { beforeAll, describe, expect, it } from "vitest";
import { svgText } from "../../src/charts/svg.js";
import type { ReportDocument } from "../../src/report/document.js";
import { writeHtml } from "../../src/report/html/write-html.js";
import { lintWording } from "../../src/report/wording.js";
import type { CalibrationTable, Coverage } from "./calibration.js";
import { markdownOf } from "./markdown.js";
import { pageOf } from "./page.js";
import { PUBLISHED } from "./published.js";
import { type Results, resultsOf } from "./results.js";
import { ALL_STEPS } from "./steps-asked.js";

const NINE_OF_TEN: Coverage = { covered: 90, of: 100, share: 0.9, error: 0.06 };

const WORLDS: readonly CalibrationTable[] = [
  {
    title: "Worlds of a test",
    words: "Made up.",
    worlds: 100,
    draws: 500,
    rows: [{ indicator: "water", unit: "L", dye: NINE_OF_TEN, error: 0.06 }],
    overall: { lowest: 0.9, mean: 0.9, highest: 0.9 },
  },
];

let results: Results = { compared: [], steps: [] };

beforeAll(() => {
  results = resultsOf({ asOf: "2026-11-25", draws: 30, seed: 1 });
}, 60_000);

const page = (worlds: readonly CalibrationTable[] = []): ReportDocument =>
  pageOf({
    results,
    worlds,
    date: "2026-11-25",
    draws: 30,
    seed: 1,
    version: "9.9.9",
    digest: "abcdef0123456789",
  });

describe("pageOf", () => {
  it("holds every range and every step once", () => {
    const ids = page().blocks.flatMap((block) => ("id" in block ? [block.id] : []));
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids).toEqual(expect.arrayContaining(PUBLISHED.map(({ id }) => id)));
    expect(ids).toEqual(expect.arrayContaining(ALL_STEPS.map(({ id }) => `step-${id}`)));
  });

  it("says where each range is from and how far it is vouched for", () => {
    const text = markdownOf(page());
    expect(text.match(/From memory: the figure is recalled/g)).toHaveLength(
      PUBLISHED.filter(({ mark }) => mark === "from memory").length,
    );
    expect(text).toContain("9.9.9");
    expect(text).toContain("abcdef0123456789");
  });

  it("shows known worlds where there are some", () => {
    expect(markdownOf(page(WORLDS))).toContain("90\u00a0% ± 6\u00a0%");
    expect(markdownOf(page())).not.toContain("known worlds");
  });

  it("writes as HTML, and with no word that a report may not use", () => {
    const html = writeHtml(page(WORLDS), {
      fonts: { regular: "", semibold: "", italic: "" },
      drawingSvg: svgText,
    });
    expect(html).toContain("Millrace beside published ranges");
    expect(lintWording(markdownOf(page(WORLDS)))).toEqual([]);
  });
});
