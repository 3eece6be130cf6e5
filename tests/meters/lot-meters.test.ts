import { describe, expect, it } from "vitest";
import { accountOf } from "../../src/account/account.js";
import { calibrated } from "../../src/account/calibration.js";
import { drawsOf, leafRange } from "../../src/account/draws.js";
import { type Program, writeProgram } from "../../src/account/program.js";
import { type Group, Ledger } from "../../src/ledger/ledger.js";
import type { Lot } from "../../src/log/lot.js";
import { calibrate } from "../../src/meters/calibrate.js";
import { lotsAboveMeter } from "../../src/meters/faults.js";
import type { MeterInUse } from "../../src/meters/in-use.js";
import { lotMeters } from "../../src/meters/lot-meters.js";
import { LotReadingDesk } from "../../src/meters/lot-readings.js";
import { amountsUnder, meteredAt } from "../../src/meters/metered-flows.js";
import { quantile } from "../../src/numbers/quantiles.js";
import { PLAIN_LOT } from "../account/plant-file.js";
import { smallMill } from "../report/compose/small-mill.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { MONTHS } from "./made.js";

const DRAWS = 1000;
const READINGS = { water_l: { machines: ["range"], accuracy: 1 } };

interface Made {
  readonly program: Program;
  readonly groups: readonly Group[];
  readonly meters: readonly MeterInUse[];
  readonly told: number;
}

/** 240 lots, half of them dyed; every fourth has `water_l`, `times` what the model has at its medians. */
function made(times: number, readings: object = READINGS): Made {
  const plant = smallMill({ readings });
  const lots = MONTHS.flatMap((month) =>
    ["pigment-calender", "reactive"].flatMap((route) =>
      Array.from({ length: 10 }, (_, at): Lot => ({
        ...PLAIN_LOT,
        lot: `${month} ${route} ${at}`,
        date: `${month}-15`,
        route,
        length: 50,
      })),
    ),
  );
  const ledger = new Ledger();
  for (const lot of lots) ledger.add(lot, plant);
  const { groups } = ledger.settled();
  const program = writeProgram(plant, SHIPPED, groups, "2026-11-25");
  const medians = program.nodes.evaluate((leaf) => leafRange(leaf).median);
  const dyed = amountsUnder(program, groups, () => 1);
  const what = { site: "main", quantity: "water" as const, machines: ["range"] };
  const all = [...meteredAt(program, what, dyed, medians).values()].reduce((a, b) => a + b, 0);
  const told = all / (lots.length / 2);
  const desk = new LotReadingDesk(plant);
  lots.forEach((lot, at) => {
    const water = at % 4 === 0 ? times * told : undefined;
    desk.add({ ...lot, readings: { ...lot.readings, water } });
  });
  const meters = lotMeters({ plant, program, read: desk.found(), netPerGross: 0.9 });
  return { program, groups, meters, told };
}

describe("lotMeters", () => {
  const { program, groups, meters, told } = made(1.4);

  it("counts the lots that pass the machine, and none of the other route", () => {
    const [meter, ...more] = meters;
    expect(more).toEqual([]);
    expect(meter).toMatchObject({ name: "water_l of lots", machines: ["range"] });
    expect(meter?.stream.leaf).toBeUndefined();
    const modelled = meter?.months.reduce((sum, month) => sum + month.modelled, 0) ?? NaN;
    const metered = meter?.months.reduce((sum, month) => sum + month.metered, 0) ?? NaN;
    expect(metered / modelled).toBeCloseTo(1.4, 6);
    expect(modelled / told).toBeCloseTo(meter?.lots ?? NaN, 6);
  });

  it("brings the model of lots that were read to their reading, and the machine with it", () => {
    const found = calibrate({ program, groups, meters, draws: DRAWS, seed: 1 });
    const [state] = found?.states ?? [];
    expect(state).toMatchObject({ machine: "range", carrier: "water", by: "measured" });
    expect(quantile(state!.corrections, 0.5)).toBeCloseTo(1.4, 1);
    const [meter] = found?.meters ?? [];
    expect(quantile(meter!.after, 0.5) / quantile(meter!.reading, 0.5)).toBeCloseTo(1, 2);
    const [before, after] = [program, calibrated(program, found!.calibration)].map((one) =>
      quantile(accountOf(one, DRAWS, 1).indicators.dye.get("water")!, 0.5),
    );
    expect(after! / before!).toBeGreaterThan(1.2);
  });

  it("takes gas read gross as net, and nothing of a column that the plant file does not tell of", () => {
    expect(made(1.4, {}).meters).toEqual([]);
    const { program: two } = made(1);
    expect(drawsOf(two.nodes, 2, 1).count).toBe(2);
  });
});

describe("lotsAboveMeter", () => {
  const { meters: lots } = made(1.4);
  const [read] = lots;
  const meter = (change: Partial<MeterInUse>, share: number): MeterInUse => ({
    ...read!,
    name: "main",
    months: read!.months.map((month) => ({ ...month, metered: share * month.metered })),
    ...change,
  });

  it("names a meter that lots pass, with the months and what to look at", () => {
    const [fault, ...more] = lotsAboveMeter([meter({}, 0.8)], lots);
    expect(more).toEqual([]);
    expect(fault).toMatchObject({ code: "lots-above-meter", value: "main", severity: "warning" });
    expect(fault?.expected).toContain("2025-01 (1.25 times)");
    expect(fault?.remedy).toContain("readings");
  });

  it("says nothing where lots stay below, or the meter counts other machines", () => {
    expect(lotsAboveMeter([meter({}, 1.2)], lots)).toEqual([]);
    expect(lotsAboveMeter([meter({ machines: ["printer"] }, 0.5)], lots)).toEqual([]);
    const { machines: _, ...site } = meter({}, 0.5);
    expect(lotsAboveMeter([site], lots)).toHaveLength(1);
  });
});
