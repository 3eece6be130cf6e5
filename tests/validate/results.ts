/** What the hall comes to, fabric by fabric, beside published ranges and step by step. */

import type { IndicatorId } from "../../src/account/indicators.js";
import type { Program } from "../../src/account/program.js";
import { FABRICS, type Fabric, hallOf, programOf } from "./hall.js";
import {
  atMedians,
  drawsAt,
  ofSettings,
  perKilogram,
  type Place,
  quotient,
  type Ranged,
  rangeOf,
  type Reading,
} from "./measure.js";
import { type Practice, PRACTICES } from "./practice.js";
import { type Beside, type Measure, type Published, PUBLISHED, type Steps } from "./published.js";
import { ALL_STEPS, type StepAsked } from "./steps-asked.js";
import { spanOf, together, type Verdict, verdictOf } from "./verdict.js";

/** One number in the three practices. */
export interface Practised {
  /** Every factor at its median. */
  readonly at: Readonly<Record<Practice, number>>;
  /** The usual practice drawn; absent where nothing was drawn. */
  readonly drawn?: Ranged;
}

/** A fabric beside a published range. */
export interface FabricRow extends Practised {
  readonly fabric: Fabric;
  readonly verdict: Verdict;
  /** Whether the usual practice alone lies inside. */
  readonly usualInside: boolean;
}

/** Ours beside a published range. */
export interface Compared {
  readonly published: Published;
  readonly beside: Beside;
  readonly fabrics: readonly FabricRow[];
  /** Verdict over all fabrics. */
  readonly verdict: Verdict;
}

/** Carriers that a step is told in. */
export const CARRIERS = ["water", "heat", "electricity"] as const;

/** A carrier. */
export type Carrier = (typeof CARRIERS)[number];

/** A step, or a whole route, for all fabrics it is asked of. */
export interface StepResult {
  readonly step: StepAsked;
  readonly fabrics: readonly {
    readonly fabric: Fabric;
    readonly of: Readonly<Record<Carrier, Practised>>;
  }[];
}

/** All of it. */
export interface Results {
  readonly compared: readonly Compared[];
  readonly steps: readonly StepResult[];
}

/** What is asked for. */
export interface ResultsAsked {
  /** Day, ISO 8601. */
  readonly asOf: string;
  /** Draws of the usual practice; 0 for none. */
  readonly draws: number;
  /** Seed of the draws. */
  readonly seed: number;
}

const MJ_PER_KWH = 3.6;

/**
 * Puts all fabrics through the hall.
 *
 * @param asked - day, draws, seed
 * @returns ours beside every published range, and every step
 */
export function resultsOf({ asOf, draws, seed }: ResultsAsked): Results {
  const halls = PRACTICES.map((practice) => hallOf(practice));
  const numbers = FABRICS.map((fabric) => {
    const readingsIn = (program: Program): readonly Reading[] => [
      ...pairs(fabric).map(({ beside }) => readingOf(program, beside.measure, fabric)),
      ...stepsOf(fabric).flatMap((step) =>
        CARRIERS.map((carrier) => perKilogram(program, placeOf(step.steps), carrier)),
      ),
    ];
    const programs = halls.map((hall) => programOf(hall, fabric, asOf));
    const medians = programs.map((program) => atMedians(program, readingsIn(program)));
    const usual = programs[PRACTICES.indexOf("usual")];
    const drawn =
      draws > 0 && usual !== undefined
        ? drawsAt(usual, readingsIn(usual), draws, seed).map(rangeOf)
        : [];
    return {
      fabric,
      practised: readingsIn(programs[0]!).map((_, r): Practised => {
        const [poor = NaN, common = NaN, well = NaN] = medians.map((values) => values[r] ?? NaN);
        const interval = drawn[r];
        return {
          at: { poor, usual: common, well },
          ...(interval === undefined ? {} : { drawn: interval }),
        };
      }),
    };
  });
  const found = new Map<Beside | StepAsked, { fabric: Fabric; numbers: readonly Practised[] }[]>();
  const note = (key: Beside | StepAsked, fabric: Fabric, these: readonly Practised[]): void => {
    found.set(key, [...(found.get(key) ?? []), { fabric, numbers: these }]);
  };
  for (const { fabric, practised } of numbers) {
    let next = 0;
    for (const { key } of pairs(fabric)) note(key, fabric, practised.slice(next, ++next));
    for (const step of stepsOf(fabric)) {
      note(step, fabric, practised.slice(next, next + CARRIERS.length));
      next += CARRIERS.length;
    }
  }
  return {
    compared: PAIRS.map(({ published, beside, key }) =>
      comparedOf(published, beside, found.get(key) ?? []),
    ),
    steps: ALL_STEPS.map((step) => ({
      step,
      fabrics: (found.get(step) ?? []).map(({ fabric, numbers: [water, heat, electricity] }) => ({
        fabric,
        of: { water: water!, heat: heat!, electricity: electricity! },
      })),
    })),
  };
}

// What is set beside two ranges is one object there, so each pair gets a key of its own.
const PAIRS = PUBLISHED.flatMap((published) =>
  published.beside.map((beside) => ({ published, beside, key: { ...beside } })),
);

function pairs({ fibre }: Fabric): typeof PAIRS {
  return PAIRS.filter(({ beside }) => beside.fibres?.includes(fibre) ?? true);
}

function stepsOf({ fibre }: Fabric): readonly StepAsked[] {
  return ALL_STEPS.filter(({ fibres }) => fibres?.includes(fibre) ?? true);
}

function comparedOf(
  published: Published,
  beside: Beside,
  found: readonly { readonly fabric: Fabric; readonly numbers: readonly Practised[] }[],
): Compared {
  const fabrics = found.flatMap(({ fabric, numbers }) =>
    numbers.map((ours): FabricRow => {
      const { usual } = ours.at;
      return {
        fabric,
        ...ours,
        verdict: verdictOf(spanOf(Object.values(ours.at)), published),
        usualInside: verdictOf({ low: usual, high: usual }, published) === "inside",
      };
    }),
  );
  return { published, beside, fabrics, verdict: together(fabrics.map(({ verdict }) => verdict)) };
}

function placeOf({ on, roles }: Steps): Place {
  const route = on === "dye" ? "pigment-calender" : on;
  return {
    route,
    arm: on === "dye" ? "dye" : "pigment",
    ...(roles === undefined ? {} : { roles }),
  };
}

function readingOf(program: Program, measure: Measure, { gsm }: Fabric): Reading {
  if (measure.of === "settings") {
    const { ids, formula } = measure;
    return ofSettings(program, ids, (...values) => formula(...values, gsm));
  }
  const place = placeOf(measure);
  const sum = (id: IndicatorId): Reading => perKilogram(program, place, id);
  return measure.of === "heat-per-water"
    ? quotient(sum("heat"), sum("evaporated"), MJ_PER_KWH)
    : sum(measure.of);
}
