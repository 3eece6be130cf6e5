/**
 * The rows behind a figure, with what each of them adds.
 */

import { type Account, coefficientsOf } from "../account/account.js";
import { dot } from "../account/breakdown.js";
import type { IndicatorId } from "../account/indicators.js";
import { type Group, Ledger } from "../ledger/ledger.js";
import type { Lot } from "../log/lot.js";
import { type ReadOptions, readMill, type Workspace } from "./workspace.js";

/** A row and what it adds. */
export interface Row {
  /** File. */
  readonly file: string;
  /** Line on which the row starts. */
  readonly line: number;
  /** Lot. */
  readonly lot: string;
  /** Day it was printed. */
  readonly date: string;
  /** Route it took. */
  readonly route: string;
  /** Mean on the pigment route. */
  readonly pigment: number;
  /** Mean on the dye route. */
  readonly dye: number;
}

/** All rows behind a figure. */
export interface Rows {
  /** Number of rows. */
  readonly count: number;
  /** Sum of the means on the pigment route. */
  readonly pigment: number;
  /** Sum of the means on the dye route. */
  readonly dye: number;
  /** Rows that add most on the route they took, largest first. */
  readonly largest: readonly Row[];
}

/** Which rows to take. */
export interface RowChoice {
  /** Keeps the lots of a group or not. */
  readonly only: (group: Pick<Group, "key">) => boolean;
  /** How many of the largest to keep. */
  readonly most: number;
}

/** Lots charged in one go; a ledger's sample holds all of so few. */
const BATCH = 1000;

/**
 * Reads the logs once more and charges every lot by itself.
 *
 * @param mill - the mill
 * @param account - account over the same lots, with the parts of the indicator
 * @param id - the indicator
 * @param logs - paths of the logs
 * @param options - what was read
 * @param wanted - which rows to take
 * @returns the rows; their sums are the means of both routes
 */
export async function rowsBehind(
  mill: Workspace,
  account: Account,
  id: IndicatorId,
  logs: readonly string[],
  options: ReadOptions,
  wanted: RowChoice,
): Promise<Rows> {
  const of = coefficientsOf(account, id);
  let lots: Lot[] = [];
  let rows = { count: 0, pigment: 0, dye: 0, largest: [] as readonly (Row & { own: number })[] };
  const charge = (): void => {
    const places = new Map(lots.map((lot) => [lot.lot, lot]));
    const ledger = new Ledger();
    for (const lot of lots) ledger.add(lot, mill.plant);
    lots = [];
    const charged = ledger.sample().flatMap(({ lot: name, key, amounts }) => {
      const lotClass = account.program.classOf(key);
      const lot = places.get(name);
      if (lotClass === undefined || lot === undefined || !wanted.only({ key })) return [];
      const pigment = dot(of(lotClass, "pigment"), amounts);
      const dye = dot(of(lotClass, "dye"), amounts);
      const own = key.own === "pigment" ? pigment : dye;
      const { date, route } = lot;
      return [{ ...lot.place, lot: name, date, route, pigment, dye, own }];
    });
    rows = {
      count: rows.count + charged.length,
      pigment: charged.reduce((sum, { pigment }) => sum + pigment, rows.pigment),
      dye: charged.reduce((sum, { dye }) => sum + dye, rows.dye),
      largest: [...rows.largest, ...charged]
        .sort((a, b) => Math.abs(b.own) - Math.abs(a.own) || a.line - b.line)
        .slice(0, wanted.most),
    };
  };
  await readMill(mill, logs, {
    ...options,
    watch: {
      lot: (lot) => {
        lots.push(lot);
        if (lots.length === BATCH) charge();
      },
      restart: () => {
        lots = [];
        rows = { count: 0, pigment: 0, dye: 0, largest: [] };
      },
    },
  });
  charge();
  return {
    ...rows,
    largest: rows.largest.map(({ file, line, lot, date, route, pigment, dye }) => ({
      file,
      line,
      lot,
      date,
      route,
      pigment,
      dye,
    })),
  };
}
