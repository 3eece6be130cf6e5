/**
 * A picture as a small tree of SVG elements, normalised: no style element, no style attribute, no
 * class, no reference to anything outside, opaque colours only. `drawing-rules.ts` lists what may
 * stand in it.
 */
export interface Drawing {
  /** Width of the view box. */
  readonly width: number;
  /** Height of the view box. */
  readonly height: number;
  /** Elements in drawing order. */
  readonly children: readonly DrawingNode[];
}

/** An element of a picture, or a piece of its text. */
export type DrawingNode = string | DrawingElement;

/** An element of a picture. */
export interface DrawingElement {
  /** SVG element name. */
  readonly tag: string;
  /** Attributes as written in SVG. */
  readonly attributes: Readonly<Record<string, string>>;
  /** Children. */
  readonly children: readonly DrawingNode[];
}
