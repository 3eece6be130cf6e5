import { describe, expect, it } from "vitest";
import { readPlant } from "../../src/plant/read-plant.js";
import { sentence } from "../../src/problems/sentence.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { faultOf, faultsOf, lineOf, plantFile } from "./plant-file.js";

const DYE = `  reactive:
    like: reactive
    machines: { pretreat: pad, pretreat-dry: stenter, print: printer, steam: steamer, wash: range, squeeze: nip, dry: stenter }
`;

describe("readPlant", () => {
  it("ties every step to its machine, with settings and choices of route and machine", () => {
    const { value } = readPlant({ name: "plant.yaml", text: plantFile() }, SHIPPED);
    expect(value?.house).toBe("House of faults (invented)");
    expect(value?.gwp).toBe("AR6");
    const route = value?.routes["pigment"];
    expect(route).toMatchObject({ name: "pigment", workflow: "pigment", dye: undefined });
    expect(route?.steps.map(({ role, machine }) => [role, machine])).toEqual([
      ["pretreat", "pad"],
      ["pretreat-dry", "stenter"],
      ["pretreat-store", ""],
      ["print", "printer"],
      ["fix", "calender"],
      ["store", ""],
    ]);
    expect(route?.steps[4]).toMatchObject({ settings: { dwell: 30 }, choices: { heat: "oil" } });
    expect(route?.steps[1]?.choices).toEqual({ heat: "burner" });
  });

  it("puts the route's choice before the machine's", () => {
    const text = plantFile({ choices: "fix.heat: electric" });
    const { value } = readPlant({ name: "plant.yaml", text }, SHIPPED);
    expect(value?.routes["pigment"]?.steps[4]?.choices).toEqual({ heat: "electric" });
  });

  it("adds a soft finish after all", () => {
    const text = plantFile({
      fix: "fix: calender\n      finish: pad\n      finish-dry: stenter\n    finish: soft",
    });
    const { value, problems } = readPlant({ name: "plant.yaml", text }, SHIPPED);
    expect(problems).toEqual([]);
    expect(value?.routes["pigment"]?.steps.slice(6).map(({ role }) => role)).toEqual([
      "finish",
      "finish-dry",
      "finish-store",
    ]);
  });

  it("names an unknown key with the keys there are", () => {
    const text = plantFile({ site: "boilr: { fuel: natural-gas }" });
    const [first, ...others] = faultsOf(text);
    expect(others).toEqual([]);
    expect(first).toMatchObject({ code: "unknown-key", value: "boilr", line: 6 });
    expect(first?.expected).toMatch(/^one of place, words, settings, burner, oil_heater, boiler,/);
    expect(first?.remedy).toBe("Write boiler if that was meant.");
  });

  it("says what is no YAML", () => {
    expect(faultsOf("millrace: [1").map(({ code }) => code)).toContain("yaml-syntax");
  });

  it("names unknown counterparts", () => {
    const more = "counterparts: { pigment: reactiv, pigmnt: pigment }\n";
    const found = faultsOf(plantFile({ more }));
    expect(found.map(({ value, line }) => [value, line])).toEqual([
      ["reactiv", lineOf({ more }, "counterparts:")],
      ["pigmnt", lineOf({ more }, "counterparts:")],
    ]);
    expect(found[0]?.expected).toBe("a route of this file: pigment");
  });

  it("refuses a counterpart of the same workflow", () => {
    expect(faultOf({ more: "counterparts: { pigment: pigment }\n" })).toMatchObject({
      code: "counterpart-of-same-workflow",
      value: "pigment",
    });
  });

  it("says all faults in one run, in the order of the file", () => {
    const text = plantFile({
      place: "ATA",
      site: "boiler: { fuel: peat }",
      padSettings: "power: 5000",
      fix: "fix: pad",
      settings: "fix.dwel: 1, pretreat.pickup: 70",
      choices: "fix.heat: coal",
      more: `${DYE}counterparts: { pigment: nobody }\n`,
    });
    const found = faultsOf(text);
    expect(found.map(({ value }) => value)).toEqual([
      "ATA",
      "peat",
      "5000",
      "pad",
      ...["70", "dwel"],
      "coal",
      ...["steamer", "range", "nip"],
      "nobody",
    ]);
    const lines = found.map(({ line }) => line ?? 0);
    expect(lines).toEqual([...lines].sort((a, b) => a - b));
    for (const fault of found)
      expect(sentence(fault)).toMatch(/^plant\.yaml, line \d+, column .+\.$/);
  });
});
