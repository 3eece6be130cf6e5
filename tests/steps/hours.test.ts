import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import {
  heldTerms,
  hoursByDwell,
  hoursBySpeed,
  type HourPart,
  perHour,
  powerTerms,
  runBySpeed,
  waiting,
  waitingHours,
} from "../../src/steps/hours.js";
import { pad } from "../../src/steps/pad.js";
import { stenterCure } from "../../src/steps/stenter.js";
import { amountOf, type Columns, contextFor, flowsOf, LOT, valueOf } from "./context.js";

function sum(parts: readonly HourPart[], lots: readonly Columns[] = [LOT]): number {
  return parts.reduce((all, { amount, rate }) => all + amountOf(amount, lots) * valueOf(rate), 0);
}

describe("hours", () => {
  // By hand: 1000 m at 25 m/min take 40 min.
  it("are set-up and length over speed", () => {
    const context = contextFor(pad, { settings: { speed: 25, setup: 0.1 } });
    expect(sum(hoursBySpeed(context))).toBeCloseTo(0.1 + 2 / 3, 12);
    expect(sum(runBySpeed(context))).toBeCloseTo(2 / 3, 12);
  });

  const fixing = { dwell: 180, contact: 30, setup: 0.1 };

  // By hand: every metre is 180 s under 30 m of machine, 10 m/min: 1000 m take 100 min.
  it("are set-up and length times dwell over contact", () => {
    const context = contextFor(stenterCure, { settings: fixing });
    expect(sum(hoursByDwell(context))).toBeCloseTo(0.1 + 100 / 60, 12);
  });

  it("let a logged dwell rule over a logged speed, and a logged speed over the setting", () => {
    const context = contextFor(stenterCure, { settings: fixing, takes: ["dwell", "speed"] });
    const lots = [LOT, { ...LOT, speed: 20 }, { ...LOT, dwell: 90, speed: 20 }];
    expect(sum(hoursByDwell(context), lots)).toBeCloseTo(0.3 + 100 / 60 + 50 / 60 + 50 / 60, 12);
    expect(sum(hoursByDwell(context), [{ ...LOT, dwell: 360, speed: 20 }])).toBeCloseTo(
      0.1 + 200 / 60,
      12,
    );
  });

  it("take no column that belongs to another step", () => {
    const context = contextFor(stenterCure, { settings: fixing });
    expect(sum(hoursByDwell(context), [{ ...LOT, dwell: 90, speed: 20 }])).toBeCloseTo(
      0.1 + 100 / 60,
      12,
    );
  });

  it("turn into flows by a rate per hour", () => {
    const hours = runBySpeed(contextFor(pad, { settings: { speed: 25 } }));
    const [part] = perHour("loss", hours, constant("loss", 36, "MJ/h"));
    expect(valueOf(part!.rate)).toBeCloseTo(36 / 1500, 12);
    expect(part!.rate.unit).toBe("MJ/m");
  });

  // By hand: 6 kW over 40 min are 4 kWh; a quarter hour waiting per hour is 10 min, 0.5 kWh at half power.
  it("draw power and hold machine and crew, longer when it waits hot", () => {
    const context = contextFor(pad, { settings: { speed: 25, crew: 1.5 } });
    const hours = runBySpeed(context);
    const idle = waitingHours(hours, constant("idle", 0.25));
    expect(sum(idle)).toBeCloseTo(1 / 6, 12);
    expect(flowsOf(powerTerms(hours, constant("power", 6, "kW")))("electricity")).toBeCloseTo(
      4,
      12,
    );
    expect(flowsOf(powerTerms(idle, constant("power", 3, "kW")))("electricity")).toBeCloseTo(
      0.5,
      12,
    );
    const held = flowsOf([...heldTerms(context, hours), ...waiting(heldTerms(context, idle))]);
    expect(held("machine.hours")).toBeCloseTo(5 / 6, 12);
    expect(held("labour.hours")).toBeCloseTo(1.25, 12);
  });

  it("are marked where a machine waits, and not where it runs", () => {
    const context = contextFor(pad);
    const terms = heldTerms(context, runBySpeed(context));
    expect(terms.map(({ part }) => part)).toEqual([undefined, undefined]);
    expect(waiting(terms)).toEqual(terms.map((term) => ({ ...term, part: "waiting" })));
  });
});
