/**
 * Sums of amounts by group. Small, mergeable, savable; adding lots in another order, or in parts that are
 * merged, gives the same ledger to the last bit.
 */

import type { Lot } from "../log/lot.js";
import { ownText } from "../log/own-text.js";
import type { SavedSums } from "../numbers/binned-sum.js";
import { hash64, sha256Hex } from "../numbers/digest.js";
import { armsOf } from "../plant/counterpart.js";
import { plantOn } from "../plant/dated.js";
import type { Plant } from "../plant/plant.js";
import { AMOUNTS } from "../steps/amounts.js";
import { Fastness, missesMinimum, type RouteGrades } from "./fastness.js";
import { type Folded, foldNames } from "./fold-names.js";
import { GroupSums } from "./group-sums.js";
import { keyFrom, keyOf, keyText, type LedgerKey } from "./key.js";
import { Rejects, type SavedRejects } from "./rejects.js";
import { type Reprint, settle } from "./reprints.js";
import { Sample, type SampledLot } from "./sample.js";
import { ACCEPTED, acceptedArea, tally } from "./tally.js";

/** Format of saved ledgers. */
const FORMAT = "millrace-ledger-3";

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
  /** Rejected areas. */
  readonly rejects: SavedRejects;
  /** Reprints. */
  readonly reprints: readonly Reprint[];
  /** Grades of fastness by route. */
  readonly fastness: readonly RouteGrades[];
  /** Sample of lots. */
  readonly sample: readonly SampledLot[];
  /** Digests of the files read. */
  readonly files: readonly string[];
}

/**
 * Sums by group, growing lot by lot. Its memory grows with the number of groups (about 0.7 kB each), with lots
 * that have rejects (16 bytes each) and with reprints (about 150 bytes each), not with lots as such.
 */
export class Ledger {
  readonly #sums = new GroupSums();
  readonly #sample = new Sample();
  readonly #rejects = new Rejects();
  readonly #reprints: Reprint[] = [];
  readonly #fastness = new Fastness();
  readonly #files = new Set<string>();
  readonly #row = new Float64Array(AMOUNTS.length);

