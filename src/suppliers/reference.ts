/**
 * The mix that all suppliers are worked out for: strata with weights, fixed before any quantity is.
 */

import * as z from "zod";
import type { TextFile } from "../factors/yaml-text.js";
import { readYaml } from "../factors/yaml-text.js";
import { judgeBy } from "../factors/schema-problems.js";
import type { Judged } from "../problems/problem.js";
import { digestOf } from "./canonical.js";
import { type Classes, type Dimension, DIMENSIONS, UNTOLD } from "./cloth.js";

/** Most strata of a mix. */
export const MOST_STRATA = 12;

/** Covered weight below which a level is too fine for a supplier. [-] */
const ENOUGH = 0.8;

/** A stratum of the mix. */
export interface MixStratum {
  /** What it holds, such as `cotton · reactive`. */
  readonly words: string;
  /** Classes it holds; a property that is not named may be any. */
  readonly classes: Readonly<Partial<Record<Dimension, string>>>;
  /** Weight; all add up to 1. */
  readonly weight: number;
}

/** A mix. */
export interface ReferenceMix {
  /** Where it came from. */
  readonly from: "file" | "pooled";
  /** Name, as the file gives it. */
  readonly name: string;
  /** Strata, heaviest first. */
  readonly strata: readonly MixStratum[];
  /** SHA-256 of strata and weights. */
  readonly digest: string;
}

/** Area of one supplier by classes. */
export interface MixArea {
  /** Classes. */
  readonly classes: Classes;
  /** Accepted area. [m²] */
  readonly area: number;
}

/** Schema of a file with a mix. */
export const MixFile = z
  .strictObject({
    millrace_mix: z.literal(1).describe("the number 1, the format of this file"),
    name: z.string().min(1).max(200).describe("what the mix is, such as orders of spring 2026"),
    strata: z
      .array(
        z
          .strictObject({
            cloth: z.string().min(1).optional().describe("a fibre such as cotton, or cotton blend"),
            weight: z
              .enum(["0-150", "150-250", "250+"])
              .optional()
              .describe("mass per area in g/m²: 0-150, 150-250 or 250+"),
            coverage: z
              .enum(["0-50", "50-100"])
              .optional()
              .describe("coverage in percent: 0-50 or 50-100"),
            route: z
              .enum(["pigment", "reactive", "acid", "disperse", "dye"])
              .optional()
              .describe("pigment, reactive, acid or disperse"),
            share: z.number().gt(0).max(100).describe("share of the mix in percent"),
          })
          .describe("a stratum: cloth, weight, coverage, route, share"),
      )
      .min(1)
      .max(MOST_STRATA)
      .describe("strata, at most 12, whose shares add up to 100"),
  })
  .describe("a reference mix");

/**
 * Reads a mix.
 *
 * @param file - the file
 * @returns the mix, or what is wrong with it
 */
export function readMix(file: TextFile): Judged<ReferenceMix> {
  const yaml = readYaml(file);
  if (yaml.value === undefined) return { problems: yaml.problems };
  const { value, problems } = judgeBy(MixFile, yaml.value);
  if (value === undefined) return { problems };
  const refused = (key: string, found: string, expected: string, remedy: string) => ({
    problems: [
      {
        code: "mix-unfit",
        severity: "refused" as const,
        file: file.name,
        key,
        value: found,
        expected,
        remedy,
      },
    ],
  });
  const sum = value.strata.reduce((total, { share }) => total + share, 0);
  if (!(Math.abs(sum - 100) <= 0.5))
    return refused("strata", String(sum), "shares that add up to 100", "Correct the shares.");
  const strata = value.strata.map(({ share, ...classes }) => ({
    classes: named(classes),
    weight: share / sum,
  }));
  const twice = strata.findIndex(({ classes }, i) =>
    strata.some((other, j) => j < i && overlap(classes, other.classes)),
  );
  if (twice >= 0)
    return refused(
      `strata[${twice}]`,
      wordsOf(strata[twice]!.classes),
      "strata that hold nothing twice",
      "Name the same properties in all strata.",
    );
  return { value: mixOf("file", value.name, strata), problems: [] };
}

function named(
  classes: Readonly<Partial<Record<Dimension, string | undefined>>>,
): MixStratum["classes"] {
  return Object.fromEntries(
    DIMENSIONS.flatMap((dimension) => {
      const value = classes[dimension];
      return value === undefined ? [] : [[dimension, value]];
    }),
  );
}

function overlap(a: MixStratum["classes"], b: MixStratum["classes"]): boolean {
  return DIMENSIONS.every(
    (dimension) =>
      a[dimension] === undefined || b[dimension] === undefined || a[dimension] === b[dimension],
  );
}

function wordsOf(classes: MixStratum["classes"]): string {
  const { cloth, weight, coverage, route } = classes;
  const parts = [
    cloth,
    weight === undefined ? undefined : `${weight} g/m²`,
    coverage === undefined ? undefined : `${coverage} % covered`,
    route,
  ].filter((part) => part !== undefined);
  return parts.length === 0 ? "all cloth" : parts.join(" · ");
}

