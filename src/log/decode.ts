/**
 * Bytes as text, line by line as far as pieces allow, so that a fault is named by its line wherever the
 * bytes were cut.
 */

import { windows1252 } from "./windows-1252.js";

/** Why a file cannot be read as CSV. */
export class CsvFault extends Error {
  /** Shown in front of the message. */
  override readonly name = "CsvFault";
  /** Line of the fault. */
  readonly line: number;
  /** Stable code. */
  readonly code: "log-quote" | "log-binary" | "log-encoding";

  /**
   * @param code - what is wrong
   * @param line - where
   */
  constructor(code: CsvFault["code"], line: number) {
    super(`${code} at line ${line}`);
    this.code = code;
    this.line = line;
  }
}

const LINE_FEED = 10;

/**
 * Counts line breaks.
 *
 * @param text - text whose lines end in `\n`
 * @returns how many there are
 */
export function lineBreaks(text: string): number {
  let count = 0;
  for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) count++;
  return count;
}

/**
 * Decodes a file. Each piece ends behind a line break, the last one apart, and every line break of
 * whatever kind is given as `\n`. A byte order mark of UTF-8 overrules the encoding named, because nothing
 * else begins so.
 *
 * @param chunks - the file, cut anywhere
 * @param encoding - name of its encoding
 * @yields pieces of text
 * @returns pieces of text, in order
 * @throws {@link CsvFault} for binary data or text in another encoding, with its line
 */
export async function* decoded(
  chunks: AsyncIterable<Uint8Array>,
  encoding: string,
): AsyncGenerator<string> {
  let label: string | undefined;
  let held = new Uint8Array(0);
  let line = 1;
  const pieceOf = (bytes: Uint8Array, name: string): string => {
    const text = textOf(bytes, name, line);
    line += lineBreaks(text);
    return text;
  };
  for await (const chunk of chunks) {
    held = joined(held, chunk);
    // Three bytes are enough to see the mark.
    if (label === undefined && held.length < 3) continue;
    if (label === undefined) {
      label = labelOf(held, encoding);
      if (hasMark(held, label)) held = held.slice(label === "utf-8" ? 3 : 2);
    }
    const cut = behindLastBreak(held, label);
    if (cut === 0) continue;
    yield pieceOf(held.subarray(0, cut), label);
    held = held.slice(cut);
  }
  if (held.length > 0) yield pieceOf(held, label ?? encoding);
}

function textOf(bytes: Uint8Array, label: string, line: number): string {
  const zero = isWide(label) ? -1 : bytes.indexOf(0);
  if (zero >= 0) {
    const before = new TextDecoder(label).decode(bytes.subarray(0, zero));
    throw new CsvFault("log-binary", line + lineBreaks(plainBreaks(before)));
  }
  const text = tried(bytes, label, false);
  if (text === undefined) {
    throw new CsvFault("log-encoding", line + lineBreaks(longestText(bytes, label)));
  }
  return plainBreaks(text);
}

function tried(bytes: Uint8Array, label: string, open: boolean): string | undefined {
  if (label === "windows-1252") return windows1252(bytes);
  try {
    return new TextDecoder(label, { fatal: true, ignoreBOM: true }).decode(bytes, { stream: open });
  } catch {
    return undefined;
  }
}

// The decoder does not say where it stopped; more bytes never mend a fault, so halving finds it.
function longestText(bytes: Uint8Array, label: string): string {
  let good = 0;
  let bad = bytes.length;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (tried(bytes.subarray(0, middle), label, true) === undefined) bad = middle;
    else good = middle;
  }
  return plainBreaks(tried(bytes.subarray(0, good), label, true) ?? "");
}

function plainBreaks(text: string): string {
  return text.includes("\r") ? text.replace(/\r\n?/g, "\n") : text;
}

function labelOf(bytes: Uint8Array, encoding: string): string {
  if (bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf) return "utf-8";
  const label = new TextDecoder(encoding).encoding;
  // Text of two bytes a letter, taken for another encoding, would look like binary data.
  const two = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  if (two && !isWide(label)) throw new CsvFault("log-encoding", 1);
  return label;
}

function hasMark(bytes: Uint8Array, label: string): boolean {
  if (label === "utf-8") return bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  if (label === "utf-16le") return bytes[0] === 0xff && bytes[1] === 0xfe;
  return label === "utf-16be" && bytes[0] === 0xfe && bytes[1] === 0xff;
}

function isWide(label: string): boolean {
  return label.startsWith("utf-16");
}

function joined(first: Uint8Array<ArrayBuffer>, second: Uint8Array): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(first.length + second.length);
  all.set(first);
  all.set(second, first.length);
  return all;
}

function behindLastBreak(bytes: Uint8Array, label: string): number {
  if (!isWide(label)) return bytes.lastIndexOf(LINE_FEED) + 1;
  const low = label === "utf-16le" ? 0 : 1;
  for (let at = (bytes.length & ~1) - 2; at >= 0; at -= 2) {
    if (bytes[at + low] === LINE_FEED && bytes[at + 1 - low] === 0) return at + 2;
  }
  return 0;
}
