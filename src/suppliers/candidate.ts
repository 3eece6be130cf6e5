/**
 * A supplier made ready to be compared: its pack under the reader's own factors.
 */

import type { Program } from "../account/program.js";
import type { FactorSet } from "../factors/factor.js";
import type { Group } from "../ledger/ledger.js";
import type { Leaf } from "../numbers/quantity.js";
import { MissingFactor } from "../plant/quantities.js";
import { sentence } from "../problems/sentence.js";
import { widened } from "./bare-numbers.js";
import { canonicalText, digestOf } from "./canonical.js";
import { type Classes, classesOf, routeOf } from "./cloth.js";
import { factorDifferences, type FactorDifference, factorSetOf } from "./factor-list.js";
import type { MixArea } from "./reference.js";
import type { Pack } from "./schema.js";
import { groupsOf, placeOf } from "./strata.js";
import { plantOf, printedProgram } from "./work-out.js";
import type { Verified } from "./verify.js";

/** A supplier as it was given. */
export interface Given {
  /** Name in the report. */
  readonly alias: string;
  /** The pack. */
  readonly pack: Pack;
  /** Checks; absent for logs that the reader has worked out. */
  readonly verified?: Verified;
}

/** A supplier ready to be compared. */
export interface Candidate {
  /** Name in the report. */
  readonly alias: string;
  /** As it was given. */
  readonly given: Given;
  /** Terms of all lots as they were printed, under the reader's factors. */
  readonly program: Program;
  /** What ends the names of streams of its own machines. */
  readonly salt: string;
  /** Groups in the order of the strata. */
  readonly groups: readonly Group[];
  /** Classes of each group. */
  readonly classes: readonly Classes[];
  /** Class of each route. */
  readonly routes: ReadonlyMap<string, string>;
  /** Areas by classes. */
  readonly areas: readonly MixArea[];
  /** Factors of the pack that were replaced by the reader's. */
  readonly replaced: readonly FactorDifference[];
  /** Digest of what was printed and how, whatever the supplier is called. */
  readonly evidence: string;
}

/**
 * Makes a supplier ready. Its own factors give way to the reader's, so that all stand on the same ones; its
 * settings and sums stay. Draws of its own machines get streams of their own, named by what was printed, so
 * that neither name nor order of suppliers matters; fuels, grids and the like are one for all.
 *
 * @param given - the supplier
 * @param shipped - the reader's factors
 * @param asOf - day of the comparison
 * @returns the candidate, or why it cannot be worked out
 */
export function candidateOf(given: Given, shipped: FactorSet, asOf: string): Candidate | string {
  const { pack } = given;
  const own = factorSetOf(pack);
  const replaced = factorDifferences(pack.factors, shipped).filter(
    ({ id }) => isOfTheWorld(id) && shipped.factors.has(id),
  );
  const factors: FactorSet = {
    ...shipped,
    // Settings that the supplier stated as factors stay its own, and so does what only the pack knows.
    factors: new Map([
      ...own.factors,
      ...shipped.factors,
      ...[...own.factors].filter(([id, { overruled }]) => overruled && !isOfTheWorld(id)),
    ]),
    sources: new Map([...own.sources, ...shipped.sources]),
  };
  const salt = ` of ${saltOf(pack)}`;
  const groups = groupsOf(pack.strata);
  const known = given.verified?.printed;
  const program =
    known !== undefined && readsAlike(pack, shipped, asOf)
      ? known
      : rewritten(pack, factors, groups, asOf);
  if (typeof program === "string") return program;
  const classes = pack.strata.map((stratum) => classesOf(pack.boundary, stratum));
  const accepted = placeOf("accepted");
  if (!(groups.reduce((sum, { amounts }) => sum + (amounts[accepted] ?? 0), 0) > 0))
    return "no cloth was accepted, so there is nothing to divide by";
  return {
    alias: given.alias,
    given,
    program: salted(program, salt, shipped),
    salt,
    groups,
    classes,
    routes: new Map(
      pack.boundary.routes.map(({ route }) => [route, routeOf(pack.boundary, route)]),
    ),
    areas: groups.map(({ amounts }, i) => ({
      classes: classes[i]!,
      area: amounts[accepted] ?? 0,
    })),
    replaced,
    evidence: evidenceDigest(pack),
  };
}

// Whether the factors inside are those of the reader, to the last vintage and on both days.
function readsAlike(pack: Pack, shipped: FactorSet, asOf: string): boolean {
  const [first, last] = [pack.made, asOf].sort();
  return (
    pack.plant.gwp !== "AR5" &&
    factorDifferences(pack.factors, shipped).length === 0 &&
    pack.factors.every(({ id }) =>
      shipped.factors
        .get(id)
        ?.values.every(({ entered }) => entered <= (first ?? "") || entered > (last ?? "")),
    )
  );
}

function rewritten(
  pack: Pack,
  factors: FactorSet,
  groups: readonly Group[],
  asOf: string,
): Program | string {
  const plant = plantOf({ ...pack.plant, gwp: "AR6" }, factors);
  if (plant.value === undefined) return plant.problems.slice(0, 2).map(sentence).join(" ");
  try {
    return printedProgram(plant.value, factors, groups, asOf);
  } catch (error) {
    if (error instanceof MissingFactor) return error.message;
    return error instanceof Error ? error.message : String(error);
  }
}

/** Families of factors that are the same for every house. */
const WORLD = new Set(["fuel", "gwp", "grid", "substance", "ink", "fibre"]);

function isOfTheWorld(id: string): boolean {
  return WORLD.has(id.split(".")[0] ?? "");
}

// What was printed: no name, and no setting, so that a setting left unsaid moves no other draw.
function saltOf(pack: Pack): string {
  const printed = pack.strata.map(({ blend, weight, coverage, route, kind, lots, amounts }) => [
    blend,
    weight,
    coverage,
    route,
    kind,
    lots,
    amounts["accepted"] ?? 0,
  ]);
  return digestOf(printed.map((row) => canonicalText(row)).sort()).slice(0, 16);
}

/**
 * Digest of what was printed and how, whatever the supplier is called, and whatever its months and meters are said
 * to be: those can be moved without moving a figure.
 *
 * @param pack - the pack
 * @returns the same for one house under two names
 */
export function evidenceDigest(pack: Pack): string {
  const { house: _house, ...plant } = pack.plant;
  return digestOf({
    plant,
    strata: pack.strata.map(({ from: _from, ...one }) => canonicalText(one)).sort(),
  });
}

/**
 * Says whether a number belongs to a house: settings of machines and sites, not fuels, grids or fibres.
 *
 * @param leaf - the number
 * @returns whether it has an owner
 */
export function isOwned(leaf: Leaf): boolean {
  return leaf.id.includes(" @ ");
}

function salted(program: Program, salt: string, shipped: FactorSet): Program {
  const nodes = program.nodes.with((leaf) =>
    isOwned(leaf)
      ? {
          ...widened(leaf, shipped),
          id: `${leaf.id}${salt}`,
          ...(leaf.bond === undefined
            ? {}
            : { bond: { ...leaf.bond, stream: `${leaf.bond.stream}${salt}` } }),
        }
      : leaf,
  );
  return { ...program, nodes };
}
