/**
 * Where the investment file and the plant file put different prices on the same thing.
 */

import { problemAt } from "../factors/yaml-text.js";
import type { Plant } from "../plant/plant.js";
import type { GivenNumber } from "../plant/schema.js";
import type { Problem } from "../problems/problem.js";
import { gainOf } from "./gain.js";
import { pricesOf } from "./judge-money.js";
import type { ReadInvest } from "./read-invest.js";
import type { Tag } from "./schema.js";
import type { Study } from "./study.js";
import { centralWorld } from "./world.js";

/** Relative difference from which on two prices are said to differ. [-] */
const DIFFER = 0.05;

/** A price that two files give otherwise. */
export interface Difference {
  /** Key in the investment file. */
  readonly key: readonly (string | number)[];
  /** Its value there, in the study's currency. */
  readonly value: number;
  /** Where it is from. */
  readonly tag: Tag;
  /** Key in the plant file. */
  readonly plantKey: string;
  /** Its value there, in the study's currency. */
  readonly plantValue: number;
  /** Input of the study that the price is, by id. */
  readonly input: string;
  /** Value of that input which stands for the plant file's price. */
  readonly as: number;
}

/**
 * Compares prices of the investment file with those under `tariffs` of the plant file.
 *
 * @param read - the investment file
 * @param plant - the house
 * @returns prices more than 5 % apart, in the order of the investment file
 */
export function differencesOf(
  read: Pick<ReadInvest, "text">,
  plant: Pick<Plant, "sites">,
): readonly Difference[] {
  const { text } = read;
  const inOwn = (currency: string): number | undefined =>
    currency === text.currency ? 1 : text.rates?.[currency]?.value;
  return Object.entries(plant.sites).flatMap(([site, { tariffs }]) => {
    const exchange = tariffs === undefined ? undefined : inOwn(tariffs.currency);
    if (tariffs === undefined || exchange === undefined) return [];
    const here = `sites.${site}.tariffs`;
    const { fuel = {}, ink = {}, electricity, steam, water, labour } = tariffs;
    const known: Readonly<Record<string, GivenNumber | undefined>> = {
      ...{ electricity, steam, water, labour },
      ...Object.fromEntries(Object.entries(fuel).map(([name, one]) => [`fuel.${name}`, one])),
      ...Object.fromEntries(Object.entries(ink).map(([name, one]) => [`ink.${name}`, one])),
    };
    const prices = pricesOf(text).flatMap(([path, price]): readonly Difference[] => {
      const name = path.join(".");
      const other = known[name];
      const own = inOwn(price.currency);
      if (other === undefined || own === undefined) return [];
      const plantValue = numberOf(other) * exchange;
      return [
        {
          key: ["prices", ...path],
          value: price.value * own,
          tag: price.tag,
          plantKey: `${here}.${name}`,
          plantValue,
          input: `prices.${name}`,
          as: plantValue / own,
        },
      ];
    });
    return [...prices, ...effluentOf(text, tariffs, here, exchange)].filter(
      ({ value, plantValue }) => Math.abs(value - plantValue) > DIFFER * Math.abs(plantValue),
    );
  });
}

function numberOf(given: GivenNumber): number {
  return typeof given === "number" ? given : given.value;
}

// Charges by volume alone can be compared; the plant file knows no strengths.
function effluentOf(
  text: ReadInvest["text"],
  tariffs: { readonly date: string; readonly effluent?: GivenNumber | undefined },
  here: string,
  exchange: number,
): readonly Difference[] {
  const { effluent } = tariffs;
  const { tariffs: dated } = text.effluent;
  const inForce = dated
    .map((tariff, at) => ({ tariff, at }))
    .filter(({ tariff }) => tariff.from <= tariffs.date)
    .sort((a, b) => (a.tariff.from < b.tariff.from ? 1 : -1))[0];
  const rate = inForce?.tariff.form === "volume" ? inForce.tariff.per_m3 : undefined;
  if (effluent === undefined || inForce === undefined || !(rate !== undefined && rate > 0))
    return [];
  if (inForce.tariff.currency !== text.currency) return [];
  const plantValue = numberOf(effluent) * exchange;
  return [
    {
      key: ["effluent", "tariffs", inForce.at, "per_m3"],
      value: rate,
      tag: inForce.tariff.tag,
      plantKey: `${here}.effluent`,
      plantValue,
      input: "effluent.level",
      as: plantValue / rate,
    },
  ];
}

/**
 * Differences as warnings.
 *
 * @param read - the file, for lines
 * @param differences - prices that differ
 * @param plantFile - name of the plant file
 * @returns one for each
 */
export function differenceWarnings(
  read: ReadInvest,
  differences: readonly Difference[],
  plantFile: string,
): readonly Problem[] {
  return differences.map(({ key, value, tag, plantKey, plantValue }) => ({
    ...problemAt(read.yaml, key, {
      code: "two-files-differ",
      value: String(value),
      expected: `the ${plantValue} that ${plantFile} has under ${plantKey}, within 5 %`,
      remedy:
        tag === "quote"
          ? "It is an offer; make sure that it is firm, and for the volume you will take."
          : "Correct the one that is not paid.",
    }),
    severity: "warning",
  }));
}

/**
 * Worth of the project if the plant file's price held.
 *
 * @param study - the study
 * @param difference - the price
 * @returns net present value at central values otherwise
 */
export function worthAt(study: Study, difference: Difference): number {
  const { input, as } = difference;
  return gainOf(study, study.project, centralWorld(new Map([[input, as]]))).worth;
}
