/**
 * Reads a plant file with its changes by date, and ties routes to machines; names every fault in one run.
 */

import type { FactorSet } from "../factors/factor.js";
import { judgeBy } from "../factors/schema-problems.js";
import { readYaml, type TextFile } from "../factors/yaml-text.js";
import type { Judged, Problem } from "../problems/problem.js";
import { Complaints, inOrder } from "./complaints.js";
import { judgeAir } from "./judge-air.js";
import { judgeChange } from "./judge-change.js";
import { judgeHouse } from "./judge-house.js";
import { mend } from "./mend.js";
import { mergeChange } from "./merge-change.js";
import type { DatedPlant, Plant } from "./plant.js";
import { type ChangeText, PlantFile, type PlantText } from "./schema.js";

/**
 * Reads the plant file. What its schema refuses is left out, and the names and numbers of the rest are
 * judged all the same; so is the file as of each of its changes.
 *
 * @param file - the file
 * @param factors - factors in force, for limits and known names
 * @returns the plant, or every fault with its line, in the order of the file
 */
export function readPlant(file: TextFile, factors: FactorSet): Judged<Plant> {
  const yaml = readYaml(file);
  if (yaml.value === undefined) return { problems: yaml.problems };
  const shape = judgeBy(PlantFile, yaml.value).problems;
  const { value: text, refused } = mend(PlantFile, yaml.value.value);
  if (text === undefined) return { problems: shape };
  const complaints = new Complaints(yaml.value, refused);
  const first: Version = {
    complaints,
    text,
    from: "",
    note: "",
    plant: judgeHouse(complaints, factors, text),
  };
  const versions = [first];
  for (const { change, index } of inTurn(complaints, text.changes ?? [])) {
    versions.push(versionAfter(versions.at(-1) ?? first, factors, change, index));
  }
  const said = (): readonly Problem[] =>
    inOrder([...shape, ...versions.flatMap((one) => one.complaints.problems)]);
  // Only a file without fault can be put together.
  if (said().length === 0) {
    for (const version of versions) judgeAir(version.complaints, factors, version.plant);
  }
  const problems = said();
  return problems.length > 0 ? { problems } : { value: house(versions, first.plant), problems };
}

/** The house as of a day, with what is wrong with it. */
interface Version extends DatedPlant {
  readonly complaints: Complaints;
  readonly text: PlantText;
}

function versionAfter(
  before: Version,
  factors: FactorSet,
  change: ChangeText,
  index: number,
): Version {
  const complaints = before.complaints.underChange(index);
  const text = mergeChange(before.text, judgeChange(complaints, before.text, change));
  const plant = judgeHouse(complaints, factors, text);
  return { complaints, text, from: change.from, note: change.note ?? "", plant };
}

// Changes by day, whatever their order in the file.
function inTurn(
  complaints: Complaints,
  changes: readonly ChangeText[],
): readonly { readonly change: ChangeText; readonly index: number }[] {
  const listed = changes.map((change, index) => ({ change, index }));
  for (const { change, index } of listed) {
    if (!changes.slice(0, index).some(({ from }) => from === change.from)) continue;
    complaints.say(
      ["changes", index, "from"],
      "change-twice",
      change.from,
      "one change a day",
      "Put what both say into one.",
    );
  }
  // Without all days known they are taken as they stand.
  const dated = listed.every(({ index }) => !complaints.refused(["changes", index, "from"]));
  return dated ? listed.sort((a, b) => (a.change.from < b.change.from ? -1 : 1)) : listed;
}

// Sites and routes of the whole are those of any day, as they were first named.
function house(versions: readonly DatedPlant[], first: Plant): Plant {
  if (versions.length === 1) return first;
  return {
    ...first,
    sites: firstNamed(versions.map(({ plant }) => plant.sites)),
    routes: firstNamed(versions.map(({ plant }) => plant.routes)),
    versions: versions.map(({ from, note, plant }) => ({ from, note, plant })),
  };
}

function firstNamed<T>(all: readonly Readonly<Record<string, T>>[]): Record<string, T> {
  const found = new Map<string, T>();
  for (const [name, part] of all.flatMap((parts) => Object.entries(parts))) {
    if (!found.has(name)) found.set(name, part);
  }
  return Object.fromEntries(found);
}
