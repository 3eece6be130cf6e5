import { beforeAll, describe, expect, it, vi } from "vitest";
import { dueAnyway, withoutSpared } from "../../src/invest/due-anyway.js";
import { inkLitres, worthBeside } from "../../src/invest/ink-volume.js";
import { gainOf } from "../../src/invest/gain.js";
import type { Study } from "../../src/invest/study.js";
import { centralWorld } from "../../src/invest/world.js";
import { demoMill, demoStudy } from "./study-of-demo.js";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let study: Study;

beforeAll(async () => {
  study = demoStudy(await demoMill());
});

describe("capital of carrying on", () => {
  it("comes round by round, and at its present value less what is left", () => {
    const { lines, present } = dueAnyway(study, 12);
    expect(lines.map(({ line, years }) => [line.price.central, ...years])).toEqual([
      [64000, 2],
      [38000, 3, 11],
      [21000, 5, 11],
    ]);
    const paid =
      64000 / 1.07 ** 2 + 38000 / 1.07 ** 3 + 21000 / 1.07 ** 5 + (38000 + 21000) / 1.07 ** 11;
    // At the end of year 12 are left: 10 of 20 years, 7 of 8, 5 of 6.
    const left = (64000 * 10) / 20 + (38000 * 7) / 8 + (21000 * 5) / 6;
    expect(present).toBeCloseTo(paid - left / 1.07 ** 12, 6);
  });

  it("is taken out of every option alike for the same life", () => {
    const without = withoutSpared(study);
    for (const option of study.options) {
      const { present } = dueAnyway(study, option.text.life);
      const worth = gainOf(study, option, centralWorld()).worth;
      expect(worth - (without.get(option.name) ?? NaN)).toBeCloseTo(present, 6);
    }
  });
});

describe("pigment ink", () => {
  it("is worth its litres where carrying on pays another price", () => {
    const [now] = inkLitres(study);
    const worth = gainOf(study, study.project, centralWorld()).worth;
    const saved = (now?.years ?? []).reduce((sum, each, i) => sum + each / 1.07 ** (i + 1), 0);
    expect(worthBeside(study, 12.9 + 2) - worth).toBeCloseTo(2 * saved, 4);
  });
});
