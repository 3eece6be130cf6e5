import type { Page } from "playwright-core";
import { beforeAll, describe, expect, it } from "vitest";
import { svgText } from "../../src/charts/svg.js";
import { wholeReport } from "../report/compose/whole-report.js";
import type { ReportInput } from "../../src/report/compose/input.js";
import { writeHtml } from "../../src/report/html/write-html.js";
import { inputOf, LOTS, smallMill } from "../report/compose/small-mill.js";
import { withProgram } from "../tools/outside.js";
import { textOf } from "../tools/tree.js";
import { contrastFaults, LEAST_CONTRAST, structureFaults } from "./accessibility.js";
import { browserAt, htmlFonts, pageFolder, PATIENCE } from "./browser.js";

const WIDTHS = [390, 800, 1280] as const;

const write = pageFolder();
const addresses = new Map<string, string>();

/** A mill with meters, and one whose names are long beyond reason. */
function inputs(): ReadonlyMap<string, ReportInput> {
  const plain = inputOf();
  const long = "Donaudampfschifffahrtselektrizitätenhauptbetriebswerk".repeat(4);
  return new Map([
    [
      "a small mill",
      {
        ...plain,
        meters: [
          {
            meter: "well",
            quantity: "water",
            unit: "m³",
            months: [
              { month: "2026-03", metered: 30, modelled: 21 },
              { month: "2026-04", metered: 9, modelled: 8 },
            ],
          },
        ],
      },
    ],
    [
      "a mill of long names",
      inputOf(
        smallMill({ house: long }),
        LOTS.map((lot) => ({ ...lot, client: lot.client + long, fabric: lot.fabric + long })),
      ),
    ],
  ]);
}

beforeAll(async () => {
  const fonts = await htmlFonts();
  for (const [name, input] of inputs()) {
    const document = wholeReport(input, textOf("templates/report.md"));
    addresses.set(name, write(name, writeHtml(document, { fonts, drawingSvg: svgText })));
  }
}, PATIENCE);

describe("the report of a mill", () => {
  withProgram("chromium", "the report fits every screen and asks nobody", (path) => {
    const browser = browserAt(path);

    /** Opens a report with everything unfolded. */
    const open = (
      name: string,
      width: number,
      look: (page: Page) => Promise<void>,
    ): Promise<void> =>
      browser.open(addresses.get(name) ?? "", width, async (page) => {
        await page.evaluate(async () => {
          for (const details of document.querySelectorAll("details")) details.open = true;
          await document.fonts.ready;
        });
        await look(page);
      });

    const mills = ["a small mill", "a mill of long names"];
    const cases = mills.flatMap((name) => WIDTHS.map((width) => [name, width] as const));

    it.each(cases)("of %s never overflows a screen of %d px", async (name, width) => {
      await open(name, width, async (page) => {
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBe(width);
      });
    });

    it.each(cases)(
      "of %s keeps all letters of its pictures inside, at %d px",
      async (name, width) => {
        await open(name, width, async (page) => {
          const { pictures, outside } = await page.evaluate(() => {
            const found: string[] = [];
            const all = [...document.querySelectorAll("svg")];
            for (const svg of all) {
              const frame = svg.getBoundingClientRect();
              for (const text of svg.querySelectorAll("text")) {
                const box = text.getBoundingClientRect();
                // Half a pixel is lost where letters are smoothed.
                const over = Math.max(
                  frame.left - box.left,
                  box.right - frame.right,
                  frame.top - box.top,
                  box.bottom - frame.bottom,
                );
                if (over > 0.5)
                  found.push(`${svg.closest("figure")?.id ?? ""}: ${text.textContent} by ${over}`);
              }
            }
            return { pictures: all.length, outside: found };
          });
          expect(pictures).toBeGreaterThan(8);
          expect(outside).toEqual([]);
        });
      },
    );

    it.each(mills)(
      "of %s can be read out: one tree of headings, names, heads, links",
      async (name) => {
        await open(name, 1280, async (page) => {
          expect(await page.evaluate(structureFaults)).toEqual([]);
        });
      },
    );

    it.each(mills)("of %s sets all text off from its ground", async (name) => {
      await open(name, 1280, async (page) => {
        const { texts, faults } = await page.evaluate(contrastFaults, LEAST_CONTRAST);
        expect(texts).toBeGreaterThan(500);
        expect(faults).toEqual([]);
      });
    });

    it("would be found out with faults in it", async () => {
      await open("a small mill", 1280, async (page) => {
        await page.evaluate(() => {
          document.documentElement.removeAttribute("lang");
          document.querySelector("main")?.insertAdjacentHTML(
            "beforeend",
            `<h1>Again</h1><h3>Deep</h3><svg></svg><svg role="img"></svg><a href="#none"></a>
             <table><tr><th>Bare</th></tr></table>`,
          );
          const first = document.querySelector("main p");
          first?.setAttribute("class", "pale");
          const sheet = new CSSStyleSheet();
          // 4.54 against white for #767676, 4.48 for #777777: WCAG glossary, worked out by hand.
          sheet.replaceSync(".pale{color:#777777}");
          document.adoptedStyleSheets = [sheet];
        });
        const faults = (await page.evaluate(structureFaults)).join("\n");
        for (const fault of [
          "no language",
          "2 headings of level 1",
          "level 1 is followed by <h3>Deep",
          "no role: <svg></svg>",
          'no name: <svg role="img">',
          "no scope: <th>Bare",
          "no text: <a",
          "leads nowhere: <a",
        ])
          expect(faults).toContain(fault);
        const { faults: pale } = await page.evaluate(contrastFaults, LEAST_CONTRAST);
        expect(pale).toHaveLength(1);
        expect(pale[0]).toContain("rgb(119, 119, 119) on rgb(255, 255, 255): 4.48");
      });
    });
  });
});
