/**
 * Questions an owner asks, each with a number and its doubt.
 */

import { BUSY } from "../../invest/machine-use.js";
import { type WhatIf, withoutAnyway } from "../../invest/what-ifs.js";
import type { Block, Cell } from "../document.js";
import { formatNumber, formatPercent, formatShareOfDraws } from "../format.js";
import { baseLoadMoney } from "./base-load.js";
import { type InvestDesk, inputValue, money, right, span, standing, table, years } from "./desk.js";
import { leaseRate } from "./paying.js";
import { chance } from "./page-one.js";

const ASKED: Readonly<Record<WhatIf["code"], string>> = {
  "fewer-orders": "What if volume is 30 % lower?",
  "half-may-move": "What if only half of those orders may move?",
  "gas-halves": "What if gas costs half?",
  "gas-doubles": "What if gas costs twice as much?",
  "ink-tenth-dearer": "What if pigment ink costs a tenth more?",
  "rejects-double": "What if pigment is rejected twice as often?",
  "no-hours-saved": "What if no hour set free is really saved?",
  "worth-nothing-at-end": "What is the exit value? Without it:",
  "tariff-otherwise": "What if the effluent tariff changes?",
  "nothing-leaves": "What if nothing of what lots leave behind is saved?",
  "carry-on-pays-nothing": "What if carrying on had nothing to pay?",
  "neither-pays": "What if nobody had anything to pay anyway?",
};

// What exactly is left out, where the question alone does not say it.
const EXACTLY: Readonly<Partial<Record<WhatIf["code"], (desk: InvestDesk) => string>>> = {
  "nothing-leaves": ({ found }) =>
    `All of the ${[...found.study.stays.keys()].join(", ")} is paid for all the same.`,
  "carry-on-pays-nothing": ({ found }) =>
    `Capital of ${found.study.carryOn.name} left out; ${found.project.option.name} pays all of its own.`,
  "neither-pays": ({ found: { study, project } }) => {
    const { capital } = project.option;
    const left = capital.filter(
      (line) => !withoutAnyway(study, project.option).capital.includes(line),
    );
    return `Capital of ${study.carryOn.name} left out, and of ${project.option.name}: ${left.map(({ what }) => what).join(", ") || "nothing"}.`;
  },
};

/**
 * The table of questions.
 *
 * @param desk - the report
 * @returns one table
 */
export function questionTable(desk: InvestDesk): Block {
  const { found } = desk;
  const rows: (readonly (Cell | string)[])[] = [
    inkRow(desk),
    ...found.whatIfs.map(({ code, central, drawn }): readonly (Cell | string)[] => [
      code in EXACTLY
        ? `${ASKED[code]} ${EXACTLY[code]?.(desk) ?? ""}`
        : code === "tariff-otherwise" && found.study.otherTariff !== undefined
          ? `What if effluent is charged by ${found.study.otherTariff.tariff.form === "volume" ? "volume alone" : "strength"} from the start?`
          : ASKED[code],
      right(`NPV ${money(central)}`),
      `${span(drawn.spread[1], drawn.spread[3])}; above 0 in ${formatShareOfDraws(drawn.above, drawn.worth.length)}`,
    ]),
    tariffRow(desk),
    boilerRow(desk),
    bottleneckRow(desk),
    secondsRow(desk),
    anywayRow(desk),
    leaseRow(desk),
    exitRow(desk),
    washRow(desk),
  ].filter((row) => row.length > 0);
  return table(
    "questions",
    `Questions, with the answer at your inputs and its doubt: 10 to 90 % of the draws, ${desk.currency}.`,
    ["Question", "Answer", "Doubt"],
    rows,
    { widths: [2.2, 1.6, 2.4] },
  );
}

type Row = readonly (Cell | string)[];

function inkRow({ found }: InvestDesk): Row {
  const ink = found.breakEvens.find(({ input }) => input.id === "prices.ink.pigment");
  if (ink === undefined) return [];
  const { input, at } = ink;
  return [
    "How wrong may the ink price be?",
    right(at === undefined ? "never turns" : `up to ${inputValue(input, at)}`),
    `${standing(input)} ${inputValue(input, input.central)}; ${span(input.low, input.high)}`,
  ];
}

function tariffRow({ found }: InvestDesk): Row {
  const dated = found.study.effluent.tariffs;
  if (found.study.otherTariff !== undefined || dated.length < 2) return [];
  const last = [...dated].sort((a, b) => (a.from < b.from ? -1 : 1)).at(-1);
  const level = found.breakEvens.find(({ input }) => input.id === "effluent.level");
  const swing = found.swings.find(({ input }) => input?.id === "effluent.level");
  return [
    "What if the effluent tariff changes from volume to strength?",
    right(
      `counted: ${last?.tariff.form === "volume" ? "volume" : "strength"} from ${last?.from ?? ""}`,
    ),
    `turns at ${level?.at === undefined ? "no multiple up to 10" : `${formatNumber(level.at, 2)} times its rates`}${swing === undefined ? "" : `; NPV ${span(Math.min(swing.low, swing.high), Math.max(swing.low, swing.high))} over its doubt`}`,
  ];
}

