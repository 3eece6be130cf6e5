import type { Slice } from "./slices.js";
import { heightOf, whiteAbove } from "./slices.js";

/** A slice at its place. */
export interface Placed {
  /** The slice. */
  readonly slice: Slice;
  /** Its upper edge, from the top of the column. [pt] */
  readonly top: number;
  /** The head is put above it. */
  readonly headed: boolean;
}

/** What stands on one page. */
export type PageOfSlices = readonly Placed[];

/**
 * Deals slices out to pages. Tied slices stay together as long as a page can hold them; a slice
 * higher than a page stands alone and runs over the edge, so blocks must not make one.
 *
 * @param slices - slices in order
 * @param height - height of the column [pt]
 * @returns pages, at least one
 */
export function paginate(slices: readonly Slice[], height: number): readonly PageOfSlices[] {
  const pages: Placed[][] = [];
  let page: Placed[] = [];
  let bottom = 0;
  const turn = (): void => {
    if (page.length > 0) pages.push(page);
    page = [];
    bottom = 0;
  };
  const needs = (chain: readonly Slice[]): number => {
    const first = chain[0];
    if (!first) return 0;
    const above = page.at(-1)?.slice;
    return heightOf(chain) + (above ? whiteAbove(above, first) : headOf(first, height));
  };
  const put = (slice: Slice): void => {
    const headed = page.length === 0 && headOf(slice, height) > 0;
    const white = whiteAbove(page.at(-1)?.slice, slice);
    const top = bottom + white + (headed ? (slice.head?.height ?? 0) : 0);
    page.push({ slice, top, headed });
    bottom = top + slice.height;
  };

  for (const chain of chains(slices)) {
    if (chain[0]?.newPage === true) turn();
    const whole = heightOf(chain) + headOf(chain[0], height) <= height;
    if (whole && page.length > 0 && bottom + needs(chain) > height) turn();
    chain.forEach((slice, index) => {
      // A chain that no page can hold is parted, but its first slice is not left alone.
      const pair = chain.slice(index, index === 0 ? 2 : index + 1);
      if (!whole && page.length > 0 && bottom + needs(pair) > height) turn();
      put(slice);
    });
  }
  turn();
  return pages.length > 0 ? pages : [[]];
}

// A head that would push its own slice off the page is left out.
function headOf(slice: Slice | undefined, height: number): number {
  const head = slice?.head?.height ?? 0;
  return head + (slice?.height ?? 0) <= height ? head : 0;
}

function chains(slices: readonly Slice[]): readonly (readonly Slice[])[] {
  const found: Slice[][] = [];
  let open: Slice[] | undefined;
  for (const slice of slices) {
    if (open && slice.newPage !== true) open.push(slice);
    else found.push((open = [slice]));
    if (slice.tied !== true) open = undefined;
  }
  return found;
}
