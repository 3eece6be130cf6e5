/**
 * Why suppliers stand otherwise at one mix than in their own: the part of the difference that is mix.
 */

import type { Range } from "../compare/compare.js";
import type { ReferenceMix } from "./reference.js";
import type { Standings } from "./standings.js";

/** What of a supplier the sentence is made from. */
interface Shown {
  /** Name. */
  readonly alias: string;
  /** As it stands in its own mix. */
  readonly crude: Range;
  /** Strata of the mix. */
  readonly cells: readonly { readonly accepted: number; readonly value?: Range }[];
  /** Accepted area in the mix. */
  readonly accepted: number;
}

/** An order turned round. */
export interface Reversal {
  /** Takes less as it stands. */
  readonly first: Side;
  /** Takes less at the mix. */
  readonly second: Side;
  /** What sets the mixes apart most, such as `pigment` or `cotton`. */
  readonly of: string;
  /** Share of it in the mix. [-] */
  readonly inMix: number;
}

/** One side of a reversal. */
export interface Side {
  /** Supplier. */
  readonly alias: string;
  /** Value as it stands. */
  readonly crude: number;
  /** Value at the mix. */
  readonly atMix: number;
  /** Share of what sets the mixes apart in its own area. [-] */
  readonly share: number;
}

/**
 * Finds the pair whose order is turned round most plainly by the mix, and what of the mix does it.
 *
 * @param mix - the mix
 * @param suppliers - suppliers
 * @param standings - their places
 * @returns the pair; undefined where values as they stand have the order of those at the mix
 */
export function reversalOf(
  mix: ReferenceMix,
  suppliers: readonly Shown[],
  standings: Standings,
): Reversal | undefined {
  const { ranked } = standings;
  const shown = ranked.flatMap(({ alias, value }) => {
    const supplier = suppliers.find((one) => one.alias === alias);
    return supplier === undefined || value === undefined
      ? []
      : [{ supplier, crude: supplier.crude.median, atMix: value.median }];
  });
  let best:
    | {
        readonly a: (typeof shown)[number];
        readonly b: (typeof shown)[number];
        readonly size: number;
      }
    | undefined;
  for (const a of shown)
    for (const b of shown) {
      if (!(a.crude < b.crude && a.atMix > b.atMix)) continue;
      const size = Math.min(b.crude / a.crude, a.atMix / b.atMix);
      if (best === undefined || size > best.size) best = { a, b, size };
    }
  if (best === undefined) return undefined;
  const { a, b } = best;
  const { of, inMix, holds } = mainPart(mix, a.supplier);
  const side = ({ supplier, crude, atMix }: typeof a): Side => ({
    alias: supplier.alias,
    crude,
    atMix,
    share: shareOf(supplier, holds),
  });
  return { first: side(a), second: side(b), of, inMix };
}

// The class of route, or of cloth, whose share in the supplier's own mix does most to its value as it stands.
function mainPart(
  mix: ReferenceMix,
  supplier: Shown,
): { readonly of: string; readonly inMix: number; readonly holds: readonly boolean[] } {
  const by = mix.strata.some(({ classes }) => classes.route !== undefined) ? "route" : "cloth";
  const words = [...new Set(mix.strata.map(({ classes }) => classes[by] ?? "all cloth"))];
  const parts = words.map((of) => {
    const holds = mix.strata.map(({ classes }) => (classes[by] ?? "all cloth") === of);
    const inMix = mix.strata.reduce(
      (sum, { weight }, k) => sum + (holds[k] === true ? weight : 0),
      0,
    );
    return { of, inMix, holds, more: shareOf(supplier, holds) - inMix };
  });
  // What it has more of than the mix, for that is what its own value leans on.
  return parts.reduce((most, part) => (part.more > most.more ? part : most));
}

function shareOf({ cells, accepted }: Shown, holds: readonly boolean[]): number {
  const area = cells.reduce((sum, cell, k) => sum + (holds[k] === true ? cell.accepted : 0), 0);
  return accepted > 0 ? area / accepted : 0;
}
