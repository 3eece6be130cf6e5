/**
 * Windows-1252 as text. Several releases of Node take the encoding for ISO 8859-1 and lose dashes, quotes
 * and the euro sign without a word, so it is decoded here.
 */

/** Letters of the bytes 0x80 to 0x9F; five of them are control characters that stand for themselves. */
const UPPER = "€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008dŽ\u008f" + "\u0090‘’“”•–—˜™š›œ\u009džŸ";

/**
 * Decodes text. Every byte has a letter, so nothing is ever at fault.
 *
 * @param bytes - text as Windows-1252
 * @returns the text
 * @see WHATWG Encoding Standard, index windows-1252
 */
export function windows1252(bytes: Uint8Array): string {
  const pairs = new Uint8Array(2 * bytes.length);
  for (let i = 0; i < bytes.length; i++) {
    const byte = bytes[i]!;
    const code = byte >= 0x80 && byte <= 0x9f ? UPPER.charCodeAt(byte - 0x80) : byte;
    pairs[2 * i] = code & 0xff;
    pairs[2 * i + 1] = code >> 8;
  }
  return new TextDecoder("utf-16le", { ignoreBOM: true }).decode(pairs);
}
