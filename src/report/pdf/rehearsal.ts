/**
 * A page of words that is set before the report is there, so that what sets it has run once.
 */

import { glossary } from "../compose/glossary.js";
import type { ReportDocument } from "../document.js";

/** How often the table of words is set: enough to run through, too short to be waited for. */
const TIMES = 3;

/**
 * A document to rehearse with. Nobody reads it.
 *
 * @returns headings and tables of the report's own words
 */
export function rehearsal(): ReportDocument {
  const blocks = Array.from({ length: TIMES }, (_, at) => [
    { kind: "heading" as const, level: 2 as const, id: `words-${at}`, text: "Words" },
    glossary(),
  ]);
  return {
    title: "Words",
    author: "",
    language: "en",
    date: "2026-01-01",
    footer: "",
    blocks: blocks.flat(),
    figures: {},
  };
}
