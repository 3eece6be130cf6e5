/**
 * All options in the same drawn worlds: prices, capital, shares and the model of the hall drawn together.
 */

import { type Cost, costOf, type Heading } from "./cost.js";
import { discounted, gainOf } from "./gain.js";
import { equivalentAnnual, paybackOf } from "./present-value.js";
import { DOUBLES } from "./arithmetic.js";
import { quantiles } from "../numbers/quantiles.js";
import type { Study, StudyOption } from "./study.js";
import { drawnWorld, type Held } from "./world.js";

/** Low, middle and high of draws. */
export interface Span {
  /** 10 % quantile. */
  readonly low: number;
  /** Median. */
  readonly median: number;
  /** 90 % quantile. */
  readonly high: number;
}

/** An option in all worlds. */
export interface DrawnOption {
  /** The option. */
  readonly option: StudyOption;
  /** Net present values. */
  readonly worth: Float64Array;
  /** Worlds in which it is above 0. */
  readonly above: number;
  /** 2.5 %, 10 %, 50 %, 90 % and 97.5 % quantiles of the worth. */
  readonly spread: readonly [number, number, number, number, number];
  /** Running sums of discounted money, by year. */
  readonly cumulative: readonly Span[];
  /** Money of each year, not discounted. */
  readonly yearly: readonly Span[];
  /** Worlds by year in which the discounted money is back, `never` last. */
  readonly paybacks: readonly number[];
  /** Equal yearly money of the same worth. */
  readonly even: Float64Array;
  /** Money of a heading, in the first year in which all have moved. */
  readonly steady: ReadonlyMap<Heading, Span>;
  /** Share of the lots that may move that has moved by the last year. */
  readonly moved: Span;
  /** Tonnes of CO2e less over its life. */
  readonly tonnes: Span;
  /** Worlds in which it both saves tonnes and brings money. */
  readonly saves: number;
}

/**
 * Works options out in all worlds.
 *
 * @param study - the study
 * @param options - options
 * @param draws - number of worlds, no more than were drawn
 * @param held - inputs held at a value
 * @returns each option
 */
export function drawnOptions(
  study: Study,
  options: readonly StudyOption[],
  draws: number,
  held?: Held,
): readonly DrawnOption[] {
  const gathered = options.map((option) => new Gathering(study, option, draws));
  for (let at = 0; at < draws; at++) {
    const world = drawnWorld(at, held);
    const carrying = new Map<number, Cost<number>>();
    for (const gathering of gathered) {
      const { option } = gathering;
      const { life } = option.text;
      let carryOn = carrying.get(life);
      if (carryOn === undefined)
        carrying.set(life, (carryOn = costOf(study, study.carryOn, life, world)));
      gathering.add(at, gainOf(study, option, world, carryOn), world.of(study.discount));
    }
  }
  return gathered.map((gathering) => gathering.result());
}

class Gathering {
  readonly option: StudyOption;
  readonly #study: Study;
  readonly #worth: Float64Array;
  readonly #even: Float64Array;
  readonly #yearly: readonly Float64Array[];
  readonly #sums: readonly Float64Array[];
  readonly #paybacks: number[];
  readonly #steady = new Map<Heading, Float64Array>();
  readonly #moved: Float64Array;
  readonly #tonnes: Float64Array;
  #saves = 0;

  constructor(study: Study, option: StudyOption, draws: number) {
    const { life } = option.text;
    const rows = (): readonly Float64Array[] =>
      Array.from({ length: life + 1 }, () => new Float64Array(draws));
    this.option = option;
    this.#study = study;
    this.#worth = new Float64Array(draws);
    this.#even = new Float64Array(draws);
    this.#moved = new Float64Array(draws);
    this.#tonnes = new Float64Array(draws);
    this.#yearly = rows();
    this.#sums = rows();
    this.#paybacks = Array.from({ length: life + 2 }, () => 0);
  }

