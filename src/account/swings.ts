/**
 * One-at-a-time swings: what each factor at the low and the high end of its spread does to the saving,
 * all others at their medians.
 */

import { leafRange } from "./draws.js";
import type { IndicatorId } from "./indicators.js";
import type { Leaf } from "../numbers/quantity.js";
import { fenceOf, type Program, unityOf } from "./program.js";

/** Effect of one factor on the saving of one indicator. */
export interface FactorSwing {
  /** Stream of the factor, or the factor itself when several machines share its default. */
  readonly factor: string;
  /** Unit. */
  readonly unit: string;
  /** What it is. */
  readonly words: string;
  /** Whether it came from the plant file. */
  readonly own: boolean;
  /** Low end and the saving there. */
  readonly low: { readonly value: number; readonly saving: number };
  /** High end and the saving there. */
  readonly high: { readonly value: number; readonly saving: number };
  /** Width of the swing. */
  readonly width: number;
}

/** Swings of one indicator. */
export interface Swings {
  /** Saving with everything at its median. */
  readonly base: number;
  /** Swings, widest first. */
  readonly factors: readonly FactorSwing[];
}

/**
 * Works out swings of the saving 1 − P/D.
 *
 * @param program - terms and conversions
 * @param ids - indicators
 * @returns swings by indicator
 */
export function swingsOf(
  program: Program,
  ids: readonly IndicatorId[],
): ReadonlyMap<IndicatorId, Swings> {
  const { nodes } = program;
  const ranges = nodes.leaves().map(({ leaf, at }) => ({ leaf, at, ...leafRange(leaf) }));
  const medians = new Map(ranges.map(({ at, median }) => [at, median]));
  const totals = totalsOf(program, ids);
  const saving = (moved: ReadonlyMap<number, number>): ReadonlyMap<IndicatorId, number> => {
    const values = nodes.evaluate((_, at) => moved.get(at) ?? medians.get(at) ?? NaN);
    return totals(values);
  };
  const base = saving(new Map());
  // Owners of one default are moved together: their doubt is mostly the same ignorance.
  const groups = new Map<string, { leaf: Leaf; at: number; low: number; high: number }[]>();
  for (const { leaf, at, low, high } of ranges) {
    if (!(high > low)) continue;
    const name = leaf.common ?? leaf.id;
    groups.set(name, [...(groups.get(name) ?? []), { leaf, at, low, high }]);
  }
  const result = new Map<IndicatorId, FactorSwing[]>(ids.map((id) => [id, []]));
  for (const [factor, members] of groups) {
    const first = members[0];
    if (first === undefined) continue;
    const low = saving(new Map(members.map((member) => [member.at, member.low])));
    const high = saving(new Map(members.map((member) => [member.at, member.high])));
    for (const id of ids) {
      const atLow = low.get(id) ?? NaN;
      const atHigh = high.get(id) ?? NaN;
      const width = Math.abs(atHigh - atLow);
      if (!(width > 1e-9)) continue;
      result.get(id)?.push({
        factor,
        unit: first.leaf.unit,
        words: first.leaf.words,
        own: first.leaf.provenance === "plant",
        low: { value: first.low, saving: atLow },
        high: { value: first.high, saving: atHigh },
        width,
      });
    }
  }
  return new Map(
    ids.map((id) => [
      id,
      {
        base: base.get(id) ?? NaN,
        factors: (result.get(id) ?? []).sort(
          (a, b) => b.width - a.width || (a.factor < b.factor ? -1 : 1),
        ),
      },
    ]),
  );
}

// Saving for one set of node values. Conversions are summed once per outlet and flow.
function totalsOf(
  program: Program,
  ids: readonly IndicatorId[],
): (values: Float64Array) => ReadonlyMap<IndicatorId, number> {
  const unity = unityOf(program.nodes);
  const outlets = [...new Set(program.classes.flatMap(({ outlets: o }) => [o.pigment, o.dye]))];
  const terms = program.terms.flatMap((term) => {
    const lotClass = program.classes[term.lotClass];
    const amount = lotClass?.amounts[term.amount] ?? 0;
    if (lotClass === undefined || amount === 0) return [];
    return [
      {
        arm: term.arm,
        flow: term.flow,
        rate: term.rate,
        amount,
        outlet: outlets.indexOf(lotClass.outlets[term.arm]),
      },
    ];
  });
  const flows = [...new Set(terms.map(({ flow }) => flow))];
  return (values) => {
    const machine = new Map<string, number>();
    for (const { arm, flow, rate, amount, outlet } of terms) {
      const key = `${outlet}|${arm}|${flow}`;
      machine.set(key, (machine.get(key) ?? 0) + amount * (values[rate] ?? NaN));
    }
    return new Map(
      ids.map((id) => {
        const total = { pigment: 0, dye: 0 };
        outlets.forEach((outlet, i) => {
          const intensities = outlet.indicators.get(id);
          for (const flow of flows) {
            let per = 0;
            for (const { to, node } of fenceOf(outlet, flow, unity)) {
              const intensity = intensities?.get(to);
              if (intensity !== undefined)
                per += (values[node] ?? NaN) * (values[intensity] ?? NaN);
            }
            if (per === 0) continue;
            for (const arm of ["pigment", "dye"] as const) {
              total[arm] += per * (machine.get(`${i}|${arm}|${flow}`) ?? 0);
            }
          }
        });
        return [id, 1 - total.pigment / total.dye];
      }),
    );
  };
}
