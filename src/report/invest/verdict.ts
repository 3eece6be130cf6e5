/**
 * The answer in words, from the numbers: whether it is worth it, whether anything need be bought, what would be better.
 */

import { aheadIn, spanOf } from "../../invest/doubt.js";
import type { Need } from "../../invest/machine-use.js";
import type { Block } from "../document.js";
import { type InvestDesk, paragraph, say } from "./desk.js";

/** Share of draws from which on a thing is said to be so. [-] */
const SURE = 0.8;

/** Share of draws in which one option has to be ahead of another to be told apart from it. [-] */
const APART = 2 / 3;

/** Share of draws above which the machine there is said to have room. [-] */
const ROOM = 0.5;

/**
 * Whether the machine that is there has room for all that moves.
 *
 * @param need - the machine an option buys
 * @returns whether its year and busiest month have room in most draws
 */
export function hasRoom(need: Need): boolean {
  const { alone } = need;
  return alone.peak <= 1 && alone.peakFull < ROOM;
}

/** Share of draws above the permit limit from which on an option is said to need treatment. [-] */
export const OVER = 0.5;

/** An option as a name and what it brings a year in each draw. */
interface Ranked {
  readonly name: string;
  readonly even: Float64Array;
}

function ranked({ found }: InvestDesk): readonly Ranked[] {
  const nothing = new Float64Array(found.project.drawn.even.length);
  return [
    { name: found.study.carryOn.name, even: nothing },
    ...found.options.map(({ option, drawn }) => ({ name: option.name, even: drawn.even })),
  ].sort((a, b) => spanOf(b.even).median - spanOf(a.even).median);
}

/**
 * Options that bring most a year, by their medians: the first, and those it is not ahead of often enough.
 *
 * @param desk - the report
 * @returns names, the best first; carrying on among them where it is not told apart
 */
function bestOptions(desk: InvestDesk): readonly string[] {
  const [first, ...others] = ranked(desk);
  if (first === undefined) return [];
  const near = others.filter(
    ({ even }) => aheadIn(first.even, even) / Math.max(1, even.length) < APART,
  );
  return [first.name, ...near.map(({ name }) => name)];
}

// Options are named with a permit limit that most draws pass.
function withLimit({ found }: InvestDesk, name: string): string {
  const above = found.strengths.find((one) => one.name === name)?.above;
  return above !== undefined && above.count / above.of > OVER
    ? `${name} with effluent treated`
    : name;
}

function together(names: readonly string[]): string {
  return names.length < 2
    ? names.join("")
    : `${names.slice(0, -1).join(", ")} or ${names.at(-1) ?? ""}`;
}

/**
 * The answer in one line.
 *
 * @param desk - the report
 * @returns a paragraph
 */
export function verdictBlock(desk: InvestDesk): Block {
  const { project, study, needs } = desk.found;
  const { option, drawn } = project;
  const share = drawn.above / study.draws;
  const buys = option.capital.some(({ kind, year }) => kind === "machine" && year === 0);
  const worth = buys ? "worth buying" : "worth doing";
  const answer =
    share >= SURE
      ? `${worth.charAt(0).toUpperCase()}${worth.slice(1)} at these inputs`
      : share <= 1 - SURE
        ? `Not ${worth} at these inputs`
        : `Open: these inputs do not settle whether it is ${worth}`;
  const needless = needs.length > 0 && needs.every(hasRoom);
  const best = bestOptions(desk);
  const apart = best.length > 1 ? " (not told apart)" : "";
  const isBest = best[0] === option.name;
  const listed = (names: readonly string[]): string =>
    together(names.map((name) => withLimit(desk, name)));
  const rest = isBest
    ? best.length > 1
      ? ` No other option brings more by its median; not told apart from it: ${listed(best.slice(1))}.`
      : " It is ahead of all other options."
    : best.includes(option.name)
      ? ` Not told apart from it: ${listed(best.filter((name) => name !== option.name))}.`
      : ` Better: ${listed(best)}${apart}.`;
  const room = needless ? " No machine need be bought for volume." : "";
  return paragraph([say(`${answer}.${room}${rest}`, "bold")]);
}
