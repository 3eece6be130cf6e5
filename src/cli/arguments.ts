/**
 * Words of the command line, each judged when it is read and refused in one line.
 */

import { asideLimit } from "./aside.js";

/** A word of the command line that cannot be meant. */
export class WrongWord extends Error {
  /** Shown in front of the message. */
  override readonly name = "WrongWord";

  /** The option or argument, such as `--draws`. */
  readonly option: string;

  /** What it takes, as a noun phrase. */
  readonly expected: string;

  /** What was given. */
  readonly given: string;

  /** What may have been meant; empty where nothing comes near. */
  readonly hint: string;

  /**
   * @param option - the option or argument
   * @param expected - what it takes, as a noun phrase
   * @param given - what was given
   * @param hint - what may have been meant, as a sentence
   */
  constructor(option: string, expected: string, given: string, hint = "") {
    super(
      `${option} takes ${expected}, not ${JSON.stringify(given)}.${hint === "" ? "" : ` ${hint}`}`,
    );
    this.option = option;
    this.expected = expected;
    this.given = given;
    this.hint = hint;
  }
}

/** Reads the word after an option. */
type Reader<T> = (text: string) => T;

/**
 * Reads a day.
 *
 * @param option - the option
 * @returns reader of an ISO 8601 day that the calendar holds; throws `WrongWord` at any other
 */
export function day(option: string): Reader<string> {
  return (text) => {
    const date = new Date(/^\d{4}-\d{2}-\d{2}$/.test(text) ? `${text}T00:00:00Z` : NaN);
    // The 31st of a short month would roll over into the next.
    if (Number.isNaN(date.getTime()) || date.toISOString().slice(0, 10) !== text)
      throw new WrongWord(option, "a day of the calendar such as 2026-01-31", text);
    return text;
  };
}

/**
 * Reads a whole number.
 *
 * @param option - the option
 * @param least - lowest allowed
 * @param most - highest allowed
 * @returns reader of digits; throws `WrongWord` at anything else
 */
export function whole(option: string, least: number, most: number): Reader<number> {
  return (text) => {
    const number = /^\d+$/.test(text) ? Number(text) : NaN;
    if (!(number >= least && number <= most))
      throw new WrongWord(option, `a whole number from ${least} to ${most}`, text);
    return number;
  };
}

/**
 * Reads one of a few words.
 *
 * @param option - the option
 * @param words - the words
 * @returns reader; throws `WrongWord` at any other word
 */
export function oneOf(option: string, ...words: readonly string[]): Reader<string> {
  return (text) => {
    if (words.includes(text)) return text;
    throw new WrongWord(option, `one of ${words.join(", ")}`, text);
  };
}

/**
 * Reads a list of words.
 *
 * @param option - the option
 * @param words - the words
 * @returns reader of some of them, with commas between; throws `WrongWord` at any other word
 */
export function someOf(option: string, ...words: readonly string[]): Reader<readonly string[]> {
  return (text) => {
    const list = text.split(",").map((word) => word.trim());
    if (list.every((word) => words.includes(word))) return list;
    throw new WrongWord(option, `some of ${words.join(", ")}, with commas between`, text);
  };
}

/**
 * Reads a name.
 *
 * @param option - the option
 * @param of - what it names, such as `a client`
 * @returns reader; throws `WrongWord` where nothing is named, which would mean the lots of nobody
 */
export function nameOf(option: string, of: string): Reader<string> {
  return (text) => {
    if (text.trim() === "") throw new WrongWord(option, `the name of ${of}`, text);
    return text;
  };
}

/**
 * Reads one of several settings.
 *
 * @param option - the option
 * @returns reader that adds KEY=VALUE to those before; throws `WrongWord` at anything else
 */
export function settingOf(
  option: string,
): (text: string, before?: readonly string[]) => readonly string[] {
  return (text, before = []) => {
    if (text.indexOf("=") < 1)
      throw new WrongWord(option, "KEY=VALUE such as sites.main.place=NOR", text);
    return [...before, text];
  };
}

/**
 * Reads `--max-aside`.
 *
 * @param text - `12` or `5%`
 * @returns the text
 * @throws WrongWord when it is neither
 */
export function mostAside(text: string): string {
  try {
    asideLimit(text);
  } catch {
    throw new WrongWord(
      "--max-aside",
      "a number of rows such as 12, or a share of them such as 5%",
      text,
    );
  }
  return text;
}

/** A period, open where a day is not given. */
export interface Period {
  /** First day. */
  readonly from?: string;
  /** Last day. */
  readonly to?: string;
}

/**
 * Checks that a period does not end before it begins.
 *
 * @param period - first and last day, where given
 * @throws WrongWord when it does
 */
export function checkPeriod(period: Period): void {
  const { from, to } = period;
  if (from !== undefined && to !== undefined && from > to)
    throw new WrongWord("--to", `a day not before ${from}, which --from names`, to);
}
