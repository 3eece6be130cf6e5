/**
 * Works a pack out: figures, coverage and claims from the strata, settings and factors inside. The same is done
 * by who seals and by who verifies.
 */

import { type Account, accountsOf, BROKEN_DOWN } from "../account/account.js";
import { provenanceOf } from "../account/breakdown.js";
import { documentedOf } from "../account/documented.js";
import type { DrawKeep } from "../account/draws.js";
import { INDICATOR_IDS, type IndicatorId } from "../account/indicators.js";
import { type Program, writeProgram } from "../account/program.js";
import { judgeClaim } from "../compare/claims/assess.js";
import { claimKind } from "../compare/claims/catalogue.js";
import { evidenceOf } from "../compare/claims/evidence.js";
import { type Comparison, compareArms, rangeOf } from "../compare/compare.js";
import { yieldsOf } from "../compare/yields.js";
import type { FactorSet } from "../factors/factor.js";
import type { Group } from "../ledger/ledger.js";
import type { Plant } from "../plant/plant.js";
import { readPlant } from "../plant/read-plant.js";
import type { Judged } from "../problems/problem.js";
import { meterGaps, meterSums } from "./meter-sums.js";
import type { Pack, PackFigure } from "./schema.js";
import { groupsOf, placeOf } from "./strata.js";

/** A pack before it is worked out. */
export type PackBody = Omit<Pack, "figures" | "coverage" | "claims" | "factors" | "sources">;

/** How much of a pack is worked out: all of it, or only what the lots took as they were printed. */
export type Part = "all" | "as printed";

/** What a pack comes to. */
export interface WorkedOut {
  /** Figures. */
  readonly figures: readonly PackFigure[];
  /** What quantities rest on. */
  readonly coverage: Pack["coverage"];
  /** Claims. */
  readonly claims: Pack["claims"];
  /** Terms of all lots as they were printed. */
  readonly printed: Program;
}

/** Indicators that hold money. */
const MONEY: readonly IndicatorId[] = ["cost"];

/**
 * Reads the plant of a pack.
 *
 * @param plant - the plant file inside
 * @param factors - factors to judge it by
 * @returns the print house, or what is wrong
 */
export function plantOf(plant: Pack["plant"], factors: FactorSet): Judged<Plant> {
  return readPlant({ name: "the plant file of the pack", text: JSON.stringify(plant) }, factors);
}

/**
 * Terms of all lots on the route they took. Lots without a counterpart are in it too.
 *
 * @param plant - the print house
 * @param factors - factors
 * @param groups - groups of lots
 * @param asOf - day of the pack
 * @returns a program whose arm `pigment` is what was printed, whatever the workflow
 */
export function printedProgram(
  plant: Plant,
  factors: FactorSet,
  groups: readonly Group[],
  asOf: string,
): Program {
  const program = writeProgram(plant, factors, groups.map(onOwnRoute), asOf);
  return {
    ...program,
    terms: program.terms.filter(({ arm }) => arm === "pigment"),
    classOf: (key) => program.classOf(onOwnRoute({ key }).key),
  };
}

// Both arms of a lot are the route it took, so that lots without a counterpart are in it too.
function onOwnRoute<T extends Pick<Group, "key">>(group: T): T {
  const { route } = group.key;
  return { ...group, key: { ...group.key, pigment: route, dye: route } };
}

/**
 * Both programs of a pack over the same quantities, so that they are put together and drawn once.
 *
 * @param plant - the print house
 * @param factors - factors
 * @param groups - groups of lots
 * @param asOf - day of the pack
 * @param part - whether lots are put on both routes at all
 * @returns all lots as they were printed, and lots with a counterpart on both routes
 */
export function programsOf(
  plant: Plant,
  factors: FactorSet,
  groups: readonly Group[],
  asOf: string,
  part: Part = "all",
): { readonly printed: Program; readonly both: Program } {
  const compared = part === "all" ? groups.filter(({ key }) => key.pigment !== "") : [];
  const whole = writeProgram(plant, factors, [...groups.map(onOwnRoute), ...compared], asOf);
  const isOwn = whole.classes.map(({ key }) => key.pigment === key.dye);
  return {
    printed: {
      ...whole,
      terms: whole.terms.filter(({ arm, lotClass }) => arm === "pigment" && isOwn[lotClass]),
      classOf: (key) => whole.classOf(onOwnRoute({ key }).key),
    },
    both: { ...whole, terms: whole.terms.filter(({ lotClass }) => isOwn[lotClass] === false) },
  };
}

