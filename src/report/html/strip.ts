import type { ProvenanceShares } from "../document.js";
import { checkShares, percents, PROVENANCES } from "../shares.js";
import type { Markup } from "./markup.js";
import { element, trusted } from "./markup.js";
import type { Page } from "./page.js";
import { COLOURS } from "./styles.js";

const HEIGHT = 8;
const SWATCH = 12;

/** Patterns of the four provenances, to stand once in the page; told apart without colour. */
export const PATTERNS: Markup = trusted(
  `<svg class="patterns" width="0" height="0" aria-hidden="true" focusable="false"><defs>` +
    pattern("measured", 4, `<rect width="4" height="4" fill="${COLOURS.ink}"></rect>`) +
    pattern(
      "allocated",
      4,
      `<path d="M-1,1 l2,-2 M0,4 l4,-4 M3,5 l2,-2" stroke="${COLOURS.ink}" stroke-width="1.1"></path>`,
    ) +
    pattern(
      "modelled",
      4,
      `<circle cx="1" cy="1" r="0.8" fill="${COLOURS.ink}"></circle>` +
        `<circle cx="3" cy="3" r="0.8" fill="${COLOURS.ink}"></circle>`,
    ) +
    pattern("default", 4, "") +
    "</defs></svg>",
);

function pattern(name: string, size: number, inside: string): string {
  return (
    `<pattern id="made-${name}" width="${size}" height="${size}" patternUnits="userSpaceOnUse">` +
    `<rect width="${size}" height="${size}" fill="${COLOURS.white}"></rect>${inside}</pattern>`
  );
}

/**
 * Writes the provenance of quantities: a thin bar in four patterns, and its key in words.
 *
 * @param shares - four shares
 * @param page - names of the provenances
 * @returns bar and key
 * @throws InputError when the shares are no shares
 */
export function sharesHtml(shares: ProvenanceShares, page: Page): Markup {
  checkShares(shares);
  const printed = percents(shares);
  let start = 0;
  const parts = PROVENANCES.map((name) => {
    const from = start;
    start += shares[name];
    return rect(name, percent(from), percent(shares[name]), shares[name] > 0);
  });
  const key = PROVENANCES.map((name) =>
    element(
      "li",
      {},
      element(
        "svg",
        { width: SWATCH, height: HEIGHT, "aria-hidden": "true", focusable: "false" },
        rect(name, "0", String(SWATCH), true),
      ),
      `${page.words.provenance[name]} ${printed[name]}`,
    ),
  );
  return element(
    "div",
    { class: "shares" },
    element(
      "svg",
      { class: "bar", width: "100%", height: HEIGHT, "aria-hidden": "true", focusable: "false" },
      parts,
    ),
    element("ul", {}, key),
  );
}

function rect(name: string, x: string, width: string, drawn: boolean): Markup | undefined {
  if (!drawn) return undefined;
  return element("rect", {
    x,
    y: 0.5,
    width,
    height: HEIGHT - 1,
    fill: `url(#made-${name})`,
    stroke: COLOURS.ink,
  });
}

function percent(share: number): string {
  return `${Number((share * 100).toFixed(3))}%`;
}
