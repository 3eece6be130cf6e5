/**
 * Suppliers side by side at one mix: values, places as chances, and how far the order holds under other
 * assumptions.
 */

import type { IndicatorId } from "../account/indicators.js";
import { rangeOf, type Range } from "../compare/compare.js";
import type { FactorSet } from "../factors/factor.js";
import type { Duty } from "./boundary.js";
import { borneOut } from "./borne-out.js";
import { type Candidate, candidateOf, type Given } from "./candidate.js";
import type { CellTotals } from "./cells.js";
import { cellsOf, type Drawn, drawnOf, NONE, puttingTogether } from "./drawn.js";
import { drawShelf } from "./draw-shelf.js";
import { type Flag, flagsOf, siteSums } from "./flags.js";
import { type Gate, gateOf, holesIn, type Refused } from "./gate.js";
import { type QualityRating, supplierRating } from "./quality-rating.js";
import {
  coveredWeight,
  type MixArea,
  pooledMix,
  type ReferenceMix,
  routeFree,
} from "./reference.js";
import { type Reversal, reversalOf } from "./reversal.js";
import type { CellDraws } from "./standardise.js";
import { type Standings, standingsOf } from "./standings.js";
import { twinsAmong } from "./twins.js";
import { endsCounted, endsUnsaid, type Unstated } from "./unstated.js";

/** Most draws of what counts for places: of a chance of 0.90 they leave 1.3 points of doubt. */
const PLACE_DRAWS = 500;

/** Leaves that are one for all suppliers whose draws are kept. */
const SHARED = 500;

/** What is asked. */
export interface SuppliersAsked {
  /** The reader's own factors. */
  readonly shipped: FactorSet;
  /** The mix; pooled from areas when left out. */
  readonly mix?: ReferenceMix;
  /** Day of the comparison. */
  readonly asOf: string;
  /** Number of draws. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
  /** Indicators, the first the main one. */
  readonly ids: readonly IndicatorId[];
}

/** A stratum of the mix at one supplier. */
export interface Cell {
  /** Lots. */
  readonly lots: number;
  /** Effective number of lots: one large among small ones counts for little more than one. */
  readonly effective: number;
  /** Accepted area. [m²] */
  readonly accepted: number;
  /** Value per accepted m²; absent where there is none. */
  readonly value?: Range;
  /** Value as it counts for places; absent where there is none. */
  readonly counted?: Range;
  /** Why there is no value, where lots were printed: a step that the boundary leaves out. */
  readonly hole?: string;
}

/** One supplier under one indicator. */
export interface SupplierResult {
  /** Name. */
  readonly alias: string;
  /** As it stands in its own mix and boundary. */
  readonly crude: Range;
  /** Strata of the mix. */
  readonly cells: readonly Cell[];
  /** Settings left unsaid, those that count most first. */
  readonly unstated: readonly Unstated[];
  /** Accepted area in the mix. [m²] */
  readonly accepted: number;
  /** Steps that cloth cannot do without and that its boundary leaves out; absent where none is. */
  readonly holed?: readonly Duty[];
  /** How well its numbers are known; absent where it takes nothing. */
  readonly rating?: QualityRating;
}

/** All suppliers under one indicator. */
export interface IndicatorResult {
  /** Indicator. */
  readonly id: IndicatorId;
  /** Unit of its total. */
  readonly unit: string;
  /** Words. */
  readonly words: string;
  /** Suppliers in the order given. */
  readonly suppliers: readonly SupplierResult[];
  /** Places at the mix. */
  readonly standings: Standings;
  /** Places with the route left to the supplier; absent where the mix names no route. */
  readonly free?: Standings;
  /** Why the order at the mix is not that of the values as they stand; absent where it is the same. */
  readonly reversal?: Reversal;
}

/** The comparison. */
export interface SuppliersCompared {
  /** Whether it may be made. */
  readonly gate: Gate;
  /** The mix. */
  readonly mix: ReferenceMix;
  /** Suppliers ready to be compared, in the order given. */
  readonly candidates: readonly Candidate[];
  /** Weight of the mix that each covers. */
  readonly covered: readonly number[];
  /** Checks by supplier. */
  readonly flags: readonly (readonly Flag[])[];
  /** Number of draws of values. */
  readonly draws: number;
  /** Number of draws of what counts for places. */
  readonly placeDraws: number;
  /** Results by indicator; empty where there is nobody to compare. */
  readonly results: readonly IndicatorResult[];
}

/**
 * Compares suppliers.
 *
 * @param all - suppliers, each under a name of its own
 * @param asked - what is asked
 * @returns gate first, then results
 */
