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
  const rough = (high - low) / Math.max(1, count);
  const power = Math.floor(Math.log10(rough) + 1e-9);
  const lead = rough / 10 ** power;
  const [factor, shift] = lead < 1.5 ? [1, 0] : lead < 3.5 ? [2, 0] : lead < 7.5 ? [5, 0] : [1, 1];
  const digits = Math.max(0, -(power + shift));
  const step = factor * 10 ** (power + shift);
  const slack = 1e-9;
  const values: number[] = [];
  for (let n = Math.ceil(low / step - slack); n <= high / step + slack; n++) {
    values.push(Number((n * step).toFixed(digits)) + 0);
  }
  return { values, digits };
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
