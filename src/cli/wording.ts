/**
 * `millrace check --wording`: words of a user's own text that may not stand.
 */

import { existsSync, readFileSync, statSync } from "node:fs";
import { basename, extname } from "node:path";
import { BANS } from "../report/wording/bans.js";
import { guessLanguages } from "../report/wording/guess.js";
import { type AllowedPhrase, type Finding, judgeWording } from "../report/wording/judge.js";
import { type Language, LANGUAGE_NAMES } from "../report/wording/language.js";
import { type Markup, plainText } from "../report/wording/plain.js";
import type { Problem } from "../problems/problem.js";
import { EXIT } from "./exit.js";
import { data, out, refuse } from "./say.js";
import { openMill } from "./workspace.js";

/** Options of the command. */
export interface WordingOptions {
  /** Plant file, for the phrases it allows. */
  readonly plant: string;
  /** The text. */
  readonly wording: string;
  /** Languages to read it as; guessed when absent. */
  readonly language?: readonly Language[];
  /** Whether to print data. */
  readonly json?: boolean;
}

/** Name that `--plant` has when nobody gives one. */
const USUAL_PLANT = "plant.yaml";

/**
 * Runs the command.
 *
 * @param options - options
 * @returns exit code: refused when a wording is refused, done otherwise
 */
export function checkWording(options: WordingOptions): number {
  const { wording: path, json } = options;
  const phrases = phrasesOf(options.plant);
  if ("problems" in phrases) return refuse(phrases.problems, json);
  const source = sourceOf(path);
  if (typeof source !== "string") return refuse([source], json);
  const seen = plainText(source, markupOf(path));
  const languages = options.language ?? guessLanguages(seen);
  const { found, allowed } = judgeWording(seen, languages, phrases.allow);
  const placeOf = places(source);
  const said = (finding: Finding): Said => sayable(finding, source, placeOf);
  const refused = found.filter(({ level }) => level === "refused").length;
  const code = refused > 0 ? EXIT.refused : EXIT.done;
  if (json === true) {
    data({
      file: path,
      languages,
      found: found.map(said),
      allowed: allowed.map(({ finding, phrase }) => ({ ...said(finding), allowed: phrase })),
      exit: code,
    });
    return code;
  }
  for (const finding of found) {
    const { line, column, words, why, reasons, instead } = said(finding);
    const sources = reasons.map(({ source }) => source).join("; ");
    out(
      `${basename(path)}, line ${line}, column ${column}: ${finding.level} "${words}" (${LANGUAGE_NAMES[finding.language]}, ${finding.ban}). ${why} [${sources}] Instead: ${instead}`,
    );
  }
  for (const { finding, phrase } of allowed) {
    const { line, column, words } = said(finding);
    out(
      `${basename(path)}, line ${line}, column ${column}: allowed "${words}" as part of "${phrase.text}". ${phrase.reason} Proof: ${phrase.proof}`,
    );
  }
  const read = languages.map((language) => LANGUAGE_NAMES[language]).join(", ");
  out(
    `${refused} refused, ${found.length - refused} to look at, ${allowed.length} allowed; read as ${read}.`,
  );
  return code;
}

/** A finding as it is said. */
interface Said {
  readonly ban: string;
  readonly level: string;
  readonly language: string;
  readonly line: number;
  readonly column: number;
  readonly words: string;
  readonly why: string;
  readonly reasons: readonly { readonly source: string; readonly mark: string }[];
  readonly instead: string;
}

function sayable(
  { ban, level, language, from, to }: Finding,
  source: string,
  placeOf: (index: number) => { readonly line: number; readonly column: number },
): Said {
  const { why, reasons, instead } = BANS[ban];
  // Control signs in a text must not reach the terminal, and a wording may run over the end of a line.
  const words = source.slice(from, to).replaceAll(/[\p{Cc}\s]+/gu, " ");
  return { ban, level, language, ...placeOf(from), words, why, reasons, instead };
}

// Finds line and column, both counted from 1.
function places(
  source: string,
): (index: number) => { readonly line: number; readonly column: number } {
  const starts = [
    0,
    ...[...source.matchAll(/\r\n|\r|\n/g)].map((end) => end.index + end[0].length),
  ];
  return (index) => {
    const line = starts.findLastIndex((start) => start <= index);
    const before = source.slice(starts[line] ?? 0, index);
    return { line: line + 1, column: Array.from(before).length + 1 };
  };
}

function phrasesOf(
  plant: string,
): { readonly allow: readonly AllowedPhrase[] } | { readonly problems: readonly Problem[] } {
  if (plant === USUAL_PLANT && !existsSync(plant)) return { allow: [] };
  const { mill, problems } = openMill({ plant });
  return mill === undefined ? { problems } : { allow: mill.plant.text.wording?.allow ?? [] };
}

function markupOf(path: string): Markup {
  switch (extname(path).toLowerCase()) {
    case ".html":
    case ".htm":
    case ".xhtml":
    case ".svg":
      return "html";
    case ".md":
    case ".markdown":
      return "markdown";
    default:
      return "text";
  }
}

function sourceOf(path: string): string | Problem {
  const problem = (code: string, expected: string, remedy: string): Problem => ({
    code,
    severity: "refused",
    file: path,
    expected,
    remedy,
  });
  if (!existsSync(path))
    return problem("file-missing", "a text to judge after --wording", "Check the path.");
  if (statSync(path).isDirectory())
    return problem("file-is-folder", "a text, not a folder", "Name the file in it.");
  try {
    const text = new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(path));
    if (!text.includes("\0")) return text;
  } catch (error) {
    if (!(error instanceof TypeError)) throw error;
  }
  return problem(
    "text-unreadable",
    "plain text, Markdown or HTML in UTF-8",
    "Save it as text first; a word processor's file or a PDF is not read.",
  );
}
