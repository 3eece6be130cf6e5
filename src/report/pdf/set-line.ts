import type { Desk } from "./desk.js";
import type { KitElement } from "./kit.js";
import type { Line } from "./lines.js";
import { number, rectangle, rgb } from "./operators.js";
import { WITHIN_TEXT } from "./partings.js";
import type { Slice } from "./slices.js";
import type { TextStyle } from "./sheet.js";
import { COLOURS, baseline } from "./sheet.js";

/**
 * Sets a line as part of an element of the structure, with the light ground of code, the lines
 * under links and the areas that can be followed.
 *
 * @param line - the line
 * @param x - its left end [pt]
 * @param y - line the letters stand on [pt]
 * @param element - element of the structure; none inside an artifact
 * @param desk - pages
 */
export function drawLine(
  line: Line,
  x: number,
  y: number,
  element: KitElement | undefined,
  desk: Desk,
): void {
  const { paper } = desk;
  for (const { span, setting, x: offset, width, blank = false } of line.pieces) {
    const left = x + offset;
    const { face, size, colour, link } = span;
    if (element && link) desk.tree.markLink(element, link);
    else if (element) desk.tree.mark(element);
    if (span.code && !blank) {
      const ground = rectangle(left - 1, y - size * 0.86, width + 2, size * 1.16);
      desk.pen.op(`${rgb(COLOURS.codeGround)} rg ${ground} f`);
    }
    desk.pen.text(face, size, left, y - span.rise, setting, colour);
    if (!element || !link || blank) continue;
    if (link.reference !== true) {
      const under = y + size * 0.17;
      desk.pen.op(
        `${rgb(colour)} RG 0.4 w ${number(left)} ${number(under)} m ${number(left + width)} ${number(under)} l S`,
      );
    }
    const above = y - span.rise - size * face.ascent;
    desk.tree.linkArea(left, above, width, size * (face.ascent - face.descent));
    if (span.place !== undefined) paper.place(span.place, above);
  }
}

/**
 * Makes a slice of each line of a text; the first two and the last two stay together.
 *
 * @param lines - lines of one paragraph
 * @param style - their style
 * @param left - left end [pt]
 * @param element - element of the structure
 * @param desk - pages
 * @returns slices in order
 */
export function textSlices(
  lines: readonly Line[],
  style: TextStyle,
  left: number,
  element: KitElement,
  desk: Desk,
): readonly Slice[] {
  const last = lines.length - 1;
  return lines.map((line, index) => ({
    height: style.leading,
    tied: index < last && (index === 0 || index === last - 1),
    ...(index < last ? { parting: WITHIN_TEXT } : {}),
    draw: (top) => {
      drawLine(line, left, top + baseline(style), element, desk);
    },
  }));
}
