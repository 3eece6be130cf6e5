import { describe, expect, it } from "vitest";
import { readInvest } from "../../src/invest/read-invest.js";
import { textOf } from "../tools/tree.js";
import { DEMO_TEXT } from "./study-of-demo.js";

const MILL = textOf("templates/mill/invest.yaml");

const flagged = (before: string | RegExp, after: string, text = MILL) => {
  const changed = text.replace(before, after);
  expect(changed).not.toBe(text);
  const { value, problems } = readInvest({ name: "invest.yaml", text: changed });
  return { changed, value, problems };
};

describe("machines of options", () => {
  it("are asked for where one is paid for and not said to be added", () => {
    const { problems, changed } = flagged("    adds: {}\n", "");
    expect(problems).toMatchObject([
      { code: "adds-unsaid", severity: "warning", value: "felt for the calender" },
    ]);
    expect(problems[0]?.line).toBe(
      changed.split("\n").findIndex((line) => line.includes("what: felt for the calender")) + 1,
    );
  });

  it("that are bought want their standby and an option without them", () => {
    const { problems } = flagged(
      "    adds: {}\n",
      "    adds: { calender: { hours: { value: 3600, tag: estimate }, availability: { value: 0.85, tag: estimate } } }\n",
    );
    expect(problems.map(({ code }) => code).sort()).toEqual([
      "same-machine-missing",
      "standby-missing",
    ]);
    expect(
      readInvest({ name: "invest.yaml", text: DEMO_TEXT }).problems.map(({ code }) => code),
    ).not.toContain("same-machine-missing");
  });

  it("that are bought want the hours of the one they stand beside", () => {
    const { value, problems } = flagged(
      "    adds: {}\n",
      "    adds: { stenter: { hours: { value: 3600, tag: estimate }, availability: { value: 0.85, tag: estimate } } }\n",
    );
    expect(value).toBeUndefined();
    expect(problems).toMatchObject([
      {
        code: "adds-without-capacity",
        key: "options.more on the calender.adds.stenter",
        severity: "refused",
      },
    ]);
  });
});

describe("standby of a machine that is bought", () => {
  it("wants a price for what it takes", () => {
    const { value, problems } = flagged(
      "          hours: { value: 900, low: 600, high: 1300, tag: estimate, source: nights and waits }",
      "          hours: { value: 900, tag: estimate }\n          of: heating-oil",
      DEMO_TEXT,
    );
    expect(value).toBeUndefined();
    expect(problems).toMatchObject([
      { code: "standby-without-price", value: "heating-oil", severity: "refused" },
    ]);
  });
});

describe("options on unlike terms", () => {
  it("name the repair that carrying on pays and an option which keeps the machine forgets", () => {
    const lines = MILL.split("\n");
    const from = lines.findIndex((line) => line.includes("# What carrying on pays for a machine"));
    const text = [...lines.slice(0, from), ...lines.slice(from + 9)].join("\n");
    const { problems, value } = readInvest({ name: "invest.yaml", text });
    expect(value).toBeDefined();
    expect(problems).toMatchObject([
      {
        code: "repair-missing",
        severity: "warning",
        value: "overhaul of the wash range",
        key: "options.more on the calender.capex",
      },
    ]);
    expect(problems[0]?.expected).toContain("carry on pays in year 2");
    const taken = text.replace("    adds: {}\n", "    adds: {}\n    removes: [wash range]\n");
    expect(
      readInvest({ name: "invest.yaml", text: taken }).problems.map(({ code }) => code),
    ).toEqual(["removal-missing"]);
  });

  it.each([
    [
      "a day after the start for money of the start",
      "due: 2026-12-18",
      "due: 2027-02-28",
      "due-after-money",
      MILL,
    ],
    [
      "exhaust that one option treats and another of the same curing does not",
      /kind: exhaust,\n {10}year: 0,\n {10}value: 14000/,
      "kind: other,\n          year: 0,\n          value: 14000",
      "exhaust-missing",
      DEMO_TEXT,
    ],
    [
      "a lease that ends early without buying the machine",
      /\n {6}end: \{ value: 4000[^}]*\}/,
      "",
      "lease-ends-early",
      DEMO_TEXT,
    ],
  ] as const)("name %s", (_, before, after, code, text) => {
    const { problems } = flagged(before, after, text);
    expect(problems.filter((problem) => problem.code === code)).toHaveLength(1);
    expect(readInvest({ name: "invest.yaml", text }).problems.map((one) => one.code)).not.toContain(
      code,
    );
  });

  it("are refused where one outlives the years that carrying on is reckoned for", () => {
    const { value, problems } = flagged(
      "    words: nothing is bought; the range is overhauled\n    life: 10",
      "    words: nothing is bought; the range is overhauled\n    life: 9",
    );
    expect(value).toBeUndefined();
    expect(problems).toMatchObject([
      { code: "life-shorter-than-option", key: "options.carry on.life", value: "9" },
    ]);
  });
});

describe("what goes with lots that move", () => {
  const block = / {6}- \{\n {10}what: stock of pigment ink,[^}]*\}\n/;

  it("is asked for in every option that moves them", () => {
    const { problems } = flagged(block, "", DEMO_TEXT);
    const missing = problems.filter(({ code }) => code === "one-off-missing");
    expect(missing).toMatchObject([{ severity: "warning", value: "second calender" }]);
    expect(missing[0]?.expected).toContain("working-capital as in existing calender");
    const whole = readInvest({ name: "invest.yaml", text: DEMO_TEXT }).problems;
    expect(whole.map(({ code }) => code)).not.toContain("one-off-missing");
  });

  it("is no payment where stock is only written off", () => {
    const { problems } = flagged(
      "clearing away dye inks that go out of date",
      "old dye inks written off",
      DEMO_TEXT,
    );
    expect(problems.map(({ code }) => code)).toContain("write-off-no-payment");
  });
});
