import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { chromium } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { svgText } from "../../src/charts/svg.js";
import { writeHtml } from "../../src/report/html/write-html.js";
import { makeFonts } from "../../src/build/fonts.js";
import { sample } from "../report/html/sample-page.js";
import { withProgram } from "../tools/outside.js";

const PACKAGE = new URL("../../node_modules/@expo-google-fonts/inter/", import.meta.url);

let folder = "";
let address = "";

beforeAll(async () => {
  const faces = new Map<string, string>();
  await makeFonts(
    (path) => readFileSync(new URL(path, PACKAGE)),
    (name, content) => faces.set(name, Buffer.from(content).toString("base64")),
  );
  const face = (name: string): string => faces.get(`inter-${name}.woff2`) ?? "";
  const html = writeHtml(sample, {
    fonts: { regular: face("regular"), semibold: face("semibold"), italic: face("italic") },
    drawingSvg: svgText,
  });
  folder = mkdtempSync(join(tmpdir(), "millrace-html-"));
  const file = join(folder, "report.html");
  writeFileSync(file, html);
  address = pathToFileURL(file).href;
}, 60_000);

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

describe("a report as HTML", () => {
  withProgram("chromium", "the page works, keeps to its width and asks nobody", (path) => {
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

    async function open(width: number, look: (page: Page) => Promise<void>): Promise<void> {
      const page = await browser.newPage({ viewport: { width, height: 900 } });
      const said: string[] = [];
      page.on("console", (message) => said.push(message.text()));
      page.on("pageerror", (fault) => said.push(String(fault)));
      page.on("request", (request) => {
        if (!/^(file|data):/.test(request.url())) said.push(`asks for ${request.url()}`);
      });
      await page.goto(address);
      await look(page);
      await page.close();
      expect(said).toEqual([]);
    }

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
      const page = await browser.newPage();
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
