/**
 * What a meter counts that no lot asks for: light, offices, leaks, cleaning, work that is not logged. It is never
 * spread over lots silently: it stands in the balance of its meter as a stream of its own, above 0 and in doubt.
 */

import { lognormalFromInterval } from "../numbers/distributions.js";
import type { Leaf } from "../numbers/quantity.js";
import type { MeterText } from "../plant/meter-part.js";
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

/**
 * Errors of a base by regression are taken so many times as large: goods differ from month to month, and the
 * error that the fit finds for itself does not hold that. In worlds where the truth is known, intervals were too
 * narrow without it.
 */
const MIX = 2;

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
  /** Share of the area that is in no figure, because its lots have no counterpart. */
  readonly unlogged: number;
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
  const regression = baseLoad(of(metered), {
    words: "what lots take by the model",
    values: of(asked.modelled),
  });
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
  const fit = "refused" in regression ? undefined : regression;
  const base = fit?.coefficients[0];
  const found = base === undefined ? NaN : base.value * months - below;
  // What a machine takes without cloth is too little to be told from a slope.
  const told = meter.covers === "site" && fit?.usable === true && base !== undefined && base.t >= 2;
  if (told && found > 0) {
    const error = Math.max(MIX * base.error * months, 0.1 * found);
    // Ends of a lognormal spread with this mean and standard deviation.
    const sd = Math.sqrt(Math.log1p((error / found) ** 2));
    const median = found * Math.exp(-(sd ** 2) / 2);
    return {
      by: "regression",
      leaf: streamLeaf(
        name,
        [median * Math.exp(-1.96 * sd), median * Math.exp(1.96 * sd)],
        "plant",
      ),
      regression,
    };
  }
  const [low, high] = WIDE[meter.covers === "site" ? "site" : "machine"];
  const left = Math.max(total - below, 0.05 * total);
  return {
    by: "wide",
    leaf: streamLeaf(name, [(low + unlogged / 2) * left, (high + unlogged) * left], "default"),
    regression,
    ...(found <= 0 ? { refused: found } : {}),
  };
}

function streamLeaf(
  name: string,
  [low, high]: readonly [number, number],
  provenance: "plant" | "default",
): Leaf {
  return {
    kind: "leaf",
    id: `meter.base @ meter ${name}`,
    factor: "meter.base",
    unit: "1",
    words: `what meter ${name} counts that no lot asks for`,
    spread: lognormalFromInterval(Math.sqrt(low * high), low, high, [0, Infinity]),
    provenance,
    source: "meters.csv",
  };
}
