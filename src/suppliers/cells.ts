/**
 * What a supplier takes for a square metre in each stratum of the mix, draw by draw.
 */

import { pairsOf } from "../account/account.js";
import { BLOCK, type DrawKeep, drawsOf } from "../account/draws.js";
import type { IndicatorId } from "../account/indicators.js";
import { unityOf } from "../account/outlet.js";
import type { Program, ProgramTerm } from "../account/program.js";
import type { Group } from "../ledger/ledger.js";
import { placeOf } from "./strata.js";

/** What is asked of a supplier's lots. */
export interface CellsAsked {
  /** Terms of its lots as they were printed. */
  readonly program: Program;
  /** Its groups. */
  readonly groups: readonly Group[];
  /** Cell of each group; −1 for groups outside the mix. */
  readonly cellOf: readonly number[];
  /** Number of cells. */
  readonly cells: number;
  /** Whether a term is counted. */
  readonly counts: (term: ProgramTerm) => boolean;
  /** Indicators. */
  readonly ids: readonly IndicatorId[];
  /** Number of draws. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
  /** Keeps draws from one pass over the same leaves to the next. */
  readonly keep?: DrawKeep | undefined;
}

/** Sums of a supplier's lots by cell. */
export interface CellTotals {
  /** Lots by cell. */
  readonly lots: readonly number[];
  /** Accepted area by cell. [m²] */
  readonly accepted: readonly number[];
  /** Cloth by cell. [kg] */
  readonly mass: readonly number[];
  /** Draws of the totals by indicator and cell; the last cell holds the lots outside the mix. */
  readonly totals: ReadonlyMap<IndicatorId, readonly Float64Array[]>;
}

/**
 * Works totals out by cell.
 *
 * @param asked - what is asked
 * @returns sums and draws
 */
export function cellTotals(asked: CellsAsked): CellTotals {
  const { program, groups, ids, draws: count } = asked;
  const cells = asked.cells + 1;
  const cell = (i: number): number => {
    const at = asked.cellOf[i] ?? -1;
    return at < 0 ? asked.cells : at;
  };
  const sums = amountsBy(program, groups, cell, cells);
  const parts = partsOf(asked, sums);
  const totals = new Map(
    ids.map((id) => [id, Array.from({ length: cells }, () => new Float64Array(count))]),
  );
  const needed = new Set<number>([unityOf(program.nodes)]);
  for (const { rates, pairs } of parts) {
    for (const { node } of rates) needed.add(node);
    for (const list of pairs) for (const pair of list) pair.forEach((node) => needed.add(node));
  }
  const flow = new Float64Array(BLOCK);
  const per = ids.map(() => new Float64Array(BLOCK));
  drawsOf(program.nodes, count, asked.seed, asked.keep).each(needed, (start, end, values) => {
    const n = end - start;
    for (const { rates, pairs, there } of parts) {
      pairs.forEach((list, k) => {
        const into = per[k]!;
        into.fill(0, 0, n);
        for (const [a, b] of list)
          for (let i = 0; i < n; i++) into[i] = into[i]! + values[a]![i]! * values[b]![i]!;
      });
      for (const c of there) {
        flow.fill(0, 0, n);
        for (const { node, amounts } of rates) {
          const amount = amounts[c]!;
          if (amount === 0) continue;
          const rate = values[node]!;
          for (let i = 0; i < n; i++) flow[i] = flow[i]! + amount * rate[i]!;
        }
        ids.forEach((id, k) => {
          if (pairs[k]!.length === 0) return;
          const into = totals.get(id)![c]!;
          for (let i = 0; i < n; i++) into[start + i] = into[start + i]! + flow[i]! * per[k]![i]!;
        });
      }
    }
  });
  const summed = (name: string): number[] => {
    const all = Array.from({ length: cells }, () => 0);
    groups.forEach(({ amounts }, i) => (all[cell(i)]! += amounts[placeOf(name)] ?? 0));
    return all;
  };
  const lots = Array.from({ length: cells }, () => 0);
  groups.forEach((group, i) => (lots[cell(i)]! += group.lots));
  return { lots, accepted: summed("accepted"), mass: summed("mass"), totals };
}

// Amounts by class, cell and place in the list.
function amountsBy(
  program: Program,
  groups: readonly Group[],
  cell: (group: number) => number,
  cells: number,
): readonly (readonly (Float64Array | undefined)[])[] {
  const sums: (Float64Array | undefined)[][] = program.classes.map(() =>
    Array.from({ length: cells }, () => undefined),
  );
  groups.forEach(({ key, amounts }, i) => {
    const lotClass = program.classOf(key);
    if (lotClass === undefined) return;
    const row = sums[lotClass]!;
    const sum = (row[cell(i)] ??= new Float64Array(amounts.length));
    amounts.forEach((value, k) => (sum[k] = sum[k]! + value));
  });
  return sums;
}

interface Part {
  readonly rates: { readonly node: number; readonly amounts: Float64Array }[];
  readonly pairs: readonly (readonly (readonly [number, number])[])[];
  readonly there: readonly number[];
}

// Terms of one class and flow share the way to the fence.
function partsOf(
  { program, counts, ids, cells }: CellsAsked,
  sums: ReturnType<typeof amountsBy>,
): readonly Part[] {
  const parts = new Map<string, Part>();
  for (const term of program.terms) {
    const rows = sums[term.lotClass]!;
    if (!counts(term)) continue;
    const amounts = Float64Array.from({ length: cells + 1 }, (_, c) => rows[c]?.[term.amount] ?? 0);
    if (amounts.every((amount) => amount === 0)) continue;
    const key = `${term.lotClass}|${term.flow}`;
    let part = parts.get(key);
    if (part === undefined) {
      part = {
        rates: [],
        pairs: ids.map((id) => pairsOf(program, term, id)),
        there: rows.flatMap((row, c) => (row === undefined ? [] : [c])),
      };
      parts.set(key, part);
    }
    if (part.pairs.some((list) => list.length > 0)) part.rates.push({ node: term.rate, amounts });
  }
  return [...parts.values()].filter(({ rates }) => rates.length > 0);
}
