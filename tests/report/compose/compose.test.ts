import { parseHTML } from "linkedom";
import { beforeAll, describe, expect, it } from "vitest";
import type { Block, DrawingNode, ReportDocument, Run } from "../../../src/report/document.js";
import { composeReport } from "../../../src/report/compose/compose.js";
import { originOf, placesOf } from "../../../src/report/compose/origins.js";
import { wholeReport } from "./whole-report.js";
import type { ReportInput } from "../../../src/report/compose/input.js";
import { reportJson } from "../../../src/report/json.js";
import { setPdf } from "../../../src/report/pdf/write-pdf.js";
import { lintWording } from "../../../src/report/wording.js";
import { textOf } from "../../tools/tree.js";
import { written } from "../html/made.js";
import { readPdf } from "../pdf/read-pdf.js";
import { inter } from "../pdf/sample-text.js";
import { inputOf, LOTS, lotOf, smallMill } from "./small-mill.js";

const TEMPLATE = textOf("templates/report.md");

const compose = (input: ReportInput): ReportDocument => wholeReport(input, TEMPLATE);

/** What of the data leads from a figure to its sources. */
interface Traced {
  readonly figures: Readonly<
    Record<string, { readonly terms?: readonly { readonly reads: readonly string[] }[] }>
  >;
  readonly settings: Readonly<
    Record<
      string,
      {
        readonly low: number;
        readonly high: number;
        readonly given: string;
        readonly source: string;
      }
    >
  >;
  readonly sources: Readonly<Record<string, { readonly title: string }>>;
}

/** All blocks, those in boxes too. */
function allBlocks(blocks: readonly Block[]): readonly Block[] {
  return blocks.flatMap((block) =>
    block.kind === "box" ? [block, ...allBlocks(block.blocks)] : [block],
  );
}

function runsOf(block: Block): readonly Run[] {
  switch (block.kind) {
    case "paragraph":
      return block.runs;
    case "list":
      return block.items.flat();
    case "table":
      return [...block.head, ...block.rows.flat()].flatMap(({ runs }) => runs);
    case "notes":
      return block.notes.flatMap(({ runs }) => runs);
    default:
      return [];
  }
}

function drawnTexts(node: DrawingNode): readonly string[] {
  return typeof node === "string" ? [node] : node.children.flatMap(drawnTexts);
}

/** Every text of a block as a reader meets it. */
function textsOf(block: Block): readonly string[] {
  const said = runsOf(block).map((run) => (run.kind === "note-ref" ? "" : run.text));
  switch (block.kind) {
    case "heading":
      return [block.text];
    case "table":
      return [block.caption, ...said];
    case "figure":
      return [
        block.title,
        block.description,
        block.missing ?? "",
        ...(block.drawing?.children ?? []).flatMap(drawnTexts),
      ];
    case "strip":
      return [block.words];
    case "box":
      return [block.title];
    default:
      return [said.join("")];
  }
}

const wholeText = (document: ReportDocument): string =>
  [document.title, document.footer, ...allBlocks(document.blocks).flatMap(textsOf)].join("\n");

/** Banned words with what stands around them, titles of sources apart. */
function praise(document: ReportDocument): readonly string[] {
  return allBlocks(document.blocks)
    .filter((block) => block.kind !== "table" || block.id !== "sources")
    .flatMap(textsOf)
    .concat(document.title, document.footer)
    .flatMap((text) =>
      lintWording(text).map(({ index }) => text.slice(Math.max(0, index - 40), index + 40)),
    );
}

/** Text of the paragraph that names what rises. */
function worseText(document: ReportDocument): string {
  const found = allBlocks(document.blocks)
    .flatMap(textsOf)
    .filter((text) => /gets worse on the pigment route|has a higher median/.test(text));
  expect(found).toHaveLength(1);
  return found[0] ?? "";
}

