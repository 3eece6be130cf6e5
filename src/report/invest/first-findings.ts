/**
 * Findings that come before any figure: a machine that need not be bought, and prices on which two files disagree.
 */

import { type Need } from "../../invest/machine-use.js";
import type { Block } from "../document.js";
import { formatPercent, formatShareOfDraws } from "../format.js";
import { type InvestDesk, inputValue, money, paragraph, say, standing } from "./desk.js";

/** Share of draws above which the machine there is said to have room. [-] */
const SURE = 0.5;

/** Prices named on page one. */
const NAMED = 3;

/**
 * Findings.
 *
 * @param desk - the report
 * @returns a paragraph for machines and one for prices, where there is something to say
 */
export function findingBlocks(desk: InvestDesk): readonly Block[] {
  return [...needBlocks(desk), ...priceBlocks(desk)];
}

function needBlocks(desk: InvestDesk): readonly Block[] {
  const { needs } = desk.found;
  if (needs.length === 0) return [];
  const spare = needs.filter(hasRoom);
  const lead =
    spare.length === needs.length
      ? "No machine need be bought for volume: "
      : `${needs
          .filter((need) => !hasRoom(need))
          .map(({ machine }) => machine)
          .join(" and ")} would not do alone: `;
  const words = needs.map((need) => needWords(desk, need)).join(" ");
  return [paragraph([say(lead, "bold"), words, bottleneckWords(desk)], "small")];
}

function hasRoom({ alone }: Need): boolean {
  return alone.peak <= 1 && alone.peakFull < SURE;
}

function needWords(desk: InvestDesk, need: Need): string {
  const { study, options, project } = desk.found;
  const { machine, alone, twin } = need;
  const { draws } = study;
  const use = `with all lots moved the ${machine} there is used ${formatPercent(alone.asked / alone.has)} of its hours in the last year, ${formatPercent(alone.peak)} in its busiest month (${formatPercent(alone.peaks.low)} to ${formatPercent(alone.peaks.high)}), with room then in ${formatShareOfDraws(Math.round((1 - alone.peakFull) * draws), draws)} of draws`;
  const other = options.find(({ option }) => option.name === twin);
  if (other === undefined)
    return `${use}. No option is compared that moves these lots without buying one: add it.`;
  const ahead = other.drawn.even.reduce(
    (count, even, at) => count + (even > (project.drawn.even[at] ?? 0) ? 1 : 0),
    0,
  );
  const { interval, value } = desk.worth(other.drawn);
  return `${use}. ${other.option.name} moves the same lots without it: NPV ${value.text} (${interval}), ahead of ${project.option.name} in ${formatShareOfDraws(ahead, draws)} of draws.`;
}

// The machine that no option adds and that the busiest month asks too much of.
function bottleneckWords(desk: InvestDesk): string {
  const { lastUses, project } = desk.found;
  const uses = lastUses.find(({ name }) => name === project.option.name)?.uses ?? [];
  const full = uses.filter(({ machine, peak }) => peak > 1 && !project.option.adds.has(machine));
  return full.length === 0
    ? ""
    : ` ${full.map(({ machine, peak, month }) => `${machine} is asked for ${formatPercent(peak)} in ${month}`).join("; ")}, so lots are printed ahead or behind.`;
}

function priceBlocks(desk: InvestDesk): readonly Block[] {
  const { differences, plantFile } = desk.input;
  if (differences.length === 0) return [];
  const { project, study } = desk.found;
  const { inputs } = study;
  const shown = differences.slice(0, NAMED).map((one) => {
    const input = inputs.get(one.input);
    const unit = (value: number): string =>
      input === undefined || one.input === "effluent.level"
        ? `${money(value)}\u00a0${desk.currency}`
        : inputValue(input, value);
    return `${one.key.join(".")} of invest.yaml is ${unit(one.value)} (${standing(one)}), ${one.plantKey} of ${plantFile} ${unit(one.plantValue)}; at that the NPV would be ${money(one.worth)}, not ${money(project.measures.gain.worth)}`;
  });
  const more = differences.length - shown.length;
  return [
    paragraph(
      [
        say("Two files differ: ", "bold"),
        `${shown.join("; ")}${more > 0 ? `; and ${more} more, under what it rests on` : ""}.`,
      ],
      "small",
    ),
  ];
}
