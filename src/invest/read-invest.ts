/**
 * Reads an investment file; names every fault in one run.
 */

import { judgeBy } from "../factors/schema-problems.js";
import { problemAt, readYaml, type TextFile, type YamlText } from "../factors/yaml-text.js";
import { Complaints, inOrder } from "../plant/complaints.js";
import { mend } from "../plant/mend.js";
import type { Judged, Problem } from "../problems/problem.js";
import { judgeMoney, pricesOf } from "./judge-money.js";
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
  for (const [name, { removes = [] }] of Object.entries(text.options)) {
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

/** Kinds of capital for which a quote is expected. */
const QUOTED = new Set(["machine", "exhaust", "electrical", "installation"]);

/** Years after which a price is called old. */
const OLD = 1;

function flags(yaml: YamlText, text: InvestText): readonly Problem[] {
  const problems: Problem[] = [];
  const flag = (
    path: readonly (string | number)[],
    code: string,
    value: string,
    expected: string,
    remedy: string,
  ): void => {
    problems.push({
      ...problemAt(yaml, path, { code, value, expected, remedy }),
      severity: "warning",
    });
  };
  for (const [name, option] of Object.entries(text.options)) {
    option.capex.forEach(({ what, kind, tag }, i) => {
      if (QUOTED.has(kind) && tag !== "quote" && tag !== "invoice")
        flag(
          ["options", name, "capex", i],
          "quote-missing",
          what,
          `a quote or an invoice for ${what}, not an ${tag}`,
          "Ask for a quote; until then the report counts it as resting on an estimate.",
        );
    });
    if ((option.removes ?? []).length > 0 && !option.capex.some(({ kind }) => kind === "removal"))
      flag(
        ["options", name, "removes"],
        "removal-missing",
        (option.removes ?? []).join(", "),
        "a line of kind removal for machines taken out",
        "Add what taking them out and disposing of them costs, 0 if it costs nothing.",
      );
  }
  const options = Object.entries(text.options);
  const shortest = Math.min(...options.map(([, { life }]) => life));
  const carrying = options.find(([, { kind }]) => kind === "carry-on");
  carrying?.[1].capex.forEach(({ what, kind, lasts }, i) => {
    if (lasts === undefined && carrying[1].life > shortest && kind !== "working-capital")
      flag(
        ["options", carrying[0], "capex", i],
        "lasting-missing",
        what,
        `lasts, the years it serves, as one option lives ${shortest} years only`,
        "Add it; until then the short option is credited with sparing all of it.",
      );
  });
  for (const [path, { date }] of datedIn(text)) {
    const years = (Date.parse(text.start) - Date.parse(date)) / (365.25 * 86_400_000);
    if (years >= OLD)
      flag(
        [...path, "date"],
        "price-old",
        date,
        "a price less than a year old at the start",
        "Ask for it anew; until then it is taken as grown through the years since.",
      );
  }
  return inOrder(problems);
}

function datedIn(
  text: InvestText,
): readonly (readonly [readonly (string | number)[], { readonly date: string }])[] {
  return [
    ...pricesOf(text).map(([path, one]) => [["prices", ...path], one] as const),
    ...Object.entries(text.options).flatMap(([name, { capex, yearly = [] }]) => [
      ...capex.map((one, i) => [["options", name, "capex", i], one] as const),
      ...yearly.map((one, i) => [["options", name, "yearly", i], one] as const),
    ]),
  ];
}