describe("the report of a small mill", () => {
  let input: ReportInput;
  let document: ReportDocument;

  beforeAll(() => {
    input = inputOf();
    document = compose(input);
  });

  it("puts something at every place of the template", () => {
    const places = [...TEMPLATE.matchAll(/^::place ([\w-]+)$/gm)].map(([, name = ""]) => name);
    expect(places.length).toBeGreaterThan(20);
    const marked = wholeReport(
      input,
      TEMPLATE.replaceAll(/^::place ([\w-]+)$/gm, "before $1\n\n::place $1\n\nafter $1"),
    );
    const texts = allBlocks(marked.blocks).map((block) => textsOf(block).join(""));
    for (const place of places)
      expect(
        texts.indexOf(`after ${place}`) - texts.indexOf(`before ${place}`),
        place,
      ).toBeGreaterThan(1);
    expect(wholeText(document)).not.toMatch(/::place|\{\{|\{%/);
  });

  it("shows a proof first that differs by its break-evens alone", () => {
    const proofs: ReportDocument[] = [];
    const whole = composeReport(input, TEMPLATE, (proof) => proofs.push(proof));
    const [proof] = proofs;
    expect(proofs).toHaveLength(1);
    const ids = (of: ReportDocument | undefined): readonly string[] =>
      (of?.blocks ?? []).flatMap((block) => ("id" in block ? [block.id] : []));
    const missing = ids(whole).filter((id) => !ids(proof).includes(id));
    expect(missing).toContain("break-evens");
    expect(ids(proof).filter((id) => !ids(whole).includes(id))).toEqual([]);
    expect(whole).toEqual(composeReport(input, TEMPLATE));
  });

  it("opens with the answer, what rises and what the report may not be used for", () => {
    const [first, ...rest] = document.blocks.flatMap((block) =>
      block.kind === "heading" ? [block.level === 1 ? block.text : block.id] : [],
    );
    expect(first).toBe(document.title);
    expect(rest[0]).toBe("answer");
    const page = document.blocks.slice(
      0,
      document.blocks.findIndex((block) => block.kind === "heading" && block.id === "boundary"),
    );
    const said = allBlocks(page).flatMap(textsOf).join("\n");
    expect(said).toMatch(/Claims: none was judged/);
    expect(said).toMatch(/gate to gate/);
    expect(said).toMatch(/not for advertising/);
    expect(said).toContain(worseText(document));
  });

  it("has a figure for every number that points to one, printed as the figure says", () => {
    const refs = allBlocks(document.blocks)
      .flatMap(runsOf)
      .flatMap((run) => (run.kind === "figure-ref" ? [run] : []));
    expect(refs.length).toBeGreaterThan(30);
    for (const { figure, text } of refs) {
      const found = document.figures[figure];
      expect(found, figure).toBeDefined();
      if (found === undefined) continue;
      const shown = Number(text.replaceAll(/[\s\u00a0\u202f]/g, "").replace("\u2212", "-"));
      expect(Math.abs(shown - found.value), figure).toBeLessThanOrEqual(
        0.5000001 * 10 ** -found.digits,
      );
      if (found.low !== undefined) expect(found.low).toBeLessThanOrEqual(found.value);
      if (found.high !== undefined) expect(found.high).toBeGreaterThanOrEqual(found.value);
    }
  });

  it("lets every number be followed: it opens by itself, or its place has an origin", () => {
    const places = placesOf(document.blocks);
    expect(places.length).toBeGreaterThan(30);
    expect(places.filter(({ id }) => originOf(id) === undefined)).toEqual([]);
    const table = allBlocks(document.blocks).find(
      (block) => block.kind === "table" && block.id === "origins",
    );
    const links =
      table === undefined
        ? []
        : runsOf(table).flatMap((run) => (run.kind === "link" ? [run.href] : []));
    expect(links.sort()).toEqual(places.map(({ id }) => `#${id}`).sort());
  });

  it("leads each trace to settings with a value and a source that is told", () => {
    const data = JSON.parse(reportJson(document, inputOf())) as Traced;
    const reads = Object.values(data.figures).flatMap(({ terms = [] }) =>
      terms.flatMap((t) => t.reads),
    );
    expect(reads.length).toBeGreaterThan(100);
    for (const stream of new Set(reads)) {
      const setting = data.settings[stream];
      expect(setting, stream).toBeDefined();
      if (setting === undefined) continue;
      expect(setting.low).toBeLessThanOrEqual(setting.high);
      const told = setting.given === "plant" ? setting.source : data.sources[setting.source]?.title;
      expect(told ?? "", stream).not.toBe("");
    }
  });

  it("draws each picture or says why it is missing", () => {
    const figures = allBlocks(document.blocks).flatMap((block) =>
      block.kind === "figure" ? [block] : [],
    );
    expect(figures.length).toBeGreaterThan(8);
    for (const { id, drawing, missing } of figures)
      expect((drawing === undefined) !== (missing === undefined), id).toBe(true);
    const { document: page } = parseHTML(written(document));
    const ids = [...page.querySelectorAll("[id]")].map(({ id }) => id);
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
  });

  it("uses no word that praises or promises", () => {
    expect(praise(document)).toEqual([]);
    expect(praise({ ...document, footer: "an eco print" })).toHaveLength(1);
  });

  it("prints neither NaN nor undefined nor a leftover of code", () => {
    expect(wholeText(document)).not.toMatch(/NaN|undefined|Infinity|\[object/);
  });

  it("comes out the same twice, as page, data and print", async () => {
    const again = inputOf();
    const second = compose(again);
    expect(written(second)).toBe(written(document));
    expect(reportJson(second, again)).toBe(reportJson(document, input));
    const [one, two] = [await setPdf(document, inter), await setPdf(second, inter)];
    expect(Buffer.from(two.bytes).equals(Buffer.from(one.bytes))).toBe(true);
  }, 30_000);

  it.each([
    ["kg", "kg of cloth printed", "L/kg"],
    ["m", "metre printed", "L/m"],
    ["m2", "accepted m²", "L/m²"],
    ["total", "the whole period", "m³"],
  ] as const)("can be asked for per %s", (per, words, unit) => {
    const asked = inputOf(smallMill(), LOTS, { per });
    const made = compose(asked);
    const said = wholeText(made);
    expect(said).toContain(words);
    expect(said).toContain(`Water withdrawn, ${unit}`);
    expect(praise(made)).toEqual([]);
    // The same litres, whatever they are divided by.
    const litres = (made.figures["water.dye"]?.value ?? NaN) * (per === "total" ? 1000 : 1);
    const base = (document.figures["water.dye"]?.value ?? NaN) * input.reference.units;
    expect(litres * asked.reference.units).toBeCloseTo(base, 6);
  });

  it("names what pigment takes more of, with both numbers", () => {
    const plant = smallMill({
      finish: true,
      settings: {
        "wash-range.fresh-water": 4,
        "wash-range.warm": 30,
        "wash-range.hot": 50,
        "steamer.flush": 0.1,
        "steamer.idle-steam": 5,
      },
    });
    const worse = compose(inputOf(plant));
    expect(worseText(worse)).toMatch(/final energy may rise: [\d.]+ instead of [\d.]+ kWh\/m²/);
    const { pigment, dye } = inputOf(plant).comparisons.get("energy") ?? {};
    expect(pigment?.median).toBeGreaterThan(dye?.median ?? Infinity);
    expect(wholeText(worse)).toContain("the pigment route takes more");
    expect(worseText(document)).not.toContain("final energy rises");
    expect(praise(worse)).toEqual([]);
  });

  it("can be made of one lot, in one month, without doubt about fastness", () => {
    const said = wholeText(compose(inputOf(smallMill(), [lotOf({ lot: "only" })])));
    expect(said).toContain("The log holds one month only");
    expect(said).not.toMatch(/NaN|undefined|Infinity/);
  });
});

/** Texts that try to be something else. */
const HOSTILE = [
  "<script>alert(1)</script>",
  "| a | b |",
  "{{ x }}{% if y %}",
  "::place x",
  "[l](javascript:1)",
  "bell\u0007null\u0000end",
  "\u202ethgir\u200f mark",
  "w".repeat(300),
  '"><img src=x onerror=alert(1)>',
  "# heading",
] as const;

/** A mill whose names are all of one text, told apart by a number before it. */
function named(text: string): ReportInput {
  const name = (word: string, at: number): string => `${word}${at} ${text}`;
  return inputOf(
    smallMill({ house: `house ${text}` }),
    LOTS.map((lot, at) => ({
      ...lot,
      lot: name("lot", at),
      client: name("client", at % 2),
      order: name("order", at % 3),
      fabric: name("fabric", at % 2),
    })),
    { draws: 100, file: `log ${text}.csv` },
  );
}

/** Letters that are seen, in their order. */
const seen = (text: string): string => text.replaceAll(/[\p{C}\p{Z}\s\ufffd\u25a1]/gu, "");

/** Names of elements outside pictures, in order. */
function elements(html: string): readonly string[] {
  const { document } = parseHTML(html);
  return [...document.querySelectorAll("*")]
    .filter((element) => element.closest("svg") === null)
    .map(({ tagName }) => tagName);
}

describe("names in a log", () => {
  const harmless = elements(written(compose(named("plain"))));

  it.each(HOSTILE)("stay text on the page: %j", (text) => {
    const html = written(compose(named(text)));
    expect(elements(html)).toEqual(harmless);
    const { document } = parseHTML(html);
    expect(document.querySelectorAll("script")).toHaveLength(1);
    expect(document.querySelectorAll("img, [src], a[href^='javascript']")).toHaveLength(0);
    const body = seen(document.body.textContent);
    for (const word of ["house ", "client0 ", "client1 ", "fabric0 ", "fabric1 "])
      expect(body).toContain(seen(word + text));
  });

  it("stay text in print", async () => {
    for (const text of HOSTILE) {
      const { bytes } = await setPdf(compose(named(text)), inter);
      const { pages } = await readPdf(bytes);
      const said = seen(pages.map((page) => page.text).join(""));
      expect(said).toContain(seen(`client0 ${text}`));
      expect(said).toContain(seen(`fabric1 ${text}`));
      expect(pages.flatMap(({ links }) => links).filter(({ url }) => url !== undefined)).toEqual(
        [],
      );
    }
  }, 60_000);
});
