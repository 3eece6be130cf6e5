/**
 * How alike two orders are.
 */

/**
 * Kendall's tau-b.
 *
 *     τ = (C − D) / √((n₀ − n₁)(n₀ − n₂))
 *
 * C pairs in the same order, D in the other, n₀ all pairs, n₁ and n₂ those tied in the first and second list.
 *
 * @param a - values of the first order
 * @param b - values of the second, of the same things
 * @returns from −1 to 1; NaN where all are tied in one of them
 * @see M. G. Kendall, The treatment of ties in ranking problems, Biometrika 33, 1945
 */
export function kendallTau(a: readonly number[], b: readonly number[]): number {
  let [balance, tiedA, tiedB, pairs] = [0, 0, 0, 0];
  for (let i = 0; i < a.length; i++) {
    for (let j = 0; j < i; j++) {
      const [x, y] = [Math.sign(a[i]! - a[j]!), Math.sign(b[i]! - b[j]!)];
      balance += x * y;
      if (x === 0) tiedA += 1;
      if (y === 0) tiedB += 1;
      pairs += 1;
    }
  }
  return balance / Math.sqrt((pairs - tiedA) * (pairs - tiedB));
}

/**
 * Pairs that have an order in both lists, and those of them that keep it.
 *
 * @param a - values of the first order
 * @param b - values of the second, of the same things
 * @returns pairs, and how many of them have the same order
 */
export function pairsKept(
  a: readonly number[],
  b: readonly number[],
): { readonly pairs: number; readonly kept: number } {
  let [pairs, kept] = [0, 0];
  for (let i = 0; i < a.length; i++)
    for (let j = 0; j < i; j++) {
      const both = Math.sign(a[i]! - a[j]!) * Math.sign(b[i]! - b[j]!);
      if (both !== 0) pairs += 1;
      if (both > 0) kept += 1;
    }
  return { pairs, kept };
}
