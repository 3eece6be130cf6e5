/**
 * How much of a worth rests on what was paid, read or offered, and how much on what was guessed.
 */

import type { Gain } from "./gain.js";
import { discounted } from "./gain.js";
import type { Tag } from "./schema.js";
import type { Study, StudyOption } from "./study.js";

/** Tags from the firmest to the weakest. */
const TAGS = ["invoice", "meter", "quote", "estimate", "default"] as const;

/** Present value of money, gains and costs alike counted as sizes, by the weakest thing each rests on. */
export type ByTag = ReadonlyMap<Tag, number>;

/**
 * Sorts the present value of an option by what it rests on. Money that hangs on lots that move rests on the share
 * that may move as well as on its price, so it counts under the weaker of the two.
 *
 * @param study - the study
 * @param option - the option
 * @param gain - what it brings at central values
 * @returns shares that add up to 1
 */
export function worthByTag(study: Study, option: StudyOption, gain: Gain<number>): ByTag {
  const sums = new Map<string, number>();
  const add = (lines: Gain<number>["option"]["lines"], sign: 1 | -1): void => {
    for (const { input, money } of lines) {
      const present = discounted(study, study.discount.central, money);
      sums.set(input, (sums.get(input) ?? 0) + sign * present.reduce((sum, each) => sum + each, 0));
    }
  };
  add(gain.carryOn.lines, 1);
  add(gain.option.lines, -1);
  const shares = option.moving.filter(({ accepted }) => accepted > 0).map(({ share }) => share.tag);
  const byMoving = new Set(
    option.yearly.filter(({ per }) => per.startsWith("moved")).map(({ price }) => price.id),
  );
  const tags = new Map<Tag, number>(TAGS.map((tag) => [tag, 0]));
  let total = 0;
  for (const [id, worth] of sums) {
    const own = tagOf(study, id);
    const hangs = id.startsWith("prices.") || id === "effluent.level" || byMoving.has(id);
    const tag = hangs ? weakest([own, ...shares]) : own;
    tags.set(tag, (tags.get(tag) ?? 0) + Math.abs(worth));
    total += Math.abs(worth);
  }
  return new Map([...tags].map(([tag, size]) => [tag, total > 0 ? size / total : 0]));
}

function tagOf(study: Study, id: string): Tag {
  if (id === "effluent.level") return weakest(study.effluent.tariffs.map(({ tag }) => tag));
  return study.inputs.get(id)?.tag ?? "estimate";
}

function weakest(tags: readonly Tag[]): Tag {
  return TAGS[Math.max(0, ...tags.map((tag) => TAGS.indexOf(tag)))] ?? "default";
}
