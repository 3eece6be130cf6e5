/**
 * Text folded so that spellings that read alike are alike: case, accents, odd blanks and hyphens, marks that
 * do not show, letters of other scripts that look like Latin ones. Each sign keeps its place in the source.
 */

/** Text with the place of each of its UTF-16 units in a source. */
export interface Placed {
  /** The text. */
  readonly text: string;
  /** Where each unit begins in the source. [UTF-16 units] */
  readonly from: readonly number[];
  /** Where each unit ends in the source. [UTF-16 units] */
  readonly to: readonly number[];
}

/**
 * A source as it stands.
 *
 * @param text - the source
 * @returns the same text, each unit at its own place
 */
export function asItStands(text: string): Placed {
  const from = Array.from({ length: text.length }, (_, i) => i);
  return { text, from, to: from.map((i) => i + 1) };
}

// Capitals first: some look like another letter than their small form.
const CAPITALS: Readonly<Record<string, string>> = pairs("ΒbΗhΝnΖzΡpΥyΧxВbНhРpСcУyХx");

const LETTERS: Readonly<Record<string, string>> = {
  ...pairs("αaεeιiκkνvοoρpτtυuχx"),
  ...pairs("аaеeоoрpсcхxуyіiјjѕsкkмmтtһhԁdӏl"),
  ...pairs("ıiłløođdɡg"),
  ß: "ss",
  æ: "ae",
  œ: "oe",
};

function pairs(text: string): Record<string, string> {
  const found: Record<string, string> = {};
  for (let i = 0; i + 1 < text.length; i += 2) found[text.charAt(i)] = text.charAt(i + 1);
  return found;
}

/** Soft hyphens, joiners, marks of direction and variation: nothing a reader sees. */
const UNSEEN =
  /^(?:[\u00ad\u061c\u115f\u180e\u200b-\u200f\u202a-\u202e\u2060-\u2064\u2066-\u2069\ufeff]|\u034f|\p{Variation_Selector})$/u;
const HYPHEN = /^[\u2010-\u2015\u2212\u2e3a\u2e3b\ufe58\ufe63\uff0d]$/;
const APOSTROPHE = /^[\u2018\u2019\u201b\u02bc\u00b4`\uff07]$/;

const known = new Map<string, string>();

function folded(sign: string): string {
  const before = known.get(sign);
  if (before !== undefined) return before;
  const made = foldAnew(sign);
  known.set(sign, made);
  return made;
}

function foldAnew(sign: string): string {
  if (UNSEEN.test(sign)) return "";
  if (HYPHEN.test(sign)) return "-";
  if (APOSTROPHE.test(sign)) return "'";
  const bare = sign.normalize("NFKD").replace(/\p{M}/gu, "");
  return Array.from(bare)
    .map((letter) => {
      const low = CAPITALS[letter] ?? letter.toLowerCase();
      return LETTERS[low] ?? low;
    })
    .join("")
    .replace(/\p{M}/gu, "");
}

/**
 * Folds a text. Blanks in a row become one; where they hold an empty line, a line feed stands for them.
 *
 * @param placed - the text
 * @param joined - whether words broken by a hyphen at the end of a line are put together
 * @returns the folded text, each unit with its place in the source of `placed`
 */
export function fold(placed: Placed, joined = false): Placed {
  const { text } = placed;
  let made = "";
  const from: number[] = [];
  const to: number[] = [];
  const put = (units: string, first: number, last: number): void => {
    made += units;
    from.push(...Array<number>(units.length).fill(placed.from[first] ?? 0));
    to.push(...Array<number>(units.length).fill(placed.to[last] ?? 0));
  };
  for (let i = 0; i < text.length;) {
    const start = i;
    if (isBlank(text.charAt(i))) {
      let lines = 0;
      for (; i < text.length && isBlank(text.charAt(i)); i++) if (text[i] === "\n") lines += 1;
      if (joined && lines === 1 && /\p{L}-$/u.test(made.slice(-3))) {
        made = made.slice(0, -1);
        from.pop();
        to.pop();
      } else put(lines > 1 ? "\n" : " ", start, i - 1);
      continue;
    }
    const sign = String.fromCodePoint(text.codePointAt(i) ?? 0);
    i += sign.length;
    const units = folded(sign);
    if (units !== "") put(units, start, i - 1);
    // A mark of its own belongs to the letter before it.
    else if (to.length > 0) to[to.length - 1] = placed.to[i - 1] ?? 0;
  }
  return { text: made, from, to };
}

function isBlank(unit: string): boolean {
  return /\s/.test(unit) && unit !== "\ufeff";
}
