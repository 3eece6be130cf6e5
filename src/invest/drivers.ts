/**
 * What the worth of an option hangs on: where it turns, and how far each input moves it.
 */

import { rootsAlong } from "../numbers/roots.js";
import { quantiles } from "../numbers/quantiles.js";
import { type Heading, HEADINGS } from "./cost.js";
import { discounted, type Gain, gainOf } from "./gain.js";
import type { Input } from "./inputs.js";
import type { Study, StudyOption } from "./study.js";
import { centralWorld, drawnWorld } from "./world.js";

/** Where an input turns the worth of an option. */
export interface BreakEven {
  /** The input. */
  readonly input: Input;
  /** Value at which nothing is won or lost, the nearest to today's; absent where there is none in the range. */
  readonly at: number | undefined;
  /** Range looked at. */
  readonly range: readonly [number, number];
  /** Whether the worth rises with it. */
  readonly rises: boolean;
}

/** Points along a range; between them the worth bends at most once where a machine fills up. */
const POINTS = 60;

/**
 * Finds where inputs turn the worth of an option, all others at their central values.
 *
 * @param study - the study
 * @param option - the option
 * @returns one for each input that moves its worth, in the order of the study
 */
export function breakEvensOf(study: Study, option: StudyOption): readonly BreakEven[] {
  return [...study.inputs.values()].flatMap((input) => {
    const range = rangeOf(option, input);
    if (range === undefined) return [];
    const of = (x: number): number =>
      gainOf(study, option, centralWorld(new Map([[input.id, x]]))).worth;
    const [from, to] = range;
    if (of(from) === of(to)) return [];
    const points = Array.from({ length: POINTS + 1 }, (_, i) => {
      const x = from + ((to - from) * i) / POINTS;
      return { x, y: of(x) };
    });
    const roots = rootsAlong(points, of);
    const far = (x: number): number => Math.abs(x - input.central);
    const [at] = [...roots].sort((a, b) => far(a) - far(b));
    return [{ input, at, range, rises: (points.at(-1)?.y ?? 0) > (points[0]?.y ?? 0) }];
  });
}

const UP_TO: readonly (readonly [
  RegExp,
  (input: Input, option: StudyOption) => readonly [number, number],
])[] = [
  [/^prices\.(?!.*growth$)/, ({ central }) => [0, 5 * central]],
  [/^orders\.level$/, () => [0.05, 3]],
  [/^moves\.all$/, (_, option) => [0, mostMultiple(option)]],
  [/^effluent\.level$/, () => [0, 10]],
  [/^outlay$/, () => [0, 4]],
  [/^discount$/, () => [-0.15, 0.8]],
  [/^stays\./, () => [0, 1]],
  [/\.rejects$/, () => [0, 0.5]],
  [
    /^options\..*\.yearly\[\d+\]$/,
    ({ central }) => (central < 0 ? [5 * central, 0] : [0, 5 * central]),
  ],
  [/^options\..*\.demand_kw$/, ({ central }) => [0, 5 * Math.abs(central)]],
];

function rangeOf(option: StudyOption, input: Input): readonly [number, number] | undefined {
  const { id } = input;
  return UP_TO.find(([pattern]) => pattern.test(id))?.[1](input, option);
}

// Beyond it no more lots can move: the smallest share that may move has become 1.
function mostMultiple({ moving }: StudyOption): number {
  const shares = moving.map(({ share }) => share.central).filter((share) => share > 0);
  return shares.length === 0 ? 1 : Math.max(1, 1 / Math.min(...shares));
}

/** How far an input moves the worth of an option. */
export interface WorthSwing {
  /** The input; absent for the model of the hall. */
  readonly input: Input | undefined;
  /** Worth with it at its low end. */
  readonly low: number;
  /** Worth with it at its high end. */
  readonly high: number;
  /** Worth with it at the median of its draws, which is not its value where low and high lie unevenly. */
  readonly middle: number;
}

