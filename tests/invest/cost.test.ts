import { beforeAll, describe, expect, it, vi } from "vitest";
import { costOf, paidIn } from "../../src/invest/cost.js";
import { drawnOptions } from "../../src/invest/doubt.js";
import { drainCod } from "../../src/invest/drain.js";
import { leadTimes } from "../../src/invest/lead-time.js";
import type { Study } from "../../src/invest/study.js";
import { centralWorld, drawnWorld } from "../../src/invest/world.js";
import { demoMill, demoStudy } from "./study-of-demo.js";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let study: Study;

beforeAll(async () => {
  study = demoStudy(await demoMill());
});

describe("capital", () => {
  it("is paid again when what it bought is worn out before the study ends", () => {
    expect(paidIn({ year: 3, lasts: 8 }, 12)).toEqual([3, 11]);
    expect(paidIn({ year: 3, lasts: 8 }, 11)).toEqual([3]);
    expect(paidIn({ year: 0, lasts: 4 }, 12)).toEqual([0, 4, 8]);
    expect(paidIn({ year: 2, lasts: 20 }, 12)).toEqual([2]);
    expect(paidIn({ year: 2, lasts: undefined }, 12)).toEqual([2]);
    const { lines } = costOf(study, study.carryOn, 12, centralWorld());
    const overhaul = lines.find(({ what }) => what === "overhaul of the wash range");
    expect(overhaul?.money[3]).toBe(38000);
    expect(overhaul?.money[11]).toBe(38000);
    // One of eight years is used up at the end of year 12.
    expect(overhaul?.money[12]).toBeCloseTo((-38000 * 7) / 8, 6);
  });
});

describe("yearly lines", () => {
  it("that carrying on has word for word fall as lots move", () => {
    const { lines, book } = costOf(study, study.project, 12, centralWorld());
    const line = lines.find(({ what }) => what === "maintenance of steamer and range");
    expect(book.moved.slice(0, 4)).toEqual([0, 0.4, 0.8, 1]);
    expect(line?.money[1]).toBeCloseTo(14500 + 0.4 * (8200 - 14500), 6);
    expect(line?.money[2]).toBeCloseTo(14500 + 0.8 * (8200 - 14500), 6);
    expect(line?.money[3]).toBeCloseTo(8200, 6);
    // Its own lines are paid from the first year on.
    const felt = lines.find(({ what }) => what === "maintenance and felt of the calender");
    expect(felt?.money[1]).toBeCloseTo(5200, 6);
  });
});

describe("draws", () => {
  it("hold the discount rate, and keep its ends for sensitivity", () => {
    const rates = [0, 1, 2].map((at) => drawnWorld(at).of(study.discount));
    expect(rates).toEqual([0.07, 0.07, 0.07]);
    expect(study.discount.low).toBeLessThan(0.07);
    expect(study.discount.high).toBeGreaterThan(0.07);
  });

  it("count those that save both money and tonnes", () => {
    for (const { saves, above, tonnes, worth } of drawnOptions(study, study.options, 60)) {
      expect(saves).toBeLessThanOrEqual(above);
      if (tonnes.low > 0) expect(above - saves).toBeLessThanOrEqual(0.1 * worth.length);
    }
  });
});

describe("COD at the drain", () => {
  it("is that of the samples while nothing moves, and is held against the limit of the permit", () => {
    const still = drainCod(study, study.carryOn, 5, 40);
    expect(still.central).toBeCloseTo(1650, 6);
    const limit = { ...study.effluent.cod!, id: "limit", central: 1, draws: undefined };
    const strict = { ...study, effluent: { ...study.effluent, codLimit: limit } };
    expect(drainCod(strict, study.carryOn, 5, 40).above).toEqual({ count: 40, of: 40 });
    const open = { ...study, effluent: { ...study.effluent, codLimit: undefined } };
    expect(drainCod(open, study.carryOn, 5, 40).above).toBeUndefined();
  });
});

describe("lead time", () => {
  it("holds the hours for batch and store that the file gives, and no others", () => {
    const { dye, pigment } = leadTimes(study, study.project, 3, 60);
    expect(dye.given.low).toBeGreaterThan(2 + 6);
    expect(dye.given.high).toBeLessThan(10 + 14);
    expect(pigment.given.high).toBeLessThan(4);
    const waits = {
      dye: { batching: undefined, store: undefined },
      pigment: { batching: undefined, store: undefined },
    };
    const none = leadTimes({ ...study, waits }, study.project, 3, 60);
    expect(none.dye.given).toEqual({ low: 0, median: 0, high: 0 });
    expect((dye.total[2] ?? NaN) - (none.dye.total[2] ?? NaN)).toBeGreaterThan(10);
  });
});
