/**
 * Questions an owner asks, each with a number and its doubt.
 */

import { type WhatIf, withoutAnyway } from "../../invest/what-ifs.js";
import type { Block } from "../document.js";
import { formatNumber, formatPercent } from "../format.js";
import { type InvestDesk, inputValue, money, right, span, standing, table } from "./desk.js";
import { offeredLitres } from "./inks.js";
import {
  type Row,
  afterWashRow,
  anywayRow,
  boilerRow,
  bottleneckRow,
  exitRow,
  leaseRow,
  secondsRow,
  washRow,
} from "./question-rows.js";

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
  "tariff-by-volume": "What if effluent stays charged by volume alone?",
  "tariff-by-strength": "What if effluent is charged by strength from the start?",
  "exhaust-due-anyway": "What if exhaust treatment is due anyway?",
  "own-speed": "What if all lots that move ran at the speed of the added machine?",
};

// What exactly is left out, where the question alone does not say it.
const EXACTLY: Readonly<Partial<Record<WhatIf["code"], (desk: InvestDesk) => string>>> = {
  "nothing-leaves": ({ found }) =>
    `All of the ${[...found.study.stays.keys()].join(", ")} is paid for all the same.`,
  "carry-on-pays-nothing": ({ found }) =>
    `Capital of ${found.study.carryOn.name} left out; ${found.project.option.name} pays all of its own.`,
  "exhaust-due-anyway": ({ found: { study, project } }) =>
    `${project.option.capital
      .filter(({ kind }) => kind === "exhaust")
      .map(({ what }) => what)
      .join(
        ", ",
      )} left out; put a line of kind exhaust under ${study.carryOn.name} to count it there.`,
  "own-speed": ({ found: { project } }) =>
    [...project.option.adds]
      .map(
        ([machine, { speed }]) =>
          `${machine}: ${formatNumber(speed.central, 2)} times; labour is counted at the speed of the existing one.`,
      )
      .join(" "),
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
  const rows: readonly Row[] = [
    inkRow(desk),
    ...found.whatIfs.map(({ code, central, drawn, litres }): Row => [
      code in EXACTLY
        ? `${ASKED[code]} ${EXACTLY[code]?.(desk) ?? ""}`
        : code === "tariff-otherwise" && found.study.otherTariff !== undefined
          ? `What if effluent is charged by ${found.study.otherTariff.tariff.form === "volume" ? "volume alone" : "strength"} from the start?`
          : ASKED[code],
      right(`NPV ${money(central)}`),
      `${span(drawn.spread[1], drawn.spread[3])}; above 0 in ${desk.chance(drawn.above, drawn.worth.length)}${litresWords(desk, litres)}`,
    ]),
    tariffRow(desk),
    boilerRow(desk),
    bottleneckRow(desk),
    secondsRow(desk),
    anywayRow(desk),
    leaseRow(desk),
    exitRow(desk),
    washRow(desk),
    afterWashRow(desk),
  ].filter((row) => row.length > 0);
  return table(
    "questions",
    `Questions, with the answer for ${found.project.option.name} at the values of the file and its doubt: 10 to 90 % of the draws, ${desk.currency}.`,
    ["Question", "Answer", "Doubt"],
    rows,
    { widths: [2.4, 1.5, 2.6] },
  );
}

function inkRow({ found }: InvestDesk): Row {
  const ink = found.breakEvens.find(({ input }) => input.id === "prices.ink.pigment");
  if (ink === undefined) return [];
  const { input, at } = ink;
  return [
    "How wrong may the ink price be?",
    right(
      at === undefined
        ? "never turns"
        : at < input.central
          ? `must fall ${formatPercent(1 - at / input.central)} to ${inputValue(input, at)}`
          : `may rise ${formatPercent(at / input.central - 1)} to ${inputValue(input, at)}`,
    ),
    `${standing(input)} ${inputValue(input, input.central)}; ${span(input.low, input.high)}`,
  ];
}

// Fewer litres than the price was offered for.
function litresWords(desk: InvestDesk, litres: number): string {
  const offered = offeredLitres(desk);
  return offered === undefined || litres >= offered
    ? ""
    : `; only ${money(litres)} L a year of pigment ink, below the ${money(offered)} of the offer`;
}

function tariffRow({ found }: InvestDesk): Row {
  const level = found.breakEvens.find(({ input }) => input.id === "effluent.level");
  const swing = found.swings.find(({ input }) => input?.id === "effluent.level");
  if (level === undefined) return [];
  return [
    "How wrong may effluent charges be?",
    right(level.at === undefined ? "never turns" : `${formatNumber(level.at, 2)} times the rates`),
    swing === undefined
      ? "no doubt given"
      : `NPV ${span(Math.min(swing.low, swing.high), Math.max(swing.low, swing.high))} over their doubt`,
  ];
}
