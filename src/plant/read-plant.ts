/**
 * Reads a plant file with its changes by date, and ties routes to machines; names every fault in one run.
 */

import type { FactorSet } from "../factors/factor.js";
import { judgeBy } from "../factors/schema-problems.js";
import { readYaml, type TextFile, type YamlText } from "../factors/yaml-text.js";
import type { Judged, Problem } from "../problems/problem.js";
import { Complaints, inOrder } from "./complaints.js";
import { houseOf, type JudgedVersion, placeInChange } from "./dated.js";
import { judgeAir } from "./judge-air.js";
import { judgeChange } from "./judge-change.js";
import { judgeHouse } from "./judge-house.js";
import { judgeMeters } from "./judge-meters.js";
import { judgeReadings } from "./judge-readings.js";
import { mend } from "./mend.js";
import { mergeChange } from "./merge-change.js";
import type { Plant } from "./plant.js";
import { judgeScenario } from "./scenario.js";
import { type ChangeText, PlantFile } from "./schema.js";

/** A what-if from elsewhere than the file. */
export interface AskedScenario {
  /** Its name. */
  readonly name: string;
  /** What it says, as plain data. */
  readonly says: unknown;
}

/**
 * Reads the plant file. What its schema refuses is left out, and the names and numbers of the rest are
 * judged all the same; so is the file as of each of its changes, and under each of its scenarios.
 *
 * @param file - the file
 * @param factors - factors in force, for limits and known names
 * @param asked - a scenario beside those of the file
 * @returns the plant, or every fault with its line, in the order of the file
 */
export function readPlant(
  file: TextFile,
  factors: FactorSet,
  asked?: AskedScenario,
): Judged<Plant> {
  const read = readYaml(file);
  if (read.value === undefined) return { problems: read.problems };
  const yaml = asked === undefined ? read.value : withScenario(read.value, asked);
  const shape = judgeBy(PlantFile, yaml).problems;
  const { value: text, refused } = mend(PlantFile, yaml.value);
  if (text === undefined) return { problems: shape };
  const complaints = new Complaints(yaml, refused);
  const first: JudgedVersion = {
    complaints,
    text,
    from: "",
    note: "",
    plant: judgeHouse(complaints, factors, text),
  };
  judgeMeters(complaints, text);
  judgeReadings(complaints, text);
  const versions = [first];
  for (const { change, index } of inTurn(complaints, text.changes ?? [])) {
    versions.push(versionAfter(versions.at(-1) ?? first, factors, change, index));
  }
  const scenarios = Object.entries(text.scenarios ?? {}).map(([name, one]) =>
    judgeScenario({ name, asked: name === asked?.name }, one, versions, factors),
  );
  const all = [...versions, ...scenarios.flatMap((one) => one.versions)];
  // A scenario may have one fault on several days.
  const said = (): readonly Problem[] => inOrder([...shape, ...all.flatMap(once())]);
  // Only a file without fault can be put together.
  if (said().length === 0) {
    for (const version of all) judgeAir(version.complaints, factors, version.plant);
  }
  const problems = said();
  if (problems.length > 0) return { problems };
  const house = houseOf(versions, first.plant);
  if (scenarios.length === 0) return { value: house, problems };
  return { value: { ...house, scenarios: scenarios.map(({ scenario }) => scenario) }, problems };
}

function withScenario(yaml: YamlText, { name, says }: AskedScenario): YamlText {
  if (typeof yaml.value !== "object" || yaml.value === null) return yaml;
  const known = "scenarios" in yaml.value ? yaml.value.scenarios : undefined;
  const scenarios = { ...(typeof known === "object" ? known : {}), [name]: says };
  return { ...yaml, value: { ...yaml.value, scenarios } };
}

function once(): (version: JudgedVersion) => readonly Problem[] {
  const known = new Set<string>();
  return ({ complaints }) =>
    complaints.problems.filter((problem) => {
      const text = JSON.stringify(problem);
      return !known.has(text) && known.add(text);
    });
}

function versionAfter(
  before: JudgedVersion,
  factors: FactorSet,
  change: ChangeText,
  index: number,
): JudgedVersion {
  const complaints = before.complaints.under(["changes", index]);
  const text = mergeChange(before.text, judgeChange(complaints, before.text, change), (where) =>
    placeInChange(change.from, where),
  );
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
