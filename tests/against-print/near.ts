import { expect } from "vitest";

/**
 * Holds a figure against print.
 *
 * @param found - what the code gives
 * @param printed - what the source says
 * @param tolerance - largest share of the printed figure by which the two may differ
 */
export function expectNear(found: number, printed: number, tolerance: number): void {
  expect(
    Math.abs(found / printed - 1),
    `${found} against ${printed} as printed`,
  ).toBeLessThanOrEqual(tolerance);
}
