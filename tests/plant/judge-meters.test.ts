import { describe, expect, it } from "vitest";
import { faultOf, faultsOf, lineOf, plantFile } from "./plant-file.js";

const meters = (rest: string): string => `meters:\n  main: { unit: kWh, covers: site, ${rest} }\n`;

describe("judgeMeters", () => {
  it.each(["gross", "net"])("takes gas counted %s", (basis) => {
    expect(faultsOf(plantFile({ more: meters(`quantity: gas, basis: ${basis}`) }))).toEqual([]);
  });

  it("refuses gas without a basis", () => {
    const more = meters("quantity: gas");
    const fault = faultOf({ more });
    expect(fault).toMatchObject({
      code: "meter-basis",
      severity: "refused",
      key: "meters.main",
      value: "main",
      line: lineOf({ more }, "main: { unit"),
    });
    expect(fault.expected).toContain("basis: gross");
    expect(fault.remedy).toMatch(/^Add it\./);
  });

  it("says nothing twice of a basis that is no word it knows", () => {
    const found = faultsOf(plantFile({ more: meters("quantity: gas, basis: upper") }));
    expect(found.map(({ key }) => key)).toEqual(["meters.main.basis"]);
    expect(found.map(({ code }) => code)).not.toContain("meter-basis");
  });

  it.each(["water", "electricity", "steam"])("refuses a basis at a meter of %s", (quantity) => {
    const found = faultOf({ more: meters(`quantity: ${quantity}, basis: net`) });
    expect(found).toMatchObject({ code: "meter-basis", key: "meters.main.basis", value: "net" });
  });

  it.each([
    ["covers: { machines: [rnge] }", "unknown-name", "meters.a.covers.machines[0]"],
    ["covers: site, site: elsewhere", "unknown-name", "meters.a.site"],
    ["covers: site, within: nothing", "unknown-name", "meters.a.within"],
    ["covers: site, within: gas", "meter-parent", "meters.a.within"],
    ["covers: site, within: a", "meter-parent", "meters.a.within"],
    ["covers: site, within: b", "meter-parent", "meters.a.within"],
  ])("refuses a meter with %s", (rest, code, key) => {
    const more = [
      "meters:",
      `  a: { quantity: water, unit: m3, ${rest} }`,
      "  b: { quantity: water, unit: m3, covers: site, within: a }",
      "  gas: { quantity: gas, unit: kWh, basis: net, covers: site }",
      "",
    ].join("\n");
    expect(faultsOf(plantFile({ more }))).toContainEqual(expect.objectContaining({ code, key }));
  });

  it("asks for heating value and conditions of cubic metres of gas", () => {
    const gas = (rest: string): string =>
      `meters:\n  a: { quantity: gas, unit: m3, basis: gross, covers: site${rest} }\n`;
    const codes = (rest: string): readonly string[] =>
      faultsOf(plantFile({ more: gas(rest) })).map(({ code }) => code);
    expect(codes("")).toEqual(["meter-heating-value", "meter-volume"]);
    expect(codes(", heating_value: 11.3")).toEqual(["meter-volume"]);
    expect(codes(", heating_value: 11.3, volume: { temperature: 12, pressure: 1.04 }")).toEqual([]);
  });
});
