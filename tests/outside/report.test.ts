import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { chromium } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { makeFonts } from "../../src/build/fonts.js";
import { svgText } from "../../src/charts/svg.js";
import { composeReport } from "../../src/report/compose/compose.js";
import type { ReportInput } from "../../src/report/compose/input.js";
import { writeHtml } from "../../src/report/html/write-html.js";
import { inputOf, LOTS, smallMill } from "../report/compose/small-mill.js";
import { withProgram } from "../tools/outside.js";
import { textOf } from "../tools/tree.js";

const PACKAGE = new URL("../../node_modules/@expo-google-fonts/inter/", import.meta.url);
const WIDTHS = [390, 800, 1280] as const;

let folder = "";
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
  const faces = new Map<string, string>();
  await makeFonts(
    (path) => readFileSync(new URL(path, PACKAGE)),
    (name, content) => faces.set(name, Buffer.from(content).toString("base64")),
  );
  const face = (name: string): string => faces.get(`inter-${name}.woff2`) ?? "";
  folder = mkdtempSync(join(tmpdir(), "millrace-report-"));
  for (const [name, input] of inputs()) {
    const html = writeHtml(composeReport(input, textOf("templates/report.md")), {
      fonts: { regular: face("regular"), semibold: face("semibold"), italic: face("italic") },
      drawingSvg: svgText,
    });
    const file = join(folder, `${name.replaceAll(" ", "-")}.html`);
    writeFileSync(file, html);
    addresses.set(name, pathToFileURL(file).href);
  }
}, 60_000);

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe("the report of a mill", () => {
  withProgram("chromium", "the report fits every screen and asks nobody", (path) => {
    let browser: Browser;

    beforeAll(async () => {
      browser = await chromium.launch({
        executablePath: path,
        args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking"],
      });
    });

    afterAll(async () => {
      await browser.close();
    });

    /** Opens a report with everything unfolded; nothing may be said or asked for. */
    async function open(
      name: string,
      width: number,
      look: (page: Page) => Promise<void>,
    ): Promise<void> {
      const page = await browser.newPage({ viewport: { width, height: 900 } });
      const said: string[] = [];
      page.on("console", (message) => said.push(message.text()));
      page.on("pageerror", (fault) => said.push(String(fault)));
      page.on("request", (request) => {
        if (!/^(file|data):/.test(request.url())) said.push(`asks for ${request.url()}`);
      });
      await page.goto(addresses.get(name) ?? "");
      await page.evaluate(async () => {
        for (const details of document.querySelectorAll("details")) details.open = true;
        await document.fonts.ready;
      });
      await look(page);
      await page.close();
      expect(said).toEqual([]);
    }

    const cases = ["a small mill", "a mill of long names"].flatMap((name) =>
      WIDTHS.map((width) => [name, width] as const),
    );

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
  });
});
