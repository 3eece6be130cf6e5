/**
 * Plain loops over the first numbers of arrays, for work that is done millions of times.
 */

/**
 * Adds a multiple of one array to another: into += by × a.
 *
 * @param into - changed
 * @param a - what is added
 * @param by - how many times
 * @param n - how many numbers
 */
export function addScaled(into: Float64Array, a: Float64Array, by: number, n: number): void {
  for (let i = 0; i < n; i++) into[i] = into[i]! + by * a[i]!;
}

/**
 * Adds products to a stretch of an array: into[start + i] += a × b.
 *
 * @param into - changed
 * @param start - where the stretch begins
 * @param a - first factor
 * @param b - second factor
 * @param n - how many numbers
 */
export function addProduct(
  into: Float64Array,
  start: number,
  a: Float64Array,
  b: Float64Array,
  n: number,
): void {
  for (let i = 0; i < n; i++) into[start + i] = into[start + i]! + a[i]! * b[i]!;
}

/**
 * Sum of products: Σ a × b.
 *
 * @param a - first factor
 * @param b - second factor
 * @param n - how many numbers
 * @returns the sum
 */
export function sumProduct(a: Float64Array, b: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += a[i]! * b[i]!;
  return sum;
}