function boilerRow(desk: InvestDesk): Row {
  const { found } = desk;
  const removed = found.project.option.text.removes ?? [];
  const { heat, electricity } = baseLoadMoney(desk);
  const stays = found.study.stays.get("heat");
  return [
    "Does the boiler really shut down?",
    right(removed.length === 0 ? "no, nothing is taken out" : `taken out: ${removed.join(", ")}`),
    `standby that stays: ${money(heat)} a year of heat, ${money(electricity)} of electricity, not counted as saved${stays === undefined ? "; no share is given for a boiler that idles" : `; and ${inputValue(stays, stays.central)} (${inputValue(stays, stays.low)} to ${inputValue(stays, stays.high)}) of the heat lots leave behind`}`,
  ];
}

function bottleneckRow({ found }: InvestDesk): Row {
  const [most] = found.uses;
  if (most === undefined) return [];
  const { low, high, median } = most.use;
  return [
    "Which machine is the bottleneck then?",
    right(`${most.machine}, ${formatPercent(most.runs / most.has)} of its hours`),
    `${formatPercent(low)} to ${formatPercent(high)}${median > BUSY ? "; above 85 %, so lots wait long" : ""}`,
  ];
}

function secondsRow({ found }: InvestDesk): Row {
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
  const held = comes(fix.machine);
  const now = metres > 0 ? (3600 * held) / metres : NaN;
  const room = (use: number): string =>
    use > 0 ? formatSeconds(now * (1 / use - 1)) : "any number of";
  const { low, high } = fix.use;
  return [
    "How many seconds more or less can I bear?",
    right(`${room(fix.runs / fix.has)}\u00a0s/m more in ${fix.machine}`),
    `a metre that moves holds it ${formatSeconds(now)}\u00a0s now, set-up and waiting with it; ${room(high)} to ${room(low)}\u00a0s/m more before its hours are full, all its lots alike. Seconds less save labour${fix.use.median > BUSY ? " and let more lots move" : " alone: it holds nothing up"}`,
  ];
}

function formatSeconds(seconds: number): string {
  return formatNumber(seconds, seconds < 10 ? 1 : 0);
}

function anywayRow({ found }: InvestDesk): Row {
  const lines = found.study.carryOn.capital;
  const total = lines.reduce((sum, { price }) => sum + price.central, 0);
  const [low, high] = [
    lines.reduce((sum, { price }) => sum + price.low, 0),
    lines.reduce((sum, { price }) => sum + price.high, 0),
  ];
  return [
    "When must permit and repairs be paid anyway?",
    right(`${money(total)} if one carries on`),
    `${lines.map(({ what, year }) => `${what}: year ${year}`).join("; ")}; together ${span(low, high)}`,
  ];
}

function leaseRow(desk: InvestDesk): Row {
  const { found } = desk;
  const { lease, project } = found;
  if (lease === undefined)
    return ["Lease or buy?", right("no lease given"), "put an offer under lease of the option"];
  const better = lease.leased < lease.bought ? "lease" : "buy";
  const loan = project.option.text.loan;
  return [
    "Lease or buy?",
    right(`${better}: ${money(lease.leased)} leased, ${money(lease.bought)} bought`),
    `present values at ${leaseRate(desk)}${lease.implied === undefined ? "" : `; the lease itself costs ${formatPercent(lease.implied, 2)} nominal`}${loan === undefined ? "" : `, the loan ${formatPercent(loan.rate, 2)}`}. NPV ${money(lease.worth)} leased, ${money(project.measures.gain.worth)} bought`,
  ];
}

function exitRow({ found }: InvestDesk): Row {
  const { residual } = found.project.option;
  if (residual === undefined)
    return ["What is the exit value?", right("none counted"), "add residual to count one"];
  return [
    "What is it worth at the end?",
    right(inputValue(residual.price, residual.price.central)),
    `${span(residual.price.low, residual.price.high)} (${residual.price.tag}), after ${found.project.option.text.life} years`,
  ];
}

function washRow(desk: InvestDesk): Row {
  const { found } = desk;
  const better = found.options.filter(({ option }) => option.text.kind === "improve-wash");
  const [wash] = better;
  if (wash === undefined) return [];
  const ahead = found.project.drawn.even.reduce(
    (count, even, at) => count + (even > (wash.drawn.even[at] ?? 0) ? 1 : 0),
    0,
  );
  return [
    "Is it still worth it beside improving the wash range?",
    right(`${money(found.project.measures.yearly)} against ${money(wash.measures.yearly)} a year`),
    `ahead of ${wash.option.name} in ${chance(desk, ahead)} of draws; outlay over yearly gain ${years(found.project.measures.simplePayback)} against ${years(wash.measures.simplePayback)}`,
  ];
}
