import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { checkWording } from "../../src/cli/wording.js";
import type { Language } from "../../src/report/wording/language.js";
import { type Ended, emptyFolders, millrace } from "../tools/command.js";
import { changed, heard, millIn } from "./mills.js";

const PATIENCE = 60_000;
const emptyFolder = emptyFolders();

interface Judged {
  readonly languages: readonly string[];
  readonly found: readonly {
    readonly ban: string;
    readonly level: string;
    readonly line: number;
    readonly column: number;
    readonly words: string;
  }[];
  readonly allowed: readonly { readonly allowed: { readonly proof: string } }[];
  readonly exit: number;
}

async function judge(
  name: string,
  text: string | Uint8Array,
  more: { readonly language?: readonly Language[]; readonly plant?: string } = {},
): Promise<Ended & { readonly judged: Judged }> {
  const path = join(emptyFolder(), name);
  writeFileSync(path, text);
  const options = { plant: "plant.yaml", ...more, wording: path, json: true };
  const ended = await heard(() => checkWording(options));
  return { ...ended, judged: JSON.parse(ended.out) as Judged };
}

describe("check --wording", { timeout: PATIENCE }, () => {
  it("names file, line, column, words, reason and what to write instead, and ends with code 3", () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "text.md"), "# Print\n\nOur **climate-neutral** cloth.\n");
    const { code, out, err } = millrace(folder, "check", "--wording", "text.md");
    expect([code, err]).toEqual([3, ""]);
    expect(out).toContain('text.md, line 3, column 7: refused "climate-neutral" (English');
    expect(out).toMatch(/Directive \(EU\) 2024\/825.+Instead: State scope 1 and 2/);
  });

  it("ends with code 0 where nothing is refused, warnings or not", async () => {
    const plain = await judge(
      "text.txt",
      "The lots of the year took 12 L/m² of water and the rest.",
    );
    expect([plain.code, plain.judged.found]).toEqual([0, []]);
    const warned = await judge("text.txt", "The mill takes less water.", { language: ["en"] });
    expect(warned.code).toBe(0);
    expect(warned.judged.found.map(({ level }) => level)).toEqual(["warning"]);
  });

  it("reads a page as its reader sees it, with places in the file", async () => {
    const page =
      "<html>\r\n<style>.green{}</style>\r\n<p title='x'>nach&shy;hal<b>tig</b></p>\r\n<img alt=\"gr&uuml;ner Stoff\">";
    const { code, judged } = await judge("page.html", page, { language: ["de"] });
    expect(code).toBe(3);
    expect(judged.found.map(({ ban, line, column }) => [ban, line, column])).toEqual([
      ["sustainable", 3, 14],
      ["vague", 4, 11],
    ]);
  });

  it("guesses the language", async () => {
    const { judged } = await judge(
      "text.txt",
      "Nous imprimons avec une encre qui est biodégradable et nous pesons les lots.",
    );
    expect(judged.languages).toEqual(["fr", "en"]);
    expect(judged.found.map(({ words }) => words)).toEqual(["biodégradable"]);
  });

  it("lets phrases of the plant file stand, with their proof", async () => {
    const mill = millIn(emptyFolder());
    changed(
      mill,
      "plant.yaml",
      (text) =>
        `${text}\nwording:\n  allow:\n    - { text: zero effluent from fixing, reason: No water is connected., proof: Sheet C-12 }\n`,
    );
    const { code, judged } = await judge("text.txt", "Zero effluent from fixing.", {
      language: ["en"],
      plant: join(mill, "plant.yaml"),
    });
    expect([code, judged.found]).toEqual([0, []]);
    expect(judged.allowed.map(({ allowed }) => allowed.proof)).toEqual(["Sheet C-12"]);
  });

  it("refuses what is no text, and says what it takes", () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "a.txt"), Uint8Array.of(0x80, 0xff));
    writeFileSync(join(folder, "b.txt"), "a\0b");
    mkdirSync(join(folder, "c"));
    for (const [name, said] of [
      ["a.txt", "UTF-8"],
      ["b.txt", "UTF-8"],
      ["c", "not a folder"],
      ["d.txt", "a text to judge"],
    ] as const) {
      const { code, out, err } = millrace(folder, "check", "--wording", name);
      expect([code, out], name).toEqual([3, ""]);
      expect(err).toContain(said);
    }
  });

  it("takes one text and no logs beside it, and only languages it knows", () => {
    const folder = emptyFolder();
    writeFileSync(join(folder, "a.txt"), "a");
    expect(millrace(folder, "check", "log.csv", "--wording", "a.txt").code).toBe(2);
    expect(millrace(folder, "check", "--wording", "a.txt", "--language", "nl").code).toBe(2);
  });
});
