import { beforeAll, describe, expect, it } from "vitest";
import type { Page } from "playwright-core";
import { svgText } from "../../src/charts/svg.js";
import { writeHtml } from "../../src/report/html/write-html.js";
import type { ReportDocument } from "../../src/report/document.js";
import { sample } from "../report/html/sample-page.js";
import { readTexts } from "../report/pdf/read-pdf.js";
import { withProgram } from "../tools/outside.js";
import { browserAt, htmlFonts, pageFolder, PATIENCE } from "./browser.js";

const write = pageFolder();
let address = "";

beforeAll(async () => {
  const fonts = await htmlFonts();
  address = write("report", writeHtml(sample, { fonts, drawingSvg: svgText }));
}, PATIENCE);

describe("a report as HTML", () => {
  withProgram("chromium", "the page works, keeps to its width and asks nobody", (path) => {
    const browser = browserAt(path);
    const open = (width: number, look: (page: Page) => Promise<void>): Promise<void> =>
      browser.open(address, width, look);

    it.each([390, 800, 1280])("never overflows a screen of %d px", async (width) => {
      await open(width, async (page) => {
        await page.evaluate(() => {
          for (const details of document.querySelectorAll("details")) details.open = true;
        });
        const wide = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(wide).toBe(width);
      });
    });

    it("sets the text in its own typeface", async () => {
      await open(1280, async (page) => {
        const faces = await page.evaluate(async () => {
          await document.fonts.ready;
          return [...document.fonts].map(({ status, style, weight }) => [status, style, weight]);
        });
        expect(faces).toEqual([
          ["loaded", "normal", "400"],
          ["loaded", "normal", "600"],
          ["loaded", "italic", "400"],
        ]);
      });
    });

    it("keeps a picture readable on a phone, in a box that scrolls", async () => {
      await open(390, async (page) => {
        const box = page.locator("figure.drawn .scroll");
        const [seen, whole] = await box.evaluate((div) => [div.clientWidth, div.scrollWidth]);
        expect(seen).toBeLessThan(390);
        expect(whole).toBeGreaterThanOrEqual(600);
        await box.focus();
        expect(await box.evaluate((div) => div === document.activeElement)).toBe(true);
      });
    });

    it("shows the whole of a narrow picture and of a wide table on a phone", async () => {
      const drawing = { width: 640, height: 90, children: [] };
      const head = ["Step", "A", "B", "C", "Status"].map((text) => ({
        runs: [{ kind: "text", text } as const],
      }));
      const blocks: ReportDocument["blocks"] = [
        {
          kind: "figure",
          id: "f",
          title: "Figure 1",
          description: "d",
          drawing,
          narrow: { ...drawing, width: 360 },
        },
        { kind: "table", id: "t", caption: "c", head, rows: [head, head] },
      ];
      const fonts = await htmlFonts();
      const own = write("cards", writeHtml({ ...sample, blocks }, { fonts, drawingSvg: svgText }));
      const seen = (page: Page, what: string): Promise<boolean> => page.locator(what).isVisible();
      await browser.open(own, 390, async (page) => {
        expect([await seen(page, ".wide"), await seen(page, ".narrow svg")]).toEqual([false, true]);
        const [table, room] = await page
          .locator("#t .scroll")
          .evaluate((box) => [box.scrollWidth, box.clientWidth]);
        expect(table).toBeLessThanOrEqual(room);
        const status = page.locator("#t tbody tr").first().locator("td").last();
        const { x = 0, width = 0 } = (await status.boundingBox()) ?? {};
        expect(x + width).toBeLessThanOrEqual(390);
        expect(await page.locator("#t thead").isVisible()).toBe(false);
      });
      await browser.open(own, 1280, async (page) => {
        expect([await seen(page, ".wide"), await seen(page, ".narrow svg")]).toEqual([true, false]);
        expect(await page.locator("#t thead").isVisible()).toBe(true);
      });
    });

    it("prints without contents, and with the heads of tables on each page they reach", async () => {
      const page = await browser.blank();
      await page.goto(address);
      await page.emulateMedia({ media: "print" });
      expect(await page.locator("nav").isVisible()).toBe(false);
      const printed = await readTexts(await page.pdf({ preferCSSPageSize: true }));
      await page.close();
      const withLots = printed.filter((texts) => texts.some((text) => /^L-25-\d{4}$/.test(text)));
      expect(withLots.length).toBeGreaterThan(1);
      for (const texts of withLots) expect(texts).toContain("Client");
    });

    it("opens the trace that a number leads to", async () => {
      await open(1280, async (page) => {
        const trace = page.locator("[id='fig-water.difference']");
        expect(await trace.isVisible()).toBe(false);
        const link = page.locator("a.fig[href='#fig-water.difference']").first();
        await link.click();
        expect(await trace.locator("table").isVisible()).toBe(true);
        await trace.locator("summary").click();
        expect(await trace.locator("table").isVisible()).toBe(false);
        await link.click();
        expect(await trace.locator("table").isVisible()).toBe(true);
      });
    });

    it("sorts a table by numbers and by words", async () => {
      await open(1280, async (page) => {
        const column = (at: number): Promise<string[]> =>
          page.locator(`#t-lots tbody tr > :nth-child(${at})`).allTextContents();
        const before = (await column(4)).map(Number);
        const head = page.locator("#t-lots thead th").nth(3);
        await head.locator("button").click();
        expect((await column(4)).map(Number)).toEqual(before.toSorted((a, b) => a - b));
        expect(await head.getAttribute("aria-sort")).toBe("ascending");
        await head.locator("button").click();
        expect((await column(4)).map(Number)).toEqual(before.toSorted((a, b) => b - a));
        await page.locator("#t-lots thead th").nth(1).locator("button").click();
        expect((await column(2))[0]).toBe("Albers Home");
        expect(await head.getAttribute("aria-sort")).toBeNull();
        expect(await page.locator("#t-answer thead button").count()).toBe(0);
      });
    });

    it("opens the data behind charts for print, and shuts them after", async () => {
      await open(1280, async (page) => {
        const shut = page.locator("details.behind:not([open])");
        expect(await shut.count()).toBe(1);
        await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
        expect(await shut.count()).toBe(0);
        await page.evaluate(() => dispatchEvent(new Event("afterprint")));
        expect(await shut.count()).toBe(1);
      });
    });

    it("lets in neither a foreign script nor a style in place", async () => {
      const page = await browser.blank();
      await page.goto(address);
      const blocked = await page.evaluate(async () => {
        const found: string[] = [];
        addEventListener("securitypolicyviolation", ({ effectiveDirective }) =>
          found.push(effectiveDirective),
        );
        const script = document.createElement("script");
        script.textContent = "document.title = 'changed'";
        document.body.append(script);
        document.body.insertAdjacentHTML("beforeend", "<p style='color:red'>x</p>");
        await new Promise((done) => {
          setTimeout(done, 100);
        });
        return found;
      });
      expect(blocked).toEqual(["script-src-elem", "style-src-attr"]);
      expect(await page.title()).toBe(sample.title);
      await page.close();
    });
  });
});
