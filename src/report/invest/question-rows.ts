/**
 * Questions an owner asks of machines, boilers, leases and what falls due anyway.
 */

import { aheadIn } from "../../invest/doubt.js";
import { gainOf } from "../../invest/gain.js";
import { secondsWorth } from "../../invest/machine-time.js";
import { BUSY } from "../../invest/machine-use.js";
import { centralWorld } from "../../invest/world.js";
import type { Cell } from "../document.js";
import { formatChange } from "../../charts/number-format.js";
import { digitsFor, formatNumber, formatPercent } from "../format.js";
import { baseLoadMoney } from "./base-load.js";
import { type InvestDesk, inputValue, money, right, span, years } from "./desk.js";
import { leaseRate, leaseVerdict } from "./paying.js";

/** A row of the table of questions; empty where the question does not arise. */
export type Row = readonly (Cell | string)[];

/**
 * Whether heat is saved at the boiler.
 *
 * @param desk - the report
 * @returns the row
 */
export function boilerRow(desk: InvestDesk): Row {
  const { study, project } = desk.found;
  const { option, measures } = project;
  const removed = option.text.removes ?? [];
  const { heat, electricity } = baseLoadMoney(desk);
  const stays = study.stays.get("heat");
  const { year } = measures.steady;
  const heatOf = (held: ReadonlyMap<string, number>): number =>
    gainOf(study, option, centralWorld(held)).byHeading.get("heat")?.[year] ?? 0;
  const kept = stays === undefined ? 0 : heatOf(new Map([[stays.id, 0]])) - heatOf(new Map());
  return [
    "Does the boiler really shut down?",
    right(removed.length === 0 ? "no, nothing is taken out" : `taken out: ${removed.join(", ")}`),
    `standby that is still paid: ${money(heat)} a year of heat, ${money(electricity)} of electricity, not counted as saved${stays === undefined ? "; no share is given for a boiler that idles" : `; of the heat lots leave behind ${inputValue(stays, stays.central)} (${inputValue(stays, stays.low)} to ${inputValue(stays, stays.high)}), which is ${money(kept)} in year ${year}, is still paid too`}`,
  ];
}

/**
 * The machine that is busiest.
 *
 * @param desk - the report
 * @returns the row
 */
export function bottleneckRow(desk: InvestDesk): Row {
  const { uses, lastUses, project } = desk.found;
  const [most] = uses;
  if (most === undefined) return [];
  const { low, high, median } = most.use;
  const last = lastUses
    .find(({ name }) => name === project.option.name)
    ?.uses.find(({ machine }) => machine === most.machine);
  return [
    "Which machine is the bottleneck then?",
    right(`${most.machine}, ${formatPercent(most.runs / most.has)} of its hours`),
    `${formatPercent(low)} to ${formatPercent(high)} in year ${project.measures.steady.year}${median > BUSY ? "; above 85 %, so lots wait long" : ""}${last === undefined ? "" : `; in year ${project.option.text.life} ${formatPercent(last.runs / last.has)}, and too few hours in ${desk.chance(last.full * desk.found.study.draws)} of draws`}`,
  ];
}

/**
 * What a second a metre is worth on the machine that fixes, and how many there is room for.
 *
 * @param desk - the report
 * @returns the row
 */
export function secondsRow(desk: InvestDesk): Row {
  const { found } = desk;
  const { moving } = found.project.option;
  const total = (of: (each: (typeof moving)[number]) => number): number =>
    moving.reduce((sum, each) => sum + each.share.central * of(each), 0);
  const comes = (machine: string): number =>
    total(({ comesHours }) => comesHours.get(machine)?.central ?? 0);
  const leaves = (machine: string): number =>
    total(({ leavesHours }) => leavesHours.get(machine)?.central ?? 0);
  // What fixes is what the new route asks most of beyond the old one, printers apart.
  const [fix] = found.uses
    .filter(({ machine }) => comes(machine) > 0 && !/^(pad|printer)/.test(machine))
    .sort((a, b) => comes(b.machine) - leaves(b.machine) - comes(a.machine) + leaves(a.machine));
  if (fix === undefined) return [];
  const metres = total(({ length }) => length);
  const now = metres > 0 ? (3600 * comes(fix.machine)) / metres : NaN;
  const room = (use: number): string =>
    use > 0 ? formatSeconds(now * (1 / use - 1)) : "any number of";
  const { low, high } = fix.use;
  const { more, less } = secondsWorth(found.study, found.project.option, fix.machine);
  const change = (value: number): string => formatChange(value, digitsFor(value));
  return [
    "How many seconds more or less can I bear?",
    right(`NPV ${change(more)} for 1\u00a0s/m more in ${fix.machine}, ${change(less)} for 1 less`),
    `labour of the ${money(metres)} m a year that change route; a metre takes ${formatSeconds(now)}\u00a0s now, set-up and waiting with it. Limit of its hours, which is not one of money: ${room(fix.runs / fix.has)}\u00a0s/m more (${room(high)} to ${room(low)}), all its lots alike${fix.use.median > BUSY ? "; seconds less let more lots move" : ""}`,
  ];
}

