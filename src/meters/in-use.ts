/**
 * Meters that can correct a model: those with readings of months in which lots were printed, each with what the
 * model says it counts, its reading and the stream it counts beside.
 */

import type { Program } from "../account/program.js";
import { leafRange } from "../account/draws.js";
import type { Group } from "../ledger/ledger.js";
import type { Leaf } from "../numbers/quantity.js";
import { siteOfMeter } from "../plant/judge-meters.js";
import type { MeterText } from "../plant/meter-part.js";
import type { Plant } from "../plant/plant.js";
import { AMOUNTS } from "../steps/amounts.js";
import { type BaseAsked, type BaseStream, baseStream } from "./base-stream.js";
import type { DegreeDays } from "./degree-days.js";
import { drawInto, type Drawn } from "./drawn.js";
import { amountsUnder, meteredBy, type MeteredPart, meteredParts } from "./metered-flows.js";
import { ACCURACY, lotsBehind, readingLeaf, scatterOf } from "./reading-doubt.js";
import { amountsByMonth, type Counted, isCounted, isMonth } from "./months.js";
import { amountPerUnit, type MeterConditions } from "./reading-amount.js";
import type { Reading } from "./reading.js";

/** A month of a meter. */
export interface MeterMonth {
  /** Month. */
  readonly month: string;
  /** What was counted. [L, kWh net, kg] */
  readonly metered: number;
  /** What the lots take by the model at medians, in the days that readings cover. */
  readonly modelled: number;
  /** The same by part, as `nameOfPart` names them. */
  readonly parts: ReadonlyMap<string, number>;
  /** Share of its days that readings cover. */
  readonly covered: number;
}

/** A meter in use. */
export interface MeterInUse {
  /** Name. */
  readonly name: string;
  /** Site. */
  readonly site: string;
  /** What it counts. */
  readonly quantity: Counted;
  /** Machines behind it; absent for a site. */
  readonly machines?: readonly string[];
  /** Meter above it, where that is in use. */
  readonly within?: string;
  /** Months with readings and lots. */
  readonly months: readonly MeterMonth[];
  /** What the model says that it counts. */
  readonly parts: readonly MeteredPart[];
  /** Sum of its readings over these months, with the error of the meter. */
  readonly reading: Leaf;
  /** Share within which 95 of 100 readings meet what their lots take: error, estimates, scatter of lots. */
  readonly accuracy: number;
  /** What it counts that no lot asks for. */
  readonly stream: BaseStream;
  /** Whether a reading was shared among months by days. */
  readonly spread: boolean;
  /** Number of lots, where it is made of readings of single lots. */
  readonly lots?: number;
  /** Meters below it, at any depth, which have streams of their own. */
  readonly below: readonly MeterInUse[];
}

type Draft = Omit<MeterInUse, "stream" | "below">;

/** What is asked for. */
export interface InUseAsked {
  /** The print house. */
  readonly plant: Plant;
  /** Program of the model. */
  readonly program: Program;
  /** All lots of the house. */
  readonly groups: readonly Group[];
  /** The readings. */
  readonly readings: readonly Reading[];
  /** Of gas and steam. */
  readonly conditions: MeterConditions;
  /** Degree days, where they are known. */
  readonly degreeDays?: DegreeDays | undefined;
  /** Whether all days of a month are in the report. */
  readonly isWhole: (month: string) => boolean;
}

/** Error of a reading that was estimated. Common practice, no source. */
const ESTIMATED = 0.15;

/** Draws from which the doubt about a mix of goods is taken. */
const MIX_DRAWS = 500;

const PRINTED = AMOUNTS.findIndex(({ name }) => name === "printed");

/**
 * Finds the meters in use.
 *
 * @param asked - plant, model, lots and readings
 * @returns meters in the order of the plant file, each behind those below it in what is known of streams
 */
