/**
 * What programs of several houses have in common, put together once: what-ifs leave most of a mill as it is.
 */

import type { Arm } from "../plant/assemble.js";
import type { Lookup } from "../plant/quantities.js";
import type { Site } from "../plant/site.js";
import type { Indicator, IndicatorId } from "./indicators.js";
import { Nodes } from "./nodes.js";
import type { Outlet } from "./outlet.js";

/** A site with what finds its numbers. */
export interface SiteAtHand {
  /** What it was put together from. */
  readonly content: string;
  /** The site. */
  readonly site: Site;
  /** Finds its numbers. */
  readonly lookup: Lookup;
}

/** Conversions of a site with its indicators. */
export interface OutletAtHand {
  /** Conversions, as numbers of nodes. */
  readonly outlet: Outlet;
  /** Indicators. */
  readonly indicators: ReadonlyMap<IndicatorId, Indicator>;
}

/** Parts by what they were put together from. */
class Shelf<T> {
  readonly #parts = new Map<string, T>();

  /**
   * A part, made when it is asked for the first time.
   *
   * @param content - all that sets it apart from others
   * @param make - puts it together
   * @returns the part
   */
  once(content: string, make: () => T): T {
    let part = this.#parts.get(content);
    if (part === undefined) this.#parts.set(content, (part = make()));
    return part;
  }
}

/** Parts of programs that rest on the same factors as of the same day. */
export class Workshop {
  /** Quantities. */
  readonly nodes = new Nodes();
  /** Sites. */
  readonly sites = new Shelf<SiteAtHand>();
  /** Routes put together for a kind of cloth. */
  readonly arms = new Shelf<Arm>();
  /** Conversions to the fence. */
  readonly outlets = new Shelf<OutletAtHand>();
  readonly #texts = new WeakMap<object, string>();

  /**
   * What a part of a plant file says, as text: two parts that say the same have the same text.
   *
   * @param part - part of a plant file
   * @returns its text; empty for none
   */
  textOf(part: object | undefined): string {
    if (part === undefined) return "";
    let text = this.#texts.get(part);
    if (text === undefined) this.#texts.set(part, (text = JSON.stringify(part)));
    return text;
  }
}
