/** Round values along an axis. */
export interface Ticks {
  /** The values, smallest first. */
  readonly values: readonly number[];
  /** Decimals that all of them need. */
  readonly digits: number;
}

/** An axis on which everything is 0: other numbers would be made up. */
export const ZERO_ONLY: Ticks = { values: [0], digits: 0 };

/**
 * Finds round values within a stretch: multiples of 1, 2 or 5 times a power of ten.
 *
 * @param low - lower end
 * @param high - upper end, above the lower one
 * @param count - how many values are wanted, about
 * @returns the values and the decimals to print them with
 */
export function axisTicks(low: number, high: number, count: number): Ticks {
  const { digits, step } = stepFor(low, high, count);
  const [first, last] = [Math.ceil(low / step - SLACK), Math.floor(high / step + SLACK)];
  return { values: multiples(first, last, step, digits), digits };
}

// Quotients of round numbers are not whole to the last bit.
const SLACK = 1e-9;

function stepFor(
  low: number,
  high: number,
  count: number,
): { readonly step: number; readonly digits: number } {
  const rough = (high - low) / Math.max(1, count);
  const power = Math.floor(Math.log10(rough) + 1e-9);
  const lead = rough / 10 ** power;
  const [factor, shift] = lead < 1.5 ? [1, 0] : lead < 3.5 ? [2, 0] : lead < 7.5 ? [5, 0] : [1, 1];
  return { step: factor * 10 ** (power + shift), digits: Math.max(0, -(power + shift)) };
}

function multiples(first: number, last: number, step: number, digits: number): readonly number[] {
  return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) =>
    rounded((first + index) * step, digits),
  );
}

function rounded(value: number, digits: number): number {
  return Number(value.toFixed(digits)) + 0;
}

/** An axis that begins and ends at a round value. */
export interface RoundAxis {
  /** Round values, the ends among them. */
  readonly ticks: Ticks;
  /** Ends of the axis. */
  readonly domain: readonly [number, number];
}

/**
 * Lengthens a stretch until it begins and ends at a round value, so that nothing lies beyond the last number
 * of the axis.
 *
 * @param low - lower end
 * @param high - upper end, above the lower one
 * @param count - how many values are wanted, about
 * @returns values, and the axis they span
 */
export function roundAxis(low: number, high: number, count: number): RoundAxis {
  const { digits, step } = stepFor(low, high, count);
  const [first, last] = [Math.floor(low / step + SLACK), Math.ceil(high / step - SLACK)];
  const domain = [rounded(first * step, digits), rounded(last * step, digits)] as const;
  return { ticks: { values: multiples(first, last, step, digits), digits }, domain };
}

/** Round values along an axis on which each step multiplies. */
export interface LogTicks {
  /** The values, smallest first. */
  readonly values: readonly number[];
  /** Decimals of each. */
  readonly digits: readonly number[];
}

/**
 * Finds round values on a logarithmic axis: 1, 2 and 5 in each power of ten, or the powers alone
 * where the stretch is long.
 *
 * @param low - lower end, above 0
 * @param high - upper end, above the lower one
 * @returns the values and the decimals to print each with
 */
export function logTicks(low: number, high: number): LogTicks {
  const first = Math.floor(Math.log10(low));
  const last = Math.ceil(Math.log10(high));
  const leads = Math.log10(high / low) > 3.2 ? [1] : [1, 2, 5];
  const values: number[] = [];
  const digits: number[] = [];
  for (let power = first; power <= last; power++) {
    for (const lead of leads) {
      const decimals = Math.max(0, -power);
      const value = Number((lead * 10 ** power).toFixed(decimals));
      if (value < low * (1 - 1e-9) || value > high * (1 + 1e-9)) continue;
      values.push(value);
      digits.push(decimals);
    }
  }
  return { values, digits };
}