export function metersInUse(asked: InUseAsked): readonly MeterInUse[] {
  const { plant, program, groups } = asked;
  const sites = Object.keys(plant.sites);
  const written = plant.text.meters ?? {};
  const medians = program.nodes.evaluate((leaf) => leafRange(leaf).median);
  const byMonth = new Map<string, readonly Float64Array[]>();
  for (const { key } of groups)
    if (key.pigment !== "" && !byMonth.has(key.month) && asked.isWhole(key.month))
      byMonth.set(
        key.month,
        amountsUnder(program, groups, (month) => (month === key.month ? 1 : 0)),
      );
  const area = (some: readonly Group[]): number =>
    some.reduce((sum, { amounts }) => sum + (amounts[PRINTED] ?? 0), 0);
  const unlogged = area(groups.filter(({ key }) => key.pigment === "")) / area(groups);
  const drafts = new Map<string, Draft>();
  for (const [name, meter] of Object.entries(written)) {
    const site = siteOfMeter(meter, sites);
    const { quantity } = meter;
    if (site === undefined || !isCounted(quantity)) continue;
    const machines = meter.covers === "site" ? {} : { machines: meter.covers.machines };
    const what = { site, quantity, ...machines };
    const own = asked.readings.filter((reading) => reading.meter === name);
    const metered = amountsByMonth(own);
    const modelledBy = meteredBy(program, what, medians);
    const months = [...byMonth.keys()].sort().flatMap((month): readonly MeterMonth[] => {
      const read = metered.get(month);
      if (read === undefined) return [];
      const { amount, covered } = read;
      const parts = new Map(
        [...modelledBy(byMonth.get(month) ?? [])].map(([part, value]) => [part, covered * value]),
      );
      const modelled = [...parts.values()].reduce((sum, value) => sum + value, 0);
      return [{ month, metered: amount, modelled, parts, covered }];
    });
    const total = months.reduce((sum, month) => sum + month.metered, 0);
    if (!(total > 0)) continue;
    const covered = new Map(months.map((month) => [month.month, month.covered]));
    const amounts = amountsUnder(program, groups, (month) => covered.get(month) ?? 0);
    const parts = meteredParts(program, what, amounts, `meter ${name}`);
    if (parts.length === 0) continue;
    const guessed = months.reduce(
      (sum, { month }) => sum + (metered.get(month)?.estimated ?? 0),
      0,
    );
    const stated = (meter.accuracy ?? 100 * ACCURACY[quantity]) / 100;
    const scatter = scatterOf(lotsBehind(program, groups, what));
    const accuracy = Math.hypot(stated, (ESTIMATED * guessed) / total, scatter);
    drafts.set(name, {
      name,
      ...what,
      months,
      parts,
      spread: !own.every(isMonth),
      reading: readingLeaf(name, total, accuracy, quantity),
      accuracy,
    });
  }
  return withStreams(drafts, written, asked, unlogged);
}

// Streams of meters below are no part of the stream of the one above, so those below come first.
function withStreams(
  drafts: ReadonlyMap<string, Draft>,
  written: Readonly<Record<string, MeterText>>,
  asked: InUseAsked,
  unlogged: number,
): readonly MeterInUse[] {
  const found = new Map<string, MeterInUse>();
  const find = (name: string): MeterInUse | undefined => {
    const known = found.get(name);
    const draft = drafts.get(name);
    const meter = written[name];
    if (known !== undefined || draft === undefined || meter === undefined) return known;
    const children = [...drafts.keys()].filter((other) => written[other]?.within === name);
    const below = children.flatMap((child) => {
      const use = find(child);
      return use === undefined ? [] : [use, ...use.below];
    });
    const unit = amountPerUnit(meter, meter.unit, asked.conditions);
    const column = (of: (month: MeterMonth) => number): Float64Array =>
      Float64Array.from(draft.months, of);
    const use: MeterInUse = {
      ...draft,
      ...(meter.within !== undefined && drafts.has(meter.within) ? { within: meter.within } : {}),
      below,
      stream: baseStream({
        name,
        meter,
        unit: typeof unit === "number" ? unit : 1,
        metered: column(({ metered }) => metered),
        modelled: column(({ modelled }) => modelled),
        covered: column(({ covered }) => covered),
        below: below.reduce((sum, { stream }) => sum + middleOf(stream), 0),
        unlogged,
        ...degreesOf(asked.degreeDays, draft),
        mix: (weights) => mixOf(asked, draft, weights),
      }),
    };
    found.set(name, use);
    return use;
  };
  return [...drafts.keys()].flatMap((name) => find(name) ?? []);
}

// Heat and electricity may go by the weather, water and what single machines take do not.
function degreesOf(
  degreeDays: DegreeDays | undefined,
  { quantity, machines, months }: Draft,
): Pick<BaseAsked, "degrees"> {
  const values = months.map(({ month }) => degreeDays?.byMonth.get(month) ?? NaN);
  if (degreeDays === undefined || quantity === "water" || machines !== undefined) return {};
  if (!values.every((value) => value >= 0)) return {};
  const words = `degree days below ${degreeDays.base} °C`;
  return { degrees: { words, values: Float64Array.from(values) } };
}

// What lots take in months as weighed, over draws of the model.
function mixOf(
  { program, groups }: InUseAsked,
  { name, site, quantity, machines, months }: Draft,
  weights: Float64Array,
): { readonly mean: number; readonly sd: number } {
  const by = new Map(months.map(({ month }, at) => [month, weights[at] ?? 0]));
  const amounts = amountsUnder(program, groups, (month) => by.get(month) ?? 0);
  const asked = { site, quantity, ...(machines === undefined ? {} : { machines }) };
  const parts = meteredParts(program, asked, amounts, `meter ${name}, months weighed`);
  const drawn: Drawn = new Map();
  drawInto(
    drawn,
    program,
    parts.map(({ amount }) => amount),
    MIX_DRAWS,
    1,
  );
  const sums = new Float64Array(MIX_DRAWS);
  for (const { amount } of parts)
    drawn.get(amount)!.forEach((value, at) => (sums[at] = sums[at]! + value));
  const mean = sums.reduce((sum, value) => sum + value, 0) / MIX_DRAWS;
  const squares = sums.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return { mean, sd: Math.sqrt(squares / (MIX_DRAWS - 1)) };
}

function middleOf({ leaf }: BaseStream): number {
  return leaf === undefined ? 0 : leafRange(leaf).median;
}
