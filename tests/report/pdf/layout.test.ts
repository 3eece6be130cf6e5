import { beforeAll, describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import { writePdf } from "../../../src/report/pdf/write-pdf.js";
import type { ReadPage, ReadPdf } from "./read-pdf.js";
import { readPdf } from "./read-pdf.js";
import { node } from "./sample-drawing.js";
import { sample } from "./sample-report.js";
import { cell, figure, inter, report, text } from "./sample-text.js";

let read: ReadPdf;

beforeAll(async () => {
  read = await readPdf(await writePdf(sample, inter));
});

async function pagesOf(...blocks: readonly Block[]): Promise<readonly ReadPage[]> {
  return (await readPdf(await writePdf(report(blocks), inter))).pages;
}

describe("tables", () => {
  it("repeat their headings on each page", () => {
    const withLots = read.pages.filter((page) => /L-25-\d{4}/.test(page.text));
    expect(withLots.length).toBeGreaterThanOrEqual(3);
    for (const page of withLots) {
      expect(page.texts.filter(({ text: shown }) => shown === "Client")).toHaveLength(1);
    }
  });

  it("keep each row on one page and lose none", () => {
    const lots = read.pages.flatMap((page) =>
      page.texts.filter(({ text: shown }) => /^L-25-\d{4}$/.test(shown)),
    );
    expect(new Set(lots.map(({ text: shown }) => shown)).size).toBe(104);
    expect(lots).toHaveLength(104);
  });

  it("set numbers flush right, digit under digit", async () => {
    const values = ["1,111.1", "8,888.8", "9.9", "\u2212703.4"];
    const [page] = await pagesOf({
      kind: "table",
      id: "t",
      caption: "Numbers",
      head: [cell("Name"), cell("Value")],
      rows: values.map((value) => [cell("a"), figure(value)]),
    });
    const set = page?.texts.filter(({ text: shown }) => values.includes(shown)) ?? [];
    const rights = set.map(({ x, width }) => x + width);
    expect(rights).toHaveLength(4);
    for (const right of rights) expect(right).toBeCloseTo(rights[0] ?? 0, 1);
    expect(set[0]?.x).toBeCloseTo(set[1]?.x ?? 0, 1);
    // The heading stands over the numbers.
    const head = page?.texts.find(({ text: shown }) => shown === "Value");
    expect((head?.x ?? 0) + (head?.width ?? 0)).toBeCloseTo(rights[0] ?? 0, 1);
  });

  it("make room for many columns before they part a word", async () => {
    const columns = Array.from({ length: 12 }, (_, index) => `Column${index}`);
    const [page] = await pagesOf({
      kind: "table",
      id: "t",
      caption: "Wide",
      head: columns.map((name) => cell(name)),
      rows: [columns.map(() => figure("1,234.5"))],
    });
    const shown = page?.texts.map(({ text: one }) => one) ?? [];
    for (const name of columns) expect(shown).toContain(name);
    expect(shown.filter((one) => one === "1,234.5")).toHaveLength(12);
  });

  it("go on where a row is higher than a page", async () => {
    const words = Array.from({ length: 2500 }, (_, index) => `w${index}`);
    const pages = await pagesOf({
      kind: "table",
      id: "t",
      caption: "Tall",
      head: [cell("Text"), cell("Value")],
      rows: [[cell(words.join(" ")), figure("1")]],
    });
    expect(pages.length).toBeGreaterThan(1);
    const shown = pages.map((page) => page.texts.map(({ text: one }) => one).join(" ")).join(" ");
    for (const word of words) expect(shown.split(/\s+/)).toContain(word);
  });

  it("refuse a row longer than the headings", async () => {
    const block: Block = {
      kind: "table",
      id: "t",
      caption: "c",
      head: [cell("A")],
      rows: [[cell("a"), cell("b")]],
    };
    await expect(writePdf(report([block]), inter)).rejects.toThrow(
      "2 columns; expected at most the 1",
    );
  });

  it("may be empty", async () => {
    const [page] = await pagesOf({
      kind: "table",
      id: "t",
      caption: "None",
      head: [cell("A")],
      rows: [],
    });
    expect(page?.text).toContain("NoneA");
  });
});

describe("pages", () => {
  it("are numbered, with the footer on each", () => {
    read.pages.forEach((page, index) => {
      expect(page.text).toContain(`${index + 1} / ${read.pages.length}`);
      expect(page.text).toContain(sample.footer);
    });
  });

  it("show the provenance that holds longest on them", () => {
    expect(read.pages[0]?.text).toMatch(/measured 43\s%allocated/);
    expect(read.pages[3]?.text).toMatch(/allocated 60\s%/);
  });

  it("keep a heading with what follows and two lines of a paragraph together", async () => {
    const filler = (lines: number): Block => ({
      kind: "list",
      ordered: false,
      items: Array.from({ length: lines }, () => [text("line")]),
    });
    const paragraph: Block = { kind: "paragraph", runs: [text("word ".repeat(80))] };
    for (let lines = 30; lines < 45; lines += 1) {
      const pages = await pagesOf(
        filler(lines),
        { kind: "heading", level: 2, text: "Title", id: "x" },
        paragraph,
      );
      for (const page of pages) {
        const own = page.texts.filter(({ text: shown }) => shown.startsWith("word"));
        expect(own).not.toHaveLength(1);
        if (page.texts.some(({ text: shown }) => shown === "Title"))
          expect(own.length).toBeGreaterThan(1);
      }
    }
  });

  it("never part a figure from its title", async () => {
    const drawing = {
      width: 640,
      height: 300,
      children: [node("text", { x: 10, y: 290 }, "foot")],
    };
    const one: Block = { kind: "figure", id: "f", title: "Figure", description: "d", drawing };
    const pages = await pagesOf(one, one, one, one, one);
    for (const { texts } of pages) {
      const count = (wanted: string): number =>
        texts.filter(({ text: shown }) => shown === wanted).length;
      expect(count("Figure")).toBe(count("foot"));
    }
  });

  it("open where a chapter asks for one", async () => {
    const pages = await pagesOf(
      { kind: "paragraph", runs: [text("before")] },
      { kind: "heading", level: 2, text: "Chapter", id: "c", newPage: true },
    );
    expect(pages.map(({ text: shown }) => shown.includes("Chapter"))).toEqual([false, true]);
  });
});

describe("contents", () => {
  const chapters = (count: number): readonly Block[] =>
    Array.from({ length: count }, (_, index): readonly Block[] => [
      { kind: "heading", level: 2, text: `Chapter ${index}`, id: `c${index}`, newPage: index > 1 },
      { kind: "paragraph", runs: [text("words")] },
    ]).flat();

  it("name each chapter with its page, after the first chapter, and lead there", async () => {
    const { pages, places } = await readPdf(await writePdf(report(chapters(7)), inter));
    const [first] = pages;
    expect(first?.text).toMatch(
      /Chapter 0.*words.*Contents.*Chapter 0.*1.*Chapter 6.*6.*Chapter 1/,
    );
    const led = first?.links.flatMap(({ place }) => (place === undefined ? [] : places.get(place)));
    // Name and number are two areas of one link.
    expect(led?.toSorted()).toEqual([1, 1, 2, 3, 4, 5, 6].flatMap((page) => [page, page]));
  });

  it("are left out where there are few", async () => {
    const [first] = await pagesOf(...chapters(3));
    expect(first?.text).not.toContain("Contents");
  });
});

describe("letters", () => {
  it("are never smaller than 7.5 pt, however many columns there are", async () => {
    const columns = Array.from({ length: 16 }, (_, index) => `Column${index}`);
    const [page] = await pagesOf({
      kind: "table",
      id: "t",
      caption: "Wide",
      behind: true,
      head: columns.map((name) => cell(name)),
      rows: [columns.map(() => figure("1,234.5"))],
    });
    const drawn = (shown: ReadPage): boolean => shown.text.includes("Figure 1.");
    const sizes = [page, ...read.pages.filter((shown) => !drawn(shown))].flatMap((shown) =>
      (shown?.texts ?? []).flatMap(({ height }) => (height > 0 ? [height] : [])),
    );
    expect(sizes.length).toBeGreaterThan(100);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(7.499);
  });
});

describe("lines", () => {
  it("do not end within an interval or beside a sign", async () => {
    for (let words = 0; words < 30; words += 1) {
      const [page] = await pagesOf({
        kind: "paragraph",
        runs: [text(`${"ab ".repeat(words + 20)}from \u22120.05 to 0.05 and dye \u2212 pigment`)],
      });
      const lines = page?.texts.map(({ text: shown }) => shown.trim()) ?? [];
      expect(lines.some((line) => line.includes("\u22120.05 to 0.05"))).toBe(true);
      expect(lines.some((line) => line.includes("dye \u2212 pigment"))).toBe(true);
    }
  });
});

describe("boxes", () => {
  it("say in words that they warn", async () => {
    const [page] = await pagesOf({
      kind: "box",
      tone: "caution",
      title: "Hot surfaces",
      blocks: [],
    });
    expect(page?.text).toContain("Caution: Hot surfaces");
  });
});
