/**
 * Judges what an investment file says of money: currencies, real and nominal, ends of doubt, tariffs.
 */

import type { KeyPath } from "../factors/yaml-text.js";
import type { Complaints } from "../plant/complaints.js";
import type { InvestText, PriceText } from "./schema.js";
import { tariffFrom } from "./tariff-text.js";

/**
 * Judges money.
 *
 * @param complaints - where faults are noted
 * @param text - the file
 */
export function judgeMoney(complaints: Complaints, text: InvestText): void {
  everyNumber(text, [], (path, given) => {
    judgeEnds(complaints, path, given);
    if (typeof given["currency"] === "string")
      judgeCurrency(complaints, text, path, given["currency"]);
  });
  judgeBasis(complaints, text);
  text.effluent.tariffs.forEach((tariff, i) => {
    judgeTariff(complaints, text, ["effluent", "tariffs", i], tariff);
  });
  if (text.effluent.what_if !== undefined)
    judgeTariff(complaints, text, ["effluent", "what_if"], text.effluent.what_if);
  for (const [name, price] of pricesOf(text)) {
    if (price.value >= 0) continue;
    complaints.say(
      ["prices", ...name, "value"],
      "price-below-zero",
      String(price.value),
      "a price of 0 or more",
      "Correct the value or its sign.",
    );
  }
}

/**
 * Prices of a file with their places.
 *
 * @param text - the file
 * @returns path below `prices` and price
 */
export function pricesOf(text: InvestText): readonly (readonly [KeyPath, PriceText])[] {
  const { fuel = {}, ink = {}, ...plain } = text.prices;
  const listed: readonly (readonly [KeyPath, PriceText | undefined])[] = [
    ...Object.entries(plain).map(([key, one]) => [[key], one] as const),
    ...Object.entries(fuel).map(([key, one]) => [["fuel", key], one] as const),
    ...Object.entries(ink).map(([key, one]) => [["ink", key], one] as const),
  ];
  return listed.flatMap(([path, one]) => (one === undefined ? [] : [[path, one] as const]));
}

type Given = Readonly<Record<string, unknown>> & { readonly value: number };

function isGiven(value: object): value is Given {
  return "value" in value && typeof value.value === "number" && "tag" in value;
}

function everyNumber(
  value: unknown,
  path: KeyPath,
  see: (path: KeyPath, given: Given) => void,
): void {
  if (typeof value !== "object" || value === null) return;
  if (isGiven(value)) see(path, value);
  for (const [key, part] of Object.entries(value)) {
    everyNumber(part, [...path, Array.isArray(value) ? Number(key) : key], see);
  }
}

function judgeEnds(complaints: Complaints, path: KeyPath, given: Given): void {
  const { value, low, high } = given;
  const fault =
    (low === undefined) !== (high === undefined)
      ? "both low and high, or neither"
      : typeof low === "number" && typeof high === "number" && !(low <= value && value <= high)
        ? "low ≤ value ≤ high"
        : undefined;
  if (fault === undefined) return;
  const shown = [low, value, high].flatMap((part) => (typeof part === "number" ? [part] : []));
  complaints.say(
    path,
    "ends-out-of-order",
    shown.join(" … "),
    fault,
    "Correct the value or its ends.",
  );
}

function judgeCurrency(
  complaints: Complaints,
  text: InvestText,
  path: KeyPath,
  currency: string,
): void {
  if (currency === text.currency || text.rates?.[currency] !== undefined) return;
  complaints.say(
    [...path, "currency"],
    "currency-without-rate",
    currency,
    `${text.currency}, or a currency with its price under rates`,
    `Add rates.${currency} as { value, date, tag }: what 1 ${currency} costs in ${text.currency}.`,
  );
}

function judgeBasis(complaints: Complaints, text: InvestText): void {
  const { money, discount, inflation } = text;
  if (discount.basis !== money)
    complaints.say(
      ["discount", "basis"],
      "real-and-nominal-mixed",
      discount.basis,
      `a ${money} rate, as money is ${money}`,
      "Give the rate on the same basis: (1 + nominal) = (1 + real)(1 + inflation).",
    );
  const ask = (path: KeyPath, why: string): void => {
    complaints.say(
      path,
      "inflation-missing",
      money,
      `inflation beside it: ${why}`,
      "Add inflation as { value, tag }.",
    );
  };
  if (inflation !== undefined) return;
  if (money === "nominal") ask(["money"], "prices without growth of their own rise with it");
  else if (text.tax !== "none") ask(["tax"], "a write-off in old money loses value by it");
}

function judgeTariff(
  complaints: Complaints,
  text: InvestText,
  path: KeyPath,
  tariff: InvestText["effluent"]["tariffs"][number],
): void {
  judgeCurrency(complaints, text, path, tariff.currency);
  const judged = tariffFrom(tariff);
  if (!("missing" in judged)) return;
  for (const key of judged.missing)
    complaints.say(
      path,
      "tariff-incomplete",
      tariff.form,
      `${key} in a tariff of form ${tariff.form}`,
      "Add the key from the printed tariff.",
    );
  for (const key of judged.strange)
    complaints.say(
      [...path, key],
      "tariff-key-strange",
      key,
      `keys that a tariff of form ${tariff.form} knows`,
      "Take the key out, or choose the form that has it.",
    );
}
