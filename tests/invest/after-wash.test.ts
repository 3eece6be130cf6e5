import { beforeAll, describe, expect, it, vi } from "vitest";
import { afterWashOf } from "../../src/invest/after-wash.js";
import { costOf } from "../../src/invest/cost.js";
import { gainOf } from "../../src/invest/gain.js";
import type { Study } from "../../src/invest/study.js";
import { centralWorld } from "../../src/invest/world.js";
import { demoMill, demoStudy } from "./study-of-demo.js";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let study: Study;

beforeAll(async () => {
  study = demoStudy(await demoMill());
});

describe("options after an improved wash range", () => {
  it("bring with it what both bring together less what the range brings alone", () => {
    const { wash, options } = study.afterWash!;
    const world = centralWorld();
    const found = afterWashOf(study, 30);
    expect(found.map(({ name }) => name)).toEqual([
      "second calender",
      "existing calender",
      "stenter fixes",
    ]);
    options.forEach((both, i) => {
      const { life } = both.text;
      const range = { ...wash, text: { ...wash.text, life } };
      const together = gainOf(study, both, world).worth - gainOf(study, range, world).worth;
      expect(found[i]?.central).toBeCloseTo(together, 6);
    });
  });

  it("save less heat and water than beside the range as it is", () => {
    const { wash, options } = study.afterWash!;
    const world = centralWorld();
    const after = gainOf(study, options[0]!, world, costOf(study, wash, 12, world)).byHeading;
    const before = gainOf(study, study.project, world).byHeading;
    for (const heading of ["water", "heat"] as const) {
      expect(after.get(heading)?.[5]).toBeGreaterThan(0);
      expect(after.get(heading)?.[5]).toBeLessThan(before.get(heading)?.[5] ?? NaN);
    }
  });

  it("is not asked where no house has it improved", () => {
    expect(afterWashOf({ ...study, afterWash: undefined }, 30)).toEqual([]);
  });
});
