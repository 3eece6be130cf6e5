/**
 * Readings of single lots, gathered while logs are read: for each column the lots that have one, and what they come
 * to by site, month and route.
 */

import { type Group, Ledger } from "../ledger/ledger.js";
import type { Lot, LotReadings } from "../log/lot.js";
import type { Plant } from "../plant/plant.js";
import { READ_COLUMNS, type ReadColumn } from "../plant/reading-part.js";

/** Lots with a reading in one column. */
export interface ReadLots {
  /** The column. */
  readonly column: ReadColumn;
  /** Those lots. */
  readonly groups: readonly Group[];
  /** Sums of readings. */
  readonly sums: readonly ReadSum[];
}

/** Sum of readings of lots of one kind. */
export interface ReadSum {
  /** Site. */
  readonly site: string;
  /** Month. */
  readonly month: string;
  /** Route. */
  readonly route: string;
  /** Sum. [L, kg, kWh] */
  readonly amount: number;
}

/** Gathers readings of lots in columns that the plant file tells of. */
export class LotReadingDesk {
  readonly #columns: readonly {
    readonly column: ReadColumn;
    readonly of: keyof LotReadings;
    readonly ledger: Ledger;
    readonly sums: Map<string, ReadSum & { amount: number }>;
  }[];
  readonly #plant: Plant;

  /**
   * Prepares for the columns that the plant file tells of.
   *
   * @param plant - the print house
   */
  constructor(plant: Plant) {
    this.#plant = plant;
    this.#columns = (Object.keys(READ_COLUMNS) as ReadColumn[])
      .filter((column) => plant.text.readings?.[column] !== undefined)
      .map((column) => ({
        column,
        of: READ_COLUMNS[column],
        ledger: new Ledger(),
        sums: new Map(),
      }));
  }

  /**
   * Takes a lot.
   *
   * @param lot - the lot
   */
  add(lot: Lot): void {
    for (const { of, ledger, sums } of this.#columns) {
      const amount = lot.readings[of];
      if (amount === undefined) continue;
      ledger.add(lot, this.#plant);
      const { site, route } = lot;
      const month = lot.date.slice(0, 7);
      const key = JSON.stringify([site, month, route]);
      const before = sums.get(key);
      if (before === undefined) sums.set(key, { site, month, route, amount });
      else before.amount += amount;
    }
  }

  /**
   * What was gathered.
   *
   * @returns columns with a reading
   */
  found(): readonly ReadLots[] {
    return this.#columns
      .filter(({ sums }) => sums.size > 0)
      .map(({ column, ledger, sums }) => ({
        column,
        groups: ledger.settled().groups,
        sums: [...sums.values()],
      }));
  }
}
