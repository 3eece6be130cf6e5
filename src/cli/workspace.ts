/**
 * A mill folder opened: factors, plant file, dialect and logs.
 */

import { existsSync, readFileSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { setFlagsFromString } from "node:v8";
import type { FactorSet } from "../factors/factor.js";
import { loadFactors } from "../factors/load.js";
import { LotReadingDesk, type ReadLots } from "../meters/lot-readings.js";
import { Ledger } from "../ledger/ledger.js";
import type { LogDialect } from "../log/dialect.js";
import { type LogAccount, readLogs } from "../log/read-logs.js";
import type { Lot } from "../log/lot.js";
import type { Plant } from "../plant/plant.js";
import { readPlant } from "../plant/read-plant.js";
import type { Problem } from "../problems/problem.js";
import { AsideRows } from "./aside-rows.js";
import { builtFile, logFile, shippedFolder, yamlFiles } from "./files.js";

/** Options that open a mill. */
export interface OpenOptions {
  /** Path of the plant file. */
  readonly plant: string;
}

/** A mill opened. */
export interface Workspace {
  /** Factors in force. */
  readonly factors: FactorSet;
  /** The print house. */
  readonly plant: Plant;
  /** How its logs are written. */
  readonly dialect: LogDialect;
  /** Folder of the plant file. */
  readonly folder: string;
}

/**
 * Reads the shipped factors and those of a folder.
 *
 * @param folder - folder whose `factors/` overrules
 * @returns the set or its problems
 */
export function openFactors(folder: string): {
  readonly factors?: FactorSet;
  readonly problems: readonly Problem[];
} {
  const pack = builtFile("factors.json");
  const shipped = shippedFolder("factors");
  const beside = join(folder, "factors");
  // In the tool's own folder the two are one.
  const own = resolve(beside) === resolve(shipped) ? [] : yamlFiles(beside);
  const { value, problems } = loadFactors(
    yamlFiles(shipped),
    own,
    existsSync(pack) ? readFileSync(pack, "utf8") : undefined,
  );
  return { ...(value === undefined ? {} : { factors: value }), problems };
}

/**
 * Opens a mill.
 *
 * @param options - where the plant file is
 * @returns the mill or its problems
 */
export function openMill(options: OpenOptions): {
  readonly mill?: Workspace;
  readonly problems: readonly Problem[];
} {
  const folder = dirname(options.plant);
  const { factors, problems } = openFactors(folder);
  if (factors === undefined) return { problems };
  if (!existsSync(options.plant)) {
    return {
      problems: [
        missing(
          options.plant,
          "a plant file",
          "Run `millrace start DIR` for one to begin with, or name yours with --plant.",
        ),
      ],
    };
  }
  const file = { name: basename(options.plant), text: readFileSync(options.plant, "utf8") };
  const plant = readPlant(file, factors);
  if (plant.value === undefined) return { problems: plant.problems };
  const dialect = plant.value.text.log ?? {};
  return { mill: { factors, plant: plant.value, dialect, folder }, problems: [] };
}

/** What to read from the logs. */
export interface ReadOptions {
  /** Day after which no lot can have been printed. */
  readonly today: string;
  /** First day. */
  readonly from?: string | undefined;
  /** Last day. */
  readonly to?: string | undefined;
  /** Client, when only one is wanted. */
  readonly client?: string | undefined;
  /** Site, when only one is wanted. */
  readonly site?: string | undefined;
  /** Order, when only one is wanted. */
  readonly order?: string | undefined;
  /** Handed each lot wanted; told to forget them all when reading starts again. */
  readonly watch?: { readonly lot: (lot: Lot) => void; readonly restart: () => void } | undefined;
}

/** Logs read. */
export interface Reading {
  /** Sums of the lots wanted. */
  readonly ledger: Ledger;
  /** Counts and problems. */
  readonly account: LogAccount;
  /** Rows set aside. */
  readonly aside: AsideRows;
  /** Lots read but not wanted by client, site or order. */
  readonly filtered: number;
  /** Lots with readings of their own. */
  readonly withReadings: number;
  /** Readings of lots in columns that the plant file tells of. */
  readonly readLots: readonly ReadLots[];
  /** First and last day of the lots wanted. */
  readonly days: readonly [string, string] | undefined;
}

/**
 * Reads the logs into a ledger.
 *
 * @param mill - the mill
 * @param logs - paths; `log.csv` beside the plant file when empty
 * @param options - what to read
 * @returns the ledger and its counts, or a problem when a log is not there
 */
export async function readMill(
  mill: Workspace,
  logs: readonly string[],
  options: ReadOptions,
): Promise<{ readonly reading?: Reading; readonly problems: readonly Problem[] }> {
  const paths = logs.length > 0 ? logs : [join(mill.folder, "log.csv")];
  const absent = paths.filter((path) => !existsSync(path));
  if (absent.length > 0) {
    return {
      problems: absent.map((path) =>
        missing(path, "a log", "Name the log after the command: `millrace report my-log.csv`."),
      ),
    };
  }
  // Left alone, the engine lets garbage of a long log pile up to four times what is alive; less than twice
  // takes no longer to read.
  setFlagsFromString("--heap-growing-percent=75");
  let state = blankState(mill.plant);
  const aside = new AsideRows();
  const { plant } = mill;
  const wanted = (lot: Lot): boolean =>
    (options.client === undefined || lot.client === options.client) &&
    (options.site === undefined || lot.site === options.site) &&
    (options.order === undefined || lot.order === options.order);
  const account = await readLogs(
    paths.map(logFile),
    mill.dialect,
    {
      routes: new Set(Object.keys(plant.routes)),
      fibres: fibresOf(mill.factors),
      sites: new Set(Object.keys(plant.sites)),
      today: options.today,
    },
    {
      lot: (lot) => {
        if (!wanted(lot)) {
          state.filtered += 1;
          return;
        }
        state.ledger.add(lot, plant);
        options.watch?.lot(lot);
        if (Object.values(lot.readings).some((value) => value !== undefined))
          state.withReadings += 1;
        state.read.add(lot);
        if (state.first === "" || lot.date < state.first) state.first = lot.date;
        if (lot.date > state.last) state.last = lot.date;
      },
      aside: (row) => {
        aside.add(row);
      },
      restart: () => {
        aside.forget();
        state = blankState(plant);
        options.watch?.restart();
      },
    },
    options,
  );
  for (const file of account.files) {
    if (!account.refused) state.ledger.noteFile(file.sha256);
  }
  const { ledger, filtered, withReadings, read } = state;
  return {
    reading: {
      ledger,
      account,
      aside,
      filtered,
      withReadings,
      readLots: read.found(),
      days: state.first === "" ? undefined : [state.first, state.last],
    },
    problems: account.problems,
  };
}

function blankState(plant: Plant): {
  ledger: Ledger;
  filtered: number;
  withReadings: number;
  read: LotReadingDesk;
  first: string;
  last: string;
} {
  return {
    ledger: new Ledger(),
    filtered: 0,
    withReadings: 0,
    read: new LotReadingDesk(plant),
    first: "",
    last: "",
  };
}

/**
 * Fibres the factors know.
 *
 * @param factors - the set
 * @returns their names
 */
function fibresOf(factors: FactorSet): ReadonlySet<string> {
  return new Set(
    [...factors.factors.keys()].flatMap((id) => /^fibre\.(.+)\.regain$/.exec(id)?.[1] ?? []),
  );
}

function missing(path: string, expected: string, remedy: string): Problem {
  return { code: "file-missing", severity: "refused", file: path, expected, remedy };
}

/**
 * Separator of files written beside a log, so that they can be read with the same dialect.
 *
 * @param dialect - how the log is written
 * @returns one character
 */
export function separatorOf(dialect: LogDialect): string {
  return dialect.separator === "tab" ? "\t" : (dialect.separator ?? ",");
}