export function compareSuppliers(all: readonly Given[], asked: SuppliersAsked): SuppliersCompared {
  const refused: Refused[] = [];
  const able = all.flatMap((given): readonly Candidate[] => {
    const failed = (given.verified?.checks ?? []).filter(({ outcome }) => outcome === "fail");
    if (failed.length > 0) {
      refused.push({
        alias: given.alias,
        cause: "not verified",
        why: `the pack does not verify: ${failed.map(({ id, found }) => `${id}, ${found}`).join("; ")}`,
        places: failed.flatMap(({ places }) => places),
      });
      return [];
    }
    const candidate = candidateOf(given, asked.shipped, asked.asOf);
    if (typeof candidate !== "string") return [candidate];
    refused.push({
      alias: given.alias,
      cause: "not worked out",
      why: `cannot be worked out: ${candidate}`,
      places: [],
    });
    return [];
  });
  const twins = twinsAmong(able);
  refused.push(...twins);
  const ready = able.filter(({ alias }) => !twins.some((one) => one.alias === alias));
  const gate = gateOf(ready, refused);
  const areas = ready.map((candidate) => soundAreas(candidate, gate));
  const mix = asked.mix ?? pooledMix(areas);
  const covered = areas.map((own) => coveredWeight(mix, own));
  const flags = ready.map((candidate) => flagsOf(candidate, able));
  const counts = { draws: asked.draws, placeDraws: Math.min(asked.draws, PLACE_DRAWS) };
  if (ready.length === 0)
    return { gate, mix, candidates: ready, covered, flags, ...counts, results: [] };
  const free = routeFree(mix);
  const how = {
    ...asked,
    ...counts,
    counted: endsCounted(
      ready.map(({ program }) => program),
      asked.shipped,
    ),
    silent: endsUnsaid(asked.shipped),
    keep: drawShelf(SHARED),
  };
  const drawn = ready.map((candidate) => drawnOf(candidate, gate, mix, how));
  const freely =
    free === undefined
      ? undefined
      : drawn.map((one) => puttingTogether(one, placesIn(mix, free), free.strata.length));
  const results = asked.ids.flatMap((id): readonly IndicatorResult[] => {
    const known = ready[0]?.program.indicators.get(id);
    if (known === undefined) return [];
    const suppliers = ready.map((candidate, s) =>
      resultOf(candidate, id, drawn[s]!, asked.shipped, holesIn(gate, candidate.alias)),
    );
    const open =
      free === undefined || freely === undefined ? undefined : standingsIn(ready, free, freely, id);
    const standings = standingsIn(ready, mix, drawn, id, open);
    const reversal = reversalOf(mix, suppliers, standings);
    return [
      {
        id,
        unit: known.unit,
        words: known.words,
        suppliers,
        standings,
        ...(open === undefined ? {} : { free: open }),
        ...(reversal === undefined ? {} : { reversal }),
      },
    ];
  });
  return { gate, mix, candidates: ready, covered, flags, ...counts, results };
}

// Stratum of the mix with free routes that each stratum of the mix belongs to.
function placesIn(mix: ReferenceMix, free: ReferenceMix): readonly number[] {
  return mix.strata.map(({ classes }) => {
    const { route: _route, ...rest } = classes;
    const text = JSON.stringify(rest);
    return free.strata.findIndex((one) => JSON.stringify(one.classes) === text);
  });
}

// Areas of routes that count all they must.
function soundAreas({ alias, areas, groups }: Candidate, { boundary }: Gate): readonly MixArea[] {
  const holed = new Set(
    boundary.filter((row) => row.alias === alias && row.holes.length > 0).map(({ route }) => route),
  );
  return areas.filter((_, i) => !holed.has(groups[i]?.key.route ?? ""));
}

function resultOf(
  candidate: Candidate,
  id: IndicatorId,
  drawn: Drawn,
  shipped: FactorSet,
  holed: readonly Duty[],
): SupplierResult {
  const { value, counted, holes } = drawn;
  const own = cellsOf(value, id, holes, "accepted");
  const held = cellsOf(counted.get(id) ?? value, id, holes, "accepted");
  const rating = supplierRating(candidate, id, shipped);
  return {
    alias: candidate.alias,
    crude: rangeOf(drawn.crude.get(id) ?? NONE),
    cells: holes.map((hole, k) => ({
      lots: value.lots[k] ?? 0,
      effective: drawn.effective[k] ?? 0,
      accepted: value.accepted[k] ?? 0,
      ...(own[k] === undefined ? {} : { value: rangeOf(own[k]) }),
      ...(held[k] === undefined ? {} : { counted: rangeOf(held[k]) }),
      ...(hole === undefined ? {} : { hole }),
    })),
    unstated: drawn.unstated.get(id) ?? [],
    accepted: value.accepted.slice(0, holes.length).reduce((sum, area) => sum + area, 0),
    ...(holed.length === 0 ? {} : { holed }),
    ...(rating === undefined ? {} : { rating }),
  };
}

// A stratum that somebody lacks counts as if nothing had been said of it, at the supplier that counts most there.
function silentOf(mix: ReferenceMix, drawn: readonly Drawn[], id: IndicatorId): CellDraws {
  const cells = drawn.map((one) =>
    cellsOf(one.counted.get(id) ?? one.value, id, one.holes, "accepted"),
  );
  return mix.strata.map((_, k) => {
    if (cells.every((own) => own[k] !== undefined)) return undefined;
    const medians = cells.map((own) => (own[k] === undefined ? -Infinity : rangeOf(own[k]).median));
    const most = medians.indexOf(Math.max(...medians));
    const one = drawn[most];
    return one === undefined || medians[most] === -Infinity
      ? undefined
      : cellsOf(one.silent(id), id, one.holes, "accepted")[k];
  });
}

function standingsIn(
  candidates: readonly Candidate[],
  mix: ReferenceMix,
  drawn: readonly Drawn[],
  id: IndicatorId,
  other?: Standings,
): Standings {
  const cells = (
    of: (one: Drawn) => CellTotals,
    per: "accepted" | "mass" = "accepted",
  ): readonly CellDraws[] => drawn.map((one) => cellsOf(of(one), id, one.holes, per));
  const held = (one: Drawn): CellTotals => one.counted.get(id) ?? one.value;
  return standingsOf({
    aliases: candidates.map(({ alias }) => alias),
    weights: mix.strata.map(({ weight }) => weight),
    values: cells(({ value }) => value),
    counted: cells(held),
    silent: silentOf(mix, drawn, id),
    byMass: cells(held, "mass"),
    borne: candidates.map(({ given }) => borneOut(siteSums(given.pack), id).holds),
    ...(other === undefined ? {} : { other }),
  });
}
