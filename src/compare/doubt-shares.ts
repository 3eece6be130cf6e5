/**
 * What the doubt of an indicator and of its saving rests on: Sobol' indices by factor.
 *
 * Two sets of draws, A and B, differ in the name of every stream. A third takes the streams of one factor from
 * B and all others from A. Owners of one default move together, and so do numbers that are bonded, for an index
 * of one of two that go together would say nothing of either.
 */

import { accountOf } from "../account/account.js";
import type { IndicatorId } from "../account/indicators.js";
import type { Program } from "../account/program.js";
import type { Swings } from "../account/swings.js";
import type { Leaf } from "../numbers/quantity.js";
import { sobolIndices, type SobolIndices } from "../numbers/sobol.js";

/** How much is asked for. */
export interface DoubtAsked {
  /** Number of factors. */
  readonly factors: number;
  /** Draws in each set. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
}

/** Indices of one factor, or of several that go together. */
export interface DoubtShare {
  /** Factors, by id. */
  readonly factors: readonly string[];
  /** What the first is, in plain words. */
  readonly words: string;
  /** Indices for the pigment route, the dye route and the share saved. */
  readonly of: Readonly<Record<"pigment" | "dye" | "saving", SobolIndices>>;
}

/**
 * Works indices out for the factors with the widest swings.
 *
 * @param program - the program
 * @param id - the indicator
 * @param swings - its swings, which choose the factors
 * @param asked - number of factors, draws, and the seed
 * @param onProgress - told what is being done
 * @returns shares, the largest total index of the saving first
 */
export function doubtShares(
  program: Program,
  id: IndicatorId,
  swings: Swings,
  asked: DoubtAsked,
  onProgress: (done: number, of: number) => void = () => undefined,
): readonly DoubtShare[] {
  const groups = groupsOf(program);
  const chosen = new Map<string, readonly Leaf[]>();
  for (const { factor } of swings.factors) {
    const found = [...groups].find(([, leaves]) =>
      leaves.some((leaf) => leaf.id === factor || leaf.factor === factor),
    );
    if (found !== undefined) chosen.set(...found);
    if (chosen.size >= asked.factors) break;
  }
  const outcome = (moved: (leaf: Leaf) => boolean): Outcome =>
    outcomeOf(program, id, moved, asked.draws, asked.seed);
  const a = outcome(() => false);
  const b = outcome(() => true);
  return [...chosen.values()]
    .map((leaves, at) => {
      onProgress(at, chosen.size);
      const own = new Set(leaves.map((leaf) => leaf.id));
      const ab = outcome((leaf) => own.has(leaf.id));
      const of = (what: keyof Outcome): SobolIndices => sobolIndices(a[what], b[what], ab[what]);
      return {
        factors: [...new Set(leaves.map(nameOf))].sort(),
        words: leaves[0]?.words ?? "",
        of: { pigment: of("pigment"), dye: of("dye"), saving: of("saving") },
      };
    })
    .sort((x, y) => y.of.saving.total.value - x.of.saving.total.value);
}

// A number that the mill gave is told from others of its kind by its owner.
function nameOf(leaf: Leaf): string {
  return leaf.provenance === "plant" ? leaf.id : leaf.factor;
}

interface Outcome {
  readonly pigment: Float64Array;
  readonly dye: Float64Array;
  readonly saving: Float64Array;
}

function outcomeOf(
  program: Program,
  id: IndicatorId,
  moved: (leaf: Leaf) => boolean,
  draws: number,
  seed: number,
): Outcome {
  const nodes = program.nodes.with((leaf) => (moved(leaf) ? renamed(leaf) : leaf));
  const { indicators } = accountOf({ ...program, nodes }, draws, seed);
  const pigment = indicators.pigment.get(id) ?? new Float64Array(draws);
  const dye = indicators.dye.get(id) ?? new Float64Array(draws);
  return { pigment, dye, saving: dye.map((value, i) => 1 - pigment[i]! / value) };
}

// A stream of another name is drawn independently; the second set is marked B throughout.
function renamed(leaf: Leaf): Leaf {
  return {
    ...leaf,
    id: `${leaf.id}#B`,
    ...(leaf.common === undefined ? {} : { common: `${leaf.common}#B` }),
    ...(leaf.bond === undefined ? {} : { bond: { ...leaf.bond, stream: `${leaf.bond.stream}#B` } }),
  };
}

// Leaves that share a default or a bond, directly or through others, are one group.
function groupsOf(program: Program): ReadonlyMap<string, readonly Leaf[]> {
  const parent = new Map<string, string>();
  const rootOf = (name: string): string => {
    let root = name;
    for (let up = parent.get(root); up !== undefined && up !== root; up = parent.get(root))
      root = up;
    return root;
  };
  const leaves = program.nodes.leaves().map(({ leaf }) => leaf);
  for (const leaf of leaves) {
    const names = [leaf.id, leaf.common, leaf.bond?.stream].filter((name) => name !== undefined);
    for (const name of names) if (!parent.has(name)) parent.set(name, name);
    for (const name of names) parent.set(rootOf(name), rootOf(leaf.id));
  }
  const groups = new Map<string, Leaf[]>();
  for (const leaf of leaves) {
    if (leaf.spread.shape === "fixed") continue;
    const root = rootOf(leaf.id);
    groups.set(root, [...(groups.get(root) ?? []), leaf]);
  }
  return groups;
}