function mixOf(
  from: ReferenceMix["from"],
  name: string,
  strata: readonly { readonly classes: MixStratum["classes"]; readonly weight: number }[],
): ReferenceMix {
  const sorted = strata
    .map(({ classes, weight }) => ({ words: wordsOf(classes), classes, weight }))
    .sort((a, b) => b.weight - a.weight || (a.words < b.words ? -1 : 1));
  return {
    from,
    name,
    strata: sorted,
    digest: digestOf(
      sorted.map(({ classes, weight }) => ({ ...classes, weight: Number(weight.toPrecision(12)) })),
    ),
  };
}

/** Levels from the finest to the coarsest. */
const LEVELS: readonly (readonly Dimension[])[] = [
  ["cloth", "weight", "coverage", "route"],
  ["cloth", "weight", "route"],
  ["cloth", "route"],
  ["route"],
];

/**
 * Pools the accepted areas of all suppliers into a mix. The level is the finest with at most twelve strata at
 * which each supplier covers 80 % of the weight; where none is, the coarser with the most covered. No quantity
 * but area is looked at.
 *
 * @param suppliers - areas of each supplier
 * @returns the mix
 */
export function pooledMix(suppliers: readonly (readonly MixArea[])[]): ReferenceMix {
  const mixes = LEVELS.map((dimensions) => pooledBy(suppliers, dimensions)).filter(
    ({ strata }) => strata.length > 0 && strata.length <= MOST_STRATA,
  );
  const least = (mix: ReferenceMix): number =>
    Math.min(...suppliers.map((areas) => coveredWeight(mix, areas)));
  const enough = mixes.find((mix) => least(mix) >= ENOUGH);
  const best = mixes.reduce<ReferenceMix | undefined>(
    (most, mix) => (most === undefined || least(mix) > least(most) ? mix : most),
    undefined,
  );
  return enough ?? best ?? mixOf("pooled", POOLED, [{ classes: {}, weight: 1 }]);
}

const POOLED = "accepted area of all suppliers together";

function pooledBy(
  suppliers: readonly (readonly MixArea[])[],
  dimensions: readonly Dimension[],
): ReferenceMix {
  const sums = new Map<string, { readonly classes: MixStratum["classes"]; area: number }>();
  for (const { classes, area } of suppliers.flat()) {
    if (dimensions.some((dimension) => classes[dimension] === UNTOLD)) continue;
    const own = named(Object.fromEntries(dimensions.map((one) => [one, classes[one]])));
    const text = wordsOf(own);
    const sum = sums.get(text) ?? { classes: own, area: 0 };
    sum.area += area;
    sums.set(text, sum);
  }
  const filled = [...sums.values()].filter(({ area }) => area > 0);
  const total = filled.reduce((sum, { area }) => sum + area, 0);
  return mixOf(
    "pooled",
    POOLED,
    filled.map(({ classes, area }) => ({ classes, weight: area / total })),
  );
}

/**
 * Stratum of the mix that classes belong to.
 *
 * @param mix - the mix
 * @param classes - classes of some cloth
 * @returns place in the list; −1 where the mix has no such cloth
 */
export function placeIn(mix: ReferenceMix, classes: Classes): number {
  return mix.strata.findIndex(({ classes: wanted }) =>
    DIMENSIONS.every((dimension) => {
      const word = wanted[dimension];
      return (
        word === undefined ||
        word === classes[dimension] ||
        (dimension === "route" &&
          word === "dye" &&
          classes.route !== "pigment" &&
          classes.route !== UNTOLD)
      );
    }),
  );
}

/**
 * Weight of the strata in which a supplier has accepted cloth.
 *
 * @param mix - the mix
 * @param areas - areas of the supplier
 * @returns share from 0 to 1
 */
export function coveredWeight(mix: ReferenceMix, areas: readonly MixArea[]): number {
  const there = new Set(
    areas.flatMap(({ classes, area }) => (area > 0 ? [placeIn(mix, classes)] : [])),
  );
  return mix.strata.reduce((sum, { weight }, i) => sum + (there.has(i) ? weight : 0), 0);
}

/**
 * The same mix with the route left to the supplier.
 *
 * @param mix - the mix
 * @returns strata without route, weights added up; undefined where the mix names no routes
 */
export function routeFree(mix: ReferenceMix): ReferenceMix | undefined {
  if (mix.strata.every(({ classes }) => classes.route === undefined)) return undefined;
  const sums = new Map<string, { classes: MixStratum["classes"]; weight: number }>();
  for (const { classes, weight } of mix.strata) {
    const { route: _route, ...rest } = classes;
    const text = wordsOf(rest);
    const sum = sums.get(text) ?? { classes: rest, weight: 0 };
    sums.set(text, { classes: rest, weight: sum.weight + weight });
  }
  return mixOf(mix.from, mix.name, [...sums.values()]);
}
