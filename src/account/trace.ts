/**
 * How a total came about: its largest terms, each as amount × rate with the settings it reads.
 */

import { leavesOf } from "../numbers/quantity.js";
import { quantiles } from "../numbers/quantiles.js";
import { datedStream } from "../plant/dated.js";
import type { Workflow } from "../plant/shipped-routes.js";
import { AMOUNTS } from "../steps/amounts.js";
import type { TermPart } from "../steps/term.js";
import { type Account, pairsOf, type Part } from "./account.js";
import type { BlockVisit } from "./draws.js";
import type { IndicatorId } from "./indicators.js";

/** Draws that medians and ends of a line are worked out from; its mean is of all. */
const TRACE_DRAWS = 2000;

/** One line of a trace; parts that differ only in the class of lots are one line. */
export interface TraceLine {
  /** Route. */
  readonly route: string;
  /** Step. */
  readonly step: string;
  /** Flow at the machine. */
  readonly flow: string;
  /** Part of the step's time, where it is told from the rest: `waiting`. */
  readonly part?: TermPart;
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
  /** Streams of the settings and factors read, with the day of a change they came with. */
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
  id: IndicatorId,
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
  wanted: readonly { readonly id: IndicatorId; readonly arm: Workflow }[],
  most: number,
): readonly (readonly TraceLine[])[] {
  const chosen = wanted.map(({ id, arm }) => {
    const parts = (account.parts.get(id) ?? []).filter(({ term }) => term.arm === arm);
    const total = parts.reduce((sum, { mean }) => sum + mean, 0);
    // Parts that say the same of several kinds of cloth are one line.
    const merged = new Map<string, Part[]>();
    for (const part of parts) {
      const key = nameOf(account, part);
      merged.set(key, [...(merged.get(key) ?? []), part]);
    }
    const lines = [...merged.values()]
      .map((same) => ({ id, parts: same, mean: same.reduce((sum, { mean }) => sum + mean, 0) }))
      .sort((a, b) => Math.abs(b.mean) - Math.abs(a.mean))
      .slice(0, most);
    return { total, lines };
  });
  const products = productsOf(
    account,
    chosen.flatMap(({ lines }) => lines),
  );
  let next = 0;
  return chosen.map(({ total, lines }) =>
    lines.map((line) => lineOf(account, line, total, products[next++] ?? new Float64Array(0))),
  );
}

interface Line {
  readonly id: IndicatorId;
  readonly parts: readonly Part[];
  readonly mean: number;
}

function nameOf(account: Account, { term }: Part): string {
  const route = account.program.classes[term.lotClass]?.arms[term.arm].route.name ?? "";
  const rate = account.program.nodes.list[term.rate]?.quantity.id ?? "";
  return [route, term.role, term.flow, term.part ?? "", term.amount, rate].join("|");
}

function amountOf(account: Account, { term }: Part): number {
  return account.program.classes[term.lotClass]?.amounts[term.amount] ?? 0;
}

// Draws of rate × conversion × intensity for all lines in one pass, weighted by amount within a line.
function productsOf(account: Account, lines: readonly Line[]): readonly Float64Array[] {
  const plans = lines.map(({ id, parts }) => {
    const sum = parts.reduce((total, part) => total + amountOf(account, part), 0);
    return parts.map((part) => ({
      weight: amountOf(account, part) / sum,
      rate: part.term.rate,
      pairs: pairsOf(account.program, part.term, id),
    }));
  });
  const count = Math.min(TRACE_DRAWS, account.draws.count);
  const products = lines.map(() => new Float64Array(count));
  const needed = plans.flat().flatMap(({ rate, pairs }) => [rate, ...pairs.flat()]);
  const visit: BlockVisit = (start, end, values) => {
    plans.forEach((plan, k) => {
      const out = products[k]!;
      for (const { weight, rate, pairs } of plan) {
        const rates = values[rate]!;
        for (const [conversion, intensity] of pairs) {
          const by = values[conversion]!;
          const of = values[intensity]!;
          for (let i = 0; i < end - start; i++) {
            out[start + i] = out[start + i]! + weight * rates[i]! * by[i]! * of[i]!;
          }
        }
      }
    });
  };
  account.draws.each(needed, visit, count);
  return products;
}

function lineOf(account: Account, line: Line, total: number, product: Float64Array): TraceLine {
  const { parts, mean } = line;
  const term = parts[0]!.term;
  const lotClass = account.program.classes[term.lotClass];
  const amount = AMOUNTS[term.amount];
  const quantity = account.program.nodes.list[term.rate]?.quantity;
  const [low = NaN, median = NaN, high = NaN] = quantiles(product, [0.025, 0.5, 0.975]);
  return {
    route: lotClass?.arms[term.arm].route.name ?? "",
    step: term.role,
    flow: term.flow,
    ...(term.part === undefined ? {} : { part: term.part }),
    amount: amount?.name ?? "",
    sum: parts.reduce((sum, part) => sum + amountOf(account, part), 0),
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
            .map(datedStream),
  };
}
