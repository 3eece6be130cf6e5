import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { setPdf } from "../../src/report/pdf/write-pdf.js";
import { sample } from "../report/pdf/sample-report.js";
import { inter, report, text } from "../report/pdf/sample-text.js";
import { withProgram } from "../tools/outside.js";
import { bookmarkCounts, dictionary, list, readObjects, structureFaults } from "./pdf-structure.js";

const LARGE = { encoding: "utf8", maxBuffer: 1 << 28 } as const;

let folder = "";
let file = "";
let pages = 0;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "millrace-pdf-"));
  file = join(folder, "report.pdf");
  const bytes = new TextEncoder().encode("{}");
  const made = await setPdf(sample, inter, {
    attachment: { name: "report.json", bytes, mediaType: "application/json" },
  });
  pages = made.pages;
  writeFileSync(file, made.bytes);
});

afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
});

function run(program: string, ...options: readonly string[]): string {
  return execFileSync(program, options, LARGE);
}

describe("a report as PDF", () => {
  withProgram("qpdf", "the file is sound and its structure whole", (qpdf) => {
    it("has no error of syntax or coding", () => {
      const { status, stdout, stderr } = spawnSync(qpdf, ["--check", file], LARGE);
      expect(stderr).toBe("");
      expect(stdout).toContain("No syntax or stream encoding errors found");
      expect(status).toBe(0);
    });

    it("has a structure without faults", () => {
      expect(structureFaults(readObjects(run(qpdf, "--json=2", file)))).toEqual([]);
    });

    it("keeps its structure whole where text and links run over the end of a page", async () => {
      const link = { kind: "link", text: "a long way round ".repeat(30), href: "#t" } as const;
      const noted = { kind: "note-ref", note: "n" } as const;
      const runs = Array.from({ length: 14 }, () => [
        text("Lots of the day. ".repeat(20)),
        link,
        noted,
      ]).flat();
      const { bytes } = await setPdf(
        report([
          { kind: "heading", level: 1, text: "T", id: "t" },
          { kind: "paragraph", runs },
          { kind: "box", tone: "plain", title: "B", blocks: [{ kind: "paragraph", runs }] },
          {
            kind: "table",
            id: "x",
            caption: "c",
            head: [{ runs: [link] }],
            rows: [[{ runs }], [{ runs: [noted] }]],
          },
          { kind: "notes", notes: [{ id: "n", runs: [link] }] },
        ]),
        inter,
      );
      const odd = join(folder, "odd.pdf");
      writeFileSync(odd, bytes);
      expect(structureFaults(readObjects(run(qpdf, "--json=2", odd)))).toEqual([]);
    });

    it("has a judge that can find faults", () => {
      const printed = run(qpdf, "--json=2", file);
      for (const part of [
        "/Scope",
        "/Alt",
        "/BBox",
        "/K",
        "/StructParent",
        "/Contents",
        "/IDTree",
      ]) {
        const broken = printed.replaceAll(`"${part}"`, '"/Gone"');
        expect(structureFaults(readObjects(broken)), part).not.toEqual([]);
      }
    });

    it("says in its catalogue what it is", () => {
      const { catalogue, get } = readObjects(run(qpdf, "--json=2", file));
      expect(dictionary(get(catalogue["/MarkInfo"]))["/Marked"]).toBe(true);
      expect(dictionary(get(catalogue["/ViewerPreferences"]))["/DisplayDocTitle"]).toBe(true);
      expect(catalogue["/Lang"]).toBe("u:en-GB");
      expect(list(catalogue["/OutputIntents"])).toHaveLength(1);
      const [attached] = list(catalogue["/AF"]).map((one) => dictionary(get(one)));
      expect(attached?.["/AFRelationship"]).toBe("/Data");
    });

    it("counts its bookmarks", () => {
      // Source: ISO 32000-1 12.3.3, table 152 and 153: the root counts what is shown at first, a
      // folded item the negative of what it would show.
      expect(bookmarkCounts(readObjects(run(qpdf, "--json=2", file)))).toEqual([
        ["", 4],
        ["u:What the lots took", -1],
      ]);
    });
  });

  withProgram("pdfinfo", "the file is tagged and runs nothing", (pdfinfo) => {
    it("says so", () => {
      const info = run(pdfinfo, file);
      expect(info).toMatch(/^Tagged:\s+yes$/m);
      expect(info).toMatch(/^JavaScript:\s+no$/m);
      expect(info).toMatch(new RegExp(`^Pages:\\s+${pages}$`, "m"));
      expect(info).toMatch(/^Page size:\s+595.28 x 841.89 pts \(A4\)$/m);
    });

    it("reads its structure in order", async () => {
      // The program draws the page again for every element, so the long table is left out.
      const shorter = {
        ...sample,
        blocks: sample.blocks.filter((block) => !("id" in block && block.id === "t-lots")),
      };
      const short = join(folder, "short.pdf");
      writeFileSync(short, (await setPdf(shorter, inter)).bytes);
      const read = run(pdfinfo, "-struct-text", short);
      const order = ["H1", "Table", "Caption", "THead", "Div", "H2", "H3", "Figure", "Note"];
      const places = order.map((role) => read.search(new RegExp(`^ *${role}\\b`, "m")));
      expect(places).toEqual(places.toSorted((a, b) => a - b));
      expect(Math.min(...places)).toBeGreaterThan(0);
      // Words at the ends of lines stay apart.
      expect(read).toContain("shared in proportion to the conditioned mass of the cloth");
    });
  });

  withProgram("pdffonts", "fonts are embedded in part and can be read", (pdffonts) => {
    it("holds for each face", () => {
      const rows = run(pdffonts, file).trim().split("\n").slice(2);
      expect(rows).toHaveLength(3);
      for (const row of rows)
        expect(row).toMatch(/Inter-\w+\s+CID TrueType\s+Identity-H\s+yes yes yes/);
    });
  });

  withProgram("pdftotext", "the text can be taken out", (pdftotext) => {
    it("comes out as it went in", () => {
      const shown = run(pdftotext, "-layout", file, "-");
      expect(shown).toContain("Water withdrawn, L/kg");
      expect(shown).toMatch(/61\.5\s+20\.2\s+\u221241\.3\s+\u221248\.0 to \u221235\.1\s+71 %/);
      expect(shown).toContain("Ελληνικά Кириллица İstanbul Łódź");
      expect(shown).toContain(`<b>"Fish & Sons"</b>`);
    });
  });

  withProgram("pdftoppm", "the pages can be drawn", (pdftoppm) => {
    it("without a complaint", () => {
      const { status, stderr } = spawnSync(
        pdftoppm,
        ["-r", "20", "-png", file, join(folder, "page")],
        LARGE,
      );
      expect(stderr).toBe("");
      expect(status).toBe(0);
    });
  });
});
