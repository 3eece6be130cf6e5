/**
 * Reads an investment file; names every fault in one run.
 */

import { judgeBy } from "../factors/schema-problems.js";
import { readYaml, type TextFile, type YamlText } from "../factors/yaml-text.js";
import { Complaints, inOrder } from "../plant/complaints.js";
import { mend } from "../plant/mend.js";
import type { Judged, Problem } from "../problems/problem.js";
import { flags } from "./flags.js";
import { judgeMoney } from "./judge-money.js";
import { judgeOptions } from "./judge-options.js";
import { InvestFile, type InvestText } from "./schema.js";

/** Names that an investment file may refer to. */
export interface KnownNames {
  /** Clients of the log. */
  readonly clients: readonly string[];
  /** Fabrics of the log. */
  readonly fabrics: readonly string[];
  /** Machines of the plant file. */
  readonly machines: readonly string[];
}

/** An investment file read. */
export interface ReadInvest {
  /** What it says. */
  readonly text: InvestText;
  /** The file, for lines. */
  readonly yaml: YamlText;
}

/**
 * Reads the file. What its schema refuses is left out, and the rest is judged all the same.
 *
 * @param file - the file
 * @returns what it says, with warnings; or every fault with its line
 */
export function readInvest(file: TextFile): Judged<ReadInvest> {
  const read = readYaml(file);
  if (read.value === undefined) return { problems: read.problems };
  const yaml = read.value;
  const shape = judgeBy(InvestFile, yaml).problems;
  const { value: text, refused } = mend(InvestFile, yaml.value);
  if (text === undefined) return { problems: shape };
  const complaints = new Complaints(yaml, refused);
  judgeMoney(complaints, text);
  judgeOptions(complaints, text);
  const problems = inOrder([...shape, ...complaints.problems]);
  if (problems.length > 0) return { problems };
  return { value: { text, yaml }, problems: flags(yaml, text) };
}

/**
 * Judges names of the file against log and plant file.
 *
 * @param read - the file
 * @param known - names there
 * @returns names that are not known
 */
export function judgeNames(read: ReadInvest, known: KnownNames): readonly Problem[] {
  const { text, yaml } = read;
  const complaints = new Complaints(yaml);
  text.moves.forEach(({ client, fabric }, i) => {
    if (client !== undefined && !known.clients.includes(client))
      complaints.unknown(["moves", i, "client"], client, "a client of the log", known.clients);
    if (fabric !== undefined && !known.fabrics.includes(fabric))
      complaints.unknown(["moves", i, "fabric"], fabric, "a fabric of the log", known.fabrics);
  });
  for (const machine of Object.keys(text.capacity)) {
    if (!known.machines.includes(machine))
      complaints.unknown(
        ["capacity", machine],
        machine,
        "a machine of the plant file",
        known.machines,
      );
  }
  for (const [name, { removes = [], adds = {}, capex }] of Object.entries(text.options)) {
    capex.forEach(({ machine }, i) => {
      if (machine !== undefined && !known.machines.includes(machine))
        complaints.unknown(
          ["options", name, "capex", i, "machine"],
          machine,
          "a machine of the plant file",
          known.machines,
        );
    });
    for (const machine of Object.keys(adds)) {
      if (!known.machines.includes(machine))
        complaints.unknown(
          ["options", name, "adds", machine],
          machine,
          "a machine of the plant file that it stands beside",
          known.machines,
        );
    }
    removes.forEach((machine, i) => {
      if (!known.machines.includes(machine))
        complaints.unknown(
          ["options", name, "removes", i],
          machine,
          "a machine of the plant file",
          known.machines,
        );
    });
  }
  return complaints.problems;
}