  add(at: number, gain: ReturnType<typeof gainOf<number>>, rate: number): void {
    const { life } = this.option.text;
    this.#worth[at] = gain.worth;
    this.#even[at] = equivalentAnnual(DOUBLES, rate, gain.worth, life, this.#study.timing);
    const present = discounted(this.#study, rate, gain.flows);
    let sum = 0;
    present.forEach((money, year) => {
      sum += money;
      this.#sums[year]![at] = sum;
      this.#yearly[year]![at] = gain.flows[year] ?? 0;
    });
    const back = paybackOf(present);
    const place = back === undefined ? life + 1 : Math.ceil(back);
    this.#paybacks[place] = (this.#paybacks[place] ?? 0) + 1;
    const full = Math.min(life, Math.max(1, this.option.rampup.length));
    for (const [heading, money] of gain.byHeading) {
      let row = this.#steady.get(heading);
      if (row === undefined)
        this.#steady.set(heading, (row = new Float64Array(this.#worth.length)));
      row[at] = money[full] ?? 0;
    }
    this.#moved[at] = gain.option.book.moved[life] ?? 0;
    const tonnes = gain.tonnesLess.reduce((total, each) => total + each, 0);
    this.#tonnes[at] = tonnes;
    if (tonnes > 0 && gain.worth > 0) this.#saves += 1;
  }

  result(): DrawnOption {
    const [a = NaN, b = NaN, c = NaN, d = NaN, e = NaN] = quantiles(
      this.#worth,
      [0.025, 0.1, 0.5, 0.9, 0.975],
    );
    return {
      option: this.option,
      worth: this.#worth,
      above: this.#worth.reduce((count, worth) => count + (worth > 0 ? 1 : 0), 0),
      spread: [a, b, c, d, e],
      cumulative: this.#sums.map(spanOf),
      yearly: this.#yearly.map(spanOf),
      paybacks: this.#paybacks,
      even: this.#even,
      steady: new Map([...this.#steady].map(([heading, row]) => [heading, spanOf(row)])),
      moved: spanOf(this.#moved),
      tonnes: spanOf(this.#tonnes),
      saves: this.#saves,
    };
  }
}

/**
 * Low, middle and high of draws.
 *
 * @param draws - draws
 * @returns 10 %, 50 % and 90 % quantile
 */
export function spanOf(draws: Float64Array): Span {
  const [low = NaN, median = NaN, high = NaN] = quantiles(draws, [0.1, 0.5, 0.9]);
  return { low, median, high };
}

/** How often each option comes first. */
export interface Order {
  /** Name of the option; the one to carry on among them. */
  readonly name: string;
  /** Worlds in which it stands at each place, the first place first. */
  readonly places: readonly number[];
}

/**
 * Order of options as counts of worlds: by equal yearly money, so that unequal lives can stand side by side as if each
 * were bought again; or by worth, as if one carried on as before once an option has lived. To carry on brings nothing
 * against itself.
 *
 * @param carryOn - name of the option to carry on
 * @param drawn - options in the same worlds
 * @param by - what counts
 * @returns places of each option
 */
export function orderOf(
  carryOn: string,
  drawn: readonly DrawnOption[],
  by: "even" | "worth" = "even",
): readonly Order[] {
  const names = [carryOn, ...drawn.map(({ option }) => option.name)];
  const places = names.map(() => names.map(() => 0));
  const count = drawn[0]?.worth.length ?? 0;
  for (let at = 0; at < count; at++) {
    const even = [0, ...drawn.map((option) => option[by][at] ?? 0)];
    const sorted = even.map((_, i) => i).sort((a, b) => (even[b] ?? 0) - (even[a] ?? 0));
    sorted.forEach((option, place) => {
      const row = places[option]!;
      row[place] = (row[place] ?? 0) + 1;
    });
  }
  return names.map((name, i) => ({ name, places: places[i] ?? [] }));
}

/**
 * Counts the worlds in which one option brings more a year than another.
 *
 * @param one - equal yearly money of the one
 * @param other - of the other
 * @returns number of worlds
 */
export function aheadIn(one: Float64Array, other: Float64Array): number {
  return one.reduce((count, even, at) => count + (even > (other[at] ?? 0) ? 1 : 0), 0);
}
