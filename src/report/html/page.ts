import type { Block, Drawing, ReportDocument } from "../document.js";
import type { Places } from "./places.js";
import type { HtmlWords } from "./words.js";

/** A block of one kind. */
export type BlockOf<Kind extends Block["kind"]> = Extract<Block, { readonly kind: Kind }>;

/** What a picture is called in the page. */
export interface DrawingNames {
  /** Its name in the page, letters, digits and hyphens: every id inside begins with it. */
  readonly id: string;
  /** Its title. */
  readonly title: string;
  /** What it shows, for those who do not see it. */
  readonly description: string;
}

/** What every block needs at hand when it is written. */
export interface Page {
  /** The report. */
  readonly document: ReportDocument;
  /** Words that no block brings along. */
  readonly words: HtmlWords;
  /** Anchors, notes and shown figures. */
  readonly places: Places;
  /** Writes a picture as an SVG element, every text in it escaped. */
  readonly drawingSvg: (drawing: Drawing, names: DrawingNames) => string;
  /** Notes whose mark has been written once. */
  readonly marked: Set<string>;
}
