/**
 * What is not saved: standby of machines that stay.
 */

import { pricePath } from "../../invest/price-path.js";
import { shareThatMay } from "../../invest/loads.js";
import { centralWorld } from "../../invest/world.js";
import type { Block } from "../document.js";
import { formatPercent } from "../format.js";
import { flowWords } from "./costs.js";
import { type InvestDesk, inputValue, money, paragraph, right, table } from "./desk.js";

interface Standby {
  readonly flow: string;
  readonly charged: number;
  readonly stays: number;
  readonly money: number;
}

function standbyOf(desk: InvestDesk): readonly Standby[] {
  const { study, project } = desk.found;
  const { option, measures } = project;
  const { year } = measures.steady;
  const world = centralWorld();
  const orders = measures.gain.option.book.done[year] ?? 0;
  const moved = measures.gain.option.book.moved[year] ?? 0;
  const flows = new Set(option.moving.flatMap(({ stays }) => [...stays.keys()]));
  return [...flows].flatMap((flow) => {
    const sum = (which: "stays" | "leaves"): number =>
      option.moving.reduce(
        (total, each) =>
          total + shareThatMay(study, world, each.share) * (each[which].get(flow)?.central ?? 0),
        0,
      );
    const scale = orders * moved;
    const stays = sum("stays") * scale;
    const price = study.prices.get(flow);
    if (price === undefined || flow === "machine.hours" || !(stays > 0)) return [];
    const per =
      flow.startsWith("fuel.") || flow === "steam.bought"
        ? 1 / 3.6
        : flow === "water.withdrawn"
          ? 1e-3
          : 1;
    const each = pricePath(study, world, price, year)[year] ?? 0;
    return [
      {
        flow,
        charged: (stays + sum("leaves") * scale) * per,
        stays: stays * per,
        money: stays * per * each,
      },
    ];
  });
}

/**
 * Money a year of standby that stays.
 *
 * @param desk - the report
 * @returns heat and electricity
 */
export function baseLoadMoney(desk: InvestDesk): {
  readonly heat: number;
  readonly electricity: number;
} {
  const rows = standbyOf(desk);
  const sum = (wanted: (flow: string) => boolean): number =>
    rows.filter(({ flow }) => wanted(flow)).reduce((total, row) => total + row.money, 0);
  return {
    heat: sum((flow) => flow.startsWith("fuel.") || flow === "steam.bought"),
    electricity: sum((flow) => flow === "electricity"),
  };
}

const UNIT: Readonly<Record<string, string>> = { "water.withdrawn": "m³" };

/**
 * The table of what is still paid.
 *
 * @param desk - the report
 * @returns a sentence and the table
 */
export function baseLoadBlocks(desk: InvestDesk): readonly Block[] {
  const { study, project } = desk.found;
  const { option, measures } = project;
  const rows = standbyOf(desk).map(({ flow, charged, stays, money: paid }) => {
    const unit = UNIT[flow] ?? "kWh";
    return [
      flowWords(flow),
      right(`${money(charged)}\u00a0${unit}`),
      right(`${money(stays)}\u00a0${unit}`),
      right(formatPercent(stays / charged)),
      right(money(paid)),
    ];
  });
  const removed = option.text.removes ?? [];
  const shares = [...study.stays.entries()].map(
    ([kind, share]) =>
      `${kind} ${inputValue(share, share.central)} (${share.tag}, ${inputValue(share, share.low)} to ${inputValue(share, share.high)})`,
  );
  return [
    paragraph([
      removed.length === 0
        ? "No machine is taken out, so what steamer and stenter take while kept hot is still paid. "
        : `${removed.join(" and ")} are taken out, so their standby goes too. `,
      shares.length === 0
        ? "No share is given that is paid for all the same: if the boiler idles, heat saved is overstated."
        : `Of the rest that lots leave behind, these shares are paid for all the same: ${shares.join("; ")}.`,
    ]),
    rows.length === 0
      ? paragraph(["No standby is charged to the lots that move."])
      : table(
          "base-load",
          `Year ${measures.steady.year}: what the lots that move are charged with on their dye routes (allocated), and what of it is still paid because machines are kept hot for others (not avoidable).`,
          ["Flow", "Allocated", "Still paid", "Share", `${desk.currency} a year`],
          rows,
        ),
  ];
}
