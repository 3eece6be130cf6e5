/**
 * The investment report as data: cash flows and inputs as CSV, all of it as JSON.
 */

import type { ScheduleYear } from "../../invest/measures.js";
import type { Study } from "../../invest/study.js";
import type { ReportDocument } from "../document.js";
import type { InvestInput } from "./input.js";

/** Format of the file. */
const FORMAT = "millrace-invest-1";

function row(cells: readonly string[]): string {
  return cells
    .map((cell) => {
      // A cell that begins like a formula would be reckoned by a spreadsheet; numbers may.
      const safe = /^[=+@\t\r]|^-(?![\d.])/.test(cell) ? `'${cell}` : cell;
      return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
    })
    .join(",");
}

/**
 * Cash flows of all options to the cent.
 *
 * @param schedules - years by option
 * @param study - currency, kind of money, timing and tax
 * @returns CSV, a row for each option and year, which says what its money is and what its sign means
 */
export function cashFlowCsv(
  schedules: ReadonlyMap<string, readonly ScheduleYear[]>,
  study: Study,
): string {
  const { currency, money, timing, start, tax } = study;
  const said = [
    currency,
    money === "real" ? `real, of ${start}` : "nominal, of each year",
    timing,
    tax === undefined
      ? "before tax"
      : `after tax of ${tax.rate} with write-off over ${tax.years} years; parts before tax`,
    `above 0 where better than ${study.carryOn.name}; tax above 0 where paid`,
  ];
  const [first] = schedules.values();
  const headings = [...(first?.[0]?.byHeading.keys() ?? [])];
  const lines = [
    row([
      "option",
      "year",
      "currency",
      "kind_of_money",
      "counted",
      "tax_basis",
      "sign",
      ...headings,
      "tax",
      "money",
      "discounted",
    ]),
    ...[...schedules].flatMap(([name, years]) =>
      years.map(({ year, byHeading, tax, flow, present }) =>
        row([
          name,
          String(year),
          ...said,
          ...headings.map((heading) => byHeading.get(heading) ?? "0.00"),
          tax,
          flow,
          present,
        ]),
      ),
    ),
  ];
  return `${lines.join("\n")}\n`;
}

/**
 * Inputs with their doubt and what they are from.
 *
 * @param input - what the report is made of
 * @returns CSV, a row for each input
 */
export function inputsCsv(input: InvestInput): string {
  const lines = [
    row(["input", "words", "unit", "value", "p10", "p90", "from", "source"]),
    ...[...input.findings.study.inputs.values()].map(
      ({ id, words, unit, central, low, high, tag, source }) =>
        row([id, words, unit, String(central), String(low), String(high), tag, source]),
    ),
  ];
  return `${lines.join("\n")}\n`;
}

/**
 * Writes the JSON report.
 *
 * @param document - the document
 * @param input - what it was made of
 * @returns JSON text
 */
export function investJson(document: ReportDocument, input: InvestInput): string {
  const { findings } = input;
  const { study, project } = findings;
  return `${JSON.stringify(
    {
      format: FORMAT,
      tool: input.version,
      title: document.title,
      house: document.author,
      date: document.date,
      audience: "internal",
      forecast: true,
      digests: input.digests,
      draws: study.draws,
      seed: input.seed,
      currency: study.currency,
      money: study.money,
      timing: study.timing,
      start: study.start,
      carryOn: study.carryOn.name,
      project: project.option.name,
      options: findings.options.map(({ option, measures, drawn, tags }) => ({
        name: option.name,
        kind: option.text.kind,
        life: option.text.life,
        npv: measures.exact,
        npvDrawn: drawn.spread,
        above: drawn.above / study.draws,
        rates: measures.rates,
        mainRate: measures.mainRate ?? null,
        mirr: measures.modified ?? null,
        simplePayback: measures.simplePayback ?? null,
        payback: measures.payback ?? null,
        discountedPayback: measures.discountedPayback ?? null,
        utilitiesPayback: measures.utilitiesPayback ?? null,
        index: measures.index ?? null,
        equalMoneyAYear: measures.yearly,
        tonnesLess: measures.tonnes,
        waterLess: measures.water,
        byEvidence: Object.fromEntries(tags),
        schedule: input.schedules.get(option.name)?.map((year) => ({
          ...year,
          byHeading: Object.fromEntries(year.byHeading),
        })),
      })),
      order: findings.order,
      breakEvens: findings.breakEvens.map(({ input: { id, central }, at, range }) => ({
        input: id,
        value: central,
        at: at ?? null,
        range,
      })),
      swings: findings.swings.map(({ input: moved, low, high }) => ({
        input: moved?.id ?? "model",
        low,
        high,
      })),
      whatIfs: findings.whatIfs.map(({ code, central, drawn }) => ({
        code,
        npv: central,
        npvDrawn: drawn.spread,
        above: drawn.above / drawn.worth.length,
      })),
      orderByWorth: findings.orderByWorth,
      afterWash: findings.afterWash,
      dueAnyway: {
        present: findings.due.present,
        lines: findings.due.lines.map(({ line, years, money }) => ({
          what: line.what,
          years,
          money,
        })),
      },
      withoutSpared: Object.fromEntries(findings.unspared),
      pigmentInkLitres: Object.fromEntries(findings.litres.map(({ name, years }) => [name, years])),
      codAtDrain: findings.strengths,
      machines: Object.fromEntries(findings.lastUses.map(({ name, uses }) => [name, uses])),
      needs: findings.needs.map(({ machine, alone, moved, twin }) => ({
        machine,
        alone,
        moved,
        without: twin ?? null,
      })),
      warnings: input.warnings,
      figures: document.figures,
    },
    null,
    1,
  )}\n`;
}
