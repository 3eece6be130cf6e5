import { rmSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { assess, type AssessOptions } from "../../src/cli/assess.js";
import { type Press, startPress } from "../../src/cli/press.js";
import { emptyFolders } from "../tools/command.js";
import { changed, LATE, millIn } from "./mills.js";

// A thread takes a moment to start on a busy machine.
vi.setConfig({ testTimeout: 120_000 });

const emptyFolder = emptyFolders();
let press: Press | undefined;

afterEach(async () => {
  await press?.stop();
  press = undefined;
});

const SETS = ["sites.main.place=NOR", "rejects=2"];

const options = (mill: string, set = SETS): AssessOptions => ({
  plant: join(mill, "plant.yaml"),
  asOf: LATE,
  per: "m2",
  draws: 200,
  seed: 1,
  set,
});

function unmetered(): string {
  const mill = millIn(emptyFolder());
  rmSync(join(mill, "meters.csv"));
  return mill;
}

/** Press that notes what it hands over. */
function watched(mill: string, set = SETS): { readonly press: Press; readonly handed: unknown[] } {
  const { plant } = options(mill);
  const started = startPress({ asked: { plant, set }, draws: false, pdf: false });
  press = started;
  const handed: unknown[] = [];
  const play: Press["play"] = async (setting) => {
    const played = await started.play(setting);
    handed.push(played);
    return played;
  };
  return { press: { ...started, play }, handed };
}

describe("a press", () => {
  it("works scenarios out to the same last bit as the command itself would", async () => {
    const mill = unmetered();
    const here = await assess([], options(mill));
    const { press: aside, handed } = watched(mill);
    const there = await assess([], options(mill), undefined, aside);
    expect(handed).toEqual([expect.objectContaining({ draws: 200 })]);
    expect(here.assessment?.input.scenarios?.played).toHaveLength(1);
    expect(there.assessment?.input.scenarios).toEqual(here.assessment?.input.scenarios);
  });

  it("works them out to the same last bit with corrections by meters", async () => {
    const mill = millIn(emptyFolder());
    const here = await assess([], options(mill));
    const { press: aside, handed } = watched(mill);
    const there = await assess([], options(mill), undefined, aside);
    expect(handed).toEqual([expect.objectContaining({ draws: 200 })]);
    expect(here.assessment?.input.calibrated?.states.length).toBeGreaterThan(0);
    expect(there.assessment?.input.scenarios).toEqual(here.assessment?.input.scenarios);
  });

  it("hands nothing over where a scenario leaves no area, so that the command can say so", async () => {
    const mill = unmetered();
    changed(mill, "log.csv", (text) => text.replaceAll(/,(4\.5|11\.0),/g, ",120,"));
    const { press: aside, handed } = watched(mill, ["rejects=20"]);
    const { assessment, problems } = await assess(
      [],
      options(mill, ["rejects=20"]),
      undefined,
      aside,
    );
    expect(handed).toEqual([undefined]);
    expect(assessment).toBeUndefined();
    expect(problems).toMatchObject([{ code: "scenario-without-area", severity: "refused" }]);
  });
});
