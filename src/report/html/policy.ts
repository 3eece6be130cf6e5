/**
 * The page's own rules: one style sheet and one script, both known by their digest, and no network.
 */

import { sha256 } from "@noble/hashes/sha2.js";
import { utf8ToBytes } from "@noble/hashes/utils.js";

/**
 * Writes the content security policy of a page.
 *
 * @param style - text of the style element, to the letter
 * @param script - text of the script element, to the letter
 * @returns value of the policy
 * @see W3C Content Security Policy Level 3, 8.4 on hashes
 */
export function policy(style: string, script: string): string {
  return [
    "default-src 'none'",
    `style-src '${digest(style)}'`,
    `script-src '${digest(script)}'`,
    "font-src data:",
    "img-src 'none'",
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
}

function digest(text: string): string {
  return `sha256-${btoa(String.fromCharCode(...sha256(utf8ToBytes(text))))}`;
}