function formatSeconds(seconds: number): string {
  return formatNumber(seconds, seconds < 10 ? 1 : 0);
}

/**
 * What falls due by carrying on, all rounds.
 *
 * @param desk - the report
 * @returns the row
 */
export function anywayRow(desk: InvestDesk): Row {
  const { found } = desk;
  const { due, project } = found;
  if (due.lines.length === 0) return [];
  const sum = (round: (at: number) => boolean): number =>
    due.lines.reduce(
      (total, { money: paid }) =>
        total + paid.reduce((all, each, at) => all + (round(at) ? each : 0), 0),
      0,
    );
  const [first, later] = [sum((at) => at === 0), sum((at) => at > 0)];
  const ends = (which: "low" | "high"): number =>
    due.lines.reduce((total, { line: { price } }) => total + price[which], 0);
  return [
    "When must permit and repairs be paid anyway?",
    right(
      `${money(first)}${later > 0 ? `, then ${money(later)}` : ""} if one carries on; present value ${money(due.present)}`,
    ),
    `${due.lines.map(({ line, years: all }) => `${line.what}: year ${all.join(" and ")}`).join("; ")}; first round ${span(ends("low"), ends("high"))}. What is left of it in year ${project.option.text.life} is taken off the present value`,
  ];
}

/**
 * Lease or buy.
 *
 * @param desk - the report
 * @returns the row
 */
export function leaseRow(desk: InvestDesk): Row {
  const { found } = desk;
  const { lease, project } = found;
  if (lease === undefined)
    return ["Lease or buy?", right("no lease given"), "put an offer under lease of the option"];
  return [
    "Lease or buy?",
    right(leaseVerdict(desk)),
    `present values: ${money(lease.leased)} leased, ${money(lease.bought)} bought at ${leaseRate(desk)}; ${money(lease.own.leased)} and ${money(lease.own.bought)} at the house's own ${formatPercent(lease.own.rate, 2)} nominal. NPV ${money(lease.worth)} leased, ${money(project.measures.gain.worth)} bought`,
  ];
}

/**
 * What the project is worth at its end.
 *
 * @param desk - the report
 * @returns the row
 */
export function exitRow(desk: InvestDesk): Row {
  const { found } = desk;
  const { residual } = found.project.option;
  if (residual === undefined)
    return ["What is the exit value?", right("none counted"), "add residual to count one"];
  return [
    "What is it worth at the end?",
    right(inputValue(residual.price, residual.price.central)),
    `${span(residual.price.low, residual.price.high)} (${residual.price.tag}), after ${found.project.option.text.life} years`,
  ];
}

/**
 * The project beside an improved wash range.
 *
 * @param desk - the report
 * @returns the row
 */
export function washRow(desk: InvestDesk): Row {
  const { found } = desk;
  const [wash] = found.options.filter(({ option }) => option.text.kind === "improve-wash");
  if (wash === undefined) return [];
  const ahead = aheadIn(found.project.drawn.even, wash.drawn.even);
  return [
    "Is it still worth it beside improving the wash range?",
    right(`${money(found.project.measures.yearly)} against ${money(wash.measures.yearly)} a year`),
    `ahead of ${wash.option.name} in ${desk.chance(ahead)} of draws; outlay over yearly gain ${years(found.project.measures.simplePayback)} against ${years(wash.measures.simplePayback)}`,
  ];
}

/**
 * What the project brings once the wash range has been improved, and what other options do then.
 *
 * @param desk - the report
 * @returns the row
 */
export function afterWashRow(desk: InvestDesk): Row {
  const { afterWash, study, options, project } = desk.found;
  const wash = study.afterWash?.wash.name ?? "";
  const own = afterWash.find(({ name }) => name === project.option.name);
  if (own === undefined) return [];
  const alone = (name: string): number =>
    options.find(({ option }) => option.name === name)?.measures.gain.worth ?? NaN;
  const others = afterWash
    .filter((one) => one !== own)
    .map(({ name, central }) => `${name} ${money(central)} (${money(alone(name))})`);
  return [
    `And what is left of it after ${wash}?`,
    right(`NPV ${money(own.central)} on top of ${wash}`),
    `${span(own.drawn.low, own.drawn.high)}; above 0 in ${desk.chance(own.above, own.of)}; ${money(alone(own.name))} without ${wash}${others.length === 0 ? "" : `. Others, and without it: ${others.join(", ")}`}`,
  ];
}
