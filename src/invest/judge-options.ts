/**
 * Judges the options of an investment file: what must stand beside a purchase, and what does not fit together.
 */

import type { KeyPath } from "../factors/yaml-text.js";
import type { Complaints } from "../plant/complaints.js";
import type { InvestText, OptionText } from "./schema.js";

/** Kinds of options that move lots to a pigment route. */
const MOVING: ReadonlySet<string> = new Set(["pigment-calender", "pigment-stenter", "outsource"]);

/**
 * Judges options.
 *
 * @param complaints - where faults are noted
 * @param text - the file
 */
export function judgeOptions(complaints: Complaints, text: InvestText): void {
  const options = Object.entries(text.options);
  const kinds = options.map(([, { kind }]) => kind);
  const carrying = kinds.filter((kind) => kind === "carry-on").length;
  if (carrying !== 1)
    complaints.say(
      ["options"],
      "carry-on-missing",
      String(carrying),
      "one option of kind carry-on",
      "Add what has to be paid if nothing is bought: permit, repairs, tariffs that rise. Without it every purchase is judged against a mill that costs nothing to keep.",
    );
  if (!kinds.includes("improve-wash"))
    complaints.say(
      ["options"],
      "improve-wash-missing",
      kinds.join(", "),
      "an option of kind improve-wash",
      "Add what it costs to improve the wash range there is, and what it would save; a purchase is not to be judged without it.",
    );
  if (!kinds.some((kind) => MOVING.has(kind)))
    complaints.say(
      ["options"],
      "nothing-to-judge",
      kinds.join(", "),
      "an option of kind pigment-calender, pigment-stenter or outsource",
      "Add what is to be bought.",
    );
  for (const [name, option] of options) judgeOption(complaints, text, ["options", name], option);
  const staying = options.find(([, { kind }]) => kind === "carry-on")?.[1];
  const longest = Math.max(...options.map(([, { life }]) => life));
  if (staying !== undefined && staying.life < longest)
    complaints.say(
      ["options", options.find(([, one]) => one === staying)?.[0] ?? "", "life"],
      "life-shorter-than-option",
      String(staying.life),
      `a life of at least ${longest} years, that of the longest option, as each is set beside it over its own life`,
      "Lengthen it, and add what has to be paid in those years; lines with lasts are bought again by themselves.",
    );
  const { project } = text;
  if (project !== undefined && !MOVING.has(text.options[project]?.kind ?? ""))
    complaints.unknown(
      ["project"],
      project,
      "an option that moves lots",
      options.filter(([, { kind }]) => MOVING.has(kind)).map(([name]) => name),
    );
  if (text.prices.labour !== undefined && text.stays?.labour === undefined)
    complaints.say(
      ["prices", "labour"],
      "labour-without-stays",
      String(text.prices.labour.value),
      "stays.labour beside a price of labour",
      "Add stays.labour: the share of the hours set free that is paid for all the same, 1 where nobody leaves or is put to other work.",
    );
}

function judgeOption(
  complaints: Complaints,
  text: InvestText,
  at: KeyPath,
  option: OptionText,
): void {
  const { kind, life, to, loan, lease } = option;
  const moves = MOVING.has(kind);
  if (moves && to === undefined)
    complaints.say(
      at,
      "route-missing",
      kind,
      "to, the pigment route that lots move to",
      "Add the key.",
    );
  if (!moves && to !== undefined)
    complaints.say(
      [...at, "to"],
      "route-strange",
      to,
      `no route to move to in an option of kind ${kind}`,
      "Take the key out.",
    );
  if (option.plant !== undefined && option.scenario !== undefined)
    complaints.say(
      [...at, "scenario"],
      "house-twice",
      option.scenario,
      "plant or scenario, not both",
      "Keep one.",
    );
  const lasting: readonly (readonly [string, number | undefined])[] = [
    ["loan", loan?.years],
    ["lease", lease?.years],
  ];
  for (const [what, years] of lasting) {
    if (years !== undefined && years > life)
      complaints.say(
        [...at, "life"],
        "life-shorter-than-loan",
        String(life),
        `a life of at least the ${years} years of the ${what}`,
        `Lengthen the life if the machine lasts, or shorten the ${what}.`,
      );
  }
  if (loan !== undefined && text.money === "real" && text.inflation === undefined)
    complaints.say(
      [...at, "loan"],
      "inflation-missing",
      "real",
      "inflation beside a loan in money of each year",
      "Add inflation as { value, tag }.",
    );
  option.capex.forEach(({ kind: what, year, tag, value }, i) => {
    if (year > life)
      complaints.say(
        [...at, "capex", i, "year"],
        "year-beyond-life",
        String(year),
        `a year from 0 to its life, ${life}`,
        "Correct the year or the life.",
      );
    if (what === "machine" && tag === "default")
      complaints.say(
        [...at, "capex", i, "tag"],
        "machine-price-default",
        tag,
        "a quote, an invoice or an estimate of your own for a machine",
        "Ask for a quote: no default is offered for the price of a machine.",
      );
    const gives = what === "resale" || what === "grant";
    if (what !== "stock" && what !== "other" && gives !== value < 0 && value !== 0)
      complaints.say(
        [...at, "capex", i, "value"],
        "sign-strange",
        String(value),
        gives
          ? `money that comes in as a number below 0 for ${what}`
          : `a cost above 0 for ${what}`,
        "Correct the sign or the kind.",
      );
  });
  for (const [machine, { standby }] of Object.entries(option.adds ?? {})) {
    const { of = "electricity" } = standby ?? {};
    if (standby !== undefined && of !== "electricity" && text.prices.fuel?.[of] === undefined)
      complaints.say(
        [...at, "adds", machine, "standby", "of"],
        "standby-without-price",
        of,
        "electricity, or a fuel with its price under prices.fuel",
        "Correct the name or add the price; what has no price would look free.",
      );
    if (text.capacity[machine] === undefined)
      complaints.say(
        [...at, "adds", machine],
        "adds-without-capacity",
        machine,
        `capacity.${machine} with the hours of the one it stands beside`,
        "Add the hours of the machine that is there; without them nobody can say whether it would do alone.",
      );
  }
  if (!moves) return;
  if (text.prices.ink?.["pigment"] === undefined)
    complaints.say(
      ["prices"],
      "ink-price-missing",
      kind,
      "prices.ink with the price of each ink",
      "Add what you pay or were quoted per litre: no default is offered for ink.",
    );
  for (const [ink, { tag }] of Object.entries(text.prices.ink ?? {})) {
    if (tag === "default")
      complaints.say(
        ["prices", "ink", ink, "tag"],
        "ink-price-default",
        tag,
        "an invoice, a quote or an estimate of your own for ink",
        "Ask for a quote: no default is offered for ink.",
      );
  }
}
