/**
 * Puts the utilities in line: users → boiler → water works → effluent plant. There are no loops, so every
 * flow at a machine ends in flows at the fence after a few steps.
 */

import type { Quantity } from "../numbers/quantity.js";
import { product } from "../steps/algebra.js";
import type { Conversion, Conversions } from "./conversion.js";

/** Longest chain: coil → steam → water works → drain → electricity, and one to spare. */
const LONGEST = 6;

/**
 * Resolves conversions until only flows at the fence are left. A flow without an entry is one already.
 *
 * @param direct - conversions of single utilities, by flow
 * @param flows - flows at machines that are asked for
 * @returns conversions to flows at the fence for each flow
 * @throws Error when the utilities feed each other in a loop: a fault of the tool
 */
export function chained(direct: Conversions, flows: Iterable<string>): Conversions {
  const resolve = (flow: string, depth: number): readonly Conversion[] | undefined => {
    if (depth > LONGEST) throw new Error(`The utilities form a loop at ${flow}.`);
    return direct.get(flow)?.flatMap(({ to, rate }) => {
      // A utility may pass a flow of its own name on to the fence: electricity stays electricity.
      const onward = to === flow ? undefined : resolve(to, depth + 1);
      return onward === undefined
        ? [{ to, rate }]
        : onward.map((next) => ({ to: next.to, rate: chainRate(rate, next.rate) }));
    });
  };
  const all = new Map<string, readonly Conversion[]>();
  for (const flow of flows) {
    const resolved = resolve(flow, 0);
    if (resolved !== undefined) all.set(flow, resolved);
  }
  return all;
}

function chainRate(first: Quantity, second: Quantity): Quantity {
  if (first.kind === "leaf" && first.factor === "one") return second;
  if (second.kind === "leaf" && second.factor === "one") return first;
  return product(`${shortId(first)}→${shortId(second)}`, first, second);
}

function shortId(quantity: Quantity): string {
  return quantity.kind === "leaf" ? quantity.factor : quantity.id;
}
