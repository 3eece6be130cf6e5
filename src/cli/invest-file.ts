/**
 * The investment file of a mill folder, judged against plant file and log.
 */

import { existsSync, readFileSync } from "node:fs";
import { basename, join } from "node:path";
import type { TextFile } from "../factors/yaml-text.js";
import type { OptionHouse } from "../invest/build-study.js";
import { optionHouses } from "../invest/option-houses.js";
import { judgeNames, readInvest, type ReadInvest } from "../invest/read-invest.js";
import { type Difference, differencesOf, differenceWarnings } from "../invest/two-files.js";
import type { Group } from "../ledger/ledger.js";
import type { Problem } from "../problems/problem.js";
import type { Reading, Workspace } from "./workspace.js";

/** An investment file that can be reckoned with. */
export interface OpenedInvest {
  /** The file. */
  readonly read: ReadInvest;
  /** Its text. */
  readonly written: string;
  /** The plant file. */
  readonly plantFile: TextFile;
  /** Houses of options that change it. */
  readonly houses: ReadonlyMap<string, OptionHouse>;
  /** Prices on which the plant file says otherwise. */
  readonly differences: readonly Difference[];
}

/**
 * Reads an investment file and judges it against the plant file.
 *
 * @param path - its path
 * @param plant - path of the plant file
 * @param mill - the mill
 * @returns the file with warnings; or all that is wrong with it
 */
export function openInvest(
  path: string,
  plant: string,
  mill: Workspace,
): { readonly opened?: OpenedInvest; readonly problems: readonly Problem[] } {
  const written = readFileSync(path, "utf8");
  const read = readInvest({ name: basename(path), text: written });
  if (read.value === undefined) return { problems: read.problems };
  const { text, yaml } = read.value;
  const plantFile = { name: basename(plant), text: readFileSync(plant, "utf8") };
  const { houses, problems } = optionHouses(yaml, text, plantFile, mill.plant, mill.factors);
  if (problems.length > 0) return { problems };
  const differences = differencesOf(read.value, mill.plant);
  return {
    opened: { read: read.value, written, plantFile, houses, differences },
    problems: [...differenceWarnings(read.value, differences, plantFile.name), ...read.problems],
  };
}

/**
 * Judges names of clients, fabrics and machines in an investment file.
 *
 * @param read - the file
 * @param mill - the mill
 * @param groups - groups of lots
 * @returns names that are not known
 */
export function judgeLots(
  read: ReadInvest,
  mill: Workspace,
  groups: readonly Group[],
): readonly Problem[] {
  const distinct = (of: "client" | "fabric"): readonly string[] =>
    [...new Set(groups.map(({ key }) => key[of]))].filter((name) => name !== "").sort();
  return judgeNames(read, {
    clients: distinct("client"),
    fabrics: distinct("fabric"),
    machines: Object.values(mill.plant.sites).flatMap(({ machines }) => Object.keys(machines)),
  });
}

/** What `check` says of an investment file. */
export interface InvestCheck {
  /** Name of the file. */
  readonly file: string;
  /** Number of options; 0 where the file is refused. */
  readonly options: number;
  /** Faults and warnings. */
  readonly problems: readonly Problem[];
}

/**
 * Judges the investment file beside the plant file, where there is one. Names are judged against the whole log alone,
 * as a period may lack some.
 *
 * @param mill - the mill
 * @param plant - path of the plant file
 * @param reading - the log
 * @param whole - whether all of the log was read
 * @returns what is to be said; undefined without a file
 */
export function investCheck(
  mill: Workspace,
  plant: string,
  reading: Reading,
  whole: boolean,
): InvestCheck | undefined {
  const path = join(mill.folder, "invest.yaml");
  if (!existsSync(path)) return undefined;
  const { opened, problems } = openInvest(path, plant, mill);
  const file = basename(path);
  if (opened === undefined) return { file, options: 0, problems };
  const names = whole ? judgeLots(opened.read, mill, reading.ledger.settled().groups) : [];
  const { options } = opened.read.text;
  return { file, options: Object.keys(options).length, problems: [...names, ...problems] };
}
