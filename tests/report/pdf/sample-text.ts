import { readFileSync } from "node:fs";
import type { Block, Cell, ReportDocument, Run } from "../../../src/report/document.js";
import type { PdfFonts } from "../../../src/report/pdf/pen.js";

const FOLDER = new URL("../../../node_modules/@expo-google-fonts/inter/", import.meta.url);

/** The typeface the reports ship with. */
export const inter: PdfFonts = {
  regular: face("400Regular/Inter_400Regular.ttf"),
  semibold: face("600SemiBold/Inter_600SemiBold.ttf"),
  italic: face("400Regular_Italic/Inter_400Regular_Italic.ttf"),
};

function face(path: string): Uint8Array {
  return new Uint8Array(readFileSync(new URL(path, FOLDER)));
}

/** Plain text as a run. */
export function text(value: string, style?: "bold" | "italic" | "code"): Run {
  return style ? { kind: "text", text: value, style } : { kind: "text", text: value };
}

/** A cell with one plain text. */
export function cell(value: string, options: Omit<Cell, "runs"> = {}): Cell {
  return { runs: [text(value)], ...options };
}

/** A cell with a number. */
export function figure(value: string, options: Omit<Cell, "runs"> = {}): Cell {
  return { runs: [{ kind: "figure-ref", figure: "any", text: value }], align: "right", ...options };
}

/** Text as a log may hold it. */
export const HOSTILE = {
  markup: `<b>"Fish & Sons"</b> 'n' {{ total }} %PDF-1.4 (endobj) \\ /Name`,
  control: "bell\u0007 null\u0000 escape\u001b[31m",
  turning: "left \u202ethgir\u202c left \u200fmark",
  emoji: "fine 👩‍🏭 day 🙂",
  foreign: "العربية עברית 漢字 Ελληνικά Кириллица İstanbul Łódź",
  composed: "cafe\u0301 x\u0304 \u00e5\u0323",
  long: "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft".repeat(
    3,
  ),
  address: `https://example.org/${"lots/2025/".repeat(20)}report?site=main&month=6`,
  lone: "half \ud83d a pair \udc00",
} as const;

/** The smallest report. */
export function report(
  blocks: readonly Block[],
  rest: Partial<ReportDocument> = {},
): ReportDocument {
  return {
    title: "Lots",
    author: "Tarnbeck Print House",
    language: "en",
    date: "2025-07-04",
    footer: "unreviewed",
    blocks,
    figures: {},
    ...rest,
  };
}
