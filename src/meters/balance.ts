/**
 * Balances of meters, and the formulas by which they correct a model.
 *
 *     ln(Σ parts × corrections + streams without meter) = ln reading
 *
 * is held in every draw, by moving the logarithms of machine flows, of what boilers take, of streams without meter
 * and of readings, each as far as its doubt goes (`numbers/reconcile.ts`). Logarithms keep all of them above 0.
 * The balance is bent, so the move is made in {@link ROUNDS} rounds with one gain, each on what is left over.
 */

import { gainOf, type Matrix, reconcile, type Reconciled } from "../numbers/reconcile.js";
import { derive, type Derived, type Leaf, type Quantity } from "../numbers/quantity.js";

/** Rounds; each leaves about a tenth of what was left before it. */
const ROUNDS = 4;

/** Rounds in which the middle is looked for. */
const CENTRE_ROUNDS = 12;

/** One part of a balance. */
export interface BalancePart {
  /** States whose corrections multiply it, as places; none for a part that nothing corrects. */
  readonly states: readonly number[];
  /** The part as modelled. */
  readonly amount: Quantity;
}

/** One meter's balance. */
export interface Balance {
  /** Name of the meter. */
  readonly name: string;
  /** Its parts. */
  readonly parts: readonly BalancePart[];
  /** The reading. */
  readonly reading: Leaf;
  /** State of the reading. */
  readonly readingState: number;
}

/** Logarithms of all states over draws. */
export interface States {
  /** Mean of each. */
  readonly means: Float64Array;
  /** Covariance. */
  readonly covariance: Matrix;
}

/** What the balances come to in the middle of the draws. */
export interface Solved {
  /** Gain: move of each state per gap of each balance. */
  readonly gain: Matrix;
  /** Tests of the moves. */
  readonly tests: Reconciled;
  /** Corrections of the states. */
  readonly corrections: Float64Array;
}

/**
 * Solves the balances in the middle of the draws.
 *
 * @param balances - the balances
 * @param states - logarithms of the states
 * @param middles - middle of each part of each balance, and of each reading
 * @returns gain, tests and corrections there
 */
export function solveBalances(
  balances: readonly Balance[],
  states: States,
  middles: readonly { readonly parts: Float64Array; readonly reading: number }[],
): Solved {
  const n = states.means.length;
  const moves = new Float64Array(n);
  let tests: Reconciled | undefined;
  let rows: Float64Array[] = [];
  for (let round = 0; round < CENTRE_ROUNDS; round++) {
    const gaps = new Float64Array(balances.length);
    rows = balances.map(({ parts, readingState }, r) => {
      const row = new Float64Array(n);
      let total = 0;
      parts.forEach(({ states: of }, k) => {
        total += middles[r]!.parts[k]! * Math.exp(of.reduce((sum, j) => sum + moves[j]!, 0));
      });
      parts.forEach(({ states: of }, k) => {
        const share =
          (middles[r]!.parts[k]! * Math.exp(of.reduce((sum, j) => sum + moves[j]!, 0))) / total;
        for (const j of of) row[j] = row[j]! + share;
      });
      row[readingState] = -1;
      gaps[r] = Math.log(total / middles[r]!.reading) - moves[readingState]!;
      return row;
    });
    // Numbers whose gap is that of the balance made straight here, seen from where the draws stand.
    const values = new Float64Array(n);
    balances.forEach(({ readingState }, r) => {
      let back = 0;
      for (let j = 0; j < n; j++) back += rows[r]![j]! * moves[j]!;
      values[readingState] = back - gaps[r]!;
    });
    tests = reconcile(values, states.covariance, rows);
    for (let j = 0; j < n; j++) moves[j] = tests.values[j]! - values[j]!;
  }
  if (tests === undefined) throw new Error("No round was made.");
  return { gain: gainOf(states.covariance, rows).gain, tests, corrections: moves.map(Math.exp) };
}

/**
 * Corrections as formulas, draw by draw.
 *
 * @param balances - the balances
 * @param gain - move of each state per gap
 * @param mark - tells this set of corrections from others
 * @returns the correction of a state, by its place and what it is called
 */
export function correctionsOf(
  balances: readonly Balance[],
  gain: Matrix,
  mark: string,
): (state: number, name: string, shows: readonly Quantity[]) => Derived {
  let pulls: readonly Derived[] = [];
  for (let round = 1; round <= ROUNDS; round++) {
    const before = pulls;
    pulls = balances.map((balance, r) => pullOf(balance, gain, before, r, `${mark}.${round}`));
  }
  return (state, name, shows) => {
    const row = gain[state]!;
    return {
      ...derive(name, "1", `by meters (${mark})`, pulls, (...sums) => {
        let move = 0;
        for (let r = 0; r < sums.length; r++) move -= row[r]! * sums[r]!;
        return Math.exp(move);
      }),
      shows,
    };
  };
}

// Sum of the gaps of a balance over all rounds so far.
function pullOf(
  { name, parts, reading, readingState }: Balance,
  gain: Matrix,
  before: readonly Derived[],
  at: number,
  mark: string,
): Derived {
  const n = parts.length;
  const moved = [...new Set(parts.flatMap(({ states }) => states))];
  const place = parts.map(({ states }) => states.map((state) => moved.indexOf(state)));
  const rows = moved.map((state) => gain[state]!);
  const own = gain[readingState]!;
  const moves = new Float64Array(moved.length);
  const value = (...numbers: readonly number[]): number => {
    let ownMove = 0;
    moves.fill(0);
    for (let r = n + 1; r < numbers.length; r++) {
      const sum = numbers[r]!;
      ownMove -= own[r - n - 1]! * sum;
      for (let j = 0; j < moves.length; j++) moves[j] = moves[j]! - rows[j]![r - n - 1]! * sum;
    }
    let total = 0;
    for (let k = 0; k < n; k++) {
      let move = 0;
      for (const j of place[k]!) move += moves[j]!;
      total += move === 0 ? numbers[k]! : numbers[k]! * Math.exp(move);
    }
    const gap = Math.log(total / numbers[n]!) - ownMove;
    return before.length === 0 ? gap : numbers[n + 1 + at]! + gap;
  };
  return derive(
    `gap of ${name}`,
    "1",
    `ln(model / reading) (${mark})`,
    [...parts.map(({ amount }) => amount), reading, ...before],
    value,
  );
}
