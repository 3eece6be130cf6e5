/**
 * The price of pigment ink: whose it is, for how many litres it was offered, and how many each option takes.
 */

import { worthBeside } from "../../invest/ink-volume.js";
import type { Block } from "../document.js";
import type { InvestInput } from "./input.js";
import { type InvestDesk, inputValue, money, paragraph, right, standing, table } from "./desk.js";

const INK = "prices.ink.pigment";

/** Years whose litres are printed. */
const YEARS = [1, 2, 3, 5, 8, 12];

/** Other prices named on page one. */
const NAMED = 2;

type Difference = InvestInput["differences"][number];

/**
 * Litres a year that the price of pigment ink was offered for.
 *
 * @param desk - the report
 * @returns litres; undefined where the file gives none
 */
export function offeredLitres(desk: InvestDesk): number | undefined {
  return desk.input.file.prices.ink?.["pigment"]?.volume;
}

/**
 * Worth with the price of one file for both, with that of the other for both, and with each its own.
 *
 * @param desk - the report
 * @returns sentences; none where the files agree
 */
export function inkCaseWords(desk: InvestDesk): readonly string[] {
  const { found, input } = desk;
  const { project, study } = found;
  const price = study.inputs.get(INK);
  const other = input.differences.find((one) => one.input === INK);
  if (price === undefined) return [];
  const differ =
    other === undefined
      ? []
      : [
          `pigment ink is ${inputValue(price, price.central)} in invest.yaml (${standing(price)}), ${inputValue(price, other.plantValue)} in ${input.plantFile}: NPV ${money(project.measures.gain.worth)} with the first for all, ${money(other.worth)} with the second, ${money(worthBeside(study, other.as))} if ${study.carryOn.name} alone pays the second.`,
        ];
  return [...differ, ...volumeWords(desk)];
}

// Whether the project takes as much as was offered for.
function volumeWords(desk: InvestDesk): readonly string[] {
  const { found } = desk;
  const offered = offeredLitres(desk);
  const litres = found.litres.find(({ name }) => name === found.project.option.name)?.years ?? [];
  if (offered === undefined || litres.length === 0) return [];
  const below = litres.flatMap((each, i) => (each < offered ? [i + 1] : []));
  const when =
    below.length === 0
      ? "in every year"
      : below.length === litres.length
        ? "in no year"
        : `in all years but ${below.join(", ")}`;
  return [
    `It is offered for ${money(offered)} L a year, which ${found.project.option.name} takes ${when}.`,
  ];
}

/**
 * Other prices on which the plant file says otherwise.
 *
 * @param desk - the report
 * @returns sentences
 */
export function otherPriceWords(desk: InvestDesk): readonly string[] {
  const { input, found } = desk;
  const { inputs } = found.study;
  const others = input.differences.filter((one) => one.input !== INK);
  const words = (one: Difference): string => {
    const price = inputs.get(one.input);
    const level = price === undefined || one.input === "effluent.level";
    const unit = (value: number): string =>
      level ? `${money(value)}\u00a0${desk.currency}` : inputValue(price, value);
    const name = level ? "effluent per m³" : price.words;
    return `${name} is ${unit(one.value)} in invest.yaml (${standing(one)}) and ${unit(one.plantValue)} in ${input.plantFile}: with the latter NPV ${money(one.worth)}`;
  };
  if (others.length === 0) return [];
  const more = others.length - NAMED;
  return [
    `${others.slice(0, NAMED).map(words).join("; ")}${more > 0 ? `; and ${more} more, under what it rests on` : ""}.`,
  ];
}

/**
 * Litres of pigment ink of every option over the years.
 *
 * @param desk - the report
 * @returns a sentence and the table; none without such a price
 */
export function inkVolumeBlocks(desk: InvestDesk): readonly Block[] {
  const { litres, study } = desk.found;
  if (!study.inputs.has(INK)) return [];
  const offered = offeredLitres(desk);
  const last = Math.max(...litres.map(({ years }) => years.length));
  const columns = YEARS.filter((year) => year <= last);
  const below = offered ?? 0;
  return [
    paragraph([
      offered === undefined
        ? "No volume is given that the price of pigment ink was offered for; put the litres a year under volume of the price to see which options take them."
        : `The price of pigment ink was offered for ${money(offered)} L a year; years in which an option takes less are marked “below”, and there the price may not hold. ${study.carryOn.name} is counted at the same price as all options.`,
    ]),
    table(
      "ink-litres",
      "Pigment ink by option and year at the values of the file, L.",
      ["Option", ...columns.map((year) => `year ${year}`)],
      litres.map(({ name, years }) => [
        name,
        ...columns.map((year) => {
          const each = years[year - 1];
          return right(
            each === undefined ? "–" : `${money(each)}${each < below ? "\u00a0below" : ""}`,
          );
        }),
      ]),
    ),
  ];
}
