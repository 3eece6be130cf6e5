/**
 * What yields by workflow do to the swings of a saving.
 */

import { leafRange } from "../account/draws.js";
import type { IndicatorId } from "../account/indicators.js";
import type { FactorSwing, Swings } from "../account/swings.js";
import type { Workflow } from "../plant/shipped-routes.js";
import type { GivenYield, WorkflowYields } from "./yields.js";

/**
 * Swings with yields by workflow in them. The share saved is 1 − (P/D)(A_D/A_P), so that every swing is
 * worked over with the ratio of the areas at their medians, and each yield has a swing of its own.
 *
 * @param swings - swings of 1 − P/D
 * @param yields - the yields in force
 * @returns swings by indicator, widest first
 */
export function swingsWithYields(
  swings: ReadonlyMap<IndicatorId, Swings>,
  yields: WorkflowYields,
): ReadonlyMap<IndicatorId, Swings> {
  const ratio = (moved?: GivenYield, value = NaN): number => {
    const area = (arm: Workflow): number =>
      yields.given
        .filter((one) => one.arm === arm)
        .reduce(
          (total, one) =>
            total + one.printed * (one === moved ? value : leafRange(one.leaf).median),
          yields.fixed[arm],
        );
    return area("dye") / area("pigment");
  };
  const middle = ratio();
  const reworked = (saving: number, areas: number): number => 1 - (1 - saving) * areas;
  return new Map(
    [...swings].map(([id, { base, factors }]) => {
      const own = yields.given.flatMap((one): readonly FactorSwing[] => {
        const { low, high } = leafRange(one.leaf);
        const [atLow, atHigh] = [low, high].map((value) => reworked(base, ratio(one, value)));
        const width = Math.abs((atHigh ?? NaN) - (atLow ?? NaN));
        if (!(width > 1e-9)) return [];
        return [
          {
            factor: one.leaf.id,
            unit: one.leaf.unit,
            words: one.leaf.words,
            own: true,
            low: { value: low, saving: atLow ?? NaN },
            high: { value: high, saving: atHigh ?? NaN },
            width,
          },
        ];
      });
      const worked = factors.map((swing): FactorSwing => ({
        ...swing,
        low: { ...swing.low, saving: reworked(swing.low.saving, middle) },
        high: { ...swing.high, saving: reworked(swing.high.saving, middle) },
        width: swing.width * middle,
      }));
      return [
        id,
        {
          base: reworked(base, middle),
          factors: [...own, ...worked].sort(
            (a, b) => b.width - a.width || (a.factor < b.factor ? -1 : 1),
          ),
        },
      ];
    }),
  );
}
