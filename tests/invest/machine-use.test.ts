import { beforeAll, describe, expect, it, vi } from "vitest";
import { costOf } from "../../src/invest/cost.js";
import { gainOf } from "../../src/invest/gain.js";
import { loadsOf } from "../../src/invest/loads.js";
import { machineUses, needsOf, usesIn } from "../../src/invest/machine-use.js";
import { bookOf, orderBook } from "../../src/invest/moved.js";
import type { Study, StudyOption } from "../../src/invest/study.js";
import { centralWorld, drawnWorld } from "../../src/invest/world.js";
import { AMOUNTS } from "../../src/steps/amounts.js";
import { type DemoMill, demoMill, demoStudy } from "./study-of-demo.js";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let mill: DemoMill;
let study: Study;

beforeAll(async () => {
  mill = await demoMill();
  study = demoStudy(mill);
});

const named = (name: string, of: Study = study): StudyOption => {
  const found = [of.carryOn, ...of.options].find((option) => option.name === name);
  if (found === undefined) throw new Error(`there is no option ${name}`);
  return found;
};

const hours = (of: Study, option: StudyOption, machine: string): number =>
  loadsOf(of, option, centralWorld()).find((load) => load.machine === machine)?.has ?? NaN;

describe("a machine that is bought", () => {
  it("adds its own hours at its own speed to those of the one there", () => {
    const own = 5800 * 0.88;
    expect(hours(study, named("existing calender"), "calender")).toBeCloseTo(own, 9);
    const added = 5800 * 0.85 * 1.15;
    expect(hours(study, named("second calender"), "calender")).toBeCloseTo(own + added, 9);
  });

  it("costs its standby at the price of electricity, and the carbon of it", () => {
    const { lines, tonnes } = costOf(study, named("second calender"), 12, centralWorld());
    const standby = lines.find(({ what }) => what === "standby.calender");
    // 11 kW for 900 h at 0.142 EUR/kWh, which grows by half a percent a year.
    expect(standby?.money[0]).toBe(0);
    expect(standby?.money[3]).toBeCloseTo(11 * 900 * 0.142 * 1.005 ** 3, 6);
    const none = { ...named("second calender"), adds: new Map() };
    const without = costOf(study, none, 12, centralWorld()).tonnes;
    const { all } = study.carryOn;
    const each =
      (all.get("scope-2-location")?.central ?? NaN) / (all.get("electricity")?.central ?? NaN);
    expect((tonnes[3] ?? NaN) - (without[3] ?? NaN)).toBeCloseTo((11 * 900 * each) / 1000, 9);
  });

  it("is not needed where the one there has room, and is where it has not", () => {
    const [need] = needsOf(study, study.project, 40);
    expect(need).toMatchObject({ machine: "calender", moved: 1, twin: "existing calender" });
    const { alone } = need!;
    expect(alone.asked / alone.has).toBeLessThan(0.6);
    expect(alone.peak).toBeGreaterThan(alone.asked / alone.has);
    const short = demoStudy(mill, (text) =>
      text.replace(
        /( {2}calender:\n {4}\{\n {6}hours: )\{ value: 5800, low: 5400, high: 6100/,
        "$1{ value: 1200, low: 1100, high: 1300",
      ),
    );
    const [needed] = needsOf(short, short.project, 40);
    expect(needed?.alone.full).toBeGreaterThan(0.9);
    expect(needed?.moved).toBeLessThan(0.9);
    // With the second one all lots find room.
    expect(bookOf(short, short.project, 12, centralWorld()).moved[12]).toBe(1);
  });
});

describe("use of machines", () => {
  it("never passes the hours there are, in any draw", () => {
    for (const option of [study.carryOn, ...study.options])
      for (let at = 0; at < 20; at++)
        for (const [, { has, runs }] of usesIn(study, option, 10, drawnWorld(at)))
          expect(runs).toBeLessThanOrEqual(has);
  });

  it("is told for the busiest month of the log", () => {
    const place = AMOUNTS.findIndex(({ name }) => name === "length");
    const months = new Map<string, number>();
    for (const { key, amounts } of mill.groups)
      if (key.own === "dye")
        months.set(key.month, (months.get(key.month) ?? 0) + (amounts[place] ?? 0));
    const [busiest = ""] = [...months].sort(([, a], [, b]) => b - a).map(([month]) => month);
    const printer = machineUses(study, study.carryOn, 1, 10).find(
      ({ machine }) => machine === "printer-2",
    )!;
    expect(printer.month).toBe(busiest);
    // Metres of a month a day, against those of the year a day: all dye lots pass this printer at one speed.
    const total = [...months.values()].reduce((sum, length) => sum + length, 0);
    const days = new Date(Number(busiest.slice(0, 4)), Number(busiest.slice(5)), 0).getDate();
    const times = (months.get(busiest)! / days / total) * 365;
    expect(printer.peak / (printer.asked / printer.has)).toBeCloseTo(times, 1);
  });
});

describe("orders beyond the hours of machines", () => {
  const grown = (text: string): string =>
    text.replace("growth: { value: 0.01, low: -0.04", "growth: { value: 0.04, low: -0.04");
  const price = (way: string) => (text: string) =>
    `${grown(text)}\nbeyond: { do: ${way}, price: { value: 6, exact: true, currency: EUR, date: 2026-10-01, tag: quote } }\n`;

  it("are cut to what every option can print, so that none earns by printing less", () => {
    const more = demoStudy(mill, grown);
    const world = centralWorld();
    const asked = orderBook(more, world, 12);
    const books = [more.carryOn, ...more.options].map(
      (option) => bookOf(more, option, 12, world).done[12] ?? NaN,
    );
    expect(new Set(books).size).toBe(1);
    expect(books[0]).toBeLessThan(asked);
    const [load] = [...usesIn(more, more.carryOn, 12, world)]
      .map(([, use]) => use.asked / use.has)
      .sort((a, b) => b - a);
    expect(load).toBeGreaterThan(1);
    const same = { ...more.carryOn, text: { ...more.carryOn.text, life: 12 } };
    expect(gainOf(more, same, world).worth).toBe(0);
  });

  it("cost their price where one is given, option by option", () => {
    const priced = demoStudy(mill, price("outside"));
    const world = centralWorld();
    const { lines, book } = costOf(priced, priced.carryOn, 12, world);
    const line = lines.find(({ what }) => what === "undone-m2");
    const undone = (book.asked[12] ?? 0) - (book.done[12] ?? 0);
    expect(undone).toBeGreaterThan(0);
    expect(line?.money[12]).toBeCloseTo(undone * priced.accepted * 6, 6);
    // Lots that move off the full printer make room.
    const { book: moved } = costOf(priced, named("existing calender", priced), 12, world);
    expect(moved.done[12]).toBeGreaterThan(book.done[12] ?? NaN);
  });
});
