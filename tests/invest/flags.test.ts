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
