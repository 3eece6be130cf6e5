import { createHash } from "node:crypto";
import { parseHTML } from "linkedom";
import { describe, expect, it } from "vitest";
import { SCRIPT } from "../../../src/report/html/script.js";
import { written } from "./made.js";
import { HOSTILE, number, page, sample, text } from "./sample-page.js";

const html = written(sample);
const { document } = parseHTML(html);
const all = (selector: string): readonly Element[] => [...document.querySelectorAll(selector)];

describe("writeHtml", () => {
  it("gives the same page for the same report", () => {
    expect(written(sample)).toBe(html);
  });

  it("says language, title and print house", () => {
    expect(html.startsWith('<!doctype html>\n<html lang="en-GB">')).toBe(true);
    expect(document.title).toBe(sample.title);
    expect(all("h1").map((h1) => h1.textContent)).toEqual([sample.title]);
    expect(document.querySelector(".imprint")?.textContent).toBe(
      "Tarnbeck Print House \u00b7 4\u00a0July\u00a02025",
    );
    expect(document.querySelector("footer")?.textContent).toBe(sample.footer);
  });

  it("lists the chapters after the title", () => {
    expect(all("nav a").map((link) => [link.getAttribute("href"), link.textContent])).toEqual([
      ["#water", "Where the water goes"],
      ["#cost", "Cost"],
      ["#settings", "Settings and conditions"],
      ["#notes", "Notes"],
      ["#page-numbers", "Numbers and where they come from"],
    ]);
  });

  it("holds one style and one script, and its policy knows both", () => {
    const content = document.querySelector("meta[http-equiv]")?.getAttribute("content") ?? "";
    for (const name of ["style", "script"] as const) {
      const found = [...html.matchAll(new RegExp(`<${name}>([^]*?)</${name}>`, "g"))];
      expect(found).toHaveLength(1);
      const digest = createHash("sha256")
        .update(found[0]?.[1] ?? "")
        .digest("base64");
      expect(content).toContain(`${name}-src 'sha256-${digest}'`);
    }
    expect(SCRIPT.length).toBeLessThan(2000);
  });

  it("asks for nothing from outside and styles nothing in place", () => {
    expect(all("[src], link, img, iframe, object, embed, base, form, [style]")).toEqual([]);
    for (const element of all("*")) {
      for (const { name } of element.attributes) expect(name).not.toMatch(/^on/);
    }
  });

  it("leads every link of the page to a place in it", () => {
    const ids = all("[id]").map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const link of all('a[href^="#"]')) {
      expect(ids).toContain(link.getAttribute("href")?.slice(1));
    }
    for (const link of all('a:not([href^="#"])')) {
      expect(link.getAttribute("href")).toMatch(/^https:/);
    }
  });

  it("names only what is there", () => {
    for (const name of ["aria-labelledby"]) {
      for (const element of all(`[${name}]`)) {
        for (const id of (element.getAttribute(name) ?? "").split(" ")) {
          expect(document.getElementById(id)?.textContent).toBeTruthy();
        }
      }
    }
  });

  it("steps down through headings one level at a time", () => {
    const levels = all("h1, h2, h3").map(({ tagName }) => Number(tagName.slice(1)));
    levels.forEach((level, index) => {
      expect(level - (levels[index - 1] ?? 0)).toBeLessThan(2);
    });
  });

  it("traces every number that it shows", () => {
    const traced = all(".trace").map(({ id }) => `#${id}`);
    const shown = new Set(all("a.fig").map((link) => link.getAttribute("href") ?? ""));
    expect([...shown].sort()).toEqual([...traced].sort());
    expect(shown.size).toBeGreaterThan(40);
  });

  it("prints hostile texts as they are", () => {
    const paragraphs = all("main > p").map((p) => p.textContent);
    expect(paragraphs).toContain(HOSTILE.markup);
    expect(paragraphs).toContain("left \u25a1thgir\u25a1 again");
    expect(all("script")).toHaveLength(1);
  });

  it("escapes what stands in the head of the page", () => {
    const odd = written(
      page([{ kind: "paragraph", runs: [text("a")] }], {
        title: HOSTILE.markup,
        author: HOSTILE.markup,
        footer: HOSTILE.markup,
        language: '"><script>',
      }),
    );
    expect(odd.match(/<script>/g)).toHaveLength(1);
    expect(odd.match(/<\/(style|title|head)>/g)).toEqual(["</title>", "</style>", "</head>"]);
    expect(parseHTML(odd).document.querySelector("nav")).toBeNull();
  });

  it("refuses a number that the report cannot trace", () => {
    const blocks = [{ kind: "paragraph", runs: [number("gone", "1")] }] as const;
    expect(() => written(page(blocks))).toThrow('the figure "gone"');
  });
});
