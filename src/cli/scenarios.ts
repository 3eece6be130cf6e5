/**
 * What-ifs of the command line and of the plant file.
 */

import { readFileSync } from "node:fs";
import { basename } from "node:path";
import {
  type PlayedScenario,
  playScenarios,
  type Scenarios,
  type Stage,
} from "../compare/scenarios.js";
import { nearest } from "../factors/nearest.js";
import { type KeyPath, pathText, readYaml, valueAt } from "../factors/yaml-text.js";
import type { Plant } from "../plant/plant.js";
import { type AskedScenario, readPlant } from "../plant/read-plant.js";
import { findKey } from "../plant/scenario-key.js";
import type { PlantText } from "../plant/schema.js";
import type { Problem } from "../problems/problem.js";
import { WrongWord } from "./arguments.js";
import type { Played } from "./understudy.js";
import type { Workspace } from "./workspace.js";

const OPTION = "--set";

/**
 * The print house with the scenario that `--set` asks for beside those of its file.
 *
 * @param mill - the mill
 * @param path - path of the plant file
 * @param sets - what is set, each as KEY=VALUE
 * @returns the house
 * @throws WrongWord when a key is not known or a value cannot stand there
 */
export function withSets(mill: Workspace, path: string, sets: readonly string[]): Plant {
  if (sets.length === 0) return mill.plant;
  const asked = askedScenario(mill.plant.text, sets);
  const file = { name: basename(path), text: readFileSync(path, "utf8") };
  const { value, problems } = readPlant(file, mill.factors, asked);
  if (value !== undefined) return value;
  const [first] = problems;
  const at = first?.key?.replace(`scenarios.${asked.name}`, "").replace(/^\./, "") ?? "";
  throw new WrongWord(
    OPTION,
    `${first?.expected ?? "a value that can stand there"}${at === "" ? "" : ` at ${at}`}`,
    first?.value ?? sets.join(" "),
    first?.remedy,
  );
}

function askedScenario(text: PlantText, sets: readonly string[]): AskedScenario {
  const says: Record<string, unknown> = {};
  for (const set of sets) {
    const key = set.slice(0, set.indexOf("=")).trim();
    const value = valueOf(set);
    const found = findKey(text, key, value);
    if (!("path" in found)) throw unknownKey(set, found);
    if (valueAt(says, found.path) !== undefined)
      throw new WrongWord(OPTION, `every key once; ${key} stands there twice`, set);
    put(says, found.path, value);
  }
  return { name: sets.map((set) => `${OPTION} ${set}`).join(" "), says };
}

// Read as the plant file would be.
function valueOf(set: string): unknown {
  const text = set.slice(set.indexOf("=") + 1);
  const { value } = readYaml({ name: OPTION, text });
  if (value === undefined)
    throw new WrongWord(
      OPTION,
      "a value as the plant file would have it",
      text,
      "Write a word, a number, or { value: 12, low: 9, high: 16 }.",
    );
  return value.value;
}

function unknownKey(
  set: string,
  { word, under, known }: { word: string; under: KeyPath; known: readonly string[] },
): WrongWord {
  const near = nearest(word, known);
  const place = under.length === 0 ? "" : ` under ${pathText(under)}`;
  return new WrongWord(
    OPTION,
    known.length === 0
      ? `a key of the plant file; there is nothing${place} to be named`
      : `a key of the plant file,${place} one of ${known.join(", ")}`,
    set,
    near === undefined ? `${word} is not one of them.` : `Did you mean ${near}?`,
  );
}

function put(into: Record<string, unknown>, path: KeyPath, value: unknown): void {
  let at = into;
  for (const key of path.slice(0, -1)) {
    const next = at[key];
    const inner: Record<string, unknown> =
      typeof next === "object" && next !== null ? (next as Record<string, unknown>) : {};
    at[key] = inner;
    at = inner;
  }
  at[path.at(-1) ?? ""] = value;
}

/**
 * Works the scenarios of a house out.
 *
 * @param stage - what they have in common, with the house that holds them
 * @param played - what came out already
 * @returns them beside the mill, or why one cannot be worked out; neither when there are none
 * @throws {@link MissingFactor} when one asks for a factor without a value in force
 */
export function scenariosOf(
  stage: Stage,
  played?: Played,
): {
  readonly scenarios?: Scenarios;
  readonly problems: readonly Problem[];
} {
  const wanted = stage.plant.scenarios ?? [];
  if (wanted.length === 0) return { problems: [] };
  if (played !== undefined) {
    const scenarios = wanted.flatMap((scenario, i) => {
      const found = played.played[i];
      return found === undefined ? [] : [{ ...found, scenario }];
    });
    return { scenarios: { ...played, played: scenarios }, problems: [] };
  }
  const scenarios = playScenarios(stage, wanted);
  if ("played" in scenarios) return { scenarios, problems: [] };
  return {
    problems: [
      {
        code: "scenario-without-area",
        severity: "refused",
        key: `scenarios.${scenarios.without.name}.rejects`,
        expected: "a multiple that leaves accepted area",
        remedy: "Lower it.",
      },
    ],
  };
}

/**
 * Sentence that keeps a what-if of the command line from being taken for the mill.
 *
 * @param played - scenarios worked out
 * @returns the sentence; undefined when nothing was set
 */
export function settingsWarning(played: readonly PlayedScenario[]): string | undefined {
  const asked = played.find(({ scenario }) => scenario.asked);
  return asked === undefined
    ? undefined
    : `${asked.scenario.name} is a what-if beside the mill; the mill's own figures do not change.`;
}
