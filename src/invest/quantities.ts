/**
 * Quantities of a year of an option: what all lots take, less what goes with the lots that moved, plus what comes.
 *
 *     q = v [A + k Σ share (n · comes − leaves)],  and of what falls against carrying on a share may stay
 */

import { orderBook, reprinted, shareThatMay } from "./moved.js";
import type { Study, StudyOption } from "./study.js";
import type { World } from "./world.js";

/** Quantities from year 0 on, by flow; `moved-m2`, `moved-kg`, `all-m2` and `rejected` beside the flows. */
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
 * @param moved - share of the lots that may move which has moved, by year
 * @returns quantities by flow
 */
export function yearQuantities<T>(
  study: Study,
  option: StudyOption,
  life: number,
  world: World<T>,
  moved: readonly T[],
): YearQuantities<T> {
  const { math } = world;
  const zero = math.of(0);
  const again = reprinted(study, option, world);
  const shares = option.moving.map(({ share }) => shareThatMay(study, world, share));
  const orders = Array.from({ length: life + 1 }, (_, year) =>
    year === 0 ? zero : orderBook(study, world, year),
  );
  const flows = new Set([
    ...option.all.keys(),
    ...study.carryOn.all.keys(),
    ...option.moving.flatMap(({ comes }) => [...comes.keys()]),
  ]);
  const byYear = (fixed: T, perMoved: T): readonly T[] =>
    orders.map((times, year) =>
      math.times(times, math.plus(fixed, math.times(moved[year] ?? zero, perMoved))),
    );
  const result = new Map<string, readonly T[]>();
  for (const flow of flows) {
    const own = valueIn(world, option.all.get(flow));
    let change = zero;
    option.moving.forEach(({ leaves, comes }, i) => {
      const each = math.minus(
        math.times(again, valueIn(world, comes.get(flow))),
        valueIn(world, leaves.get(flow)),
      );
      change = math.plus(change, math.times(shares[i] ?? zero, each));
    });
    const asked = byYear(own, change);
    const stays = study.stays.get(stayKind(flow));
    const before = stays === undefined ? zero : valueIn(world, study.carryOn.all.get(flow));
    result.set(
      flow,
      stays === undefined
        ? asked
        : asked.map((quantity, year) => {
            const fall = math.minus(math.times(orders[year] ?? zero, before), quantity);
            return math.number(fall) > 0
              ? math.plus(quantity, math.times(fall, world.of(stays)))
              : quantity;
          }),
    );
  }
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
  // Rejected area beyond what the same lots lose today.
  const lost = math.over(math.minus(again, math.of(1)), math.of(1 - study.rejected));
  result.set(
    "rejected",
    areaMoved.map((each) => math.times(each, lost)),
  );
  return result;
}

function valueIn<T>(world: World<T>, drawn: Parameters<World<T>["of"]>[0] | undefined): T {
  return drawn === undefined ? world.math.of(0) : world.of(drawn);
}
