import { describe, expect, it } from "vitest";
import { judgeBy } from "../../src/factors/schema-problems.js";
import { readYaml } from "../../src/factors/yaml-text.js";
import { LogDialectSchema } from "../../src/log/dialect.js";

function judged(text: string): ReturnType<typeof judgeBy<typeof LogDialectSchema>> {
  const yaml = readYaml({ name: "plant.yaml", text }).value;
  if (yaml === undefined) throw new Error("no YAML");
  return judgeBy(LogDialectSchema, yaml);
}

describe("LogDialectSchema", () => {
  it("takes headings with and without units, words and constants", () => {
    const text = `
separator: ;
decimal: ","
thousands: .
dates: dmy
encoding: windows-1252
heading_line: 4
columns: { lot: Partie, width_m: { heading: Breite, unit: cm } }
values: { route: { Reaktiv: reactive } }
constants: { site: main }
`;
    const { value, problems } = judged(text);
    expect(problems).toEqual([]);
    expect(value).toMatchObject({
      heading_line: 4,
      columns: { lot: "Partie", width_m: { heading: "Breite", unit: "cm" } },
      constants: { site: "main" },
    });
  });

  it.each([
    ["encoding: utf-99", "encoding", "utf-99", "an encoding such as utf-8"],
    ["thousands: .", "thousands", ".", "other than the decimal sign"],
    ['decimal: ","\nthousands: ","', "thousands", ",", "other than the decimal sign"],
    ["dates: ydm", "dates", "ydm", "ymd, dmy or mdy"],
    ["columns: { weight: Gewicht }", "columns.weight", "weight", "gsm"],
    ["heading_line: 0", "heading_line", "0", "the line of the headings, counted from 1"],
    ["heading_line: 2.5", "heading_line", "2.5", "the line of the headings"],
    ["seperator: ;", "seperator", "seperator", "separator"],
  ])("refuses %j", (text, key, value, expected) => {
    const { problems } = judged(text);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ severity: "refused", key, file: "plant.yaml" });
    expect(problems[0]?.value).toContain(value);
    expect(`${problems[0]?.expected ?? ""} ${problems[0]?.remedy ?? ""}`).toContain(expected);
  });
});
