/**
 * Checks for what may make a supplier look better than it is. Each asks a question; none says that anybody did
 * wrong.
 */

import { mean } from "../numbers/quantiles.js";
import type { Candidate } from "./candidate.js";
import { farValues } from "./far-values.js";
import { type MeterSum, meterSums } from "./meter-sums.js";
import type { Pack } from "./schema.js";

/** Checks, in the order they are printed. */
export const FLAGS = [
  ...(["same evidence", "months", "few months carry", "rows set aside", "joined strata"] as const),
  ...(["all accepted", "partner steps", "own factors", "steam without fuel"] as const),
  ...(["meters constant", "meters round", "meters below"] as const),
  ...([
    "meters above",
    "no readings",
    "more out than in",
    "machines unused",
    "values far",
  ] as const),
] as const;

/** A check. */
export type FlagId = (typeof FLAGS)[number];

/** A check made. */
export interface Flag {
  /** Which. */
  readonly id: FlagId;
  /** Outcome; `not present` where there is nothing to look at. */
  readonly outcome: "pass" | "flag" | "not present";
  /** What was found, as numbers and names in the order of the words. */
  readonly found: readonly (number | string)[];
}

/** Months that a period should have. */
export const ENOUGH_MONTHS = 9;

/** Share of the area in the three largest months that makes one look. [-] */
const PEAK = 0.5;

/** Share of rows set aside. [-] */
const ASIDE = 0.05;

/** Share of lots in strata that were joined. [-] */
const JOINED = 0.2;

/** Fewest readings of a meter that say something. */
const READINGS = 6;

/** Spread over mean of monthly readings below which they look copied; output alone varies more. [-] */
const STILL = 0.02;

/** Share of readings that are round in the unit they were read in. [-] */
const ROUND = 0.8;

/** Values far from those of others that are named. */
const FAR_NAMED = 4;

/** Site meter over the lots, below which one asks where the rest is metered. [-] */
const BELOW = 0.5;

/** Site meter over the lots, above which one asks what else it feeds. [-] */
const ABOVE = 1.5;

/**
 * Makes all checks on a supplier.
 *
 * @param candidate - the supplier
 * @param others - all suppliers
 * @returns one outcome a check
 */
export function flagsOf(candidate: Candidate, others: readonly Candidate[]): readonly Flag[] {
  const { pack } = candidate.given;
  const twins = others.filter((one) => one !== candidate && one.salt === candidate.salt);
  const flag = (id: FlagId, raised: boolean, ...found: readonly (number | string)[]): Flag => ({
    id,
    outcome: raised ? "flag" : "pass",
    found,
  });
  const aside = pack.counts.aside / Math.max(1, pack.counts.rows);
  const months = pack.months.filter(({ lots }) => lots > 0);
  const areas = months.map(({ accepted }) => accepted).sort((a, b) => b - a);
  const peak = sum(areas.slice(0, 3)) / Math.max(1e-9, sum(areas));
  const joined =
    sum(pack.strata.map(({ weight, lots }) => (weight === "other" ? lots : 0))) /
    Math.max(1, pack.totals.lots);
  const partner = pack.boundary.routes.flatMap(({ route, steps }) =>
    steps.filter((step) => step.partner).map(({ role }) => `${route}: ${role}`),
  );
  const rejected = 1 - pack.totals.accepted / Math.max(1e-9, pack.totals.printed);
  return [
    flag("same evidence", twins.length > 0, ...twins.map(({ alias }) => alias)),
    flag("months", months.length < ENOUGH_MONTHS, months.length),
    months.length < 4
      ? { id: "few months carry", outcome: "not present", found: [] }
      : flag("few months carry", peak > Math.max(PEAK, 4.5 / months.length), peak),
    flag("rows set aside", aside > ASIDE, aside),
    flag("joined strata", joined > JOINED, joined),
    flag("all accepted", !(rejected > 1e-9), rejected),
    flag("partner steps", partner.length > 0, ...partner),
    flag(
      "own factors",
      candidate.replaced.length > 0,
      ...candidate.replaced.map(({ id, value, shipped }) =>
        shipped === undefined ? `${id} ${value}` : `${id} ${value} for ${shipped}`,
      ),
    ),
    steamFlag(pack),
    ...meterFlags(pack),
    outFlag(pack),
    machineFlag(pack),
    farFlag(candidate, others),
  ];
}

function steamFlag(pack: Pack): Flag {
  const steams = pack.boundary.routes.some(({ steps }) =>
    steps.some(({ kind, partner }) => kind === "steamer" && !partner),
  );
  if (!steams) return { id: "steam without fuel", outcome: "not present", found: [] };
  const without = Object.entries(pack.plant.sites).filter(
    ([, site]) =>
      site.boiler === undefined ||
      (site.boiler.fuel === "bought" && site.steam_intensity === undefined),
  );
  return {
    id: "steam without fuel",
    outcome: without.length > 0 ? "flag" : "pass",
    found: without.map(([name]) => name),
  };
}

