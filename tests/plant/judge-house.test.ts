import { describe, expect, it } from "vitest";
import { faultOf, faultsOf, lineOf, plantFile } from "./plant-file.js";

describe("judgeHouse", () => {
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

  it("says nothing of a counterpart whose route was refused", () => {
    const more = (route: string): string => `${route}counterparts: { reactive: pigment }\n`;
    expect(faultsOf(plantFile({ more: more("  reactive: 5\n") })).map(({ key }) => key)).toEqual([
      "routes.reactive",
    ]);
    const wrong = more("  reactive: { workflow: dyed, like: reactive, machines: {} }\n");
    expect(faultsOf(plantFile({ more: wrong })).map(({ code }) => code)).not.toContain(
      "counterpart-of-same-workflow",
    );
  });
});
