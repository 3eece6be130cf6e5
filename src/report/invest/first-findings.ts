/**
 * Findings that come before any figure: a machine that need not be bought, machines short of hours, a permit limit that
 * would be passed, and prices on which two files disagree.
 */

import { aheadIn } from "../../invest/doubt.js";
import type { MachineUse, Need } from "../../invest/machine-use.js";
import type { Block } from "../document.js";
import { formatDate, formatPercent } from "../format.js";
import { type InvestDesk, inputValue, paragraph, say } from "./desk.js";
import { inkCaseWords, otherPriceWords } from "./inks.js";
import { hasRoom, OVER } from "./verdict.js";

/** Share of draws from which on a machine is said to be short of hours over a year. [-] */
const OFTEN = 0.05;

/**
 * Findings.
 *
 * @param desk - the report
 * @returns a small paragraph, where there is something to say
 */
export function findingBlocks(desk: InvestDesk): readonly Block[] {
  const runs = (
    [
      ["Machines: ", [...needWords(desk), ...shortWords(desk)]],
      ["Permit: ", limitWords(desk)],
      ["Prices: ", [...inkCaseWords(desk), ...otherPriceWords(desk)]],
    ] as const
  ).flatMap(([lead, sentences]) =>
    sentences.length === 0 ? [] : [say(lead, "bold"), `${sentences.join(" ")} `],
  );
  return runs.length === 0 ? [] : [paragraph(runs, "small")];
}

function needWords(desk: InvestDesk): readonly string[] {
  return desk.found.needs.map((need) => oneNeed(desk, need));
}

function oneNeed(desk: InvestDesk, need: Need): string {
  const { options, project, study } = desk.found;
  const { machine, alone, twin } = need;
  const use = `the existing ${machine} alone would be used ${formatPercent(alone.asked / alone.has)} of its hours in the last year, ${formatPercent(alone.peak)} (${formatPercent(alone.peaks.low)} to ${formatPercent(alone.peaks.high)}) in its busiest month${hasRoom(need) ? "" : ", which it has not"}`;
  const other = options.find(({ option }) => option.name === twin);
  if (other === undefined)
    return `${use}. No option is compared that moves these lots without buying one: add it.`;
  const ahead = aheadIn(other.drawn.even, project.drawn.even);
  return `${use}; ${other.option.name}, which moves the same lots with it, is ahead in ${desk.chance(ahead, study.draws)} of draws.`;
}

// Machines that no option adds and that are asked for more than they have, in the busiest month or over the year.
function shortWords(desk: InvestDesk): readonly string[] {
  const { lastUses, project, study } = desk.found;
  const { option } = project;
  const short = (name: string): readonly MachineUse[] =>
    (lastUses.find((one) => one.name === name)?.uses ?? []).filter(
      ({ machine, peak, full }) =>
        (peak > 1 || full > OFTEN) && !(name === option.name && option.adds.has(machine)),
    );
  const words = ({ machine, peak, month, full }: MachineUse): string =>
    `${machine} for ${formatPercent(peak)} of its hours in a month like ${formatDate(month)} (over the year too many in ${desk.chance(full * study.draws)} of draws)`;
  return [option, study.carryOn].flatMap(({ name, text: { life } }) => {
    const uses = short(name);
    return uses.length === 0 ? [] : [`In year ${life} ${name} asks ${uses.map(words).join("; ")}.`];
  });
}

// COD at the drain above the permit, and that no treatment is paid for.
function limitWords(desk: InvestDesk): readonly string[] {
  const { strengths, study, project } = desk.found;
  const { codLimit } = study.effluent;
  if (codLimit === undefined) return [];
  const often = ({ name, above }: (typeof strengths)[number]): string =>
    `${name} ${above === undefined ? "not drawn" : desk.chance(above.count, above.of)}`;
  const named = [project.option.name, study.carryOn.name];
  const ordered = [
    ...named.flatMap((name) => strengths.filter((one) => one.name === name)),
    ...strengths.filter(
      ({ name, above }) =>
        !named.includes(name) && above !== undefined && above.count / above.of > OVER,
    ),
  ];
  return [
    `share of draws with COD at the drain above the limit of ${inputValue(codLimit, codLimit.central)}: ${ordered.map(often).join(", ")}; treatment: not given, not counted.`,
  ];
}
