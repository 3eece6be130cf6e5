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

/** What a page costs beside the white at its foot, so that none is begun without need. */
const A_PAGE = 2;

/** What an empty page would cost; the cost grows with the square of the white. */
const ALL_WHITE = 100;

/** A last page with more white than this holds a line or two that were better kept with the rest. */
const NEARLY_EMPTY = 0.9;
const A_STUB = 3;

/**
 * Deals slices out to pages. Tied slices stay together as long as a page can hold them; a slice
 * higher than a page stands alone and runs over the edge, so blocks must not make one.
 *
 * Pages end where it costs least over the whole report: white at the foot of a page costs, and so
 * does an end that parts what belongs together. The last page, and one before a slice that opens a
 * page, may be short.
 *
 * @param slices - slices in order
 * @param height - height of the column [pt]
 * @returns pages, at least one
 */
export function paginate(slices: readonly Slice[], height: number): readonly PageOfSlices[] {
  const dealt = chains(slices).flatMap((chain) => holdable(chain, height));
  const ends = cheapestEnds(dealt, height);
  const pages: PageOfSlices[] = [];
  for (let start = 0; start < dealt.length; start = ends[start] ?? dealt.length) {
    pages.push(placed(dealt.slice(start, ends[start]).flat(), height));
  }
  return pages.length > 0 ? pages : [[]];
}

// For each chain at which a page may begin: the chain at which the next page begins.
function cheapestEnds(dealt: readonly (readonly Slice[])[], height: number): readonly number[] {
  const costs = new Array<number>(dealt.length + 1).fill(0);
  const ends = new Array<number>(dealt.length).fill(dealt.length);
  for (let start = dealt.length - 1; start >= 0; start -= 1) {
    let least = Infinity;
    let bottom = headOf(dealt[start]?.[0], height);
    let above: Slice | undefined;
    for (let end = start; end < dealt.length; end += 1) {
      const chain = dealt[end] ?? [];
      const [first, last] = [chain[0], chain.at(-1)];
      if (!first || (end > start && first.newPage === true)) break;
      bottom += whiteAbove(above, first) + heightOf(chain);
      if (end > start && bottom > height) break;
      const isFree = end + 1 === dealt.length || dealt[end + 1]?.[0]?.newPage === true;
      const white = Math.max(0, 1 - bottom / height);
      const foot = isFree
        ? white > NEARLY_EMPTY
          ? A_STUB
          : 0
        : ALL_WHITE * white ** 2 + (last?.parting ?? 0);
      const cost = A_PAGE + foot + (costs[end + 1] ?? 0);
      if (cost <= least) {
        least = cost;
        ends[start] = end + 1;
      }
      above = last;
    }
    costs[start] = least;
  }
  return ends;
}

function placed(slices: readonly Slice[], height: number): PageOfSlices {
  const page: Placed[] = [];
  let bottom = 0;
  for (const slice of slices) {
    const headed = page.length === 0 && headOf(slice, height) > 0;
    const white = whiteAbove(page.at(-1)?.slice, slice);
    const top = bottom + white + (headed ? (slice.head?.height ?? 0) : 0);
    page.push({ slice, top, headed });
    bottom = top + slice.height;
  }
  return page;
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

// A chain that no page can hold is parted, but its first slice is not left alone.
function holdable(chain: readonly Slice[], height: number): readonly (readonly Slice[])[] {
  const holds = (part: readonly Slice[]): boolean =>
    heightOf(part) + headOf(part[0], height) <= height;
  if (holds(chain)) return [chain];
  const pair = chain.slice(0, 2);
  const first = holds(pair) ? [pair] : pair.map((slice) => [slice]);
  return [...first, ...chain.slice(2).map((slice) => [slice])];
}
