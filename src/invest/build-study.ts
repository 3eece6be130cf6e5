/**
 * Puts a study together: inputs of the file drawn, flows of every option drawn on the same lots.
 */

import { writeProgram } from "../account/program.js";
import { armsUnder } from "../compare/scenario-groups.js";
import type { FactorSet } from "../factors/factor.js";
import type { LedgerKey } from "../ledger/key.js";
import type { Group } from "../ledger/ledger.js";
import type { Plant } from "../plant/plant.js";
import { AMOUNTS } from "../steps/amounts.js";
import { ontoWash } from "./after-wash.js";
import { Cashier } from "./cashier.js";
import type { Drawing, Input } from "./inputs.js";
import { type FlowsByMachine, lotFlows } from "./lot-flows.js";
import { monthlyHours, monthsOf } from "./month-hours.js";
import type { InvestText, OptionText } from "./schema.js";
import type { Moving, Study, StudyOption } from "./study.js";
import { goingFlows, goneFlows, machineHours, totalFlows } from "./sums-of-flows.js";

/** A house as an option has it. */
export interface OptionHouse {
  /** The house. */
  readonly plant: Plant;
  /** Route taken instead of another. */
  readonly instead: Readonly<Record<string, string>>;
}

/** What a study is made of. */
export interface StudyInput extends Drawing {
  /** The file. */
  readonly text: InvestText;
  /** The mill. */
  readonly plant: Plant;
  /** The house of each option that changes it, by name. */
  readonly houses: ReadonlyMap<string, OptionHouse>;
  /** Factors in force. */
  readonly factors: FactorSet;
  /** Groups of lots. */
  readonly groups: readonly Group[];
  /** First and last day of the log. */
  readonly period: readonly [string, string];
  /** Day of the report. */
  readonly asOf: string;
}

/** Days of a year. */
const YEAR = 365;

const MS_PER_DAY = 86_400_000;

/**
 * Days of a period, both ends counted.
 *
 * @param period - first and last day
 * @returns number of days
 */
export function daysOf(period: readonly [string, string]): number {
  const [from, to] = period;
  return 1 + Math.round((Date.parse(to) - Date.parse(from)) / MS_PER_DAY);
}

/**
 * Builds a study.
 *
 * @param input - file, mill and lots
 * @returns the study
 * @throws {@link MissingFactor} when a factor has no value in force
 */
export function buildStudy(input: StudyInput): Study {
  const { text, groups } = input;
  const cashier = new Cashier(text, input);
  const yearly = YEAR / daysOf(input.period);
  const printed = sumOver(groups, "printed", isDyed);
  const accepted = sumOver(groups, "accepted", isDyed);
  const options = Object.entries(text.options).map(([name, option]) =>
    optionOf(input, cashier, name, option, yearly),
  );
  const carryOn = options.find((option) => option.text.kind === "carry-on");
  if (carryOn === undefined) throw new Error("A study needs an option to carry on.");
  const project = options.find(({ name, text: { to } }) =>
    text.project === undefined ? to !== undefined : name === text.project,
  );
  if (project === undefined) throw new Error("A study needs an option that moves lots.");
  const { what_if: other } = text.effluent;
  return {
    ...cashier.terms(),
    project,
    months: monthsOf(...input.period).map(({ month }) => month),
    otherTariff: other === undefined ? undefined : cashier.tariff(other),
    accepted: sumOver(groups, "accepted", ({ pigment }) => pigment !== "") * yearly,
    rejected: printed > 0 ? 1 - accepted / printed : 0,
    carryOn,
    afterWash: afterWash(input, cashier, options, yearly),
    options: options.filter((option) => option !== carryOn),
    inputs: tellApart(cashier.inputs),
    draws: input.draws,
  };
}

// Options that move lots, once more in the house of the option that improves the wash range.
function afterWash(
  input: StudyInput,
  cashier: Cashier,
  options: readonly StudyOption[],
  yearly: number,
): Study["afterWash"] {
  const wash = options.find(
    ({ name, text: { kind } }) => kind === "improve-wash" && input.houses.has(name),
  );
  const house = input.houses.get(wash?.name ?? "");
  const carryOn = options.find(({ text: { kind } }) => kind === "carry-on");
  if (wash === undefined || house === undefined || carryOn === undefined) return undefined;
  return {
    wash,
    options: options
      .filter(({ name, text: { to } }) => to !== undefined && !input.houses.has(name))
      .map(({ name, text }) => {
        const houses = new Map([...input.houses, [name, house]]);
        return ontoWash(optionOf({ ...input, houses }, cashier, name, text, yearly), wash, carryOn);
      }),
  };
}

