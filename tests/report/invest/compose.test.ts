import { parse } from "csv-parse/sync";
import { beforeAll, describe, expect, it, vi } from "vitest";
import { drawChart } from "../../../src/charts/chart.js";
import { findingsOf } from "../../../src/invest/findings.js";
import { scheduleOf } from "../../../src/invest/measures.js";
import { readInvest } from "../../../src/invest/read-invest.js";
import type { Block, ReportDocument, Run } from "../../../src/report/document.js";
import { composeInvestment } from "../../../src/report/invest/compose.js";
import { cashFlowCsv, inputsCsv, investJson } from "../../../src/report/invest/data.js";
import { InvestDesk } from "../../../src/report/invest/desk.js";
import { nearestTurns } from "../../../src/report/invest/page-one.js";
import type { InvestInput } from "../../../src/report/invest/input.js";
import { lintWording } from "../../../src/report/wording.js";
import { DEMO_TEXT, demoMill, demoStudy } from "../../invest/study-of-demo.js";
import { textOf } from "../../tools/tree.js";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let input: InvestInput;
let document: ReportDocument;

beforeAll(async () => {
  const study = demoStudy(await demoMill());
  const read = readInvest({ name: "invest.yaml", text: DEMO_TEXT });
  input = {
    house: "Weir Lane Prints (invented)",
    file: read.value!.text,
    findings: findingsOf(study),
    differences: [],
    plantFile: "plant.yaml",
    days: ["2025-10-01", "2026-09-30"],
    lots: 2462,
    leftOut: 0,
    months: [{ month: "2025-10", dye: 40000, mayMove: 25000, pigment: 38000 }],
    schedules: new Map(study.options.map((one) => [one.name, scheduleOf(study, one)])),
    warnings: read.problems,
    topics: ["calender", "steam"],
    digests: { invest: "0123456789abcdef" },
    date: "2026-11-25",
    seed: 1,
    version: "0.0.0",
  };
  document = composeInvestment(input, textOf("templates/invest.md"));
});

const texts = (runs: readonly Run[]): string =>
  runs.map((run) => ("text" in run ? run.text : "")).join("");

function said(block: Block): string {
  switch (block.kind) {
    case "paragraph":
      return texts(block.runs);
    case "list":
      return block.items.map(texts).join("\n");
    case "table":
      return [
        block.caption,
        ...[block.head, ...block.rows].map((row) => row.map(({ runs }) => texts(runs)).join(" | ")),
      ].join("\n");
    case "box":
      return block.blocks.map(said).join("\n");
    case "heading":
      return block.text;
    default:
      return "";
  }
}

const table = (id: string) => {
  const found = document.blocks.find((block) => block.kind === "table" && block.id === id);
  if (found?.kind !== "table") throw new Error(`there is no table ${id}`);
  return found;
};

