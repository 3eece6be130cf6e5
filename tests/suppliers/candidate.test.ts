import { describe, expect, it } from "vitest";
import {
  type Candidate,
  candidateOf,
  evidenceDigest,
  isOwned,
} from "../../src/suppliers/candidate.js";
import { central, SHIPPED } from "../tools/shipped-factors.js";
import { houseOf } from "./made.js";

const AS_OF = "2026-11-25";
const house = houseOf("A");

function ready(given = house): Candidate {
  const made = candidateOf(given, SHIPPED, AS_OF);
  if (typeof made === "string") throw new Error(made);
  return made;
}

function leafOf({ program }: Candidate, factor: string) {
  return program.nodes.leaves().find(({ leaf }) => leaf.factor === factor)?.leaf;
}

describe("a supplier made ready", () => {
  it("stands on the reader's factors for fuels and grids, and says which gave way", () => {
    const pack = {
      ...house.pack,
      factors: house.pack.factors.map((one) =>
        one.id === "grid.PRT.intensity"
          ? {
              ...one,
              own: true,
              values: one.values.map((value) => ({
                ...value,
                spread: { shape: "fixed" as const, value: 0.01 },
              })),
            }
          : one,
      ),
    };
    const made = ready({ alias: "A", pack });
    expect(made.replaced).toEqual([
      { id: "grid.PRT.intensity", how: "own", value: 0.01, shipped: central("grid.PRT.intensity") },
    ]);
    expect(leafOf(made, "grid.PRT.intensity")?.spread.value).toBe(central("grid.PRT.intensity"));
  });

  it("keeps what the supplier stated of its own machines as factors", () => {
    const pack = {
      ...house.pack,
      factors: house.pack.factors.map((one) =>
        one.id === "wash-range.fresh-water"
          ? {
              ...one,
              own: true,
              values: one.values.map((value) => ({
                ...value,
                spread: { shape: "fixed" as const, value: 9 },
              })),
            }
          : one,
      ),
    };
    const made = ready({ alias: "A", pack });
    expect(made.replaced).toEqual([]);
    expect(leafOf(made, "wash-range.fresh-water")?.spread.value).toBe(9);
  });

  it("has streams of its own for machines and shares those of the world, whatever it is called", () => {
    const [one, renamed, other] = [
      ready(),
      ready(houseOf("A longer name")),
      ready(houseOf("B", { lots: [3, 15] })),
    ];
    const owned = ({ program }: Candidate): readonly string[] =>
      program.nodes.leaves().flatMap(({ leaf }) => (isOwned(leaf) ? [leaf.id] : []));
    const world = ({ program }: Candidate): readonly string[] =>
      program.nodes.leaves().flatMap(({ leaf }) => (isOwned(leaf) ? [] : [leaf.id]));
    expect(owned(renamed)).toEqual(owned(one));
    expect(owned(one).some((id) => owned(other).includes(id))).toBe(false);
    expect(world(one).filter((id) => world(other).includes(id))).toContain("grid.PRT.intensity");
  });

  it("is known again under another name", () => {
    expect(evidenceDigest(houseOf("A longer name").pack)).toBe(evidenceDigest(house.pack));
    expect(evidenceDigest(houseOf("A", { length: 310 }).pack)).not.toBe(evidenceDigest(house.pack));
  });

  it("uses one set of warming potentials", () => {
    const pack = { ...house.pack, plant: { ...house.pack.plant, gwp: "AR5" as const } };
    const ids = ready({ alias: "A", pack })
      .program.nodes.leaves()
      .map(({ leaf }) => leaf.factor);
    expect(ids.some((id) => id.startsWith("gwp.") && id.includes("AR5"))).toBe(false);
  });

  it("says why it cannot be worked out", () => {
    const pack = {
      ...house.pack,
      strata: house.pack.strata.map((one) => ({ ...one, route: "gone" })),
    };
    expect(candidateOf({ alias: "A", pack }, SHIPPED, AS_OF)).toContain("gone");
    const odd = {
      ...house.pack,
      plant: { ...house.pack.plant, routes: { x: { like: "reactive", machines: {} } } },
    };
    expect(typeof candidateOf({ alias: "A", pack: odd }, SHIPPED, AS_OF)).toBe("string");
  });
});
