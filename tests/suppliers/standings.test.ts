import { describe, expect, it } from "vitest";
import type { CellDraws } from "../../src/suppliers/standardise.js";
import {
  asShown,
  asTold,
  isPlacedByUnsaid,
  placesOf,
  standingsOf,
} from "../../src/suppliers/standings.js";

const still = (...values: readonly (number | undefined)[]): CellDraws =>
  values.map((value) => (value === undefined ? undefined : new Float64Array(40).fill(value)));

function standings(counted: readonly CellDraws[], values = counted, weights = [0.4, 0.6]) {
  return standingsOf({
    aliases: ["A", "B", "C", "D"].slice(0, counted.length),
    weights,
    values,
    counted,
    // The most that anybody took, where somebody lacks a stratum.
    silent: weights.map((_, k) => {
      const there = counted.flatMap((cells) => (cells[k] === undefined ? [] : [cells[k]]));
      return there.length === counted.length
        ? undefined
        : there.reduce((most, one) => (one[0]! > most[0]! ? one : most));
    }),
    byMass: counted,
  });
}

describe("places", () => {
  it("go by what counts, and show the value beside it", () => {
    const { ranked } = standings([still(5, 5), still(2, 8)], [still(3, 3), still(2, 8)]);
    expect(
      ranked.map(({ alias, value, counted }) => [alias, value?.median, counted?.median]),
    ).toEqual([
      ["A", 3, 5],
      ["B", 5.6, 5.6],
    ]);
    expect(ranked.map(({ chances }) => chances)).toEqual([
      [1, 0],
      [0, 1],
    ]);
    expect(ranked.map(({ group, beforeNext }) => [group, beforeNext])).toEqual([
      [1, 1],
      [2, undefined],
    ]);
  });

  it("tell nobody apart whom meters do not bear out, and join the others across it", () => {
    const counted = [still(5, 5), still(3, 3), still(4, 4)];
    const all = standingsOf({
      aliases: ["A", "B", "C"],
      weights: [0.4, 0.6],
      values: counted,
      counted,
      silent: [undefined, undefined],
      byMass: counted,
      borne: [true, true, false],
    });
    expect(
      all.ranked.map(({ alias, group, unborne, beforeNext }) => [
        alias,
        group,
        unborne,
        beforeNext,
      ]),
    ).toEqual([
      ["B", 1, undefined, 1],
      ["C", undefined, true, undefined],
      ["A", 2, undefined, undefined],
    ]);
    expect(asShown(all.ranked).map(({ alias }) => alias)).toEqual(["A", "B", "C"]);
    expect(asTold(all).ranked.map(({ chances }) => chances === undefined)).toEqual([
      false,
      true,
      false,
    ]);
  });

  it("take a missing stratum at the most that anybody took there", () => {
    const { ranked } = standings([still(undefined, 1), still(7, 9), still(9, 8)]);
    expect(ranked[0]?.alias).toBe("A");
    expect(ranked[0]?.covered).toBe(0.6);
    expect(ranked[0]?.counted?.median).toBeCloseTo(0.4 * 9 + 0.6, 12);
    expect(ranked[0]?.value?.median).toBe(1);
  });

  it("show the chance with unsaid settings drawn beside that with them at their worst", () => {
    const { ranked } = standings([still(5, 5), still(4, 4)], [still(3, 3), still(4, 4)]);
    expect(
      ranked.map(({ alias, chances, chancesDrawn }) => [alias, chances![0], chancesDrawn![0]]),
    ).toEqual([
      ["B", 1, 0],
      ["A", 0, 1],
    ]);
    // 5 for 3 is less than twice, 7 is more.
    expect(ranked.map(isPlacedByUnsaid)).toEqual([false, false]);
    const [far] = standings([still(7, 7), still(8, 8)], [still(3, 3), still(4, 4)]).ranked;
    expect(isPlacedByUnsaid(far!)).toBe(true);
  });

  it("are not given to who covers less than half of the mix", () => {
    const { ranked, unranked } = standings([still(1, undefined), still(7, 2), still(9, 3)]);
    expect(ranked.map(({ alias }) => alias)).toEqual(["B", "C"]);
    expect(unranked.map(({ alias, covered }) => [alias, covered])).toEqual([["A", 0.4]]);
    expect(unranked[0]).not.toHaveProperty("chances");
  });

  it("are held against other assumptions", () => {
    const { others, leastTau } = standings([still(5, 5), still(2, 8)], [still(9, 9), still(2, 8)]);
    expect(others.map(({ id, places }) => [id, places])).toEqual([
      ["unsaid at typical", [2, 1]],
      ["common strata", [1, 2]],
      ["strata alike", [1.5, 1.5]],
      ["per kg", [1, 2]],
    ]);
    expect(leastTau).toBe(-1);
  });

  it("are shared where values are equal", () => {
    expect(placesOf([3, 1, 3, 2])).toEqual([3.5, 1, 3.5, 2]);
    const { ranked } = standings([still(4, 4), still(4, 4)]);
    expect(ranked.map(({ chances, group }) => [chances, group])).toEqual([
      [[0.5, 0.5], 1],
      [[0.5, 0.5], 1],
    ]);
  });
});