describe("the report on a purchase", () => {
  it("has a picture for each question, with a table behind or beside it", () => {
    const figures = document.blocks.flatMap((block) => (block.kind === "figure" ? [block] : []));
    expect(figures.map(({ id }) => id)).toEqual([
      "cash",
      "cost-steps",
      "ink-volume",
      "npv-swings",
      "turning-points",
      "capacity",
      "capacity-last",
      "lead-time",
    ]);
    for (const { chart } of figures) expect(drawChart(chart!).height).toBeGreaterThan(60);
    for (const id of [
      "cash-table",
      "cost-steps-table",
      "ink-volume-table",
      "npv-swings-table",
      "break-evens",
      "capacity-months",
      "lead-time-table",
    ])
      expect(table(id).rows.length).toBeGreaterThan(0);
  });

  it("says on page one what rests on estimates, what is guessed, and that it is internal", () => {
    const at = document.blocks.findIndex(
      (block) => block.kind === "heading" && block.id === "questions",
    );
    const first = document.blocks.slice(0, at).map(said).join("\n");
    expect(first).toMatch(/\d+\s% of the present value rests on estimates/);
    expect(first).toContain("Still guessed: ");
    expect(first).toContain("Internal, forecast: ");
    expect(first).toMatch(/net present value \(NPV\) of .*10 to 90 % of draws/);
    expect(document.footer).toContain("Internal, forecast");
    // The verdict leads; then the drawn median with its interval, then the values of the file.
    expect(first).toMatch(
      /^Not worth buying at these inputs\. No machine need be bought for volume\./m,
    );
    expect(first).toMatch(
      /^All inputs drawn but the discount rate, second calender brings .*median; 10 to 90 % of draws .*above zero in .*At the values of the file/m,
    );
    expect(first).toMatch(
      /Machines: the existing calender alone would be used \d+\s%.*busiest month; existing calender, which moves the same lots with it, is ahead in/,
    );
    expect(first).toMatch(/In year 12 second calender asks printer-1 for \d+\s% .* month like/);
    expect(first).toMatch(/In year 12 carry on asks printer-2 for \d+\s% /);
    expect(first).toMatch(
      /Permit: share of draws with COD at the drain above the limit of .*: second calender \d.*, carry on .*, better wash .*; treatment: not given/,
    );
    expect(first).toMatch(
      /offered for 8\s000\sL a year, which second calender takes in all years but 1\./,
    );
    expect(first).not.toContain("today");
  });

  it("says which way an input has to go, the nearest one first", () => {
    const [line = ""] = document.blocks.map(said).filter((text) => text.startsWith("All inputs"));
    const turns = nearestTurns(new InvestDesk(input));
    expect(turns[0]?.input.id).toBe("prices.ink.pigment");
    for (const { input: one, at = NaN } of turns.slice(0, 2))
      expect(line).toContain(`${one.words} ${at < one.central ? "falls below" : "rises above"}`);
  });

  it("keeps keys of the file to the appendix, and one bound for small chances", () => {
    const whole = document.blocks.map(said).join("\n");
    expect(whole.match(/prices\.ink|sites\.main|effluent\.cod_limit in/g)).toBeNull();
    const bounds = new Set(whole.match(/<\s\d+(?:\.\d+)?\s%/g));
    expect([...bounds]).toHaveLength(1);
    expect(whole).not.toMatch(/-fold|mogden|\bIndex\b|Above it in/);
  });

  it("prints one rounding of a worth wherever it stands, and one coverage of intervals", () => {
    const median = (id: string, column: number): readonly string[] =>
      table(id).rows.map((row) => texts(row[column]?.runs ?? []));
    const number = (text: string): number => Number(text.replaceAll(/\s/g, "").replace("−", "-"));
    const thousands = median("options", 3).map((text) => 1000 * number(text));
    expect(median("measures", 3).map(number)).toEqual(thousands);
    const whole = document.blocks.map(said).join("\n");
    // The convention on tags is the one place that speaks of 95 %.
    expect(whole.match(/95\s% interval|at 95\s%|\(95\s%\)/g)?.length ?? 0).toBeLessThanOrEqual(1);
    for (const block of document.blocks) {
      if (block.kind !== "figure" || block.chart === undefined) continue;
      expect(JSON.stringify(drawChart(block.chart)), block.id).not.toContain("95\u00a0% interval");
    }
    expect(texts(table("questions").head[2]?.runs ?? [])).toBe("Doubt");
    expect(table("questions").caption).toContain("10 to 90 % of the draws");
  });

  it("answers each question with a number and its doubt", () => {
    const rows = table("questions").rows.map((row) => row.map(({ runs }) => texts(runs)));
    const asked = rows.map(([question = ""]) => question).join("\n");
    for (const words of [
      "ink price",
      "volume is 30 % lower",
      "half of those orders",
      "gas costs half",
      "gas costs twice",
      "boiler really shut down",
      "bottleneck",
      "seconds",
      "effluent",
      "paid anyway",
      "Lease",
      "exit value",
      "improving the wash range",
      "what is left of it after better wash",
      "stays charged by volume alone",
      "charged by strength from the start",
      "exhaust treatment is due anyway",
      "speed of the added machine",
    ])
      expect(asked).toContain(words);
    for (const [question = "", answer = "", doubt = ""] of rows) {
      expect(`${answer} ${doubt}`, question).toMatch(/\d/);
      expect(doubt, question).not.toBe("");
    }
  });

  it("ranks no option by the cost of a tonne that saves money", () => {
    const tonne = table("options").rows.map((row) => texts(row[8]?.runs ?? []));
    input.findings.options.forEach(({ measures, drawn }, i) => {
      expect(drawn.saves).toBeLessThanOrEqual(drawn.above);
      if ((measures.perTonne ?? 0) < 0) expect(tonne[i]).toBe("saves");
    });
  });

  it("prints prices that give the money of the year, and hours as staffed", () => {
    const lines = table("cost-lines").rows.map((row) => row.map(({ runs }) => texts(runs)));
    const number = (text = ""): number => Number(text.replaceAll(/[^\d.−]/g, "").replace("−", "-"));
    const gas = lines.find(([name]) => name === "natural gas") ?? [];
    expect(number(gas[1]) * number(gas[4])).toBeCloseTo(number(gas[6]), -3);
    const calender = table("machines").rows.find((row) => texts(row[0]?.runs ?? []) === "calender");
    // 5,800 h at 0.88 of the one there and 5,800 h at 0.85 of the one bought.
    expect(number(texts(calender?.[1]?.runs ?? []))).toBe(10000);
  });

  it("says nothing that praises", () => {
    const whole = document.blocks.map(said).join("\n");
    expect(lintWording(whole)).toEqual([]);
  });
});

describe("the data beside it", () => {
  it("holds cash flows to the cent that add up", () => {
    const { study } = input.findings;
    const rows = parse<Record<string, string>>(cashFlowCsv(input.schedules, study), {
      columns: true,
    });
    expect(rows).toHaveLength(study.options.reduce((sum, { text }) => sum + text.life + 1, 0));
    for (const {
      option: _o,
      year: _y,
      currency,
      kind_of_money,
      counted,
      tax_basis,
      sign,
      tax = "",
      money = "",
      discounted,
      ...parts
    } of rows) {
      expect([kind_of_money, counted, tax_basis]).toEqual([
        "real, of 2027-04-01",
        "end-year",
        "before tax",
      ]);
      expect(sign).toBe("above 0 where better than carry on; tax above 0 where paid");
      expect(currency).toBe("EUR");
      expect(discounted).toMatch(/^-?\d+\.\d\d$/);
      const sum = Object.values(parts).reduce((total, part) => total + Number(part), 0);
      expect(Math.abs(sum - Number(tax) - Number(money))).toBeLessThan(0.08);
    }
  });

  it("holds every input with its tag, and no formula", () => {
    const rows = parse<Record<string, string>>(inputsCsv(input), { columns: true });
    expect(rows.map(({ input: id }) => id)).toEqual([...input.findings.study.inputs.keys()]);
    for (const row of rows)
      for (const cell of Object.values(row)) expect(cell).not.toMatch(/^[=+@]/);
  });

  it("holds all of it as JSON, marked as a forecast", () => {
    const json = JSON.parse(investJson(document, input)) as {
      readonly forecast: boolean;
      readonly options: readonly { readonly npv: string; readonly name: string }[];
    };
    expect(json.forecast).toBe(true);
    expect(json.options.map(({ name }) => name)).toEqual(
      input.findings.options.map(({ option }) => option.name),
    );
    for (const { npv } of json.options) expect(npv).toMatch(/^-?\d+\.\d\d$/);
  });
});
