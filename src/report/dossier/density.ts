/**
 * Densities of spreads, for their pictures.
 */

import type { CurvePoint } from "../../charts/spread-curve.js";
import { quantileOf } from "../../numbers/distributions.js";
import type { Spread } from "../../numbers/spread.js";

/** Steps of a curve between its ends; few, since a dossier holds hundreds of curves. */
const STEPS = 56;

/** Probability beyond each end of a curve that has no ends of its own. */
const TAIL = 0.006;

/**
 * Follows the density of a spread. Curves of several spreads have the same scale.
 *
 *     normal      exp(−(x − m)² / 2s²)               lognormal   exp(−ln²(x/m) / 2 ln² GSD) / x
 *     triangular  straight up to the value and down  beta-PERT   (x − a)^(4μ) (b − x)^(4(1−μ))
 *
 * with μ = (value − a) / (b − a). Each is divided by its area under the curve.
 *
 * @param spread - the spread
 * @returns points with rising values and densities per unit of value; none without doubt
 */
export function densityCurve(spread: Spread): readonly CurvePoint[] {
  if (spread.shape === "fixed") return [];
  const [from, to] = endsOf(spread);
  const shape = shapeOf(spread);
  const values = Array.from({ length: STEPS + 1 }, (_, i) => {
    if (i === STEPS) return to;
    // A lognormal has its peak near its lower end, where even ratios put more points.
    return spread.shape === "lognormal"
      ? from * (to / from) ** (i / STEPS)
      : from + ((to - from) * i) / STEPS;
  });
  // The peak of a triangle may fall between two steps.
  if ("low" in spread && spread.value > from && spread.value < to) values.push(spread.value);
  const rising = [...new Set(values)].sort((a, b) => a - b);
  const heights = rising.map(shape);
  const area = rising.reduce((sum, value, i) => {
    const before = rising[i - 1];
    return before === undefined
      ? 0
      : sum + ((value - before) * ((heights[i] ?? 0) + (heights[i - 1] ?? 0))) / 2;
  }, 0);
  return rising.map((value, i) => [value, (heights[i] ?? 0) / area]);
}

type Doubtful = Exclude<Spread, { readonly shape: "fixed" }>;

function endsOf(spread: Doubtful): readonly [number, number] {
  if ("low" in spread) return [spread.low, spread.high];
  const quantile = quantileOf(spread);
  return [quantile(TAIL), quantile(1 - TAIL)];
}

function shapeOf(spread: Doubtful): (value: number) => number {
  switch (spread.shape) {
    case "normal":
      return (x) => Math.exp(-(((x - spread.value) / spread.sd) ** 2) / 2);
    case "lognormal":
      return (x) =>
        (Math.exp(-((Math.log(x / spread.value) / Math.log(spread.gsd)) ** 2) / 2) * spread.value) /
        x;
    case "triangular":
      return (x) =>
        x <= spread.value
          ? share(x - spread.low, spread.value - spread.low)
          : share(spread.high - x, spread.high - spread.value);
    case "uniform":
      return () => 1;
    case "pert": {
      const width = spread.high - spread.low;
      const mode = (spread.value - spread.low) / width;
      return (x) =>
        ((x - spread.low) / width) ** (4 * mode) * ((spread.high - x) / width) ** (4 * (1 - mode));
    }
  }
}

// A side without width is the peak itself.
function share(part: number, whole: number): number {
  return whole > 0 ? part / whole : 1;
}