function meterFlags(pack: Pack): readonly Flag[] {
  const ids = ["meters constant", "meters round", "meters below", "meters above"] as const;
  const full = pack.meters.filter(({ months }) => months.length >= READINGS);
  if (full.length === 0)
    return [
      ...ids.map((id): Flag => ({ id, outcome: "not present", found: [] })),
      { id: "no readings", outcome: "flag", found: [] },
    ];
  const named = (raised: typeof full): readonly string[] => raised.map(({ quantity }) => quantity);
  const still = full.filter(({ months }) => {
    const values = Float64Array.from(months, ({ metered }) => metered);
    const middle = mean(values);
    const spread = Math.sqrt(mean(values.map((value) => (value - middle) ** 2)));
    return spread <= STILL * Math.abs(middle);
  });
  const round = full.filter(
    (meter) => meter.months.filter(isRoundIn(meter)).length >= ROUND * meter.months.length,
  );
  const sums = siteSums(pack);
  const over = ({ quantity, metered, lots }: MeterSum): string =>
    `${quantity} (${plainRatio(metered / lots)} times)`;
  const answers = [
    named(still),
    named(round),
    sums.filter(({ metered, lots }) => metered < BELOW * lots).map(over),
    sums.filter(({ metered, lots }) => metered > ABOVE * lots).map(over),
  ];
  return [
    ...ids.map((id, i): Flag => ({
      id,
      outcome: (answers[i]?.length ?? 0) > 0 ? "flag" : "pass",
      found: answers[i] ?? [],
    })),
    { id: "no readings", outcome: "pass", found: [] },
  ];
}

/** What one of the unit a meter was read in is in the unit it is kept in; units not named here count as kept. */
const READ: Readonly<Record<string, number>> = {
  "m3 L": 1000,
  "m³ L": 1000,
  "MWh kWh": 1000,
  "t kg": 1000,
};

// A reading below 10 tells nothing; below 1 000 a whole ten is round, beyond that a whole hundred.
function isRoundIn({
  unit,
  read = unit,
}: Pack["meters"][number]): (row: { readonly metered: number }) => boolean {
  const per = READ[`${read} ${unit}`] ?? 1;
  return ({ metered }) => {
    const value = Math.abs(metered) / per;
    const steps = value / (value >= 1000 ? 100 : 10);
    return steps >= 1 && Math.abs(steps - Math.round(steps)) < 1e-9;
  };
}

/**
 * Site meters of a pack beside its lots, as it states them.
 *
 * @param pack - the pack
 * @returns meters of each quantity that has both
 */
export function siteSums(pack: Pack): readonly MeterSum[] {
  return meterSums(pack, (indicator) => {
    const figure = pack.figures.find(
      (one) => one.side === "as-printed" && one.indicator === indicator,
    );
    return figure === undefined ? undefined : figure.median * pack.totals.accepted;
  });
}

/**
 * A ratio with two digits that count.
 *
 * @param ratio - the ratio
 * @returns such as `0.42`, `7.4` or `12`
 */
export function plainRatio(ratio: number): string {
  return ratio >= 10 ? ratio.toFixed(0) : ratio.toPrecision(2);
}

function outFlag(pack: Pack): Flag {
  const of = (indicator: string): number | undefined =>
    pack.figures.find((one) => one.side === "as-printed" && one.indicator === indicator)?.median;
  const [into, out] = [of("water"), of("discharged")];
  if (into === undefined || out === undefined)
    return { id: "more out than in", outcome: "not present", found: [] };
  return { id: "more out than in", outcome: out > into ? "flag" : "pass", found: [into, out] };
}

function farFlag(candidate: Candidate, others: readonly Candidate[]): Flag {
  const far = farValues(
    candidate.program,
    others.flatMap((one) => (one === candidate ? [] : [one.program])),
  );
  if (far === undefined) return { id: "values far", outcome: "not present", found: [] };
  return {
    id: "values far",
    outcome: far.length > 0 ? "flag" : "pass",
    found: far
      .slice(0, FAR_NAMED)
      .map(
        ({ factor, value, unit }) =>
          `${factor} ${plainNumber(value)}${unit === "1" ? "" : ` ${unit}`}`,
      ),
  };
}

function plainNumber(value: number): string {
  return String(Number(value.toPrecision(3)));
}

// Machines that stand in the plant file and serve no route that lots took.
function machineFlag(pack: Pack): Flag {
  const used = new Set(
    pack.boundary.routes.flatMap(({ route }) =>
      Object.values(pack.plant.routes[route]?.machines ?? {}),
    ),
  );
  const unused = Object.entries(pack.plant.sites).flatMap(([, site]) =>
    Object.keys(site.machines).filter((name) => !used.has(name)),
  );
  return { id: "machines unused", outcome: unused.length > 0 ? "flag" : "pass", found: unused };
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
