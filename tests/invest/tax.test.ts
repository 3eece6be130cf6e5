import { describe, expect, it } from "vitest";
import { leaseOf } from "../../src/invest/finance.js";
import { measuresOf, scheduleOf } from "../../src/invest/measures.js";
import { taxOf } from "../../src/invest/tax.js";
import { demoMill, demoStudy } from "./study-of-demo.js";

describe("tax", () => {
  // By hand: 25 % of 40 − 100/4.
  it("writes machines off in equal parts", () => {
    const tax = taxOf({ rate: 0.25, years: 4, erosion: 0 }, [0, 40, 40, 40, 40, 40], [100]);
    expect(tax).toEqual([0, 3.75, 3.75, 3.75, 3.75, 10]);
  });

  it("writes off at the end what is left, so that a whole life is taxed on profit alone", () => {
    const tax = taxOf({ rate: 0.3, years: 8, erosion: 0 }, [0, 60, 60, 60], [100]);
    expect(tax.reduce((sum, each) => sum + each, 0)).toBeCloseTo(0.3 * (180 - 100), 12);
  });

  it("takes a loss off other tax", () => {
    expect(taxOf({ rate: 0.2, years: 1, erosion: 0 }, [0, 10], [100])[1]).toBe(-18);
  });

  it("lets inflation eat into the write-off of old money", () => {
    const [, , late = 0] = taxOf({ rate: 0.5, years: 2, erosion: 0.1 }, [0, 0, 0], [121]);
    expect(late).toBeCloseTo(-0.5 * (60.5 / 1.21), 12);
  });
});

describe("a study with tax", () => {
  // Lines of money alone: no lot may move, so nothing but these is paid.
  const FLAT = `
  bare carry on:
    kind: carry-on
    words: nothing is done
    life: 5
    capex: []
  better wash:
    kind: improve-wash
    words: nothing either
    life: 5
    capex: []
  press:
    kind: pigment-calender
    words: a press that saves space
    to: pigment-calender
    life: 5
    adds: {}
    rejects: { value: 0, exact: true, tag: quote }
    capex:
      - { what: press, kind: machine, year: 0, value: 1000, exact: true, currency: EUR, date: 2026-10-20, tag: quote }
    yearly:
      - { what: space let, kind: space, per: year, value: -400, exact: true, currency: EUR, date: 2026-10-20, tag: quote }
    residual: { value: 50, exact: true, currency: EUR, date: 2026-10-20, tag: quote }
    lease:
      yearly: { value: 290, exact: true, currency: EUR, date: 2026-10-20, tag: quote }
      years: 4
      end: { value: 10, exact: true, currency: EUR, date: 2026-10-20, tag: quote }
    loan: { share: 1, rate: 0.08, years: 4, tag: quote }
`;
  const flat = (text: string): string =>
    `${text.slice(0, text.indexOf("\noptions:\n"))}\noptions:${FLAT}`
      .replace("tax: none", "tax: { rate: 0.25, years: 4, tag: estimate }")
      .replace(/(inflation: )\{[^}]*\}/, "$1{ value: 0, exact: true, tag: estimate }")
      .replace("value: 0.07, low: 0.05, high: 0.1", "value: 0.1, exact: true")
      .replace(/share: \{ value: [^}]*\}/g, "share: { value: 0, exact: true, tag: estimate }")
      .replace("growth: { value: 0.01, low: -0.04, high: 0.04", "growth: { value: 0, exact: true");

  it("ends in the schedule that is reckoned by hand", async () => {
    const study = demoStudy(await demoMill(), flat, 20);
    const years = scheduleOf(study, study.project);
    // 400 less 250 written off is taxed at 25 %; in year 5 nothing is left to write off, and 50 come back.
    expect(years.map(({ tax }) => tax)).toEqual([
      "0.00",
      "37.50",
      "37.50",
      "37.50",
      "37.50",
      "112.50",
    ]);
    expect(years.map(({ flow }) => flow)).toEqual([
      "-1000.00",
      "362.50",
      "362.50",
      "362.50",
      "362.50",
      "337.50",
    ]);
    // 362.5 × 3.169865 (annuity of 4 years at 10 %) + 337.5 / 1.61051 − 1000.
    const annuity = (1 - 1.1 ** -4) / 0.1;
    expect(Number(measuresOf(study, study.project).exact)).toBeCloseTo(
      362.5 * annuity + 337.5 / 1.1 ** 5 - 1000,
      2,
    );
    // After tax the loan costs 6 %: 217.5 a year and 10 at the end, beside 1000 less 62.5 a year.
    const lease = leaseOf(study, study.project);
    const of = (each: number): number => (each * (1 - 1.06 ** -4)) / 0.06;
    expect(lease?.rate).toBeCloseTo(0.06, 12);
    expect(lease?.leased).toBeCloseTo(of(217.5) + 10 / 1.06 ** 4, 6);
    expect(lease?.bought).toBeCloseTo(1000 - of(62.5), 6);
  }, 60_000);
});
