/**
 * What a meter counts that no lot asks for: light, offices, leaks, cleaning, work that is not logged. It is never
 * spread over lots silently: it stands in the balance of its meter as a stream of its own, above 0 and in doubt.
 */

import { lognormalFromInterval } from "../numbers/distributions.js";
import { MOST_OF_READING } from "./left-share.js";
import { normalQuantile } from "../numbers/normal.js";
import type { Leaf } from "../numbers/quantity.js";
import type { MeterText } from "../plant/meter-part.js";
import { baseWeights, type LogDoubt, toldBase } from "./base-told.js";
import { type BaseLoad, baseLoad, type NoBaseLoad } from "./base-load.js";

/** How a stream without meter was found. */
export interface BaseStream {
  /** Whether it was given, found by regression, or taken wide. */
  readonly by: "given" | "regression" | "wide";
  /** The stream over the period; absent where the mill says that there is none. */
  readonly leaf?: Leaf;
  /** The regression, or why there is none. */
  readonly regression: BaseLoad | NoBaseLoad;
  /** Set when a base below 0 came out and was not used. */
  readonly refused?: number;
}

/**
 * Ends of the share of a meter that is not for lots, where nothing tells: of a site, and of a machine, which hardly
 * runs without cloth. Wide on purpose; common practice, no source.
 */
const WIDE = { site: [0.03, 0.4], machine: [0.005, 0.08] } as const;

/** Width of a 95 % interval in standard deviations. */
const WIDTH_OF_95 = 2 * normalQuantile(0.975);

/** A regression is used when it leaves no more than this of the doubt there was before. */
const TELLS = 0.8;

/** What is known of a meter over its months. */
export interface BaseAsked {
  /** Meter. */
  readonly name: string;
  /** As written. */
  readonly meter: MeterText;
  /** Unit of the computation per unit of the meter. */
  readonly unit: number;
  /** Consumption by month. */
  readonly metered: Float64Array;
  /** Production by month, in what the model says that lots take. */
  readonly modelled: Float64Array;
  /** Share of each month that readings cover. */
  readonly covered: Float64Array;
  /** Streams of meters below it, which are no part of its own. */
  readonly below: number;
  /** Degree days of the months in full, where they are known of all of them. */
  readonly degrees?: { readonly words: string; readonly values: Float64Array };
  /** Share of the area that is in no figure, because its lots have no counterpart. */
  readonly unlogged: number;
  /**
   * Mean and standard deviation, over draws of the model, of Σ weight × what lots take in a month; the months are
   * numbered as the other columns are.
   */
  readonly mix: (weights: Float64Array) => { readonly mean: number; readonly sd: number };
}

/**
 * Finds the stream without meter.
 *
 * @param asked - what is known
 * @returns the stream
 */
export function baseStream(asked: BaseAsked): BaseStream {
  const { name, meter, unit, metered, covered, below, unlogged } = asked;
  const total = metered.reduce((sum, value) => sum + value, 0);
  const months = covered.reduce((sum, value) => sum + value, 0);
  const whole = [...metered.keys()].filter((i) => covered[i]! > 0.99);
  const of = (values: Float64Array): Float64Array => Float64Array.from(whole, (i) => values[i]!);
  const { degrees } = asked;
  const regression = baseLoad(
    of(metered),
    { words: "what lots take by the model", values: of(asked.modelled) },
    degrees === undefined ? [] : [{ words: degrees.words, values: of(degrees.values) }],
  );
  if (meter.base !== undefined) {
    const { low, high } = meter.base;
    if (!(high > 0)) return { by: "given", regression };
    const ends = [Math.max(low, high * 1e-3), Math.max(high, low * (1 + 1e-6))] as const;
    return {
      by: "given",
      leaf: streamLeaf(name, [months * unit * ends[0], months * unit * ends[1]], "plant"),
      regression,
    };
  }
  const [low, high] = WIDE[meter.covers === "site" ? "site" : "machine"];
  const left = Math.max(total - below, 0.05 * total);
  const ends = [(low + unlogged / 2) * left, (high + unlogged) * left] as const;
  const wide: LogDoubt = {
    mean: Math.log(ends[0] * ends[1]) / 2,
    sd: Math.log(ends[1] / ends[0]) / WIDTH_OF_95,
  };
  // What a machine takes without cloth is too little to be told from a slope.
  const seen =
    meter.covers === "site" && !("refused" in regression) && regression.usable
      ? seenBy(regression, asked, whole, months)
      : undefined;
  const found = seen === undefined ? NaN : seen.base - below;
  const told = seen === undefined ? undefined : toldBase(wide, found, seen.error);
  if (told !== undefined && told.sd < TELLS * wide.sd)
    return {
      by: "regression",
      leaf: streamLeaf(
        name,
        [
          Math.exp(told.mean - (WIDTH_OF_95 / 2) * told.sd),
          Math.exp(told.mean + (WIDTH_OF_95 / 2) * told.sd),
        ],
        "plant",
        MOST_OF_READING * total,
      ),
      regression,
    };
  return {
    by: "wide",
    leaf: streamLeaf(name, ends, "default", MOST_OF_READING * total),
    regression,
    ...(seen !== undefined && told === undefined && found < 0 ? { refused: found } : {}),
  };
}

// Base of all months by a fit, freed of what the model takes more or less in some months than a line would have it.
function seenBy(
  fit: BaseLoad,
  { modelled, metered, covered, degrees, mix }: BaseAsked,
  whole: readonly number[],
  months: number,
): { readonly base: number; readonly error: number } | undefined {
  const { changePoint, tested } = fit;
  if (!(fit.n > fit.p + 2)) return undefined;
  const column = Float64Array.from(whole, (i) =>
    changePoint === undefined ? modelled[i]! : Math.max(0, modelled[i]! - changePoint),
  );
  const days = tested?.pays === true ? degrees?.values : undefined;
  const columns = [
    column,
    ...(days === undefined ? [] : [Float64Array.from(whole, (i) => days[i]!)]),
  ];
  const warm = days === undefined ? 0 : days.reduce((sum, day, i) => sum + day * covered[i]!, 0);
  const weights = new Float64Array(modelled.length);
  baseWeights(columns, [months, 0, warm]).forEach((weight, at) => (weights[whole[at]!] = weight));
  const sum = (values: (i: number) => number): number =>
    whole.reduce((all, i) => all + values(i), 0);
  const strays = mix(weights);
  // Variance of Student's t with so few months.
  const spread = fit.sd * Math.sqrt((fit.n - fit.p) / (fit.n - fit.p - 2));
  return {
    base: sum((i) => weights[i]! * metered[i]!) - strays.mean,
    error: Math.hypot(spread * Math.sqrt(sum((i) => weights[i]! ** 2)), strays.sd),
  };
}

function streamLeaf(
  name: string,
  [low, high]: readonly [number, number],
  provenance: "plant" | "default",
  most = Infinity,
): Leaf {
  return {
    kind: "leaf",
    id: `meter.base @ meter ${name}`,
    factor: "meter.base",
    unit: "1",
    words: `what meter ${name} counts that no lot asks for`,
    spread: lognormalFromInterval(Math.sqrt(low * high), low, high, [0, most]),
    provenance,
    source: "meters.csv",
  };
}
