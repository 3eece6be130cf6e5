/**
 * Inputs of a study as numbers with doubt, each drawn from its own stream, so that all options meet the same world.
 */

import { draw, quantileOf } from "../numbers/distributions.js";
import { ranksOf } from "../numbers/ranks.js";
import type { Spread } from "../numbers/spread.js";
import type { GivenText, Tag } from "./schema.js";

/** A number with its draws. */
export interface Drawn {
  /** What it is called: `prices.ink.pigment`. */
  readonly id: string;
  /** Central value. */
  readonly central: number;
  /** Draws; absent where there is no doubt. */
  readonly draws?: Float64Array | undefined;
}

/** An input of the file. */
export interface Input extends Drawn {
  /** Plain words. */
  readonly words: string;
  /** Unit as printed. */
  readonly unit: string;
  /** Its 10 % quantile. */
  readonly low: number;
  /** Its 90 % quantile. */
  readonly high: number;
  /** Where it is from. */
  readonly tag: Tag;
  /** Document it was taken from; empty where none is named. */
  readonly source: string;
}

/**
 * Doubt of a number that is given without ends, at 95 %, by where it is from: what has been paid or read is known,
 * what is offered may still be talked about, and what is guessed is guessed. Own convention, printed in the report.
 */
export const TAG_DOUBT: Readonly<Record<Tag, number>> = {
  invoice: 0.05,
  meter: 0.05,
  quote: 0.1,
  estimate: 0.3,
  default: 0.5,
};

/** Standard deviations from the middle to the end of a 95 % interval. */
const SIDE = 1.959964;

/**
 * Spread of an input.
 *
 * @param given - value with ends and tag
 * @param limits - limits it cannot leave
 * @returns triangular between given ends, fixed where exact or 0, else normal by tag
 */
function spreadOf(given: GivenText, limits: readonly [number, number]): Spread {
  const { value, low, high, exact, tag } = given;
  if (exact === true || (low !== undefined && low === high)) return { shape: "fixed", value };
  if (low !== undefined && high !== undefined) return { shape: "triangular", low, value, high };
  if (value === 0 || limits[0] === limits[1]) return { shape: "fixed", value };
  return { shape: "normal", value, sd: (TAG_DOUBT[tag] / SIDE) * Math.abs(value), limits };
}

/** How inputs are drawn. */
export interface Drawing {
  /** Number of draws. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
}

/** What an input is called and measured in. */
export interface Named {
  /** What it is called. */
  readonly id: string;
  /** Plain words. */
  readonly words: string;
  /** Unit as printed. */
  readonly unit: string;
  /** Limits it cannot leave; from 0 on, or up to 0 for what is below it, when absent. */
  readonly limits?: readonly [number, number];
  /** Stream it is drawn from; inputs of one stream rise and fall together. Its id when absent. */
  readonly stream?: string;
}

/**
 * Draws an input.
 *
 * @param named - what it is
 * @param given - value with ends and tag
 * @param drawing - number of draws and seed
 * @returns the input
 */
export function inputOf(named: Named, given: GivenText, drawing: Drawing): Input {
  const { id, words, unit, stream = id } = named;
  const { limits = given.value < 0 ? [-1e12, 0] : [0, 1e12] } = named;
  const spread = spreadOf(given, limits);
  const quantile = quantileOf(spread);
  const [low, high] = [quantile(0.1), quantile(0.9)];
  return {
    id,
    words,
    unit,
    central: given.value,
    draws:
      spread.shape === "fixed"
        ? undefined
        : draw(spread, ranksOf(drawing.seed, `invest.${stream}`, drawing.draws)),
    low,
    high,
    tag: given.tag,
    source: given.source ?? "",
  };
}

/**
 * An input without doubt that the study adds by itself.
 *
 * @param id - what it is called
 * @param words - plain words
 * @param central - its value
 * @param unit - unit as printed
 * @returns the input
 */
export function heldInput(id: string, words: string, central: number, unit = "1"): Input {
  return { id, words, unit, central, low: central, high: central, tag: "invoice", source: "" };
}
