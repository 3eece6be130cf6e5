/**
 * Judges a study once it is put together: what its machines would have to do.
 */

import { problemAt } from "../factors/yaml-text.js";
import type { Problem } from "../problems/problem.js";
import { shareThatMay } from "./loads.js";
import { usesIn } from "./machine-use.js";
import { bookOf } from "./moved.js";
import type { ReadInvest } from "./read-invest.js";
import type { Study, StudyOption } from "./study.js";
import { centralWorld } from "./world.js";

/** Hours a year below which a machine is not needed. [h] */
const NO_HOURS = 1;

/**
 * Judges options against lots: a machine that is taken out must have no lots left, prices must be there for every ink,
 * and no machine can run longer than its hours.
 *
 * @param read - the file, for lines
 * @param study - the study
 * @returns faults, and warnings where the order book is more than a machine can do
 */
export function judgeStudy(read: ReadInvest, study: Study): readonly Problem[] {
  return [
    ...[study.carryOn, ...study.options].flatMap((option) => [
      ...stillNeeded(read, study, option),
      ...capped(read, study, option),
    ]),
    ...inksWithoutPrice(read, study),
  ];
}

function stillNeeded(read: ReadInvest, study: Study, option: StudyOption): readonly Problem[] {
  const world = centralWorld();
  return (option.text.removes ?? []).flatMap((machine, i): readonly Problem[] => {
    const at = option.text.life;
    const moved = bookOf(study, option, at, world).moved[at] ?? 0;
    const left = option.moving.reduce(
      (hours, { share, leavesHours }) =>
        hours -
        moved * shareThatMay(study, world, share) * (leavesHours.get(machine)?.central ?? 0),
      option.allHours.get(machine)?.central ?? 0,
    );
    if (!(left > NO_HOURS)) return [];
    return [
      problemAt(read.yaml, ["options", option.name, "removes", i], {
        code: "machine-still-needed",
        value: machine,
        expected: `a machine that no lot needs; ${Math.round(left)} h a year are left on it`,
        remedy:
          "Leave the machine in, or let all its lots move; shares below 1 leave lots that need it.",
      }),
    ];
  });
}

function capped(read: ReadInvest, study: Study, option: StudyOption): readonly Problem[] {
  const world = centralWorld();
  const year = option.text.life;
  const becomes =
    study.beyond === undefined
      ? "cut for all options alike"
      : study.beyond.way === "cut"
        ? "lost, at the price under beyond"
        : "bought outside, at the price under beyond";
  return [...usesIn(study, option, year, world)]
    .filter(([, { has, asked }]) => asked > has * 1.0001)
    .map(([machine, { has, asked }]) => ({
      ...problemAt(read.yaml, ["capacity", machine], {
        code: "machine-full",
        value: `${Math.round(asked)} h`,
        expected: `no more than the ${Math.round(has)} h of ${machine} in year ${year} of ${option.name}`,
        remedy: `Give it more hours, lower the growth of orders, or add a machine; orders beyond it are ${becomes}, and lots beyond it do not move.`,
      }),
      severity: "warning",
    }));
}

function inksWithoutPrice(read: ReadInvest, study: Study): readonly Problem[] {
  const inks = new Set(
    [study.carryOn, ...study.options].flatMap(({ all, moving }) =>
      [all, ...moving.map(({ comes }) => comes)].flatMap((flows) =>
        [...flows.keys()].filter((flow) => flow.startsWith("ink.")),
      ),
    ),
  );
  const flows = new Set(
    [...study.carryOn.all.keys()].filter(
      (flow) => flow.startsWith("fuel.") || flow === "steam.bought",
    ),
  );
  const missing = (name: string, what: string): Problem =>
    problemAt(read.yaml, ["prices"], {
      code: `${what}-price-missing`,
      value: name,
      expected: `a price for ${name}, which lots take`,
      remedy: `Add it under prices.${what}; what has no price would look free.`,
    });
  return [
    ...[...inks].filter((ink) => !study.prices.has(ink)).map((ink) => missing(ink.slice(4), "ink")),
    ...[...flows]
      .filter((flow) => !study.prices.has(flow))
      .map((flow) =>
        flow === "steam.bought" ? missing("steam", "steam") : missing(flow.slice(5), "fuel"),
      ),
  ];
}
