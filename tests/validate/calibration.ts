/**
 * How often the 95 % interval of a report holds the truth, in worlds of which all is known.
 */

import { accountOf } from "../../src/account/account.js";
import { INDICATOR_IDS, type IndicatorId } from "../../src/account/indicators.js";
import type { Program } from "../../src/account/program.js";
import { compareArms, type Range } from "../../src/compare/compare.js";
import { groupsOf, lotsOf } from "./worlds.js";
import { meteredAccount } from "./worlds-meters.js";
import { NATURES } from "./worlds-natures.js";
import { programOfWorlds, settingsOf, totalsAt, wastefulIn, withAmounts } from "./worlds-totals.js";
import { type Nature, scoresOfWorlds, truthOf } from "./worlds-truth.js";

/** What is asked for. */
export interface CalibrationAsked {
  /** Number of worlds of each nature. */
  readonly worlds: number;
  /** Number of the first world; 0 when absent. Others are worlds that nothing was tuned on. */
  readonly first?: number;
  /** Draws of each report. */
  readonly draws: number;
  /** Told now and then how far the work has come. */
  readonly onProgress?: (text: string) => void;
}

/** How often an interval held the truth. */
export interface Coverage {
  /** Worlds in which it did. */
  readonly covered: number;
  /** Worlds in which there was an interval. */
  readonly of: number;
  /** The share. */
  readonly share: number;
  /** Half its own 95 % interval, as counting leaves it: 1.96 √(p (1 − p) / n). */
  readonly error: number;
}

/** Coverage of one indicator; absent where an arm holds no doubt, or no saving is printed. */
export interface CalibrationRow {
  /** Indicator. */
  readonly indicator: IndicatorId;
  /** Unit. */
  readonly unit: string;
  /** Total of the pigment route. */
  readonly pigment?: Coverage;
  /** Total of the dye route. */
  readonly dye?: Coverage;
  /** Saving, 1 − pigment / dye. */
  readonly saving?: Coverage;
  /** Largest of the three errors of counting. */
  readonly error: number;
}

/** Coverage in worlds of one nature. */
export interface CalibrationTable {
  /** Title. */
  readonly title: string;
  /** What the worlds are like, and what coverage in them tells. */
  readonly words: string;
  /** Number of worlds. */
  readonly worlds: number;
  /** Draws of each report. */
  readonly draws: number;
  /** Indicators in the order of the report. */
  readonly rows: readonly CalibrationRow[];
  /** Lowest, mean and highest share of all cells of the rows. */
  readonly overall: { readonly lowest: number; readonly mean: number; readonly highest: number };
}

/** Most worlds with meters, which take several times as long to work out. */
const METERED = 300;

/** Standard deviations in half a 95 % interval. */
const HALF_OF_95 = 1.96;

/** Below this width, as a share of the value, an interval holds roundings and no doubt. */
const NO_DOUBT = 1e-9;

/**
 * Works all tables out. The same numbers of worlds and draws give the same tables.
 *
 * @param asked - worlds and draws
 * @returns one table for each nature
 */
export async function calibration(asked: CalibrationAsked): Promise<readonly CalibrationTable[]> {
  const tables: CalibrationTable[] = [];
  for (const nature of NATURES) {
    const worlds = nature.meters === undefined ? asked.worlds : Math.min(asked.worlds, METERED);
    tables.push(await coverageUnder(nature, { ...asked, worlds }));
  }
  return tables;
}

/**
 * Works out the table of one nature.
 *
 * @param nature - what truths are like
 * @param asked - worlds and draws
 * @returns the table
 */
