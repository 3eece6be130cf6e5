/** HTML that may be put into a page as it is; made by {@link element} and {@link trusted} alone. */
export interface Markup {
  /** The HTML. */
  readonly html: string;
}

/** What an element may hold: text is escaped, nothing is left out. */
export type Child = Markup | string | undefined | readonly Child[];

/** Attributes by name: `true` writes the bare name, `undefined` and `false` write nothing. */
export type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

/** Elements without an end tag. */
const VOID = new Set(["meta"]);

// Marks that turn the order of the letters round could make a text read as what it is not.
const TURNING = /[\u202a-\u202e\u2066-\u2069]/g;

const UNFIT = /[\p{Cs}\p{Co}\ufffe\uffff]|[^\P{Cc}\t\n]/gu;

/**
 * Escapes a text for HTML, inside elements and attributes alike. Letters and accents are composed;
 * what has no form, or would turn the reading order, becomes a visible square.
 *
 * @param text - anything a log may hold
 * @returns the text as HTML
 */
export function escaped(text: string): string {
  return text
    .normalize("NFC")
    .replace(/\r\n?/g, "\n")
    .replace(UNFIT, "\u25a1")
    .replace(TURNING, "\u25a1")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("'", "&#39;");
}

/**
 * Lets HTML from our own code into the page as it is.
 *
 * @param html - HTML in which every text is escaped already
 * @returns markup
 */
export function trusted(html: string): Markup {
  return { html };
}

/**
 * Makes an element.
 *
 * @param name - its name
 * @param attributes - its attributes
 * @param children - texts, to be escaped, and other elements
 * @returns markup
 */
export function element(
  name: string,
  attributes: Attributes = {},
  ...children: readonly Child[]
): Markup {
  const written = Object.entries(attributes).map(([key, value]) => {
    if (value === undefined || value === false) return "";
    return value === true ? ` ${key}` : ` ${key}="${escaped(String(value))}"`;
  });
  const start = `<${name}${written.join("")}>`;
  return { html: VOID.has(name) ? start : `${start}${inner(children)}</${name}>` };
}

/**
 * Joins texts and elements.
 *
 * @param children - texts, to be escaped, and elements
 * @returns markup
 */
export function joined(...children: readonly Child[]): Markup {
  return { html: inner(children) };
}

function inner(children: readonly Child[]): string {
  return children.map(written).join("");
}

function written(child: Child): string {
  if (child === undefined) return "";
  if (typeof child === "string") return escaped(child);
  return "html" in child ? child.html : inner(child);
}
