/**
 * A number that knows where it came from: either a leaf (a setting or factor with its doubt) or the
 * result of a plain formula over other quantities. Rates, intensities and break-evens are quantities,
 * so that each figure can be followed back to its sources and evaluated for any draw.
 */

import type { Spread } from "./spread.js";

/** Where the value of a leaf was taken from, in the order of precedence. */
export type Provenance = "plant" | "default" | "constant";

/**
 * Ties two numbers that are drawn together: each mixes its own score with that of one stream, so that the two
 * have a correlation of the product of their weights, and each keeps its spread.
 */
export interface Bond {
  /** Name of the stream, the same for both. */
  readonly stream: string;
  /** Correlation of the number's score with that of the stream, from −1 to 1. */
  readonly weight: number;
}

/** A number that is drawn: a setting of the mill, a documented factor, or a fixed constant. */
export interface Leaf {
  /** Discriminates leaves from derived quantities. */
  readonly kind: "leaf";
  /** Name of the stream of draws, *factor @ owner*, such as `stenter.exhaust-humidity @ machine stenter-1`. */
  readonly id: string;
  /** Id of the factor or setting without owner. */
  readonly factor: string;
  /** Stream shared by every owner of the same default; draws then mix a common and an own part half and half. */
  readonly common?: string;
  /** Stream shared with another number that goes up or down with this one; absent for most. */
  readonly bond?: Bond;
  /** Unit, as `kWh/h`; `1` for a bare ratio. */
  readonly unit: string;
  /** What it is, in plain words. */
  readonly words: string;
  /** Central value and its doubt. */
  readonly spread: Spread;
  /** Who gave the value. */
  readonly provenance: Provenance;
  /** Key of the source, or `plant.yaml` with the place of the key. */
  readonly source: string;
  /** Its draws, where they were worked out elsewhere; its spread is not drawn then. */
  readonly drawn?: Float64Array;
}

/** A number worked out from others by a formula without memory. */
export interface Derived {
  /** Discriminates derived quantities from leaves. */
  readonly kind: "derived";
  /** Name of the formula, such as `stenter.heat-per-water`. */
  readonly id: string;
  /** Unit of the result. */
  readonly unit: string;
  /** The formula in words and symbols. */
  readonly words: string;
  /** Arguments of the formula, in its order. */
  readonly reads: readonly Quantity[];
  /** The formula: plain numbers in, plain number out. */
  readonly value: (...numbers: number[]) => number;
  /** Set when the formula is the plain product of its arguments, which draws can take a block at a time. */
  readonly multiplies?: true;
  /** Set when the formula is the sum of its arguments, each times one of these. */
  readonly weights?: readonly number[];
  /**
   * The formula for many draws at once, where that is faster than one by one: fills the first `n` places of `out`
   * from those of its arguments.
   */
  readonly block?: (out: Float64Array, reads: readonly Float64Array[], n: number) => void;
  /**
   * What the number is said to rest on in place of all that it reads: a correction by meters reads every rate of
   * a machine, and would name them all.
   */
  readonly shows?: readonly Quantity[];
}

/** A leaf or a derived number. */
export type Quantity = Leaf | Derived;

/**
 * Names a formula over other quantities.
 *
 * @param id - name of the formula
 * @param unit - unit of the result
 * @param words - the formula in words
 * @param reads - its arguments, in order
 * @param value - the formula
 * @returns the derived quantity
 */
export function derive(
  id: string,
  unit: string,
  words: string,
  reads: readonly Quantity[],
  value: (...numbers: number[]) => number,
): Derived {
  return { kind: "derived", id, unit, words, reads, value };
}

/**
 * A number without doubt: a conversion, a count, a share written in a plant file as a plain fact.
 *
 * @param id - what it is
 * @param value - the number
 * @param unit - its unit
 * @param words - what it is, in plain words
 * @param source - where it stands; `definition` for conversions
 * @returns a leaf that is the same in every draw
 */
export function constant(
  id: string,
  value: number,
  unit = "1",
  words = id,
  source = "definition",
): Leaf {
  return {
    kind: "leaf",
    id,
    factor: id,
    unit,
    words,
    spread: { shape: "fixed", value },
    provenance: "constant",
    source,
  };
}

/**
 * A sum of numbers, each times a number without doubt.
 *
 * @param id - name of the formula
 * @param unit - unit of the result
 * @param words - the formula in words, which tell it from sums with other weights
 * @param parts - numbers with their weights
 * @returns the derived quantity
 */
export function weighedSum(
  id: string,
  unit: string,
  words: string,
  parts: readonly { readonly of: Quantity; readonly weight: number }[],
): Derived {
  const weights = parts.map(({ weight }) => weight);
  const value = (...numbers: readonly number[]): number => {
    let sum = 0;
    for (let i = 0; i < numbers.length; i++) sum += weights[i]! * numbers[i]!;
    return sum;
  };
  const reads = parts.map(({ of }) => of);
  return { ...derive(id, unit, words, reads, value), weights };
}

/** The number one, without unit: the rate of a term whose amount is the flow. */
export const ONE: Leaf = constant("one", 1, "1", "one");

/**
 * Collects the leaves a quantity rests on, each once, in the order they are first met.
 *
 * @param quantity - where to start
 * @returns its leaves
 */
export function leavesOf(quantity: Quantity): readonly Leaf[] {
  const seen = new Set<Quantity>();
  const leaves: Leaf[] = [];
  const visit = (node: Quantity): void => {
    if (seen.has(node)) return;
    seen.add(node);
    if (node.kind === "leaf") leaves.push(node);
    else (node.shows ?? node.reads).forEach(visit);
  };
  visit(quantity);
  return leaves;
}

/**
 * Works a quantity out for one set of leaf values.
 *
 * @param quantity - what to work out
 * @param leafValue - value of each leaf
 * @param memo - values already worked out for the same set; shared between calls to save work
 * @returns the number
 */
export function evaluate(
  quantity: Quantity,
  leafValue: (leaf: Leaf) => number,
  memo = new Map<Quantity, number>(),
): number {
  const known = memo.get(quantity);
  if (known !== undefined) return known;
  const result =
    quantity.kind === "leaf"
      ? leafValue(quantity)
      : quantity.value(...quantity.reads.map((read) => evaluate(read, leafValue, memo)));
  memo.set(quantity, result);
  return result;
}
