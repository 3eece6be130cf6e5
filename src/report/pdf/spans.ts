import { outsideAddress } from "../address.js";
import type { Run } from "../document.js";
import type { Desk } from "./desk.js";
import type { Face } from "./faces.js";
import type { Link } from "./link.js";
import { printable } from "./printable.js";
import type { Colour, TextStyle } from "./sheet.js";
import { COLOURS, SMALLEST } from "./sheet.js";

/** A stretch of text that looks the same throughout, ready to be measured. */
export interface Span {
  /** Printable text. */
  readonly text: string;
  /** Face. */
  readonly face: Face;
  /** Size of the letters. [pt] */
  readonly size: number;
  /** Colour. */
  readonly colour: Colour;
  /** Height above the line. [pt] */
  readonly rise: number;
  /** Numbers have digits of equal width. */
  readonly digits: boolean;
  /** Stands on a light ground, as what is typed or read off a machine. */
  readonly code: boolean;
  /** Where it leads. */
  readonly link?: Link;
  /** Place that the stretch is the target of. */
  readonly place?: string;
}

/** What a cell asks for beyond its style. */
export interface Emphasis {
  /** Everything is set in the heavier face. */
  readonly strong?: boolean;
  /** Numbers have digits of equal width. */
  readonly digits?: boolean;
}

const MARK_SIZE = 0.68;
const MARK_RISE = 0.36;

/**
 * Turns runs into spans.
 *
 * @param runs - text as the report holds it
 * @param style - look where a run asks for none
 * @param desk - faces, places, and the tallies of what could not be set
 * @param emphasis - what a cell asks for
 * @returns spans in order
 */
export function spans(
  runs: readonly Run[],
  style: TextStyle,
  desk: Desk,
  emphasis: Emphasis = {},
): readonly Span[] {
  const { faces } = desk.pen;
  const plain = emphasis.strong === true ? faces.semibold : faces[style.face];
  const make = (text: string, look: Partial<Span> = {}): Span => {
    const face = look.face ?? plain;
    return {
      face,
      size: style.size,
      colour: style.colour,
      rise: 0,
      digits: emphasis.digits === true,
      code: false,
      ...look,
      text: printable(text, face.has, desk.replaced),
    };
  };
  return runs.map((run) => {
    switch (run.kind) {
      case "text":
        if (run.style === "bold") return make(run.text, { face: faces.semibold });
        if (run.style === "italic") return make(run.text, { face: faces.italic });
        return make(run.text, { code: run.style === "code" });
      case "figure-ref":
        return make(run.text);
      case "link": {
        const to = target(run.href, desk);
        if (!to) return make(run.text);
        return make(run.text, { colour: COLOURS.link, link: { to, says: run.text } });
      }
      case "note-ref": {
        const note = desk.notes.get(run.note);
        const size = Math.max(Math.min(SMALLEST, style.size), style.size * MARK_SIZE);
        const look = { size, rise: style.size * MARK_RISE };
        if (!note) {
          desk.dead.add(run.note);
          return make(`[${run.note}]`, look);
        }
        const first = !desk.marked.has(run.note);
        desk.marked.add(run.note);
        const link: Link = {
          to: { place: note.place },
          says: String(note.number),
          reference: true,
        };
        return make(String(note.number), { ...look, link, ...(first ? { place: note.back } : {}) });
      }
    }
  });
}

function target(href: string, desk: Desk): Link["to"] | undefined {
  if (href.startsWith("#")) {
    const id = href.slice(1);
    const place = desk.places.get(id) ?? desk.notes.get(id)?.place;
    if (place !== undefined) return { place };
  } else {
    const address = outsideAddress(href);
    if (address !== undefined) return { address };
  }
  desk.dead.add(href);
  return undefined;
}
