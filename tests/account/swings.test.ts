import { describe, expect, it } from "vitest";
import { writeProgram } from "../../src/account/program.js";
import { swingsOf } from "../../src/account/swings.js";
import { Ledger } from "../../src/ledger/ledger.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { atFence, byCalender, byDye } from "./by-hand.js";
import {
  EXACT_MILL,
  exactly,
  type MillFile,
  PLAIN_LOT,
  plantFrom,
  SETTINGS,
} from "./exact-mill.js";

/** The exact mill with ends on some numbers. */
function doubted(ends: Readonly<Record<string, readonly [number, number]>>): MillFile {
  const settings = exactly(SETTINGS);
  for (const [id, [low, high]] of Object.entries(ends)) {
    settings[id] = { value: SETTINGS[id], low, high };
  }
  return {
    ...EXACT_MILL,
    sites: { main: { ...EXACT_MILL.sites.main, settings } },
  };
}

function swings(file: MillFile) {
  const plant = plantFrom(file);
  const ledger = new Ledger();
  ledger.add(PLAIN_LOT, plant);
  const program = writeProgram(plant, SHIPPED, ledger.settled().groups, "2026-11-25");
  const found = swingsOf(program, ["water"]).get("water");
  if (found === undefined) throw new Error("no swings");
  return found;
}

const LOT = {
  length: 1000,
  width: 1.6,
  gsm: 140,
  cotton: 1,
  polyester: 0,
  pickup: 0.7,
  ink: 16,
} as const;

describe("swingsOf", () => {
  it("has the saving of the hand where nothing is in doubt", () => {
    const { base, factors } = swings(EXACT_MILL);
    const wanted = 1 - atFence(byCalender(LOT)).water / atFence(byDye(LOT)).water;
    expect(base).toBeCloseTo(wanted, 9);
    expect(factors).toEqual([]);
  });

  it("moves one factor at a time, the widest first, and leaves out what moves nothing", () => {
    const { factors } = swings(
      doubted({
        "printer.belt-water": [100, 140],
        "wash-range.fresh-water": [10, 40],
        "calender.standing": [10, 20],
      }),
    );
    expect(factors.map(({ factor }) => factor.split(" @ ")[0])).toEqual([
      "wash-range.fresh-water",
      "printer.belt-water",
    ]);
    const [fresh, belt] = factors;
    if (fresh === undefined || belt === undefined) throw new Error("no factors");
    // More wash water on the dye arm alone: a larger saving. More belt water on both arms: a smaller one.
    expect(fresh.high.saving).toBeGreaterThan(fresh.low.saving);
    expect(belt.high.saving).toBeLessThan(belt.low.saving);
    expect(fresh.own).toBe(true);
    expect(fresh.width).toBeCloseTo(fresh.high.saving - fresh.low.saving, 12);
    expect(fresh.low.value).toBeGreaterThan(10);
    expect(fresh.high.value).toBeLessThan(40);
  });
});
