/**
 * Balances of meters, and the formulas by which they correct a model.
 *
 *     ln(Σ parts × corrections + streams without meter) = ln reading
 *
 * is held in every draw, by moving the logarithms of machine flows, of what boilers take, of streams without meter
 * and of readings, each as far as its doubt goes (`numbers/reconcile.ts`). Logarithms keep all of them above 0.
 * A wide stream is moved by the share it leaves to lots (`left-share.ts`).
 * The balance is bent, so the move is made in {@link ROUNDS} rounds with one gain, each on what is left over.
 */

import { gainOf, type Matrix, reconcile, type Reconciled } from "../numbers/reconcile.js";
import { derive, type Derived, type Leaf, type Quantity } from "../numbers/quantity.js";
import { type Stream, streamFactor, streamMoved, streamSlope } from "./left-share.js";

/** Rounds; each leaves about a tenth of what was left before it. */
const ROUNDS = 3;

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
  /** Streams that are moved by what they leave to lots, in the middle of the draws, by state. */
  readonly lefts?: ReadonlyMap<number, number>;
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
  const factorOf = (state: number): number => {
    const share = states.lefts?.get(state);
    const by = Math.exp(moves[state]!);
    return share === undefined ? by : streamFactor(by, share);
  };
  const slopeOf = (state: number): number => {
    const share = states.lefts?.get(state);
    return share === undefined ? 1 : streamSlope(Math.exp(moves[state]!), share);
  };
  for (let round = 0; round < CENTRE_ROUNDS; round++) {
    const gaps = new Float64Array(balances.length);
    rows = balances.map(({ parts, readingState }, r) => {
      const row = new Float64Array(n);
      let total = 0;
      const amounts = parts.map(({ states: of }, k) =>
        of.reduce((product, j) => product * factorOf(j), middles[r]!.parts[k]!),
      );
      for (const amount of amounts) total += amount;
      parts.forEach(({ states: of }, k) => {
        for (const j of of) row[j] = row[j]! + (slopeOf(j) * amounts[k]!) / total;
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
  return {
    gain: gainOf(states.covariance, rows).gain,
    tests,
    corrections: moves.map((_, j) => factorOf(j)),
  };
}

/**
 * Corrections as formulas, draw by draw.
 *
 * @param balances - the balances
 * @param gain - move of each state per gap
 * @param mark - tells this set of corrections from others
 * @param lefts - streams that are moved by what they leave to lots, by state
 * @returns the correction of a state, by its place and what it is called
 */
export function correctionsOf(
  balances: readonly Balance[],
  gain: Matrix,
  mark: string,
  lefts: ReadonlyMap<number, Stream> = new Map(),
): (state: number, name: string, shows: readonly Quantity[]) => Derived {
  let pulls: readonly Derived[] = [];
  const correction = (state: number, name: string, round: string): Derived => {
    const words = `by meters (${mark}${round})`;
    const left = lefts.get(state);
    const gains = sparse(gain[state]!);
    return left === undefined
      ? movedBy(name, words, gains, pulls)
      : streamMoved(name, words, movedBy(`${name}, left`, words, gains, pulls), left);
  };
  for (let round = 1; round <= ROUNDS; round++) {
    const states = new Map<number, Derived>();
    const of = (state: number): Derived => {
      let found = states.get(state);
      if (found === undefined)
        states.set(state, (found = correction(state, `move ${state}`, `.${round}`)));
      return found;
    };
    const before = pulls;
    const next = balances.map((balance, r) =>
      pullOf(balance, before.length === 0 ? undefined : of, before[r], `${mark}.${round}`),
    );
    pulls = next;
  }
  return (state, name, shows) => ({ ...correction(state, name, ""), shows });
}

/** Moves per gap below this are left out: they are chance of the draws, and the rounds make up for them. */
const FAINT = 0.01;

function sparse(row: Float64Array): readonly { readonly at: number; readonly by: number }[] {
  return [...row].flatMap((by, at) => (Math.abs(by) > FAINT ? [{ at, by }] : []));
}

// exp(−Σ gain × pull)
function movedBy(
  name: string,
  words: string,
  gains: readonly { readonly at: number; readonly by: number }[],
  pulls: readonly Derived[],
): Derived {
  const by = gains.map((one) => one.by);
  return {
    ...derive(
      name,
      "1",
      words,
      gains.map(({ at }) => pulls[at]!),
      (...sums) => {
        let move = 0;
        for (let r = 0; r < sums.length; r++) move -= by[r]! * sums[r]!;
        return Math.exp(move);
      },
    ),
    block: (out, reads, n) => {
      out.fill(0, 0, n);
      reads.forEach((sum, r) => {
        const gained = by[r]!;
        for (let i = 0; i < n; i++) out[i] = out[i]! - gained * sum[i]!;
      });
      for (let i = 0; i < n; i++) out[i] = Math.exp(out[i]!);
    },
  };
}

// Sum of the gaps of a balance over all rounds so far: ln(Σ parts × moves) − ln(reading × its move).
function pullOf(
  balance: Balance,
  moveOf: ((state: number) => Derived) | undefined,
  before: Derived | undefined,
  mark: string,
): Derived {
  const reads: Quantity[] = [];
  const placeOf = (quantity: Quantity): number => {
    const known = reads.indexOf(quantity);
    return known >= 0 ? known : reads.push(quantity) - 1;
  };
  const factors = (amount: Quantity, states: readonly number[]): readonly number[] => [
    placeOf(amount),
    ...(moveOf === undefined ? [] : states.map((state) => placeOf(moveOf(state)))),
  ];
  const parts = balance.parts.map(({ amount, states }) => factors(amount, states));
  const reading = factors(balance.reading, [balance.readingState]);
  const last = before === undefined ? -1 : placeOf(before);
  const value = (...numbers: readonly number[]): number => {
    const times = (places: readonly number[]): number =>
      places.reduce((product, place) => product * numbers[place]!, 1);
    let total = 0;
    for (const places of parts) total += times(places);
    return Math.log(total / times(reading)) + (last < 0 ? 0 : numbers[last]!);
  };
  return {
    ...derive(`gap of ${balance.name}`, "1", `ln(model / reading) (${mark})`, reads, value),
    block: (out, columns, n) => {
      out.fill(0, 0, n);
      for (const [first, second, third] of parts) {
        const [a, b, c] = [columns[first!]!, columns[second ?? -1], columns[third ?? -1]];
        if (b === undefined) for (let i = 0; i < n; i++) out[i] = out[i]! + a[i]!;
        else if (c === undefined) for (let i = 0; i < n; i++) out[i] = out[i]! + a[i]! * b[i]!;
        else for (let i = 0; i < n; i++) out[i] = out[i]! + a[i]! * b[i]! * c[i]!;
      }
      const read = columns[reading[0]!]!;
      const moved = columns[reading[1] ?? -1];
      const added = columns[last];
      for (let i = 0; i < n; i++) {
        const count = moved === undefined ? read[i]! : read[i]! * moved[i]!;
        out[i] = Math.log(out[i]! / count) + (added === undefined ? 0 : added[i]!);
      }
    },
  };
}
