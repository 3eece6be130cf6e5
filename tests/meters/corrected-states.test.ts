import { describe, expect, it } from "vitest";
import { keyOf, statesOf } from "../../src/meters/corrected-states.js";
import { inUse, madeMill, monthly } from "./made.js";

const mill = madeMill({
  gas: { quantity: "gas", unit: "kWh", basis: "net", covers: "site" },
  range: { quantity: "steam", unit: "kg", covers: { machines: ["range"] } },
});
const { program, groups } = mill;

describe("statesOf", () => {
  it("has machines behind meters, and the boiler whose gas they count", () => {
    const meters = inUse(mill, [
      ...monthly("gas", (month) => mill.takes(month, "gas")),
      ...monthly("range", (month) => mill.takes(month, "steam", ["range"])),
    ]);
    const names = statesOf(program, groups, meters).map(({ site, machine, carrier }) =>
      keyOf(site, machine, carrier),
    );
    expect(new Set(names).size).toBe(names.length);
    expect(names).toEqual(
      expect.arrayContaining(["main/range/steam", "main/stenter/gas", "main/boiler/boiler"]),
    );
    expect(names).not.toContain("main/printer/electricity");
  });
});