/**
 * Works a pack out.
 *
 * @param body - the pack
 * @param plant - its print house
 * @param factors - factors inside it
 * @param claims - names of the claims to judge
 * @param part - how much of it; without both routes there are no claims
 * @param keep - keeps draws for other packs
 * @returns figures, coverage and claims
 * @throws MissingFactor when a step asks for a factor that is not there
 */
export function workOut(
  body: PackBody,
  plant: Plant,
  factors: FactorSet,
  claims: readonly string[],
  part: Part = "all",
  keep?: DrawKeep,
): WorkedOut {
  const groups = groupsOf(body.strata);
  const compared = groups.filter(({ key }) => key.pigment !== "");
  const common = part === "all" ? acceptedOf(compared) : 0;
  const programs = programsOf(plant, factors, groups, body.made, part);
  const [printed, both] = accountsOf(
    common > 0 ? [programs.printed, programs.both] : [programs.printed],
    body.draws,
    body.seed,
    keep,
  );
  if (printed === undefined) throw new Error("There is an account for each program.");
  const comparisons =
    both === undefined ? undefined : comparisonsOf(both, plant, compared, body, common);
  return {
    figures: [
      ...printedFigures(printed, acceptedOf(groups)),
      ...(comparisons === undefined ? [] : [...comparisons.values()].flatMap(armFigures)),
    ],
    coverage: BROKEN_DOWN.map((indicator) => ({
      indicator,
      ...provenanceOf(printed, indicator, "pigment"),
      documented: documentedOf(printed, indicator, "pigment"),
    })),
    claims:
      both === undefined || comparisons === undefined
        ? []
        : claimsOf(body, both, compared, comparisons, claims, gapsOf(body, printed)),
    printed: programs.printed,
  };
}

function acceptedOf(groups: readonly Group[]): number {
  const at = placeOf("accepted");
  return groups.reduce((sum, { amounts }) => sum + (amounts[at] ?? 0), 0);
}

function printedFigures(account: Account, units: number): readonly PackFigure[] {
  if (!(units > 0)) return [];
  return INDICATOR_IDS.flatMap((indicator) => {
    const known = account.program.indicators.get(indicator);
    const draws = account.indicators.pigment.get(indicator);
    if (known === undefined || draws === undefined || MONEY.includes(indicator)) return [];
    const { median, low, high } = rangeOf(draws.map((value) => value / units));
    return [{ indicator, side: "as-printed" as const, unit: known.unit, median, low, high }];
  });
}

function comparisonsOf(
  account: Account,
  plant: Plant,
  groups: readonly Group[],
  { totals, draws, seed }: PackBody,
  common: number,
): ReadonlyMap<IndicatorId, Comparison> {
  const yields = yieldsOf(plant, groups, totals.uncovered, draws, seed);
  return new Map(
    INDICATOR_IDS.filter((id) => account.program.indicators.has(id) && !MONEY.includes(id)).map(
      (id) => [id, compareArms(account, id, yields?.accepted ?? common)],
    ),
  );
}

function armFigures({ id, unit, pigment, dye }: Comparison): readonly PackFigure[] {
  const figure = (side: "pigment" | "dye", range: Comparison["pigment"]): PackFigure => ({
    indicator: id,
    side,
    unit,
    median: range.median,
    low: range.low,
    high: range.high,
  });
  return [figure("pigment", pigment), figure("dye", dye)];
}

function claimsOf(
  body: PackBody,
  account: Account,
  groups: readonly Group[],
  comparisons: ReadonlyMap<IndicatorId, Comparison>,
  claims: readonly string[],
  gaps: ReturnType<typeof meterGaps>,
): Pack["claims"] {
  return claims.flatMap((id) => {
    const kind = claimKind(id);
    if (kind === undefined) return [];
    const evidence = evidenceOf(kind, {
      account,
      groups,
      comparisons,
      gaps,
      fastness: body.fastness,
      audience: "client",
      review: body.plant.review,
    });
    const { verdict, cautious, expires } = judgeClaim(
      id,
      // Strata join months that read the same factors, so months are taken from their own list.
      { ...evidence, months: body.months.filter(({ lots }) => lots > 0).length },
      body.policy,
      body.period.to,
    );
    const { gap } = evidence;
    return [
      {
        id,
        verdict,
        expires,
        ...(cautious === undefined ? {} : { cautious }),
        ...(gap === undefined ? {} : { gap }),
      },
    ];
  });
}

// Site meters against all lots as they were printed, at their median.
function gapsOf(body: PackBody, printed: Account): ReturnType<typeof meterGaps> {
  return meterGaps(
    meterSums(body, (id) => {
      const draws = printed.indicators.pigment.get(id);
      return draws === undefined ? undefined : rangeOf(draws).median;
    }),
  );
}
