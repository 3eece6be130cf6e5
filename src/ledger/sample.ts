/**
 * A sample of lots that neither order nor splitting can change: those with the smallest hash of the name.
 */

/** A lot of the sample. */
export interface SampledLot {
  /** Hash of its name, the order of the sample. */
  readonly hash: number;
  /** Its name. */
  readonly lot: string;
  /** Group it belongs to. */
  readonly key: string;
  /** Amounts, in the order of the list. */
  readonly amounts: readonly number[];
}

/** Lots kept. */
export const SAMPLE_SIZE = 2000;

/** A growing sample. */
export class Sample {
  #lots: SampledLot[] = [];
  #worst = Infinity;

  /**
   * Offers a lot; it is kept while it is among the smallest.
   *
   * @param hash - hash of its name
   * @param make - makes the entry, only when it is kept
   */
  offer(hash: number, make: () => SampledLot): void {
    if (hash > this.#worst) return;
    this.#lots.push(make());
    if (this.#lots.length >= 2 * SAMPLE_SIZE) this.#trim();
  }

  /**
   * The sample, smallest hash first.
   *
   * @returns at most `SAMPLE_SIZE` lots
   */
  lots(): readonly SampledLot[] {
    this.#trim();
    return [...this.#lots];
  }

  #trim(): void {
    this.#lots.sort((a, b) => a.hash - b.hash || (a.lot < b.lot ? -1 : a.lot > b.lot ? 1 : 0));
    this.#lots = this.#lots.slice(0, SAMPLE_SIZE);
    if (this.#lots.length === SAMPLE_SIZE) this.#worst = this.#lots.at(-1)?.hash ?? Infinity;
  }
}
