/**
 * Readings of single lots as meters: what a column of the log counts at the machines it stands for, over the lots
 * that have it. They count nothing beside their lots, and they are in the count of no other meter but as part of it:
 * each is a balance of its own over flows that are corrected once.
 */

import { leafRange } from "../account/draws.js";
import type { Program } from "../account/program.js";
import type { Plant } from "../plant/plant.js";
import { READ_COLUMNS } from "../plant/reading-part.js";
import type { MeterInUse, MeterMonth } from "./in-use.js";
import type { ReadLots } from "./lot-readings.js";
import { ACCURACY, lotsBehind, readingLeaf, scatterOf } from "./reading-doubt.js";
import { amountsUnder, meteredAt, meteredParts } from "./metered-flows.js";

/** What is asked for. */
export interface LotMetersAsked {
  /** The print house. */
  readonly plant: Plant;
  /** Program of the model. */
  readonly program: Program;
  /** Lots with readings. */
  readonly read: readonly ReadLots[];
  /** Net per gross heating value of gas. */
  readonly netPerGross: number;
}

/**
 * Readings of lots as meters.
 *
 * @param asked - plant, model and readings
 * @returns one for each column and site whose lots pass a machine that it counts
 */
export function lotMeters(asked: LotMetersAsked): readonly MeterInUse[] {
  const { plant, program, read, netPerGross } = asked;
  const medians = program.nodes.evaluate((leaf) => leafRange(leaf).median);
  const sites = Object.keys(plant.sites);
  return read.flatMap(({ column, groups: all, sums }) => {
    const told = plant.text.readings?.[column];
    if (told === undefined) return [];
    const { machines } = told;
    const quantity = READ_COLUMNS[column];
    const perUnit = "basis" in told && told.basis === "gross" ? netPerGross : 1;
    return sites.flatMap((site): readonly MeterInUse[] => {
      // Lots of other routes have a reading of something else, and lots without counterpart are in no figure.
      const groups = all.filter(({ key }) => {
        const arm = program.classes[program.classOf(key) ?? -1]?.arms[key.own];
        return (
          key.site === site && arm?.steps.some(({ machine }) => machines.includes(machine)) === true
        );
      });
      const routes = new Set(groups.map(({ key }) => key.route));
      const own = sums.filter((sum) => sum.site === site && routes.has(sum.route));
      const total = perUnit * own.reduce((sum, { amount }) => sum + amount, 0);
      const name = `${column} of lots${sites.length > 1 ? ` at ${site}` : ""}`;
      const what = { site, quantity, machines };
      const parts = meteredParts(
        program,
        what,
        amountsUnder(program, groups, () => 1),
        name,
      );
      if (!(total > 0) || parts.length === 0) return [];
      const months = [...new Set(own.map(({ month }) => month))].sort().map((month): MeterMonth => {
        const amounts = amountsUnder(program, groups, (one) => (one === month ? 1 : 0));
        const taken = meteredAt(program, what, amounts, medians);
        const metered = own
          .filter((sum) => sum.month === month)
          .reduce((sum, { amount }) => sum + perUnit * amount, 0);
        const modelled = [...taken.values()].reduce((sum, value) => sum + value, 0);
        return { month, metered, modelled, parts: taken, covered: 1 };
      });
      const stated = (told.accuracy ?? 100 * ACCURACY[quantity]) / 100;
      const lots = lotsBehind(program, groups, what);
      const accuracy = Math.hypot(stated, scatterOf(lots));
      return [
        {
          name,
          ...what,
          months,
          parts,
          lots,
          reading: readingLeaf(name, total, accuracy, quantity),
          accuracy,
          stream: {
            by: "given",
            regression: { refused: "readings of lots count lots alone", remedy: "" },
          },
          spread: false,
          below: [],
        },
      ];
    });
  });
}
