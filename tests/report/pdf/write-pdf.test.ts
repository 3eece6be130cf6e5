import { env } from "node:process";
import { beforeAll, describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import { setPdf, writePdf } from "../../../src/report/pdf/write-pdf.js";
import type { PdfReport } from "../../../src/report/pdf/write-pdf.js";
import type { ReadElement, ReadPdf } from "./read-pdf.js";
import { elements, readPdf } from "./read-pdf.js";
import { node } from "./sample-drawing.js";
import { sample } from "./sample-report.js";
import { HOSTILE, cell, figure, inter, report, text } from "./sample-text.js";

const attachment = {
  name: "report.json",
  bytes: new TextEncoder().encode('{"lots":104}'),
  mediaType: "application/json",
};

let set: PdfReport;
let read: ReadPdf;

beforeAll(async () => {
  set = await setPdf(sample, inter, { attachment });
  read = await readPdf(set.bytes);
});

// The reader shows the whole of an element on each page it stands on; no two of the sample are shaped alike.
function shapes(role: string): readonly ReadElement[] {
  const found = read.pages.flatMap(({ root }) => elements(root, role));
  return [...new Map(found.map((one) => [JSON.stringify(one), one])).values()];
}

function within(whole: readonly ReadElement[], role: string): number {
  return whole.reduce((sum, one) => sum + elements(one, role).length, 0);
}

function all(role: string): number {
  return read.pages.reduce((sum, { root }) => sum + elements(root, role).length, 0);
}

describe("the file", () => {
  it("has the pages it says it has", () => {
    expect(read.pages).toHaveLength(set.pages);
    expect(set.pages).toBeGreaterThan(5);
  });

  it("states title, author, language and date", () => {
    expect(read.info).toMatchObject({
      Title: sample.title,
      Author: "Tarnbeck Print House",
      Language: "en-GB",
      CreationDate: "D:20250704000000Z",
      PDFFormatVersion: "1.7",
    });
  });

  it("states PDF/A-3a and PDF/UA-1", () => {
    expect(read.xmp).toMatch(/<pdfaid:part>3<[^]*<pdfaid:conformance>A</);
    expect(read.xmp).toContain("<pdfuaid:part>1<");
    expect(read.marked).toBe(true);
  });

  it("embeds three faces and nothing else", () => {
    const fonts = new Set(read.pages.flatMap((page) => page.fonts.map((name) => name.slice(7))));
    expect([...fonts].toSorted()).toEqual(["Inter-Italic", "Inter-Regular", "Inter-SemiBold"]);
  });

  it("carries its data along", () => {
    expect(read.attachments).toEqual({ "report.json": attachment.bytes });
  });

  it("is the same to the byte when written again, in whatever time zone", async () => {
    const zone = env["TZ"];
    try {
      env["TZ"] = "Asia/Tokyo";
      expect(new Date(2025, 0, 1).getTimezoneOffset()).toBe(-540);
      const again = await writePdf(sample, inter, { attachment });
      expect(again.length).toBe(set.bytes.length);
      expect(again.every((byte, index) => byte === set.bytes[index])).toBe(true);
    } finally {
      if (zone === undefined) delete env["TZ"];
      else env["TZ"] = zone;
    }
  });

  it("survives markup in title, author and footer", async () => {
    const odd = { title: HOSTILE.markup, author: "<A&B>\u0000", footer: HOSTILE.markup };
    const { info, xmp, pages } = await readPdf(await writePdf(report([], odd), inter));
    expect(info).toMatchObject({ Title: HOSTILE.markup, Author: "<A&B>\ufffd" });
    expect(xmp).not.toMatch(/<b>|<A&/);
    expect(pages[0]?.text).toContain(HOSTILE.markup);
  });
});

describe("structure", () => {
  it("marks every stroke and letter as text or decoration", () => {
    expect(read.pages.map(({ unmarked }) => unmarked)).toEqual(read.pages.map(() => 0));
  });

  it("has an element for each block", () => {
    const count = (kind: Block["kind"]): number =>
      sample.blocks.filter((block) => block.kind === kind).length;
    expect(all("H1")).toBe(1);
    expect(all("H2")).toBe(3);
    expect(all("H3")).toBe(1);
    expect(all("Figure")).toBe(1);
    expect(all("Note")).toBe(3);
    // One more stands in a box.
    expect(shapes("Table")).toHaveLength(count("table") + 1);
    expect(within(shapes("Table"), "TR")).toBe(104 + 1 + 6 + 5 + 4 + 3);
  });

  it("tells headings of columns and rows from cells", () => {
    const [first] = elements(read.pages[0]?.root ?? { role: "", children: [] }, "Table");
    const rows = elements(first ?? { role: "", children: [] }, "TR");
    const roles = rows.map((row) => row.children.map(({ role }) => role).join(" "));
    expect(roles[0]).toBe("TH TH TH TH TH TH");
    expect(roles[1]).toBe("TH TD TD TD TD TD");
    expect(first?.children.map(({ role }) => role)).toEqual(["Caption", "THead", "TBody"]);
  });

  it("describes figures in words", () => {
    const [drawn] = read.pages.flatMap(({ root }) => elements(root, "Figure"));
    expect(drawn?.alt).toMatch(/^Figure 1\. .*Washing takes 46\.2 on the dye route/);
  });

  it("has a label and a body for each item of a list", () => {
    // The keys of the strips are lists without labels.
    expect(within(shapes("L"), "LBody")).toBe(2 + 11 + 4);
    expect(within(shapes("L"), "Lbl")).toBe(2 + 11);
    expect(
      all("Lbl") -
        within(
          read.pages.flatMap(({ root }) => elements(root, "L")),
          "Lbl",
        ),
    ).toBe(3);
  });
});

describe("ways through the file", () => {
  it("has bookmarks for headings, sections below chapters", () => {
    expect(read.bookmarks.map(({ title }) => title)).toEqual([
      sample.title,
      "What the lots took",
      "Odd texts",
      "Notes",
    ]);
    expect(read.bookmarks[1]?.items.map(({ title }) => title)).toEqual(["Water by step"]);
    for (const { title, page } of read.bookmarks) {
      expect(read.pages[page - 1]?.text).toContain(title);
    }
  });

  it("leads to addresses outside", () => {
    const urls = read.pages.flatMap(({ links }) => links.flatMap(({ url }) => url ?? []));
    expect(new Set(urls)).toEqual(new Set(["https://example.org/meters?a=1&b=2"]));
  });

  it("leads to tables, to notes and back", () => {
    const inside = read.pages.map(({ links }) => links.flatMap(({ place }) => place ?? []));
    const tablePage = read.pages.findIndex((page) => page.text.includes("Table 2. Lots")) + 1;
    const [interval, meter] = ["The interval holds 95", "Meter sheets are kept"].map(
      (words) => read.pages.findIndex((page) => page.text.includes(words)) + 1,
    );
    expect(inside[0]?.map((place) => read.places.get(place))).toEqual([interval, tablePage, meter]);
    const back = inside
      .slice(-2)
      .flatMap((places) => places.map((place) => read.places.get(place)));
    expect(back).toEqual([1, 1]);
  });

  it("lists names of places in the order of their bytes", () => {
    const names = [...read.places.keys()];
    expect(names).toEqual(names.toSorted());
  });

  it("follows no script, no mail and no link to nowhere, and says so", () => {
    expect(set.dead).toEqual([
      "javascript:alert(1)",
      "#nowhere",
      "unknown",
      "mailto:meters@example.org",
    ]);
    expect(
      read.pages.some(({ text: shown }) =>
        shown.includes("not followed and nowhere and [unknown]"),
      ),
    ).toBe(true);
  });
});

describe("text", () => {
  it.each([
    ["markup", HOSTILE.markup],
    ["control characters", "bell\u25a1 null\u25a1 escape\u25a1[31m"],
    ["turning marks", "left \u25a1thgir\u25a1 left \u25a1mark"],
    ["faces", "fine \u25a1\u25a1 day \u25a1"],
    ["scripts", "\u25a1 Ελληνικά Кириллица İstanbul Łódź"],
    ["a long word", HOSTILE.long],
    ["a long address", HOSTILE.address],
    ["halves of a pair", "half \u25a1 a pair \u25a1"],
  ])("shows %s as text or squares", (_, shown) => {
    expect(read.pages.map((page) => page.text).join("")).toContain(shown);
  });

  it("counts what it could not show", () => {
    expect(set.replaced.get("U+0007")).toBe(2);
    expect(set.replaced.get("U+202E")).toBe(2);
    expect(set.replaced.get("U+1F642")).toBe(2);
    expect(set.replaced.get("U+D83D")).toBe(1);
    expect(set.replaced.has("U+0041")).toBe(false);
  });

  it("stays on the page", async () => {
    const long = "Wash range ".repeat(300);
    const blocks: readonly Block[] = [
      { kind: "heading", level: 1, text: long, id: "a" },
      {
        kind: "table",
        id: "b",
        caption: long,
        head: [cell(long), cell("B")],
        rows: [
          [cell(long.repeat(4)), cell(HOSTILE.long)],
          [cell("a"), figure("1")],
        ],
      },
      {
        kind: "figure",
        id: "c",
        title: long,
        description: "",
        drawing: { width: 10, height: 90, children: [] },
      },
      {
        kind: "box",
        tone: "caution",
        title: long,
        blocks: [{ kind: "paragraph", runs: [text(long.repeat(3))] }],
      },
      {
        kind: "strip",
        words: long,
        shares: { measured: 1, allocated: 0, modelled: 0, default: 0 },
      },
      { kind: "list", ordered: true, items: [[text(long)]] },
    ];
    const odd = { footer: long, title: long, author: long };
    const { pages } = await readPdf(await writePdf(report(blocks, odd), inter));
    for (const { texts } of pages) {
      for (const { text: shown, x, y, width } of texts) {
        if (shown.trim() === "") continue;
        expect(y, shown).toBeGreaterThan(20);
        expect(y, shown).toBeLessThan(830);
        expect(x, shown).toBeGreaterThan(20);
        expect(x + width, shown).toBeLessThan(545);
      }
    }
  });
});

describe("a broken report", () => {
  it("is refused with the reason", async () => {
    const drawing = { width: 10, height: 10, children: [node("image")] };
    const one: Block = { kind: "figure", id: "f", title: "F", description: "d", drawing };
    await expect(writePdf(report([one]), inter)).rejects.toThrow("<image>");
    await expect(writePdf(report([], { date: "yesterday" }), inter)).rejects.toThrow("yesterday");
    const flat: Block = { ...one, drawing: { ...drawing, height: 0 } };
    await expect(writePdf(report([flat]), inter)).rejects.toThrow("10 × 0");
  });
});
