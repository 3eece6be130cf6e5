import type { Desk } from "./desk.js";
import { number, rectangle, rgb } from "./operators.js";
import type { PageOfSlices } from "./pages.js";
import { PAGE } from "./sheet.js";
import type { Frame } from "./slices.js";

/** A frame on one page. */
interface Part {
  readonly frame: Frame;
  top: number;
  bottom: number;
  /** White between the text and an edge where the frame is cut by the end of a page. */
  readonly slack: number;
}

/** White at a cut: outer frames stand off further than what they hold. [pt] */
const OUTERMOST = 7;
const NESTED = 3;

/**
 * Finds the frames that reach each page.
 *
 * @param pages - slices at their places
 * @param desk - pages
 * @returns drawing operators for the frames of each page
 */
export function frames(pages: readonly PageOfSlices[], desk: Desk): readonly (() => void)[] {
  const found = pages.map(partsOf);
  const begun = new Set<Frame>();
  return found.map((parts, index) => {
    const later = new Set(found.slice(index + 1).flatMap((rest) => rest.map(({ frame }) => frame)));
    for (const part of parts) {
      if (begun.has(part.frame)) part.top -= part.slack;
      if (later.has(part.frame)) part.bottom += part.slack;
      begun.add(part.frame);
    }
    return () => {
      for (const { frame, top, bottom } of parts) {
        const shape = rectangle(frame.left, PAGE.top + top, frame.width, bottom - top);
        desk.pen.ornament(`${rgb(frame.colour)} RG ${number(frame.weight)} w ${shape} S`);
      }
    };
  });
}

function partsOf(page: PageOfSlices): readonly Part[] {
  const parts = new Map<Frame, Part>();
  for (const { slice, top, headed } of page) {
    const upper = headed ? top - (slice.head?.height ?? 0) : top;
    const bottom = top + slice.height;
    slice.frames?.forEach((frame, depth) => {
      const known = parts.get(frame);
      if (known) known.bottom = bottom;
      else parts.set(frame, { frame, top: upper, bottom, slack: depth === 0 ? OUTERMOST : NESTED });
    });
  }
  return [...parts.values()];
}
