import { describe, expect, it } from "vitest";
import { LotReadingDesk } from "../../src/meters/lot-readings.js";
import { PLAIN_LOT } from "../account/plant-file.js";
import { smallMill } from "../report/compose/small-mill.js";

const blank = { water: undefined, steam: undefined, gas: undefined, electricity: undefined };

describe("LotReadingDesk", () => {
  it("adds readings up by site, month and route, for columns that the plant file tells of", () => {
    const desk = new LotReadingDesk(smallMill({ readings: { water_l: { machines: ["range"] } } }));
    const add = (lot: string, date: string, water: number | undefined): void => {
      desk.add({
        ...PLAIN_LOT,
        lot,
        date,
        route: "reactive",
        readings: { ...blank, water, steam: 9 },
      });
    };
    add("1", "2025-03-02", 100);
    add("2", "2025-03-20", 250);
    add("3", "2025-04-01", 70);
    add("4", "2025-04-02", undefined);
    const [water, ...more] = desk.found();
    expect(more).toEqual([]);
    expect(water?.column).toBe("water_l");
    expect(water?.sums.map(({ month, route, amount }) => [month, route, amount])).toEqual([
      ["2025-03", "reactive", 350],
      ["2025-04", "reactive", 70],
    ]);
    expect(water?.groups.reduce((sum, { lots }) => sum + lots, 0)).toBe(3);
  });

  it("finds nothing where no lot has a reading", () => {
    expect(new LotReadingDesk(smallMill({})).found()).toEqual([]);
  });
});
