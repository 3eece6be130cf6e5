import { describe, expect, it } from "vitest";
import { lotOfCells, numberIn, textIn } from "../../src/log/lot-of-cells.js";

const PLACE = { file: "log.csv", line: 7 };

describe("lotOfCells", () => {
  it("leaves absent what is blank, and never makes it zero", () => {
    const lot = lotOfCells({ lot: "L-1", gsm: 140 }, [], "main", PLACE);
    expect(lot).toMatchObject({
      lot: "L-1",
      gsm: 140,
      site: "main",
      client: "",
      note: "",
      place: PLACE,
    });
    expect([lot.rejected, lot.ink, lot.coverage, lot.baths, lot.speed]).toEqual(
      new Array(5).fill(undefined),
    );
    expect(Object.values(lot.readings)).toEqual(new Array(4).fill(undefined));
    expect(Object.values(lot.fastness)).toEqual(new Array(3).fill(undefined));
  });

  it.each([
    ["", "", "production"],
    ["", "L-0", "reprint"],
    ["production", "L-0", "production"],
    ["overhead", "", "overhead"],
    ["reprint", "", "reprint"],
  ])("with kind %j and reprint_of %j is %s", (kind, of, expected) => {
    const lot = lotOfCells({ kind, reprint_of: of }, [], "main", PLACE);
    expect(lot.kind).toBe(expected);
    expect(lot.reprintOf).toBe(of);
  });

  it("puts each column into its own place", () => {
    const names = {
      ...{ gsm: 1, width_m: 2, length_m: 3, rejected_m: 4, ink_ml: 5, coverage_pct: 6 },
      ...{ pickup_pct: 7, fix_temp_c: 8, dwell_s: 9, liquor_ratio: 10, baths: 11, speed_m_min: 12 },
      ...{ electricity_kwh: 13, water_l: 14, gas_kwh: 15, steam_kg: 16 },
      ...{ rub_dry: 17, rub_wet: 18, wash_fastness: 19 },
    };
    expect(lotOfCells(names, [], "main", PLACE)).toMatchObject({
      ...{ gsm: 1, width: 2, length: 3, rejected: 4, ink: 5, coverage: 6, pickup: 7, fixTemp: 8 },
      ...{ dwell: 9, liquorRatio: 10, baths: 11, speed: 12 },
      readings: { electricity: 13, water: 14, gas: 15, steam: 16 },
      fastness: { rubDry: 17, rubWet: 18, wash: 19 },
    });
  });
});

describe("textIn and numberIn", () => {
  it("take a value of their own sort, and nothing for a blank", () => {
    const values = { lot: "L-1", gsm: 140 };
    expect([textIn(values, "lot"), textIn(values, "note")]).toEqual(["L-1", ""]);
    expect([numberIn(values, "gsm"), numberIn(values, "lot"), numberIn(values, "ink_ml")]).toEqual([
      140,
      undefined,
      undefined,
    ]);
  });
});
