/**
 * Reads the shipped factors and those of the user into one set.
 */

import { Digest, sha256Hex } from "../numbers/digest.js";
import type { Judged, Problem } from "../problems/problem.js";
import type { Factor, FactorSet, Source } from "./factor.js";
import { judgeFactor } from "./judge.js";
import { nearest } from "./nearest.js";
import { FactorFile, SourceFile } from "./schema.js";
import { judgeBy } from "./schema-problems.js";
import { type StatedFactor, statedFactors } from "./stated.js";
import {
  type Fault,
  type KeyPath,
  problemAt,
  readYaml,
  type TextFile,
  type YamlText,
} from "./yaml-text.js";

/** Families a user may add to; the ids of the others are what the steps ask for. */
const OPEN_FAMILIES = ["fibre", "fuel", "grid", "recipe"];

const SOURCES = "sources.yaml";

/**
 * Reads all files of factors.
 *
 * A factor of the user takes the place of the shipped one with all its vintages. Sources of the user join the
 * shipped ones.
 *
 * @param files - the shipped files, `sources.yaml` among them
 * @param own - files of the user, in the same form
 * @returns the set; or every fault of every file, in the order of the files
 */
export function loadFactors(
  files: readonly TextFile[],
  own: readonly TextFile[],
): Judged<FactorSet> {
  const problems: Problem[] = [];
  const sources = new Map<string, Source>();
  for (const file of [...files, ...own].filter(holdsSources)) addSources(file, sources, problems);
  const shipped = readAll(files, sources, problems, () => undefined);
  const theirs = readAll(
    own,
    sources,
    problems,
    (stated) => mayNotStand(stated.id, shipped),
    shipped,
  );
  if (problems.length > 0) return { problems };
  return {
    value: { factors: new Map([...shipped, ...theirs]), sources, digest: digestOf(files, own) },
    problems,
  };
}

function holdsSources({ name }: TextFile): boolean {
  return name === SOURCES || name.endsWith(`/${SOURCES}`) || name.endsWith(`\\${SOURCES}`);
}

function addSources(file: TextFile, sources: Map<string, Source>, problems: Problem[]): void {
  const yaml = taken(readYaml(file), problems);
  const text = yaml === undefined ? undefined : taken(judgeBy(SourceFile, yaml), problems);
  if (yaml === undefined || text === undefined) return;
  for (const [key, { author, title, publisher, year, where, read, licence }] of Object.entries(
    text,
  )) {
    if (sources.has(key)) {
      problems.push(problemAt(yaml, [key], { code: "source-twice", value: key, ...ANOTHER_KEY }));
    } else {
      sources.set(key, { author, title, publisher, year, where, read, licence });
    }
  }
}

const ANOTHER_KEY = {
  expected: "a key that no other source has",
  remedy: "Choose another key; a shipped source cannot be replaced.",
};

function readAll(
  files: readonly TextFile[],
  sources: ReadonlyMap<string, Source>,
  problems: Problem[],
  refusal: (stated: StatedFactor) => Fault | undefined,
  shipped: ReadonlyMap<string, Factor> = new Map<string, Factor>(),
): Map<string, Factor> {
  const factors = new Map<string, Factor>();
  const seen = new Map<string, Place>();
  const keys = new Set(sources.keys());
  for (const file of files.filter((one) => !holdsSources(one))) {
    const yaml = taken(readYaml(file), problems);
    const text = yaml === undefined ? undefined : taken(judgeBy(FactorFile, yaml), problems);
    if (yaml === undefined || text === undefined) continue;
    const stated = statedFactors(text, yaml);
    problems.push(...stated.problems);
    for (const factor of stated.factors) {
      const fault = twice(factor.id, seen) ?? refusal(factor);
      if (fault !== undefined) {
        problems.push(problemAt(yaml, factor.path, fault));
        continue;
      }
      seen.set(factor.id, { yaml, path: factor.path });
      const judged = taken(judgeFactor(factor, yaml, keys, shipped.get(factor.id)), problems);
      if (judged !== undefined) factors.set(factor.id, judged);
    }
  }
  return factors;
}

interface Place {
  readonly yaml: YamlText;
  readonly path: KeyPath;
}

function taken<T>(judged: Judged<T>, problems: Problem[]): T | undefined {
  problems.push(...judged.problems);
  return judged.value;
}

function twice(id: string, seen: ReadonlyMap<string, Place>): Fault | undefined {
  const first = seen.get(id);
  if (first === undefined) return undefined;
  return {
    code: "factor-twice",
    value: id,
    expected: `every factor once; it stands in ${first.yaml.name}, line ${first.yaml.lineOf(first.path)} already`,
    remedy: "Add further vintages to the list of values there.",
  };
}

function mayNotStand(id: string, shipped: ReadonlyMap<string, Factor>): Fault | undefined {
  if (shipped.has(id) || OPEN_FAMILIES.includes(id.split(".", 1)[0] ?? "")) return undefined;
  const meant = nearest(id, shipped.keys());
  return {
    code: "factor-unknown",
    value: id,
    expected: `the id of a shipped factor, or a new one under ${OPEN_FAMILIES.join(", ")}`,
    remedy:
      meant === undefined
        ? "List the ids with: millrace factors."
        : `Write ${meant} if that was meant.`,
  };
}

// The list that `sha256sum` prints for the files, sorted by name, is what is digested: anybody can check it.
function digestOf(files: readonly TextFile[], own: readonly TextFile[]): string {
  const named = [
    ...files.map(({ name, text }) => ({ name, text })),
    ...own.map(({ name, text }) => ({ name: `own/${name}`, text })),
  ].sort((a, b) => (a.name < b.name ? -1 : 1));
  const digest = new Digest();
  for (const { name, text } of named) digest.update(`${sha256Hex(text)}  ${name}\n`);
  return digest.hex();
}
