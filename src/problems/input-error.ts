/** Thrown when a reading cannot be true, or lies outside the range its model was checked for. */
export class InputError extends Error {
  /** Shown in front of the message. */
  override readonly name = "InputError";

  /** The reading at fault, such as `stenter.exhaust-humidity`. */
  readonly where: string;

  /** The reading as it was given. */
  readonly value: number;

  /**
   * @param where - the reading at fault
   * @param value - the reading as it was given
   * @param complaint - what is wrong, why it matters and what to check, in one line
   */
  constructor(where: string, value: number, complaint: string) {
    super(`${where} = ${value}: ${complaint}`);
    this.where = where;
    this.value = value;
  }
}

/**
 * Lets a reading through when it lies between `low` and `high`, both included.
 *
 * @param where - the reading, such as `steam.pressure`
 * @param value - the reading as it was given
 * @param low - lowest reading allowed
 * @param high - highest reading allowed
 * @param unit - unit of all three, for the message
 * @returns `value`, unchanged
 * @throws {@link InputError} when it lies outside, or is not a number at all
 */
export function within(
  where: string,
  value: number,
  low: number,
  high: number,
  unit: string,
): number {
  if (value >= low && value <= high) return value;
  throw new InputError(
    where,
    value,
    `expected ${low} to ${high} ${unit}; check the meter and its unit`,
  );
}
