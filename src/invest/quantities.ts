/**
 * Quantities of a year of an option: what all lots take, less what goes with the lots that moved, plus what comes.
 * Of what is left behind a share s may be paid for all the same: of what moved lots leave at machines of a kind that
 * they need no more, and of what the option's house takes less for all lots.
 *
 *     q = v [A + k Σ share (n · comes − leaves + s · gone) + s · max(0, before − A)]
 */

import { reprinted, shareThatMay } from "./loads.js";
import type { Book } from "./moved.js";
import type { Study, StudyOption } from "./study.js";
import type { World } from "./world.js";

/** Quantities from year 0 on, by flow; areas moved, undone and rejected, and standby of added machines beside them. */
export type YearQuantities<T> = ReadonlyMap<string, readonly T[]>;

// Under which heading of `stays` a flow falls.
function stayKind(flow: string): string {
  if (flow === "machine.hours") return "labour";
  if (flow === "electricity" || flow === "scope-2-location") return "electricity";
  if (flow.startsWith("fuel.") || flow === "steam.bought" || flow === "scope-1") return "heat";
  return flow === "water.withdrawn" ? "water" : "";
}

/**
 * Works quantities out.
 *
 * @param study - the study
 * @param option - the option
 * @param life - last year
 * @param world - values
 * @param book - what is printed and what has moved, by year
 * @returns quantities by flow
 */
export function yearQuantities<T>(
  study: Study,
  option: StudyOption,
  life: number,
  world: World<T>,
  book: Book<T>,
): YearQuantities<T> {
  const { math } = world;
  const { asked, done, moved } = book;
  const zero = math.of(0);
  const again = reprinted(study, option, world);
  const shares = option.moving.map(({ share }) => shareThatMay(study, world, share));
  const flows = new Set([
    ...option.all.keys(),
    ...study.carryOn.all.keys(),
    ...option.moving.flatMap(({ comes }) => [...comes.keys()]),
  ]);
  const byYear = (fixed: T, perMoved: T): readonly T[] =>
    done.map((times, year) =>
      math.times(times, math.plus(fixed, math.times(moved[year] ?? zero, perMoved))),
    );
  const result = new Map<string, readonly T[]>();
  for (const flow of flows) {
    let own = valueIn(world, option.all.get(flow));
    const stays = study.stays.get(stayKind(flow));
    const kept = stays === undefined ? zero : world.of(stays);
    let change = zero;
    option.moving.forEach(({ leaves, comes, gone }, i) => {
      const each = math.minus(
        math.times(again, valueIn(world, comes.get(flow))),
        valueIn(world, leaves.get(flow)),
      );
      const paid = math.times(kept, valueIn(world, gone.get(flow)));
      change = math.plus(change, math.times(shares[i] ?? zero, math.plus(each, paid)));
    });
    if (stays !== undefined) {
      const fall = math.minus(valueIn(world, study.carryOn.all.get(flow)), own);
      if (math.number(fall) > 0) own = math.plus(own, math.times(kept, fall));
    }
    result.set(flow, byYear(own, change));
  }
  addStandby(study, option, life, world, result);
  const sumShares = (of: (moving: StudyOption["moving"][number]) => number): T =>
    option.moving.reduce(
      (sum, moving, i) => math.plus(sum, math.times(shares[i] ?? zero, math.of(of(moving)))),
      zero,
    );
  const area = sumShares(({ accepted }) => accepted);
  const areaMoved = byYear(zero, area);
  result.set("moved-m2", areaMoved);
  result.set(
    "moved-kg",
    byYear(
      zero,
      sumShares(({ mass }) => mass),
    ),
  );
  result.set("all-m2", byYear(math.of(study.accepted), zero));
  result.set(
    "undone-m2",
    asked.map((orders, year) =>
      math.times(math.minus(orders, done[year] ?? zero), math.of(study.accepted)),
    ),
  );
  // Rejected area beyond what the same lots lose today.
  const lost = math.over(math.minus(again, math.of(1)), math.of(1 - study.rejected));
  result.set(
    "rejected",
    areaMoved.map((each) => math.times(each, lost)),
  );
  return result;
}

// What machines that are bought take while kept ready, in kWh, and the carbon of it at the mill's own mean.
function addStandby<T>(
  study: Study,
  option: StudyOption,
  life: number,
  world: World<T>,
  result: Map<string, readonly T[]>,
): void {
  const { math } = world;
  const { all } = study.carryOn;
  for (const [machine, { standby }] of option.adds) {
    if (standby === undefined) continue;
    const { power, hours, flow } = standby;
    const taken = math.times(world.of(power), world.of(hours));
    const row = Array.from({ length: life + 1 }, (_, year) => (year === 0 ? math.of(0) : taken));
    result.set(`standby.${machine}`, row);
    const carbon = flow === "electricity" ? "scope-2-location" : "scope-1";
    const unit = flow === "electricity" ? 1 : 1 / 3.6;
    const whole = math.times(valueIn(world, all.get(flow)), math.of(unit));
    if (!(math.number(whole) > 0)) continue;
    const each = math.over(valueIn(world, all.get(carbon)), whole);
    const known = result.get(carbon) ?? [];
    result.set(
      carbon,
      row.map((kWh, year) => math.plus(known[year] ?? math.of(0), math.times(kWh, each))),
    );
  }
}

function valueIn<T>(world: World<T>, drawn: Parameters<World<T>["of"]>[0] | undefined): T {
  return drawn === undefined ? world.math.of(0) : world.of(drawn);
}
