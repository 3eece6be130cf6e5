import { describe, expect, it } from "vitest";
import { costOf } from "../../src/invest/cost.js";
import { addedBy, avoidedBy } from "../../src/invest/avoidable.js";
import { goneFlows } from "../../src/invest/sums-of-flows.js";
import { centralWorld } from "../../src/invest/world.js";
import { demoMill, demoStudy } from "./study-of-demo.js";

const charged = (running: number, waiting = 0) => ({
  running: Float64Array.of(running),
  waiting: Float64Array.of(waiting),
});

describe("what lots leave behind for good", () => {
  it("is counted kind by kind of machine, before anything that comes elsewhere is set against it", () => {
    const dye = new Map([
      [
        "machine.hours",
        new Map([
          ["printer-2", charged(100)],
          ["steamer", charged(40, 6)],
          ["pad", charged(10)],
        ]),
      ],
    ]);
    const pigment = new Map([
      [
        "machine.hours",
        new Map([
          ["printer-1", charged(90)],
          ["calender", charged(35)],
          ["pad", charged(12)],
        ]),
      ],
    ]);
    const kinds = new Map([
      ["printer-1", "printer"],
      ["printer-2", "printer"],
    ]);
    const gone = (removed: readonly string[]): number =>
      goneFlows(dye, pigment, { removed: new Set(removed), kinds }, "x").get("machine.hours")
        ?.central ?? NaN;
    // 10 of printing and 40 of steaming; padding asks for more than before; fixing does not count against it.
    expect(gone([])).toBe(50);
    expect(gone(["steamer"])).toBe(56);
    expect(avoidedBy(charged(40, 6), false)[0]).toBe(40);
    expect(addedBy(charged(40, 6))[0]).toBe(46);
  });

  it("is paid for by its share, whatever the new route asks for", async () => {
    const study = demoStudy(await demoMill());
    const option = study.options.find(({ name }) => name === "existing calender")!;
    const hours = (share: number): number =>
      costOf(study, option, 5, centralWorld(new Map([["stays.labour", share]]))).quantities.get(
        "machine.hours",
      )?.[5] ?? NaN;
    const { done, moved } = costOf(study, option, 5, centralWorld()).book;
    const gone = option.moving.reduce(
      (sum, each) => sum + each.share.central * (each.gone.get("machine.hours")?.central ?? 0),
      0,
    );
    expect(gone).toBeGreaterThan(0);
    const scale = (done[5] ?? NaN) * (moved[5] ?? NaN);
    expect(hours(0.5) - hours(0)).toBeCloseTo(0.5 * scale * gone, 6);
    expect(hours(1) - hours(0)).toBeCloseTo(scale * gone, 6);
  });
}, 60_000);