/**
 * Moves each input to its 10 and 90 % quantiles, all others at their central values; and draws the model of the
 * hall alone, with all inputs held.
 *
 * @param study - the study
 * @param option - the option
 * @param draws - number of worlds for the model of the hall
 * @returns swings, the farthest first
 */
export function worthSwings(
  study: Study,
  option: StudyOption,
  draws: number,
): readonly WorthSwing[] {
  const swings: WorthSwing[] = [...study.inputs.values()].flatMap((input) => {
    if (!(input.low < input.high)) return [];
    const of = (x: number): number =>
      gainOf(study, option, centralWorld(new Map([[input.id, x]]))).worth;
    const [low, high] = [of(input.low), of(input.high)];
    const [median = input.central] =
      input.draws === undefined ? [] : quantiles(input.draws.slice(0, draws), [0.5]);
    return low === high ? [] : [{ input, low, high, middle: of(median) }];
  });
  const model = Float64Array.from(modelGains(study, option, draws), ({ worth }) => worth);
  const [low = NaN, middle = NaN, high = NaN] = quantiles(model, [0.1, 0.5, 0.9]);
  swings.push({ input: undefined, low, high, middle });
  return swings.sort((a, b) => Math.abs(b.high - b.low) - Math.abs(a.high - a.low));
}

// What an option brings with all inputs held and the model of the hall drawn.
function modelGains(study: Study, option: StudyOption, draws: number): readonly Gain<number>[] {
  const held = new Map([...study.inputs].map(([id, { central }]) => [id, central]));
  return Array.from({ length: draws }, (_, at) => gainOf(study, option, drawnWorld(at, held)));
}

/** What the model of the hall does to one heading. */
export interface ModelPart {
  /** The heading. */
  readonly heading: Heading;
  /** 10 % quantile of its present value. */
  readonly low: number;
  /** 90 % quantile of its present value. */
  readonly high: number;
}

/**
 * Says under which headings the doubt of the model of the hall falls.
 *
 * @param study - the study
 * @param option - the option
 * @param draws - number of worlds
 * @returns headings that move, the widest first
 */
export function modelPartsOf(
  study: Study,
  option: StudyOption,
  draws: number,
): readonly ModelPart[] {
  const gains = modelGains(study, option, draws);
  const rate = study.discount.central;
  return HEADINGS.map((heading): ModelPart => {
    const present = Float64Array.from(gains, ({ byHeading }) =>
      discounted(study, rate, byHeading.get(heading) ?? []).reduce((sum, each) => sum + each, 0),
    );
    const [low = NaN, high = NaN] = quantiles(present, [0.1, 0.9]);
    return { heading, low, high };
  })
    .filter(({ low, high }) => high - low > 1e-9)
    .sort((a, b) => b.high - b.low - (a.high - a.low));
}

/** A point of the line at which nothing is won or lost. */
export interface IsoPoint {
  /** Order book as a multiple. */
  readonly level: number;
  /** Price of ink at which the worth is as wanted; absent where even free ink does not do. */
  readonly price: number | undefined;
}

/**
 * Line of equal worth over the order book and the price of ink, whose worth is a straight line in the price.
 *
 * @param study - the study
 * @param option - the option
 * @param ink - id of the price
 * @param levels - order books as multiples
 * @param worth - the worth along the line
 * @returns points in the order of the levels
 */
export function isoWorth(
  study: Study,
  option: StudyOption,
  ink: string,
  levels: readonly number[],
  worth = 0,
): readonly IsoPoint[] {
  return levels.map((level) => {
    const of = (price: number): number =>
      gainOf(
        study,
        option,
        centralWorld(
          new Map([
            ["orders.level", level],
            [ink, price],
          ]),
        ),
      ).worth - worth;
    const [free, one] = [of(0), of(1)];
    const price = free / (free - one);
    return { level, price: price >= 0 && Number.isFinite(price) ? price : undefined };
  });
}
