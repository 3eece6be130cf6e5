/**
 * Direct standardisation: what each supplier would have taken for one and the same mix.
 *
 *     Y = Σ w_k x_k        var Y = Σ w_k² SE_k²
 *
 * w_k weight of stratum k in the mix, x_k what the supplier takes there for a square metre.
 */

/**
 * A value at the mix.
 *
 * @param weights - weights of the strata
 * @param values - values of the strata, in the same order
 * @returns the sum of weight and value, over the sum of weights
 */
export function standardised(weights: readonly number[], values: readonly number[]): number {
  let sum = 0;
  let total = 0;
  for (let i = 0; i < weights.length; i++) {
    sum += weights[i]! * values[i]!;
    total += weights[i]!;
  }
  return sum / total;
}

/** Draws of one supplier in each stratum; undefined where it printed nothing there. */
export type CellDraws = readonly (Float64Array | undefined)[];

/** How a stratum without data is filled: left out, or taken as the most or least of those who have it. */
export type MissingRule = "left out" | "most" | "least";

/**
 * Values at the mix, draw by draw.
 *
 * @param weights - weights of the strata
 * @param cells - draws of the supplier
 * @param all - draws that a stratum is filled from
 * @param rule - how a stratum without data is filled
 * @param only - strata that count; all when left out
 * @returns draws; undefined where no stratum is left
 */
export function standardisedDraws(
  weights: readonly number[],
  cells: CellDraws,
  all: readonly CellDraws[],
  rule: MissingRule,
  only: (stratum: number) => boolean = () => true,
): Float64Array | undefined {
  const count = [...cells, ...all.flat()].find((draws) => draws !== undefined)?.length ?? 0;
  const sum = new Float64Array(count);
  let total = 0;
  weights.forEach((weight, k) => {
    if (!only(k)) return;
    const draws = cells[k] ?? filled(all, k, rule, count);
    if (draws === undefined) return;
    total += weight;
    for (let i = 0; i < count; i++) sum[i] = sum[i]! + weight * draws[i]!;
  });
  if (!(total > 0)) return undefined;
  for (let i = 0; i < count; i++) sum[i] = sum[i]! / total;
  return sum;
}

function filled(
  all: readonly CellDraws[],
  k: number,
  rule: MissingRule,
  count: number,
): Float64Array | undefined {
  if (rule === "left out") return undefined;
  const there = all.flatMap((cells) => (cells[k] === undefined ? [] : [cells[k]]));
  if (there.length === 0) return undefined;
  const pick = rule === "most" ? Math.max : Math.min;
  const out = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    let value = there[0]![i]!;
    for (const draws of there) value = pick(value, draws[i]!);
    out[i] = value;
  }
  return out;
}