  /**
   * Adds a lot. One that misses the least grade of its client is no first quality, like cloth rejected: what
   * it took counts, its accepted area is 0, and a reprint may make up for it.
   *
   * @param logged - the lot, its route known to the plant
   * @param plant - the print house
   */
  add(logged: Lot, plant: Plant): void {
    const { from, plant: then } = plantOn(plant, logged);
    const route = then.routes[logged.route];
    if (route === undefined)
      throw new Error(`Lot ${logged.lot} has a route the plant does not know.`);
    this.#fastness.add(logged, plant, acceptedArea(logged, route.printWidth));
    const lot = missesMinimum(logged, plant) ? { ...logged, rejected: logged.length } : logged;
    const arms = armsOf(then, route, lot.fibre);
    const names =
      "without" in arms
        ? { pigment: "", dye: "" }
        : { pigment: arms.pigment.name, dye: arms.dye.name };
    const key = keyText(keyOf(lot, route.workflow, names, from));
    const row = tally(lot, route.printWidth, this.#row);
    this.#sums.add(key, row);
    if (lot.kind === "reprint") {
      this.#reprints.push({
        lot: ownText(lot.lot),
        of: ownText(lot.reprintOf),
        area: acceptedArea(lot, route.printWidth),
        key: this.#sums.kept(key),
      });
    }
    const hash = hash64(lot.lot);
    const rejected = lot.rejected ?? 0;
    if (rejected > 0) {
      this.#rejects.add(hash, rejected * Math.min(route.printWidth ?? lot.width, lot.width));
    }
    this.#sample.offer(hash[0], () => ({
      hash: hash[0],
      lot: ownText(lot.lot),
      key: this.#sums.kept(key),
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
   * Groups with their sums, sorted by key, reprints settled, and many names of clients or fabrics folded.
   *
   * @returns groups, reprints that no reject covers, and the names folded
   */
  settled(): {
    readonly groups: readonly Group[];
    readonly uncovered: ReturnType<typeof settle>["uncovered"];
    readonly folded: Folded;
  } {
    const { byKey, uncovered } = settle(this.#rejects, this.#reprints);
    const sums = this.#sums;
    const words = new Map<string, string>();
    function* groups(): Generator<Group> {
      for (const [text, amounts] of sums.rows()) {
        amounts[ACCEPTED] = (amounts[ACCEPTED] ?? 0) + (byKey.get(text) ?? 0);
        yield { key: sharing(words, keyFrom(text)), lots: amounts[0] ?? 0, amounts };
      }
    }
    return { ...foldNames(groups), uncovered };
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
   * Grades of fastness.
   *
   * @returns counts by route, sorted by its name
   */
  fastness(): readonly RouteGrades[] {
    return this.#fastness.toJSON();
  }

  /**
   * Takes another ledger in.
   *
   * @param other - ledger over other lots; not changed
   * @throws Error when both have read the same file; this one stays as it was
   */
  merge(other: Ledger): void {
    this.#take(other.#rest(), other.#rejects);
  }

  /**
   * The ledger as plain data. Rejects stand in it by the hash of the lot's name, reprints and the lots of the
   * sample by name.
   *
   * @returns what `Ledger.load` reads
   */
  save(): SavedLedger {
    return { ...this.#rest(), rejects: this.#rejects.toJSON() };
  }

  /**
   * Reads a saved ledger.
   *
   * @param saved - the data
   * @returns the ledger
   * @throws Error when it was made under another format or list of amounts, or is not as it was saved
   */
  static load(saved: SavedLedger): Ledger {
    if (saved.format !== FORMAT || saved.amounts !== AMOUNTS_DIGEST) {
      throw new Error("The ledger was saved by another version; make it anew from the logs.");
    }
    const ledger = new Ledger();
    ledger.#take(saved, Rejects.fromJSON(saved.rejects));
    return ledger;
  }

  // Rejects grow with the log and are merged as they are, the rest goes through plain data.
  #rest(): Omit<SavedLedger, "rejects"> {
    return {
      format: FORMAT,
      amounts: AMOUNTS_DIGEST,
      ...this.#sums.save(),
      reprints: [...this.#reprints],
      fastness: this.#fastness.toJSON(),
      sample: this.#sample.lots(),
      files: [...this.#files],
    };
  }

  #take(saved: Omit<SavedLedger, "rejects">, rejects: Rejects): void {
    // All are looked at before one is noted, so that a ledger refused leaves this one as it was.
    for (const digest of saved.files) this.#unread(digest);
    new Fastness().take(saved.fastness);
    this.#sums.take(saved);
    this.#fastness.take(saved.fastness);
    for (const digest of saved.files) this.noteFile(digest);
    this.#rejects.merge(rejects);
    for (const reprint of saved.reprints) this.#reprints.push(reprint);
    for (const entry of saved.sample) this.#sample.offer(entry.hash, () => entry);
  }

  #unread(digest: string): void {
    if (this.#files.has(digest)) {
      throw new Error("The same file was added twice; its lots would count double. Give it once.");
    }
  }
}

// The words of a key stand in thousands of others; each is kept once.
function sharing(words: Map<string, string>, key: LedgerKey): LedgerKey {
  const one = (word: string): string => {
    const known = words.get(word);
    if (known === undefined) words.set(word, word);
    return known ?? word;
  };
  return {
    site: one(key.site),
    month: one(key.month),
    client: one(key.client),
    fabric: one(key.fabric),
    blend: one(key.blend),
    weight: one(key.weight),
    coverage: one(key.coverage),
    route: one(key.route),
    pigment: one(key.pigment),
    dye: one(key.dye),
    own: key.own,
    kind: one(key.kind),
    settings: one(key.settings),
  };
}
