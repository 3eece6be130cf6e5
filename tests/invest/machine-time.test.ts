import { beforeAll, describe, expect, it, vi } from "vitest";
import { gainOf } from "../../src/invest/gain.js";
import { atOwnSpeed, heldLonger, secondsWorth } from "../../src/invest/machine-time.js";
import { reprinted } from "../../src/invest/loads.js";
import type { Study, StudyOption } from "../../src/invest/study.js";
import { centralWorld } from "../../src/invest/world.js";
import { demoMill, demoStudy } from "./study-of-demo.js";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let study: Study;

beforeAll(async () => {
  study = demoStudy(await demoMill());
});

const labour = (option: StudyOption): number =>
  gainOf(study, option, centralWorld()).byHeading.get("labour")?.[3] ?? NaN;

describe("seconds on a machine", () => {
  it("cost their hours in labour, 24 EUR each", () => {
    const { project, level, growth } = study;
    const more = heldLonger(project, "calender", 3);
    const orders = level.central * (1 + growth.central) ** 3;
    const again = reprinted(study, project, centralWorld());
    const metres = project.moving.reduce(
      (sum, { share, length }) => sum + share.central * length,
      0,
    );
    expect(labour(project) - labour(more)).toBeCloseTo(
      (24 * again * orders * 3 * metres) / 3600,
      4,
    );
    for (const { comes } of more.moving)
      expect(comes.get("machine.hours")?.draws).toHaveLength(study.draws);
  });

  it("are worth as much one way as the other while hours are left", () => {
    const { more, less } = secondsWorth(study, study.project, "calender");
    expect(more).toBeLessThan(0);
    expect(less).toBeCloseTo(-more, 6);
  });

  it("fall with the speed of the machine that is bought", () => {
    const fast = atOwnSpeed(study.project)!;
    study.project.moving.forEach(({ comesHours }, i) => {
      const before = comesHours.get("calender")?.central ?? NaN;
      expect(fast.moving[i]?.comesHours.get("calender")?.central).toBeCloseTo(before / 1.15, 9);
    });
    expect(labour(fast)).toBeGreaterThan(labour(study.project));
    const twin = study.options.find(({ name }) => name === "existing calender")!;
    expect(atOwnSpeed(twin)).toBeUndefined();
  });
});
