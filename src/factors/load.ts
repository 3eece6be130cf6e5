/**
 * Reads the shipped factors and those of the user into one set.
 */

import { Digest, sha256Hex } from "../numbers/digest.js";
import type { Judged, Problem } from "../problems/problem.js";
import type { Factor, FactorSet, Source } from "./factor.js";
import { judgeFactor } from "./judge.js";
import { nearest } from "./nearest.js";
import { unpackFactors } from "./packed.js";
import { FactorFile, SourceFile } from "./schema.js";
import { judgeBy } from "./schema-problems.js";
import { statedFactors } from "./stated.js";
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
 * @param packed - the shipped files as judged before, from `packFactors`; taken when it was made from the
 *   very same files, and saves a fifth of a second
 * @returns the set; or every fault of every file, in the order of the files
 */
export function loadFactors(
  files: readonly TextFile[],
  own: readonly TextFile[],
  packed?: string,
): Judged<FactorSet> {
  const problems: Problem[] = [];
  const digest = digestOf(files);
  const known = packed === undefined ? undefined : unpackFactors(packed, digest);
  const shipped = known ?? readSet(files, problems);
  const sources = addSources(own, shipped.sources, problems);
  const theirs = readFactors(own, sources, problems, shipped.factors);
  if (problems.length > 0) return { problems };
  return {
    value: {
      factors: new Map([...shipped.factors, ...theirs]),
      sources,
      digest: own.length === 0 ? digest : digestOf([...files, ...own.map(ofTheUser)]),
    },
    problems,
  };
}

function readSet(
  files: readonly TextFile[],
  problems: Problem[],
): Pick<FactorSet, "factors" | "sources"> {
  const sources = addSources(files, new Map(), problems);
  return { factors: readFactors(files, sources, problems), sources };
}

function holdsSources({ name }: TextFile): boolean {
  return name === SOURCES || name.endsWith(`/${SOURCES}`) || name.endsWith(`\\${SOURCES}`);
}

function addSources(
  files: readonly TextFile[],
  known: ReadonlyMap<string, Source>,
  problems: Problem[],
): ReadonlyMap<string, Source> {
  const sources = new Map(known);
  for (const file of files.filter(holdsSources)) {
    const yaml = taken(readYaml(file), problems);
    const text = yaml === undefined ? undefined : taken(judgeBy(SourceFile, yaml), problems);
    if (yaml === undefined || text === undefined) continue;
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
  return sources;
}

const ANOTHER_KEY = {
  expected: "a key that no other source has",
  remedy: "Choose another key; a shipped source cannot be replaced.",
};

// With shipped factors at hand the files are the user's, and may not hold just any id.
function readFactors(
  files: readonly TextFile[],
  sources: ReadonlyMap<string, Source>,
  problems: Problem[],
  shipped?: ReadonlyMap<string, Factor>,
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
      const fault = twice(factor.id, seen) ?? unknownTo(shipped, factor.id);
      if (fault !== undefined) {
        problems.push(problemAt(yaml, factor.path, fault));
        continue;
      }
      seen.set(factor.id, { yaml, path: factor.path });
      const judged = taken(judgeFactor(factor, yaml, keys, shipped?.get(factor.id)), problems);
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

function unknownTo(
  shipped: ReadonlyMap<string, Factor> | undefined,
  id: string,
): Fault | undefined {
  if (shipped === undefined || shipped.has(id)) return undefined;
  if (OPEN_FAMILIES.includes(id.split(".", 1)[0] ?? "")) return undefined;
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

function ofTheUser({ name, text }: TextFile): TextFile {
  return { name: `own/${name}`, text };
}

// The list that `sha256sum` prints for the files, sorted by name, is what is digested: anybody can check it.
function digestOf(files: readonly TextFile[]): string {
  const digest = new Digest();
  for (const { name, text } of [...files].sort((a, b) => (a.name < b.name ? -1 : 1))) {
    digest.update(`${sha256Hex(text)}  ${name}\n`);
  }
  return digest.hex();
}
