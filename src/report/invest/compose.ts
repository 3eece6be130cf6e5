/**
 * Puts the investment report together from its template and its blocks.
 */

import { cautionsFor } from "../cautions.js";
import { numbered } from "../compose/numbered.js";
import type { Block, ReportDocument } from "../document.js";
import { formatDate, formatNumber, formatPercent } from "../format.js";
import { renderTemplate, type TemplateValues } from "../template.js";
import { sentence } from "../../problems/sentence.js";
import { TAG_DOUBT } from "../../invest/inputs.js";
import { baseLoadBlocks } from "./base-load.js";
import { costBlocks } from "./costs.js";
import { InvestDesk, say, table, right } from "./desk.js";
import { carbonBlocks, effluentBlocks } from "./effluent.js";
import { hallBlocks } from "./hall.js";
import type { InvestInput } from "./input.js";
import { inputTable, orderBlocks, riskBlocks, scheduleTable } from "./options.js";
import { payingBlocks } from "./paying.js";
import { findingBlocks } from "./first-findings.js";
import { cashBlocks, cashTable } from "./cash.js";
import { inkVolumeBlocks } from "./inks.js";
import { optionTable } from "./option-table.js";
import { decisionLine, hangsOn } from "./page-one.js";
import { verdictBlock } from "./verdict.js";
import { questionTable } from "./questions.js";
import { turningBlocks } from "./turning.js";

/**
 * Makes the report.
 *
 * @param input - what it is made of
 * @param template - text of the template
 * @returns the document
 */
export function composeInvestment(input: InvestInput, template: string): ReportDocument {
  const desk = new InvestDesk(input);
  const title = "Is it worth buying";
  const blocks: Record<string, readonly Block[]> = {
    decision: [verdictBlock(desk), decisionLine(desk)],
    findings: findingBlocks(desk),
    options: [optionTable(desk)],
    cash: cashBlocks(desk),
    "hangs-on": hangsOn(desk),
    "cash-table": [cashTable(desk)],
    order: orderBlocks(desk),
    costs: costBlocks(desk),
    turning: [...turningBlocks(desk), ...inkVolumeBlocks(desk)],
    questions: [questionTable(desk)],
    hall: hallBlocks(desk),
    "base-load": baseLoadBlocks(desk),
    effluent: effluentBlocks(desk),
    carbon: carbonBlocks(desk),
    paying: payingBlocks(desk),
    risks: riskBlocks(desk),
    evidence: [tagTable(desk)],
    moves: [movesTable(desk)],
    schedule: [scheduleTable(desk)],
    inputs: [inputTable(desk)],
    warnings: warningBlocks(input),
    cautions: [
      {
        kind: "list",
        ordered: false,
        items: cautionsFor([...input.topics, "forecast"]).map(({ text }) => [say(text)]),
      },
    ],
  };
  const body = numbered(renderTemplate(template, "invest.md", valuesOf(desk, title), blocks));
  const digests = Object.entries(input.digests).map(
    ([name, digest]) => `${name} ${digest.slice(0, 12)}`,
  );
  return {
    title,
    author: input.house,
    language: "en",
    date: input.date,
    footer: `Internal, forecast · ${digests.join(" · ")} · millrace ${input.version} · seed ${input.seed} · not reviewed`,
    blocks: body,
    figures: desk.figures.figures,
  };
}

function valuesOf(desk: InvestDesk, title: string): TemplateValues {
  const { input, found } = desk;
  const { study } = found;
  const tax =
    study.tax === undefined
      ? "before tax"
      : `after tax of ${formatPercent(study.tax.rate)} (${study.tax.years}-year write-off, ${study.tax.tag})`;
  return {
    title,
    study: input.file.study,
    house: input.house,
    lots: formatNumber(input.lots, 0),
    from: formatDate(input.days[0]),
    to: formatDate(input.days[1]),
    start: formatDate(study.start),
    basis: `${study.money}, ${study.timing === "end-year" ? "year-end" : "mid-year"}`,
    money: study.money === "real" ? "money of the start (real)" : "money of each year (nominal)",
    currency: study.currency,
    timing: study.timing === "end-year" ? "counted at the end" : "counted in the middle",
    tax,
    draws: formatNumber(study.draws, 0),
    seed: String(input.seed),
    rejected: formatPercent(study.rejected, 1),
    "left-out": formatPercent(input.leftOut, 1),
    carry: study.carryOn.name,
    project: found.project.option.name,
    doubts: Object.entries(TAG_DOUBT)
      .map(([tag, share]) => `${tag} ± ${formatPercent(share)}`)
      .join(", "),
  };
}

function tagTable(desk: InvestDesk): Block {
  const { options } = desk.found;
  return table(
    "by-tag",
    "Present value of what each option changes, gains and costs counted as sizes, by the weakest thing each rests on.",
    ["Option", "invoice", "meter", "quote", "estimate", "default"],
    options.map(({ option, tags }) => [
      option.name,
      ...[...tags.values()].map((share) => right(formatPercent(share))),
    ]),
  );
}

function movesTable(desk: InvestDesk): Block {
  const { project } = desk.found;
  const { moves } = desk.input.file;
  return table(
    "moves",
    "Lots on dye routes that may move, by the first rule that fits, as logged in a year.",
    ["Lots", "Accepted, m²", "May move", "Interval", "From", "Why"],
    project.option.moving.map(({ words, accepted, share }, i) => [
      words,
      right(formatNumber(accepted, 0)),
      right(formatPercent(share.central)),
      right(
        share.low === share.high
          ? "fixed"
          : `${formatPercent(share.low)} to ${formatPercent(share.high)}`,
      ),
      share.tag,
      moves[i]?.why ?? "",
    ]),
    { widths: [1.4, 1, 0.8, 1, 0.8, 2] },
  );
}

function warningBlocks({ warnings }: InvestInput): readonly Block[] {
  if (warnings.length === 0)
    return [{ kind: "paragraph", runs: [say("Nothing in the file is flagged.")] }];
  return [
    {
      kind: "list",
      ordered: false,
      items: warnings.map((warning) => [say(sentence(warning))]),
    },
  ];
}