// Lines of the same words in several options are named with the option that has them.
function tellApart(inputs: ReadonlyMap<string, Input>): ReadonlyMap<string, Input> {
  const often = new Map<string, number>();
  for (const { words } of inputs.values()) often.set(words, (often.get(words) ?? 0) + 1);
  return new Map(
    [...inputs].map(([id, input]) => {
      const [, option] = /^options\.(.*)\.(?:capex|yearly)\[/.exec(id) ?? [];
      if (option === undefined || often.get(input.words) === 1) return [id, input];
      return [id, { ...input, words: `${input.words}, ${option}` }];
    }),
  );
}

function isDyed({ pigment, own, kind }: LedgerKey): boolean {
  return pigment !== "" && own === "dye" && kind === "production";
}

function sumOver(
  groups: readonly Group[],
  amount: string,
  wanted: (key: LedgerKey) => boolean,
): number {
  const place = AMOUNTS.findIndex(({ name }) => name === amount);
  return groups
    .filter(({ key }) => wanted(key))
    .reduce((sum, { amounts }) => sum + (amounts[place] ?? 0), 0);
}

/**
 * Finds the rule under which lots may move: the first that fits client and fabric.
 *
 * @param moves - rules of the file
 * @param key - what the lots share
 * @returns place of the rule; undefined where none fits
 */
export function ruleOf(moves: InvestText["moves"], key: LedgerKey): number | undefined {
  const at = moves.findIndex(
    ({ client, fabric }) =>
      (client === undefined || client === key.client) &&
      (fabric === undefined || fabric === key.fabric),
  );
  return at < 0 ? undefined : at;
}

function optionOf(
  input: StudyInput,
  cashier: Cashier,
  name: string,
  option: OptionText,
  yearly: number,
): StudyOption {
  const { plant, factors, text } = input;
  const house = input.houses.get(name) ?? { plant, instead: {} };
  const { to } = option;
  const rule = (key: LedgerKey): number | undefined =>
    to === undefined || key.own !== "dye" || key.pigment === ""
      ? undefined
      : ruleOf(text.moves, key);
  const groups = armsUnder(house, input.groups).map((group) =>
    rule(group.key) === undefined || to === undefined
      ? group
      : { ...group, key: { ...group.key, pigment: to } },
  );
  const asked = {
    program: writeProgram(house.plant, factors, groups, input.asOf),
    plant: house.plant,
    groups,
    ruleOf: rule,
    rules: to === undefined ? 0 : text.moves.length,
    yearly,
    draws: input.draws,
    seed: input.seed,
  };
  const flows = lotFlows(asked);
  const hours = monthlyHours(asked, monthsOf(...input.period), daysOf(input.period));
  const kinds = kindsOf(house.plant);
  const removed = new Set(option.removes ?? []);
  const moving = flows.moving.map(({ dye, pigment }, at): Moving => {
    const lots = groups.filter(({ key }) => rule(key) === at);
    const id = `flow.${name}.${at}`;
    return {
      share: cashier.share(at),
      words: wordsOf(text.moves[at]),
      lots: lots.reduce((sum, group) => sum + group.lots, 0) * yearly,
      accepted: sumOver(lots, "accepted", () => true) * yearly,
      length: sumOver(lots, "length", () => true) * yearly,
      mass: sumOver(lots, "mass", () => true) * yearly,
      ...goingFlows(dye, removed, id),
      gone: goneFlows(dye, pigment, { removed, kinds }, `${id}.gone`),
      comes: totalFlows(pigment, `${id}.comes`),
      leavesHours: hoursIn(dye, `${id}.leaves-hours`),
      comesHours: hoursIn(pigment, `${id}.comes-hours`),
      leavesMonths: hours.moving[at]?.dye ?? new Map(),
      comesMonths: hours.moving[at]?.pigment ?? new Map(),
    };
  });
  return {
    name,
    text: option,
    all: totalFlows(flows.all, `flow.${name}.all`),
    allHours: hoursIn(flows.all, `flow.${name}.all-hours`),
    allMonths: hours.all,
    moving,
    ...cashier.option(name, option),
  };
}

function kindsOf({ sites }: Plant): ReadonlyMap<string, string> {
  return new Map(
    Object.values(sites).flatMap(({ machines }) =>
      Object.entries(machines).map(([name, { kind }]) => [name, kind] as const),
    ),
  );
}

function hoursIn(flows: FlowsByMachine, id: string): StudyOption["allHours"] {
  return machineHours(flows.get("machine.hours") ?? new Map(), id);
}

function wordsOf(rule: InvestText["moves"][number] | undefined): string {
  const parts = [rule?.client, rule?.fabric].filter((part) => part !== undefined);
  return parts.length === 0 ? "all other lots" : parts.join(", ");
}
