/**
 * Yield by workflow: what share of the printed area the other arm would have given as first quality.
 *
 *     A_ok = Σ accepted area as logged, over the lots of the arm's own routes
 *          + Σ printed area × yield drawn, over the lots of the other arm
 *
 * Without a yield in the plant file the other arm keeps the accepted area that was logged.
 */

import type { Group } from "../ledger/ledger.js";
import { draw } from "../numbers/distributions.js";
import type { Leaf } from "../numbers/quantity.js";
import { ranksOf } from "../numbers/ranks.js";
import { givenSpread } from "../plant/given.js";
import type { Plant } from "../plant/plant.js";
import type { Workflow } from "../plant/shipped-routes.js";
import { AMOUNTS } from "../steps/amounts.js";

/** Reference units of each arm, draw by draw, such as accepted m². */
export type ArmUnits = Readonly<Record<Workflow, Float64Array>>;

/** A yield given for one arm of one site. */
export interface GivenYield {
  /** Site. */
  readonly site: string;
  /** Arm whose lots would have yielded it. */
  readonly arm: Workflow;
  /** The share of first quality. */
  readonly leaf: Leaf;
  /** Printed area it acts on: that of the lots really printed on the other arm. [m²] */
  readonly printed: number;
}

/** Accepted area of both arms under yields by workflow. */
export interface WorkflowYields {
  /** Yields that act, by site and arm. */
  readonly given: readonly GivenYield[];
  /** Accepted area, draw by draw. [m²] */
  readonly accepted: ArmUnits;
  /** Area that a mean total is divided by to give the mean per m²: the harmonic mean of `accepted`. [m²] */
  readonly central: Readonly<Record<Workflow, number>>;
  /** Accepted area without the yields given, at which each of them acts on top. [m²] */
  readonly fixed: Readonly<Record<Workflow, number>>;
  /** Printed area that could have been of first quality. [m²] */
  readonly printed: number;
  /** Accepted area of one group on one arm, its yield at the harmonic mean of its draws. [m²] */
  readonly areaOf: (group: Group, arm: Workflow) => number;
}

const PRINTED = AMOUNTS.findIndex(({ name }) => name === "printed");
const ACCEPTED = AMOUNTS.findIndex(({ name }) => name === "accepted");
const ARMS = ["pigment", "dye"] as const;

/**
 * Accepted area of both arms, where the plant file gives a yield for lots of the other arm.
 *
 * @param plant - the print house
 * @param groups - groups of lots
 * @param uncovered - area of reprints that no reject covers; it counts on neither arm [m²]
 * @param count - number of draws
 * @param seed - seed of the draws
 * @returns areas and yields; undefined when no yield acts on these lots
 */
export function yieldsOf(
  plant: Plant,
  groups: readonly Group[],
  uncovered: number,
  count: number,
  seed: number,
): WorkflowYields | undefined {
  const bases = basesOf(groups, uncovered);
  const printedOf = (group: Group): number => bases.get(group) ?? 0;
  const given = Object.entries(plant.sites).flatMap(([site, text]) =>
    ARMS.flatMap((arm): readonly GivenYield[] => {
      const share = text.yield?.[arm];
      const printed = sum(
        groups.filter(({ key }) => key.site === site && key.own !== arm),
        printedOf,
      );
      if (share === undefined || !(printed > 0)) return [];
      const leaf: Leaf = {
        kind: "leaf",
        id: `yield.${arm} @ site ${site}`,
        factor: `yield.${arm}`,
        unit: "1",
        words: `share of first quality, had the lots of site ${site} been printed by ${arm}`,
        spread: givenSpread(share, [0, 1]),
        provenance: "plant",
        source: share.source,
      };
      return [{ site, arm, leaf, printed }];
    }),
  );
  if (given.length === 0) return undefined;
  const taken = ({ key }: Group, arm: Workflow): GivenYield | undefined =>
    key.own === arm ? undefined : given.find((one) => one.site === key.site && one.arm === arm);
  const fixedOf = (arm: Workflow): number =>
    sum(
      groups.filter((group) => bases.has(group) && taken(group, arm) === undefined),
      ({ amounts }) => amounts[ACCEPTED] ?? 0,
    );
  const fixed = { pigment: fixedOf("pigment"), dye: fixedOf("dye") };
  const shares = new Map(
    given.map((one) => [one, draw(one.leaf.spread, ranksOf(seed, one.leaf.id, count))]),
  );
  const acceptedOf = (arm: Workflow): Float64Array => {
    const area = new Float64Array(count).fill(fixed[arm]);
    for (const [one, share] of shares) {
      if (one.arm === arm) share.forEach((value, i) => (area[i] = area[i]! + one.printed * value));
    }
    return area;
  };
  const accepted = { pigment: acceptedOf("pigment"), dye: acceptedOf("dye") };
  const central = new Map([...shares].map(([one, share]) => [one, harmonicMean(share)]));
  return {
    given,
    accepted,
    central: { pigment: harmonicMean(accepted.pigment), dye: harmonicMean(accepted.dye) },
    fixed,
    printed: sum(groups, printedOf),
    areaOf: (group, arm) => {
      const share = taken(group, arm);
      return share === undefined
        ? (group.amounts[ACCEPTED] ?? 0)
        : printedOf(group) * (central.get(share) ?? NaN);
    },
  };
}

// Printed area of each group that could be of first quality. Overhead gives none. What reprints print beyond
// the rejects they replace is taken off reprints in proportion to the area of theirs that was not accepted.
function basesOf(groups: readonly Group[], uncovered: number): ReadonlyMap<Group, number> {
  const compared = groups.filter(({ key }) => key.pigment !== "" && key.kind !== "overhead");
  const gap = ({ key, amounts }: Group): number =>
    key.kind === "reprint" ? Math.max(0, (amounts[PRINTED] ?? 0) - (amounts[ACCEPTED] ?? 0)) : 0;
  const gaps = sum(compared, gap);
  const off = gaps > 0 ? Math.min(1, uncovered / gaps) : 0;
  return new Map(
    compared.map((group) => [group, (group.amounts[PRINTED] ?? 0) - off * gap(group)]),
  );
}

function sum(groups: readonly Group[], of: (group: Group) => number): number {
  return groups.reduce((total, group) => total + of(group), 0);
}

function harmonicMean(values: Float64Array): number {
  return values.length / values.reduce((total, value) => total + 1 / value, 0);
}
