/**
 * Parts of any indicator, worked out when asked for: an account holds those of a few.
 */

import { type Account, pairsOf, type Part } from "./account.js";
import type { IndicatorId } from "./indicators.js";

/**
 * Breaks an indicator down by term: mean of Σ rate × conversion × intensity, times the amount.
 *
 * @param account - the account
 * @param id - the indicator
 * @returns the same account with the parts of the indicator; their means add up to the mean of each arm
 */
export function withParts(account: Account, id: IndicatorId): Account {
  if (account.parts.has(id)) return account;
  const { program, draws } = account;
  const plan = program.terms.flatMap((term) => {
    const amount = program.classes[term.lotClass]?.amounts[term.amount] ?? 0;
    const pairs = amount === 0 ? [] : pairsOf(program, term, id);
    return pairs.length === 0 ? [] : [{ term, amount, pairs }];
  });
  const sums = new Float64Array(plan.length);
  draws.each(
    new Set(plan.flatMap(({ term, pairs }) => [term.rate, ...pairs.flat()])),
    (start, end, values) => {
      plan.forEach(({ term, pairs }, at) => {
        const rates = values[term.rate]!;
        let sum = 0;
        for (const [conversion, intensity] of pairs) {
          const by = values[conversion]!;
          const of = values[intensity]!;
          for (let i = 0; i < end - start; i++) sum += rates[i]! * by[i]! * of[i]!;
        }
        sums[at] = sums[at]! + sum;
      });
    },
  );
  const parts = plan.flatMap(({ term, amount }, at): readonly Part[] => {
    const coefficient = sums[at]! / draws.count;
    return coefficient === 0 ? [] : [{ term, coefficient, mean: amount * coefficient }];
  });
  return { ...account, parts: new Map([...account.parts, [id, parts]]) };
}
