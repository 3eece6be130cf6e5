/**
 * Grades of fastness by route: how many lots have which, and how many fall short of what their client takes.
 * Grades are an order, not a quantity, so they are counted and never added.
 */

import type { Lot } from "../log/lot.js";
import { ownText } from "../log/own-text.js";
import type { Plant } from "../plant/plant.js";

/** Properties that are graded, as the log and the plant file name them. */
export const PROPERTIES = ["rub_dry", "rub_wet", "wash"] as const;

/** A property that is graded. */
export type Property = (typeof PROPERTIES)[number];

/** Number of half grades from 1 to 5. */
export const HALF_GRADES = 9;

/** Counts of a route; lots of production and reprints, without overhead. */
export interface RouteGrades {
  /** Route, as logged. */
  readonly route: string;
  /** Lots. */
  readonly lots: number;
  /** Lots of which every property is graded. */
  readonly graded: number;
  /** Reprints among the lots. */
  readonly reprints: number;
  /** Lots by half grade, from 1 to 5, for each property. */
  readonly grades: Readonly<Record<Property, readonly number[]>>;
  /** Lots of clients that name a least grade. */
  readonly asked: number;
  /** Lots of them that miss it in a logged grade. */
  readonly below: number;
  /** Area of those lots that would have been of first quality otherwise. [cm²] */
  readonly belowArea: number;
}

type Counts = { -readonly [K in keyof Omit<RouteGrades, "grades">]: RouteGrades[K] } & {
  readonly grades: Readonly<Record<Property, number[]>>;
};

function gradeOf(lot: Lot, property: Property): number | undefined {
  const { rubDry, rubWet, wash } = lot.fastness;
  return { rub_dry: rubDry, rub_wet: rubWet, wash }[property];
}

type Minimum = NonNullable<Plant["text"]["clients"]>[string]["minimum"];

function minimumOf(lot: Lot, plant: Plant): Minimum | undefined {
  const { clients } = plant.text;
  return clients !== undefined && Object.hasOwn(clients, lot.client)
    ? clients[lot.client]?.minimum
    : undefined;
}

/**
 * Whether a lot misses what its client takes. A grade that nobody logged is not taken for a bad one.
 *
 * @param lot - the lot
 * @param plant - the print house, whose file names least grades by client
 * @returns true when a logged grade lies below the least
 */
export function missesMinimum(lot: Lot, plant: Plant): boolean {
  const minimum = minimumOf(lot, plant);
  if (minimum === undefined || lot.kind === "overhead") return false;
  return PROPERTIES.some((property) => {
    const [grade, least] = [gradeOf(lot, property), minimum[property]];
    return grade !== undefined && least !== undefined && grade < least;
  });
}

/** Counts by route, growing lot by lot; all are whole numbers, so the order of lots cannot matter. */
export class Fastness {
  readonly #routes = new Map<string, Counts>();

  /**
   * Counts a lot.
   *
   * @param lot - the lot
   * @param plant - the print house
   * @param area - area that would be of first quality if grades did not count [m²]
   */
  add(lot: Lot, plant: Plant, area: number): void {
    if (lot.kind === "overhead") return;
    const counts = this.#of(lot.route);
    const grades = PROPERTIES.map((property) => gradeOf(lot, property));
    counts.lots += 1;
    if (grades.every((grade) => grade !== undefined)) counts.graded += 1;
    if (lot.kind === "reprint") counts.reprints += 1;
    for (const [i, property] of PROPERTIES.entries()) {
      const grade = grades[i];
      if (grade === undefined) continue;
      const bin = Math.round(2 * grade) - 2;
      counts.grades[property][bin] = (counts.grades[property][bin] ?? 0) + 1;
    }
    if (minimumOf(lot, plant) !== undefined) counts.asked += 1;
    if (!missesMinimum(lot, plant)) return;
    counts.below += 1;
    counts.belowArea += Math.round(1e4 * area);
  }

  /**
   * Takes other counts in.
   *
   * @param saved - counts as `toJSON` gives them
   * @throws Error when they are not as they were saved
   */
  take(saved: readonly RouteGrades[]): void {
    const whole = (count: number): boolean => Number.isSafeInteger(count) && count >= 0;
    for (const { grades, lots, graded, reprints, asked, below, belowArea } of saved) {
      const bins = PROPERTIES.flatMap((property) => grades[property]);
      if (
        bins.length !== HALF_GRADES * PROPERTIES.length ||
        ![...bins, lots, graded, reprints, asked, below, belowArea].every(whole)
      )
        throw new Error("Grades of the ledger are not as they were saved; make it anew.");
    }
    for (const one of saved) {
      const counts = this.#of(one.route);
      counts.lots += one.lots;
      counts.graded += one.graded;
      counts.reprints += one.reprints;
      counts.asked += one.asked;
      counts.below += one.below;
      counts.belowArea += one.belowArea;
      for (const property of PROPERTIES) {
        const bins = counts.grades[property];
        for (const [bin, count] of one.grades[property].entries())
          bins[bin] = (bins[bin] ?? 0) + count;
      }
    }
  }

  /**
   * Counts by route, as plain data.
   *
   * @returns counts sorted by the name of the route; what `take` reads
   */
  toJSON(): readonly RouteGrades[] {
    return [...this.#routes.keys()].toSorted().map((route) => structuredClone(this.#of(route)));
  }

  #of(route: string): Counts {
    const before = this.#routes.get(route);
    if (before !== undefined) return before;
    const none = (): number[] => Array.from({ length: HALF_GRADES }, () => 0);
    const counts: Counts = {
      route: ownText(route),
      lots: 0,
      graded: 0,
      reprints: 0,
      grades: { rub_dry: none(), rub_wet: none(), wash: none() },
      asked: 0,
      below: 0,
      belowArea: 0,
    };
    this.#routes.set(counts.route, counts);
    return counts;
  }
}
