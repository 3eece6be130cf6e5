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
});
