import { describe, expect, it } from "vitest";
import * as z from "zod";
import { judgeBy } from "../../src/factors/schema-problems.js";
import { readYaml } from "../../src/factors/yaml-text.js";

const Machine = z.strictObject({
  speed: z.number().min(1).describe("a speed in m/min"),
  words: z.string().describe("a text").optional(),
});
const Schema = z.strictObject({
  machines: z.record(
    z
      .string()
      .regex(/^[a-z]+$/)
      .describe("a name of small letters"),
    Machine,
  ),
  days: z.array(z.iso.date().describe("a day")).optional(),
});

function judge(text: string): ReturnType<typeof judgeBy<typeof Schema>> {
  const yaml = readYaml({ name: "plant.yaml", text }).value;
  if (yaml === undefined) throw new Error("not YAML");
  return judgeBy(Schema, yaml);
}

describe("judgeBy", () => {
  it("lets through what the schema allows", () => {
    expect(judge("machines:\n  pad: { speed: 20 }\ndays: [2026-11-25]\n")).toEqual({
      value: { machines: { pad: { speed: 20 } }, days: ["2026-11-25"] },
      problems: [],
    });
  });

  it("names an unknown key with the known ones and the likely one", () => {
    const { value, problems } = judge("machines:\n  pad:\n    speed: 20\n    wrods: slow\n");
    expect(value).toBeUndefined();
    expect(problems).toEqual([
      {
        code: "unknown-key",
        severity: "refused",
        file: "plant.yaml",
        line: 4,
        key: "machines.pad.wrods",
        value: "wrods",
        expected: "one of speed, words",
        remedy: "Write words if that was meant.",
      },
    ]);
  });

  it("says to leave out an unknown key that is like no other", () => {
    expect(judge("machines: {}\ncolour: red\n").problems).toMatchObject([
      { line: 2, value: "colour", expected: "one of machines, days", remedy: "Leave the key out." },
    ]);
  });

  it("names a missing key with what belongs there", () => {
    expect(judge("machines:\n  pad:\n    words: slow\n").problems).toMatchObject([
      {
        code: "missing-key",
        line: 2,
        key: "machines.pad.speed",
        expected: "speed: a speed in m/min",
        remedy: "Add the key.",
      },
    ]);
  });

  it.each([
    ["machines:\n  pad: { speed: fast }\n", 2, "fast", "a speed in m/min"],
    ["machines:\n  pad: { speed: 0 }\n", 2, "0", "a speed in m/min"],
    ["machines:\n  pad: { speed: 1, words: [a] }\n", 2, '["a"]', "a text"],
    ["machines: {}\ndays:\n  - 2026-11-25\n  - 2026-02-30\n", 4, "2026-02-30", "a day"],
    ["machines: {}\ndays:\n", 2, "null", "a value that this key can have"],
  ])("names the wrong value in %j", (text, line, value, expected) => {
    expect(judge(text).problems).toMatchObject([{ code: "wrong-value", line, value, expected }]);
  });

  it("names a key that breaks the rule for keys", () => {
    expect(judge("machines:\n  Pad1: { speed: 20 }\n").problems).toMatchObject([
      { code: "unknown-key", line: 2, value: "Pad1", expected: "a name of small letters" },
    ]);
  });

  it("names every fault in one run", () => {
    expect(
      judge("machines:\n  pad: { sped: 1 }\n  flue: { speed: x }\n  nip: {}\nday: []\n").problems,
    ).toMatchObject([
      { value: "sped" },
      { value: "x" },
      { key: "machines.nip.speed" },
      { value: "day" },
    ]);
  });

  it("does not call a key missing that was misspelt", () => {
    const { problems } = judge("machines:\n  pad: { sped: 1 }\n");
    expect(problems.map(({ code, value }) => [code, value])).toEqual([["unknown-key", "sped"]]);
  });

  it("takes an empty file for a faulty one", () => {
    const { problems } = judge("");
    expect(problems).toMatchObject([{ code: "wrong-value", line: 1, value: "null" }]);
    expect(problems[0]).not.toHaveProperty("key");
  });
});
