/**
 * Tax on what an investment brings, where the study asks for it. Straight-line write-off; a loss of a year lowers
 * tax on the rest of the business.
 */

/** Tax as the study has it. */
export interface Tax {
  /** Rate on profit [-]. */
  readonly rate: number;
  /** Years over which machines are written off. */
  readonly years: number;
  /** Inflation that a write-off in old money loses against, 0 when flows are in money of the day [-]. */
  readonly erosion: number;
}

/**
 * Tax by year. Money laid out at the start or later is written off in equal parts from the year after; what comes
 * back at the end beyond the book value is taxed, and what is then not yet written off is written off.
 *
 * @param tax - rate and years
 * @param gains - yearly benefit before tax, from year 0 on, without what is laid out
 * @param outlays - money laid out by year, above 0
 * @returns tax by year, above 0 where it is paid
 */
export function taxOf(
  tax: Tax,
  gains: readonly number[],
  outlays: readonly number[],
): readonly number[] {
  const last = gains.length - 1;
  const written = gains.map(() => 0);
  outlays.forEach((outlay, year) => {
    let left = outlay;
    for (let k = 1; k <= tax.years && year + k <= last; k++) {
      const part = outlay / tax.years;
      written[year + k] = (written[year + k] ?? 0) + part / (1 + tax.erosion) ** k;
      left -= part;
    }
    if (Math.abs(left) > 1e-9 * Math.abs(outlay))
      written[last] = (written[last] ?? 0) + left / (1 + tax.erosion) ** Math.max(0, last - year);
  });
  return gains.map((gain, year) => tax.rate * (gain - (written[year] ?? 0)));
}
