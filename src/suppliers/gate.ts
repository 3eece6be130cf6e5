/**
 * Whether suppliers can be compared at all, said before any number: what is the same, what was made the same,
 * what narrows the comparison, and who stays out.
 */

import { type Counted, countedOf, DUTIES, type Duty, holesOf, leftOutOf } from "./boundary.js";
import type { Candidate } from "./candidate.js";
import { ENOUGH_MONTHS } from "./flags.js";

/** How a condition of comparing is met. */
export type GateOutcome = "same" | "made the same" | "narrowed" | "not met";

/** A condition. */
export interface GateLine {
  /** Which. */
  readonly id:
    "unit" | "factors" | "heat" | "warming" | "boundary" | "period" | "rejects" | "partners";
  /** How it is met. */
  readonly outcome: GateOutcome;
  /** Suppliers or things it concerns. */
  readonly concerns: readonly string[];
}

/** A supplier that stays out. */
export interface Refused {
  /** Its name. */
  readonly alias: string;
  /** Why, in a word or two. */
  readonly cause: "not read" | "not verified" | "not worked out" | "twin";
  /** Why. */
  readonly why: string;
  /** Where in its pack, where it can be told. */
  readonly places: readonly string[];
}

/** Verdict on the whole. */
export type Comparable = "comparable" | "partly comparable" | "not comparable";

/** Boundary of one route class of one supplier. */
export interface BoundaryRow {
  /** Supplier. */
  readonly alias: string;
  /** Route of its own. */
  readonly route: string;
  /** Class of the route. */
  readonly routeClass: string;
  /** What is counted. */
  readonly counted: Readonly<Record<Duty, Counted>>;
  /** Duties missing that cloth cannot do without. */
  readonly holes: readonly Duty[];
}

/** The gate. */
export interface Gate {
  /** Verdict. */
  readonly verdict: Comparable;
  /** Conditions. */
  readonly lines: readonly GateLine[];
  /** Suppliers that stay out. */
  readonly refused: readonly Refused[];
  /** Boundaries. */
  readonly boundary: readonly BoundaryRow[];
  /** Duties left out for all, by class of route. */
  readonly leftOut: ReadonlyMap<string, ReadonlySet<Duty>>;
  /** Suppliers whose months overlap with those of the others too little, with the months they share. */
  readonly short: ReadonlyMap<string, number>;
}

/**
 * Judges candidates.
 *
 * @param candidates - suppliers that could be worked out
 * @param refused - those that could not
 * @returns the gate
 */
export function gateOf(candidates: readonly Candidate[], refused: readonly Refused[]): Gate {
  const boundary = candidates.flatMap(boundaryRows);
  const classes = [...new Set(boundary.map(({ routeClass }) => routeClass))].sort();
  const leftOut = new Map(
    classes.map((routeClass) => [
      routeClass,
      leftOutOf(
        candidates.flatMap(({ given, routes }) =>
          given.pack.boundary.routes.filter(
            (route) => routes.get(route.route) === routeClass && holesOf(route).length === 0,
          ),
        ),
      ),
    ]),
  );
  const short = shortOf(candidates);
  const holed = [
    ...new Set(boundary.filter(({ holes }) => holes.length > 0).map(({ alias }) => alias)),
  ];
  const out = [...leftOut].flatMap(([routeClass, duties]) =>
    [...duties].map((duty) => `${routeClass}: ${duty}`),
  );
  const replaced = candidates.filter((one) => one.replaced.length > 0).map(({ alias }) => alias);
  const warming = candidates
    .filter(({ given }) => given.pack.plant.gwp === "AR5")
    .map(({ alias }) => alias);
  const partners = boundary
    .filter(({ counted }) => DUTIES.some((duty) => counted[duty] === "partner"))
    .map(({ alias }) => alias);
  const lines: GateLine[] = [
    { id: "unit", outcome: "same", concerns: [] },
    { id: "factors", outcome: replaced.length > 0 ? "made the same" : "same", concerns: replaced },
    { id: "heat", outcome: "same", concerns: [] },
    { id: "warming", outcome: warming.length > 0 ? "made the same" : "same", concerns: warming },
    {
      id: "boundary",
      outcome: holed.length > 0 ? "not met" : out.length > 0 ? "narrowed" : "same",
      concerns: [...holed, ...out],
    },
    {
      id: "period",
      outcome: short.size > 0 ? "not met" : "same",
      concerns: [...short.keys()],
    },
    { id: "rejects", outcome: "same", concerns: [] },
    {
      id: "partners",
      outcome: partners.length > 0 ? "narrowed" : "same",
      concerns: [...new Set(partners)],
    },
  ];
  const narrowed = lines.some(({ outcome }) => outcome === "narrowed" || outcome === "not met");
  return {
    verdict:
      candidates.length < 2
        ? "not comparable"
        : narrowed || refused.length > 0
          ? "partly comparable"
          : "comparable",
    lines,
    refused,
    boundary,
    leftOut,
    short,
  };
}

/**
 * Steps that a supplier's boundary leaves out though cloth cannot do without them.
 *
 * @param gate - the gate
 * @param alias - the supplier
 * @returns duties, none twice
 */
export function holesIn(gate: Pick<Gate, "boundary">, alias: string): readonly Duty[] {
  return [...new Set(gate.boundary.flatMap((row) => (row.alias === alias ? row.holes : [])))];
}

function boundaryRows({ alias, given, routes }: Candidate): readonly BoundaryRow[] {
  return given.pack.boundary.routes.map((route) => ({
    alias,
    route: route.route,
    routeClass: routes.get(route.route) ?? "",
    counted: countedOf(route),
    holes: holesOf(route),
  }));
}

// Months that at least half of the suppliers have lots in; each should share nine of them.
function shortOf(candidates: readonly Candidate[]): ReadonlyMap<string, number> {
  const months = candidates.map(
    ({ given }) =>
      new Set(given.pack.months.filter(({ lots }) => lots > 0).map(({ month }) => month)),
  );
  const all = new Set(months.flatMap((one) => [...one]));
  const common = [...all].filter(
    (month) => 2 * months.filter((one) => one.has(month)).length >= candidates.length,
  );
  return new Map(
    candidates.flatMap(({ alias }, i) => {
      const shared = common.filter((month) => months[i]?.has(month)).length;
      return shared < ENOUGH_MONTHS ? [[alias, shared] as const] : [];
    }),
  );
}
