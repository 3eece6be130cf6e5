/**
 * Sums of amounts by group. Small, mergeable, savable; adding lots in another order, or in parts that are
 * merged, gives the same ledger to the last bit.
 */

import type { Lot } from "../log/lot.js";
import { BinnedSums, type SavedSums } from "../numbers/binned-sum.js";
import { hash64, sha256Hex } from "../numbers/digest.js";
import { armsOf } from "../plant/counterpart.js";
import type { Plant } from "../plant/plant.js";
import { AMOUNTS } from "../steps/amounts.js";
import { keyFrom, keyOf, keyText, type LedgerKey } from "./key.js";
import { type Rejected, type Reprint, settle } from "./reprints.js";
import { Sample, type SampledLot } from "./sample.js";
import { ACCEPTED, acceptedArea, tally } from "./tally.js";

/** Format of saved ledgers. */
const FORMAT = "millrace-ledger-1";

/** Digest of the list of amounts: a ledger saved under another list is refused. */
export const AMOUNTS_DIGEST = sha256Hex(
  AMOUNTS.map((amount) => `${amount.name} [${amount.unit}] ${amount.scale}`).join("\n"),
);

/** A group of lots with its sums. */
export interface Group {
  /** What they share. */
  readonly key: LedgerKey;
  /** Number of lots. */
  readonly lots: number;
  /** Sums in the order of the list of amounts. */
  readonly amounts: Float64Array;
}

/** A ledger as saved. */
export interface SavedLedger {
  /** Format. */
  readonly format: string;
  /** Digest of the list of amounts. */
  readonly amounts: string;
  /** Group keys in the order of the sums. */
  readonly keys: readonly string[];
  /** Sums. */
  readonly sums: SavedSums;
  /** Lots with rejects. */
  readonly rejected: readonly Rejected[];
  /** Reprints. */
  readonly reprints: readonly Reprint[];
  /** Sample of lots. */
  readonly sample: readonly SampledLot[];
  /** Digests of the files read. */
  readonly files: readonly string[];
}

/** Sums by group, growing lot by lot. */
export class Ledger {
  readonly #places = new Map<string, number>();
  readonly #sums = new BinnedSums(0);
  readonly #sample = new Sample();
  readonly #rejected: Rejected[] = [];
  readonly #reprints: Reprint[] = [];
  readonly #files = new Set<string>();
  readonly #row = new Float64Array(AMOUNTS.length);

