import { describe, expect, it } from "vitest";
import { judgeNames, readInvest } from "../../src/invest/read-invest.js";
import { sentence } from "../../src/problems/sentence.js";
import { textOf } from "../tools/tree.js";
import { DEMO_TEXT } from "./study-of-demo.js";

const MILL = textOf("templates/mill/invest.yaml");

function read(change: (text: string) => string, text = MILL) {
  const changed = change(text);
  expect(changed).not.toBe(text);
  return { changed, ...readInvest({ name: "invest.yaml", text: changed }) };
}

describe("an investment file", () => {
  it("that comes with the tool is read without a word", () => {
    expect(readInvest({ name: "invest.yaml", text: MILL }).problems).toEqual([]);
    expect(readInvest({ name: "invest.yaml", text: DEMO_TEXT }).value).toBeDefined();
  });

  const without = (key: string) => (text: string) => text.replace(key, "");
  it.each<readonly [string, (text: string) => string, string, string, string]>([
    [
      "a price without a date",
      without(" date: 2026-09-30,"),
      "missing-key",
      "prices.electricity.date",
      "add the key",
    ],
    [
      "a price without a currency",
      without(" currency: EUR,"),
      "missing-key",
      "prices.electricity",
      "currency",
    ],
    [
      "a currency without its price",
      (t) => t.replace("{ value: 1.4, currency: EUR", "{ value: 1.4, currency: USD"),
      "currency-without-rate",
      "prices.water.currency",
      "rates.USD",
    ],
    [
      "a share above 1",
      (t) => t.replace("value: 0.5, low: 0.3, high: 0.7", "value: 1.5, low: 0.3, high: 0.7"),
      "wrong-value",
      "moves[0].share.value",
      "from 0 to 1",
    ],
    [
      "growth above 50 %",
      (t) =>
        t.replace(
          "growth: { value: 0, low: -0.03, high: 0.03",
          "growth: { value: 0.6, low: -0.03, high: 0.03",
        ),
      "wrong-value",
      "orders.growth.value",
      "0.5",
    ],
    [
      "a life shorter than its loan",
      (t) =>
        t.replace(
          "    # loan: { share: 0.7, rate: 0.06, years: 5, tag: quote }",
          "    loan: { share: 0.7, rate: 0.06, years: 15, tag: quote }",
        ),
      "life-shorter-than-loan",
      "options.more on the calender.life",
      "15 years",
    ],
    [
      "a number without its tag",
      (t) => t.replace("date: 2026-09-30, tag: invoice }", "date: 2026-09-30 }"),
      "missing-key",
      "tag",
      "invoice, meter, quote",
    ],
    [
      "real money with a nominal rate",
      (t) => t.replace("basis: real", "basis: nominal"),
      "real-and-nominal-mixed",
      "discount.basis",
      "real",
    ],
    [
      "nominal money without inflation",
      (t) =>
        t
          .replace("money: real", "money: nominal")
          .replace("basis: real", "basis: nominal")
          .replace(/inflation:.*\n/, ""),
      "inflation-missing",
      "money",
      "inflation",
    ],
    [
      "ends out of order",
      (t) => t.replace("value: 0.08, low: 0.06", "value: 0.05, low: 0.06"),
      "ends-out-of-order",
      "discount",
      "low ≤ value ≤ high",
    ],
    [
      "no ink price",
      (t) => t.replace(/ +ink:\n +pigment:.*\n +reactive:.*\n/, ""),
      "ink-price-missing",
      "prices",
      "no default",
    ],
    [
      "an ink price by default",
      (t) => t.replace("date: 2026-10-15, tag: quote }", "date: 2026-10-15, tag: default }"),
      "ink-price-default",
      "prices.ink.pigment.tag",
      "quote",
    ],
    [
      "a machine price by default",
      (t) => t.replace(/(value: 350(?:.|\n)*?)tag: quote/, "$1tag: default"),
      "machine-price-default",
      "capex[1].tag",
      "no default",
    ],
    [
      "no option to carry on",
      (t) => t.replace("kind: carry-on", "kind: improve-wash"),
      "carry-on-missing",
      "options",
      "carry-on",
    ],
    [
      "no better wash range",
      (t) => t.replace("kind: improve-wash", "kind: carry-on"),
      "improve-wash-missing",
      "options",
      "wash range",
    ],
    [
      "labour without what stays",
      (t) => t.replace(/ {2}labour: \{ value: 0\.6.*\n/, ""),
      "labour-without-stays",
      "prices.labour",
      "stays.labour",
    ],
    [
      "a tariff without its rates",
      (t) => t.replace("per_m3: 1.2, ", ""),
      "tariff-incomplete",
      "effluent.tariffs[0]",
      "per_m3",
    ],
    [
      "a tariff with a rate of another form",
      (t) => t.replace("per_m3: 1.2, ", "per_m3: 1.2, sludge: 1, "),
      "tariff-key-strange",
      "effluent.tariffs[0].sludge",
      "volume",
    ],
    [
      "a price below zero",
      (t) => t.replace("{ value: 1.4,", "{ value: -1.4,"),
      "price-below-zero",
      "prices.water.value",
      "0 or more",
    ],
    [
      "a cost that comes in",
      (t) => t.replace("value: 350", "value: -350"),
      "sign-strange",
      "capex[1].value",
      "above 0",
    ],
    [
      "capital after the end",
      (t) => t.replace("year: 2", "year: 22"),
      "year-beyond-life",
      "capex[0].year",
      "10",
    ],
    [
      "a key that is not known",
      (t) => t.replace("timing:", "timming:"),
      "unknown-key",
      "timming",
      "timing",
    ],
  ])("with %s is refused with line, key and remedy", (_, change, code, key, words) => {
    const { value, problems, changed } = read(change);
    expect(value).toBeUndefined();
    const found = problems.find(
      (problem) => problem.code === code && problem.key?.includes(key) === true,
    );
    expect(found, problems.map(sentence).join("\n")).toBeDefined();
    expect(found?.line ?? 0).toBeGreaterThan(1);
    expect(found?.line ?? 0).toBeLessThanOrEqual(changed.split("\n").length);
    expect(sentence(found!).toLowerCase()).toContain(words.toLowerCase());
  });

  it("names the line of a fault", () => {
    const { problems, changed } = read((text) => text.replace("basis: real", "basis: nominal"));
    const line = changed.split("\n").findIndex((one) => one.includes("basis: nominal")) + 1;
    expect(problems).toMatchObject([{ line, file: "invest.yaml" }]);
  });

  it("names all faults of a file in one run", () => {
    const { problems } = read((text) =>
      text.replace("basis: real", "basis: nominal").replace("{ value: 1.4,", "{ value: -1.4,"),
    );
    expect(problems.map(({ code }) => code)).toEqual([
      "real-and-nominal-mixed",
      "price-below-zero",
    ]);
  });

  it("is flagged where a quote is missing or a price is old", () => {
    const { value, problems } = read((text) =>
      text
        .replace(/(value: 350(?:.|\n)*?)tag: quote/, "$1tag: estimate")
        .replace(
          "{ value: 1.4, currency: EUR, date: 2026-09-30",
          "{ value: 1.4, currency: EUR, date: 2025-09-30",
        ),
    );
    expect(value).toBeDefined();
    expect(problems).toMatchObject([
      { code: "price-old", severity: "warning", key: "prices.water.date" },
      { code: "quote-missing", severity: "warning", value: "felt for the calender" },
    ]);
  });

  it("is held against the names of log and plant file", () => {
    const value = readInvest({ name: "invest.yaml", text: MILL }).value!;
    const known = { clients: ["Client North"], fabrics: ["plain cotton"], machines: ["printer"] };
    expect(judgeNames(value, known)).toMatchObject([
      { code: "unknown-name", value: "Client South", key: "moves[0].client" },
      { code: "unknown-name", value: "calender", key: "capacity.calender" },
    ]);
  });
});
