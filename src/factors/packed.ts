/**
 * The shipped factors as judged once, so that a run need not read their YAML again.
 *
 * The YAML stays the authority: a pack serves only files with the digest it was made from.
 */

import type { Factor, FactorSet, Source } from "./factor.js";

interface Pack {
  readonly digest: string;
  readonly factors: readonly Factor[];
  readonly sources: readonly (readonly [string, Source])[];
}

/**
 * Packs a set.
 *
 * @param set - the shipped factors, without any of the user's
 * @returns a text in JSON
 */
export function packFactors(set: FactorSet): string {
  const pack: Pack = {
    digest: set.digest,
    factors: [...set.factors.values()],
    sources: [...set.sources],
  };
  return JSON.stringify(pack);
}

/**
 * Unpacks a set.
 *
 * @param text - a text from {@link packFactors}
 * @param digest - digest of the files as they are now
 * @returns the set; undefined when it was made from other files
 */
export function unpackFactors(text: string, digest: string): FactorSet | undefined {
  const pack = JSON.parse(text) as Pack;
  if (pack.digest !== digest) return undefined;
  return {
    factors: new Map(pack.factors.map((factor) => [factor.id, factor])),
    sources: new Map(pack.sources),
    digest,
  };
}