export async function coverageUnder(
  nature: Nature,
  asked: CalibrationAsked,
): Promise<CalibrationTable> {
  const program = programOfWorlds();
  const first = asked.first ?? 0;
  const scores = scoresOfWorlds(first + asked.worlds);
  const side = nature.byMachine === "wasteful" ? wastefulIn(program) : () => 1;
  const counts = new Map<string, { covered: number; of: number }>();
  const count = (place: string, held: boolean): void => {
    const before = counts.get(place) ?? { covered: 0, of: 0 };
    counts.set(place, { covered: before.covered + (held ? 1 : 0), of: before.of + 1 });
  };
  for (let world = first; world < first + asked.worlds; world++) {
    const truth = truthOf(nature, world, scores, side);
    const { actual, logged } = lotsOf({
      world,
      setting: settingsOf(program, truth),
      misread: (column) =>
        ((scores(`reading of ${column}`)[world] ?? NaN) * nature.misread) / HALF_OF_95,
    });
    const [real, written] = [groupsOf(actual), groupsOf(logged)];
    const truths = totalsAt(withAmounts(program, real), truth);
    // Every report has a seed of its own: with one for all, its chance would be in every world.
    const report = withAmounts(program, written);
    const account =
      nature.meters === undefined
        ? accountOf(report, asked.draws, world + 1)
        : meteredAccount({
            meters: nature.meters,
            program,
            actual: real,
            logged: { program: report, groups: written },
            truth,
            score: (name) => scores(name)[world] ?? NaN,
            draws: asked.draws,
            seed: world + 1,
          });
    for (const id of INDICATOR_IDS) {
      if (!program.indicators.has(id)) continue;
      const { pigment, dye, saving } = compareArms(account, id, 1);
      const p = truths.pigment.get(id) ?? 0;
      const d = truths.dye.get(id) ?? 0;
      if (doubted(pigment)) count(`${id} pigment`, holds(pigment, p));
      if (doubted(dye)) count(`${id} dye`, holds(dye, d));
      if (saving !== undefined && doubted(saving)) count(`${id} saving`, holds(saving, 1 - p / d));
    }
    const done = world - first + 1;
    if (done % 50 === 0 || done === asked.worlds) {
      asked.onProgress?.(`${nature.title}: ${done} of ${asked.worlds} worlds`);
      // Lets what was told be shown.
      await new Promise((shown) => {
        setTimeout(shown, 0);
      });
    }
  }
  return tableOf(nature, asked, program, counts);
}

function doubted({ low, median, high }: Range): boolean {
  return high - low > NO_DOUBT * Math.abs(median);
}

function holds({ low, high }: Range, truth: number): boolean {
  return truth >= low && truth <= high;
}

function tableOf(
  { title, words }: Nature,
  { worlds, draws }: CalibrationAsked,
  program: Program,
  counts: ReadonlyMap<string, { readonly covered: number; readonly of: number }>,
): CalibrationTable {
  const cell = (name: "pigment" | "dye" | "saving", id: IndicatorId) => {
    const found = counts.get(`${id} ${name}`);
    return found === undefined ? {} : { [name]: coverageOf(found.covered, found.of) };
  };
  const rows = INDICATOR_IDS.flatMap((indicator): readonly CalibrationRow[] => {
    const cells: Partial<Record<"pigment" | "dye" | "saving", Coverage>> = {
      ...cell("pigment", indicator),
      ...cell("dye", indicator),
      ...cell("saving", indicator),
    };
    const errors = Object.values(cells).map(({ error }) => error);
    if (errors.length === 0) return [];
    const unit = program.indicators.get(indicator)?.unit ?? "";
    return [{ indicator, unit, ...cells, error: Math.max(...errors) }];
  });
  const shares = rows.flatMap(({ pigment, dye, saving }) =>
    [pigment, dye, saving].flatMap((found) => (found === undefined ? [] : [found.share])),
  );
  return {
    title,
    words,
    worlds,
    draws,
    rows,
    overall: {
      lowest: Math.min(...shares),
      mean: shares.reduce((sum, share) => sum + share, 0) / shares.length,
      highest: Math.max(...shares),
    },
  };
}

function coverageOf(covered: number, of: number): Coverage {
  const share = covered / of;
  return { covered, of, share, error: HALF_OF_95 * Math.sqrt((share * (1 - share)) / of) };
}
