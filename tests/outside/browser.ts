/** What tests in a browser share: the typeface of a page, its address, and a window that notes complaints. */

import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Browser, Page } from "playwright-core";
import { chromium } from "playwright-core";
import { afterAll, beforeAll, expect } from "vitest";
import { makeFonts } from "../../src/build/fonts.js";
import type { HtmlFonts } from "../../src/report/html/styles.js";

const PACKAGE = new URL("../../node_modules/@expo-google-fonts/inter/", import.meta.url);

/** Making the fonts takes its time. [ms] */
export const PATIENCE = 60_000;

/**
 * Makes the typeface as the build does.
 *
 * @returns its faces
 */
export async function htmlFonts(): Promise<HtmlFonts> {
  const faces = new Map<string, string>();
  await makeFonts(
    (path) => readFileSync(new URL(path, PACKAGE)),
    (name, content) => faces.set(name, Buffer.from(content).toString("base64")),
  );
  const face = (name: string): string => faces.get(`inter-${name}.woff2`) ?? "";
  return { regular: face("regular"), semibold: face("semibold"), italic: face("italic") };
}

/**
 * Keeps pages in a folder that is gone when the tests of the file are done.
 *
 * @returns a function that writes a page under a name and gives its address
 */
export function pageFolder(): (name: string, html: string) => string {
  let folder: string | undefined;
  afterAll(() => {
    if (folder !== undefined) rmSync(folder, { recursive: true, force: true });
  });
  return (name, html) => {
    folder ??= mkdtempSync(join(tmpdir(), "millrace-page-"));
    const file = join(folder, `${name.replaceAll(" ", "-")}.html`);
    writeFileSync(file, html);
    return pathToFileURL(file).href;
  };
}

/** A browser that runs for the tests of a group. */
export interface Window {
  /** Opens a blank page. */
  readonly blank: () => Promise<Page>;
  /** Opens a page at a width in px, looks at it, and expects that it neither complained nor asked the network. */
  readonly open: (
    address: string,
    width: number,
    look: (page: Page) => Promise<void>,
  ) => Promise<void>;
}

/**
 * Starts a browser before the tests of a group and ends it after them.
 *
 * @param path - path of the browser
 * @returns the window
 */
export function browserAt(path: string): Window {
  let browser: Browser;
  beforeAll(async () => {
    browser = await chromium.launch({
      executablePath: path,
      args: ["--no-sandbox", "--disable-gpu", "--disable-background-networking"],
    });
  }, PATIENCE);
  afterAll(async () => {
    await browser.close();
  });
  return {
    blank: () => browser.newPage(),
    open: async (address, width, look) => {
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
    },
  };
}
