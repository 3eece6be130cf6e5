/**
 * How a total came about: its largest terms, each as amount × rate with the settings it reads.
 */

import { leavesOf } from "../numbers/quantity.js";
import { quantiles } from "../numbers/quantiles.js";
import type { Workflow } from "../plant/shipped-routes.js";
import { AMOUNTS } from "../steps/amounts.js";
import { type Account, type BrokenDown, pairsOf, type Part } from "./account.js";

/** One line of a trace; parts that differ only in the class of lots are one line. */
export interface TraceLine {
  /** Route. */
  readonly route: string;
  /** Step. */
  readonly step: string;
  /** Flow at the machine. */
  readonly flow: string;
  /** Amount. */
  readonly amount: string;
  /** Sum of the amount over the lots. */
  readonly sum: number;
  /** Unit of the amount. */
  readonly unit: string;
  /** Formula of the rate. */
  readonly rate: string;
  /** Median of rate × conversion × intensity, per unit of amount. */
  readonly median: number;
  /** Low end. */
  readonly low: number;
  /** High end. */
  readonly high: number;
  /** Mean contribution. */
  readonly mean: number;
  /** Share of the arm's mean total. */
  readonly share: number;
  /** Streams of the settings and factors read. */
  readonly reads: readonly string[];
}

/**
 * Traces an indicator on one arm.
 *
 * @param account - the account
 * @param id - indicator
 * @param arm - the arm
 * @param most - number of lines
 * @returns lines, largest first
 */
export function traceOf(
  account: Account,
  id: BrokenDown,
  arm: Workflow,
  most: number,
): readonly TraceLine[] {
  return tracesOf(account, [{ id, arm }], most)[0] ?? [];
}

/**
 * Traces several totals in one pass over the draws.
 *
 * @param account - the account
 * @param wanted - indicators and arms
 * @param most - number of lines each
 * @returns lines in the order asked for
 */
export function tracesOf(
  account: Account,
  wanted: readonly { readonly id: BrokenDown; readonly arm: Workflow }[],
  most: number,
): readonly (readonly TraceLine[])[] {
  const chosen = wanted.map(({ id, arm }) => {
    const parts = (account.parts.get(id) ?? []).filter(({ term }) => term.arm === arm);
    const total = parts.reduce((sum, { mean }) => sum + mean, 0);
    const largest = [...parts].sort((a, b) => Math.abs(b.mean) - Math.abs(a.mean)).slice(0, most);
    return { total, lines: largest.map((part) => ({ id, part })) };
  });
  const products = productsOf(
    account,
    chosen.flatMap(({ lines }) => lines),
  );
  let next = 0;
  return chosen.map(({ total, lines }) =>
    lines.map(({ part }) => lineOf(account, part, total, products[next++] ?? new Float64Array(0))),
  );
}

// Draws of rate × conversion × intensity, for all lines in one pass.
function productsOf(
  account: Account,
  lines: readonly { readonly id: BrokenDown; readonly part: Part }[],
): readonly Float64Array[] {
  const pairs = lines.map(({ id, part }) => pairsOf(account.program, part.term, id));
  const products = lines.map(() => new Float64Array(account.draws.count));
  const needed = [...lines.map(({ part }) => part.term.rate), ...pairs.flat(2)];
  account.draws.each(needed, (start, end, values) => {
    lines.forEach(({ part }, k) => {
      const rate = values[part.term.rate]!;
      const out = products[k]!;
      for (const [conversion, intensity] of pairs[k]!) {
        const by = values[conversion]!;
        const of = values[intensity]!;
        for (let i = 0; i < end - start; i++) {
          out[start + i] = out[start + i]! + rate[i]! * by[i]! * of[i]!;
        }
      }
    });
  });
  return products;
}

function lineOf(account: Account, part: Part, total: number, product: Float64Array): TraceLine {
  const { term, mean } = part;
  const lotClass = account.program.classes[term.lotClass];
  const amount = AMOUNTS[term.amount];
  const quantity = account.program.nodes.list[term.rate]?.quantity;
  const [low = NaN, median = NaN, high = NaN] = quantiles(product, [0.025, 0.5, 0.975]);
  return {
    route: lotClass?.arms[term.arm].route.name ?? "",
    step: term.role,
    flow: term.flow,
    amount: amount?.name ?? "",
    sum: lotClass?.amounts[term.amount] ?? 0,
    unit: amount?.unit ?? "",
    rate:
      quantity === undefined
        ? ""
        : quantity.kind === "leaf"
          ? quantity.factor
          : `${quantity.id} = ${quantity.words}`,
    median,
    low,
    high,
    mean,
    share: total === 0 ? 0 : mean / total,
    reads:
      quantity === undefined
        ? []
        : leavesOf(quantity)
            .filter((leaf) => leaf.provenance !== "constant")
            .map((leaf) => leaf.id),
  };
}
