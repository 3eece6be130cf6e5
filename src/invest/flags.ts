/**
 * What in an investment file can be reckoned with but should be looked at: missing quotes, old prices, machines that
 * are bought without being asked for.
 */

import { problemAt, type YamlText } from "../factors/yaml-text.js";
import { inOrder } from "../plant/complaints.js";
import type { Problem } from "../problems/problem.js";
import { flagMachines } from "./flag-machines.js";
import { flagOptions } from "./flag-options.js";
import { pricesOf } from "./judge-money.js";
import type { InvestText } from "./schema.js";

/** Kinds of capital for which a quote is expected. */
const QUOTED = new Set(["machine", "exhaust", "electrical", "installation"]);

/** Years after which a price is called old. */
const OLD = 1;

/** Notes a flag. */
export type Flag = (
  path: readonly (string | number)[],
  code: string,
  value: string,
  expected: string,
  remedy: string,
) => void;

/**
 * Flags a file that can be reckoned with.
 *
 * @param yaml - the file, for lines
 * @param text - what it says
 * @returns warnings in the order of the file
 */
export function flags(yaml: YamlText, text: InvestText): readonly Problem[] {
  const problems: Problem[] = [];
  const flag: Flag = (path, code, value, expected, remedy) => {
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
  flagMachines(flag, text);
  flagOptions(flag, text);
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
