import { describe, expect, it } from "vitest";
import { type Candidate, candidateOf } from "../../src/suppliers/candidate.js";
import { drawShelf } from "../../src/suppliers/draw-shelf.js";
import { cellsOf, drawnOf, puttingTogether } from "../../src/suppliers/drawn.js";
import { gateOf } from "../../src/suppliers/gate.js";
import { pooledMix } from "../../src/suppliers/reference.js";
import { endsCounted, endsUnsaid } from "../../src/suppliers/unstated.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { houseOf } from "./made.js";

const house = houseOf("A", { lots: [6, 6] });
const ready = (routes = house.pack.boundary.routes): Candidate =>
  candidateOf(
    { alias: "A", pack: { ...house.pack, boundary: { ...house.pack.boundary, routes } } },
    SHIPPED,
    "2026-11-25",
  ) as Candidate;
const ASK = {
  ids: ["water"] as const,
  draws: 100,
  placeDraws: 100,
  seed: 1,
  counted: endsCounted([ready().program], SHIPPED),
  silent: endsUnsaid(SHIPPED),
  keep: drawShelf(500),
};

describe("draws of a supplier", () => {
  it("count what was not said against it, in every draw", () => {
    const candidate = ready();
    const mix = pooledMix([candidate.areas]);
    const drawn = drawnOf(candidate, gateOf([candidate], []), mix, ASK);
    const own = cellsOf(drawn.value, "water", drawn.holes, "accepted");
    const held = cellsOf(drawn.counted.get("water")!, "water", drawn.holes, "accepted");
    own.forEach((draws, k) => {
      const more = [...draws!].filter((value, i) => held[k]![i]! >= value).length;
      expect(more).toBeGreaterThanOrEqual(95);
    });
    expect(drawn.crude.get("water")?.length).toBe(100);
  });

  it("give no value where a step is left out that cloth needs", () => {
    const whole = ready();
    const mix = pooledMix([whole.areas]);
    const holed = ready(
      house.pack.boundary.routes.map((route) => ({
        ...route,
        steps: route.steps.filter(({ role }) => role !== "wash"),
      })),
    );
    const drawn = drawnOf(holed, gateOf([holed, whole], []), mix, ASK);
    const at = mix.strata.findIndex(({ classes }) => classes.route === "reactive");
    expect(drawn.holes[at]).toBe("washing");
    const cells = cellsOf(drawn.value, "water", drawn.holes, "accepted");
    expect(cells[at]).toBeUndefined();
    expect(cells.filter((cell) => cell !== undefined)).toHaveLength(mix.strata.length - 1);
  });

  it("can be put together to coarser strata, and one hole leaves none of it", () => {
    const candidate = ready();
    const mix = pooledMix([candidate.areas]);
    const drawn = drawnOf(candidate, gateOf([candidate], []), mix, ASK);
    const one = puttingTogether(
      drawn,
      mix.strata.map(() => 0),
      1,
    );
    const [all] = cellsOf(one.value, "water", one.holes, "accepted");
    // Put together, all strata come to the value as it stands but for the doubt of the sample.
    const ratios = [...all!].map((value, i) => value / drawn.crude.get("water")![i]!).sort();
    expect(ratios[50]).toBeCloseTo(1, 1);
    expect(ratios[0]).not.toBeCloseTo(1, 3);
    const holed = puttingTogether(
      { ...drawn, holes: mix.strata.map((_, k) => (k === 0 ? "washing" : undefined)) },
      mix.strata.map(() => 0),
      1,
    );
    expect(cellsOf(holed.value, "water", holed.holes, "accepted")).toEqual([undefined]);
  });

  it("are the same for values and places up to the fewer draws, world factors drawn once", () => {
    const candidate = ready();
    const mix = pooledMix([candidate.areas]);
    const fewer = drawnOf(candidate, gateOf([candidate], []), mix, { ...ASK, placeDraws: 40 });
    const whole = drawnOf(candidate, gateOf([candidate], []), mix, { ...ASK, keep: drawShelf(1) });
    const [few, all] = [fewer, whole].map(
      (one) => one.counted.get("water")!.totals.get("water")![0]!,
    );
    expect(few!.length).toBe(40);
    expect([...few!]).toEqual([...all!.subarray(0, 40)]);
  });
});