  /**
   * Adds a lot.
   *
   * @param lot - the lot, its route known to the plant
   * @param plant - the print house
   */
  add(lot: Lot, plant: Plant): void {
    const route = plant.routes[lot.route];
    if (route === undefined) throw new Error(`Lot ${lot.lot} has a route the plant does not know.`);
    const arms = armsOf(plant, route, lot.fibre);
    const names =
      "without" in arms
        ? { pigment: "", dye: "" }
        : { pigment: arms.pigment.name, dye: arms.dye.name };
    const key = keyText(keyOf(lot, route.workflow, names));
    const row = tally(lot, route.printWidth, this.#row);
    this.#sums.addRow(this.#place(key) * AMOUNTS.length, row);
    if (lot.kind === "reprint") {
      this.#reprints.push({
        lot: lot.lot,
        of: lot.reprintOf,
        area: acceptedArea(lot, route.printWidth),
        key,
      });
    }
    if ((lot.rejected ?? 0) > 0) {
      this.#rejected.push({
        lot: lot.lot,
        area: (lot.rejected ?? 0) * Math.min(route.printWidth ?? lot.width, lot.width),
      });
    }
    this.#sample.offer(hash64(lot.lot)[0], () => ({
      hash: hash64(lot.lot)[0],
      lot: lot.lot,
      key,
      amounts: [...row],
    }));
  }

  /**
   * Notes a file that was read.
   *
   * @param digest - its SHA-256
   * @throws Error when it was read before: lots would count twice
   */
  noteFile(digest: string): void {
    this.#unread(digest);
    this.#files.add(digest);
  }

  /**
   * Groups with their sums, sorted by key, reprints settled.
   *
   * @returns groups, and reprints that no reject covers
   */
  settled(): {
    readonly groups: readonly Group[];
    readonly uncovered: ReturnType<typeof settle>["uncovered"];
  } {
    const values = this.#sums.values();
    const { byKey, uncovered } = settle(this.#rejected, this.#reprints);
    const width = AMOUNTS.length;
    const groups = [...this.#places]
      .sort(([a], [b]) => (a < b ? -1 : 1))
      .map(([text, place]): Group => {
        const amounts = values.slice(place * width, (place + 1) * width);
        amounts[ACCEPTED] = (amounts[ACCEPTED] ?? 0) + (byKey.get(text) ?? 0);
        return { key: keyFrom(text), lots: amounts[0] ?? 0, amounts };
      });
    return { groups, uncovered };
  }

  /**
   * The sample of lots.
   *
   * @returns lots with their group and amounts
   */
  sample(): readonly {
    readonly lot: string;
    readonly key: LedgerKey;
    readonly amounts: readonly number[];
  }[] {
    return this.#sample
      .lots()
      .map(({ lot, key, amounts }) => ({ lot, key: keyFrom(key), amounts }));
  }

  /**
   * Takes another ledger in.
   *
   * @param other - ledger over other lots
   */
  merge(other: Ledger): void {
    this.#take(other.save());
  }

  /**
   * The ledger as plain data.
   *
   * @returns what `Ledger.load` reads
   */
  save(): SavedLedger {
    return {
      format: FORMAT,
      amounts: AMOUNTS_DIGEST,
      keys: [...this.#places.keys()],
      sums: this.#savedSums(),
      rejected: [...this.#rejected],
      reprints: [...this.#reprints],
      sample: this.#sample.lots(),
      files: [...this.#files],
    };
  }

  /**
   * Reads a saved ledger.
   *
   * @param saved - the data
   * @returns the ledger
   * @throws Error when it was made under another format or list of amounts
   */
  static load(saved: SavedLedger): Ledger {
    const ledger = new Ledger();
    ledger.#take(saved);
    return ledger;
  }

  #take(saved: SavedLedger): void {
    if (saved.format !== FORMAT || saved.amounts !== AMOUNTS_DIGEST) {
      throw new Error("The ledger was saved by another version; make it anew from the logs.");
    }
    // All are looked at before one is noted, so that a ledger refused leaves this one as it was.
    for (const digest of saved.files) this.#unread(digest);
    for (const digest of saved.files) this.noteFile(digest);
    const width = AMOUNTS.length;
    const places = saved.keys.map((key) => this.#place(key));
    const whole = new Array<number>(this.#sums.slots).fill(0);
    const fraction = new Array<number>(this.#sums.slots).fill(0);
    places.forEach((place, i) => {
      for (let k = 0; k < width; k++) {
        whole[place * width + k] = saved.sums.whole[i * width + k] ?? NaN;
        fraction[place * width + k] = saved.sums.fraction[i * width + k] ?? NaN;
      }
    });
    this.#sums.merge(BinnedSums.fromJSON({ whole, fraction }));
    this.#rejected.push(...saved.rejected);
    this.#reprints.push(...saved.reprints);
    for (const entry of saved.sample) this.#sample.offer(entry.hash, () => entry);
  }

  #unread(digest: string): void {
    if (this.#files.has(digest)) {
      throw new Error("The same file was added twice; its lots would count double. Give it once.");
    }
  }

  #place(key: string): number {
    const known = this.#places.get(key);
    if (known !== undefined) return known;
    const place = this.#places.size;
    this.#places.set(key, place);
    // Room is doubled, so that many groups do not mean many copies.
    const needed = (place + 1) * AMOUNTS.length;
    if (needed > this.#sums.slots) this.#sums.grow(2 * needed);
    return place;
  }

  #savedSums(): SavedSums {
    const { whole, fraction } = this.#sums.toJSON();
    const used = this.#places.size * AMOUNTS.length;
    return { whole: whole.slice(0, used), fraction: fraction.slice(0, used) };
  }
}
