import { describe, expect, it } from "vitest";
import { meterGaps, meterSums } from "../../src/suppliers/meter-sums.js";

const months = [
  { month: "2026-01", lots: 3, accepted: 100 },
  { month: "2026-02", lots: 9, accepted: 300 },
];
const read = (quantity: "water" | "electricity" | "gas", ...metered: readonly number[]) => ({
  quantity,
  unit: "x",
  months: metered.map((value, i) => ({ month: `2026-0${i + 1}`, metered: value })),
});

describe("site meters beside lots", () => {
  it("take the lots of the months that were read", () => {
    const pack = { months, meters: [read("water", 500), read("electricity", 90, 10)] };
    expect(meterSums(pack, (id) => (id === "water" ? 400 : 200))).toEqual([
      { quantity: "water", months: 1, metered: 500, lots: 100, area: 100 },
      { quantity: "electricity", months: 2, metered: 100, lots: 200, area: 400 },
    ]);
  });

  it("are added up where there are several, and left out where lots or readings are missing", () => {
    const meters = [read("water", 50, 50), read("water", 100, 0), read("gas", 5, 5)];
    const [sum, ...rest] = meterSums({ months, meters }, () => 400);
    expect([sum?.metered, rest]).toEqual([200, []]);
    expect(meterSums({ months, meters }, () => undefined)).toEqual([]);
    expect(meterSums({ months, meters: [] }, () => 400)).toEqual([]);
  });

  it("give the gap as a share of the meter, below 0 where lots come to more", () => {
    const gaps = meterGaps([
      { quantity: "water", months: 2, metered: 400, lots: 100, area: 1 },
      { quantity: "electricity", months: 2, metered: 100, lots: 150, area: 1 },
    ]);
    expect([gaps.get("water"), gaps.get("electricity"), gaps.get("gas")]).toEqual([
      0.75,
      -0.5,
      undefined,
    ]);
  });
});
