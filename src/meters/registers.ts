/**
 * From figures on a dial to amounts: differences, with dials that begin anew and meters that are changed.
 */

import type { MeterText } from "../plant/meter-part.js";

/** A figure read off a dial. */
export interface DialReading {
  /** Line of the file. */
  readonly line: number;
  /** Day it was read, at its end. */
  readonly day: string;
  /** The figure; at a change of meters the last one of the old meter. */
  readonly figure: number;
  /** First figure of the new meter where meters were changed that day. */
  readonly anew?: number;
  /** Whether it was estimated. */
  readonly estimated: boolean;
}

/** A difference of two figures. */
export interface DialStep {
  /** Line of the later one. */
  readonly line: number;
  /** First day. */
  readonly from: string;
  /** Last day. */
  readonly to: string;
  /** Steps of the dial. */
  readonly steps: number;
  /** Whether either end was estimated. */
  readonly estimated: boolean;
}

/** A figure that cannot follow the one before. */
export interface DialFault {
  /** Line. */
  readonly line: number;
  /** The figure. */
  readonly figure: number;
  /** The figure before. */
  readonly before: number;
}

/** A dial is taken to have begun anew when it stood in its last tenth and now stands in its first half. */
const [LAST, FIRST] = [0.9, 0.5];

/**
 * Differences of a dial.
 *
 * @param meter - the meter, for the number of its digits
 * @param readings - figures in any order
 * @returns a step between neighbours by day; figures below the one before that nothing explains are left out
 */
export function dialSteps(
  meter: Pick<MeterText, "digits">,
  readings: readonly DialReading[],
): { readonly steps: readonly DialStep[]; readonly faults: readonly DialFault[] } {
  const turn = meter.digits === undefined ? Infinity : 10 ** meter.digits;
  const steps: DialStep[] = [];
  const faults: DialFault[] = [];
  let last: DialReading | undefined;
  for (const reading of [...readings].sort((a, b) =>
    a.day < b.day ? -1 : a.day > b.day ? 1 : a.line - b.line,
  )) {
    if (last === undefined) {
      last = reading;
      continue;
    }
    const before = last.anew ?? last.figure;
    let moved = reading.figure - before;
    if (moved < 0 && before >= LAST * turn && reading.figure <= FIRST * turn) moved += turn;
    if (!(moved >= 0)) {
      faults.push({ line: reading.line, figure: reading.figure, before });
      continue;
    }
    if (reading.day > last.day)
      steps.push({
        line: reading.line,
        from: dayAfter(last.day),
        to: reading.day,
        steps: moved,
        estimated: reading.estimated || last.estimated,
      });
    last = reading;
  }
  return { steps, faults };
}

/**
 * The day after another.
 *
 * @param day - ISO 8601
 * @returns ISO 8601
 */
export function dayAfter(day: string): string {
  return new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);
}
