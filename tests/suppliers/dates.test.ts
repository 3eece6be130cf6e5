import { describe, expect, it } from "vitest";
import { dateFaults } from "../../src/suppliers/dates.js";
import { packOf } from "./made.js";

const pack = packOf();

describe("days of a pack", () => {
  it("fit each other where it was sealed", () => {
    expect(dateFaults(pack, "2026-11-25")).toEqual([]);
    expect(dateFaults({ ...pack, made: "2099-01-01" }, undefined)).toEqual([]);
  });

  it("are named where they do not", () => {
    const places = (change: object): readonly string[] =>
      dateFaults({ ...pack, ...change }, "2026-11-25").map(({ place }) => place);
    expect(places({ made: "2026-11-26" })).toEqual(["/pack/made"]);
    expect(places({ period: { from: pack.period.to, to: "2020-01-01" } })).toContain(
      "/pack/period",
    );
    expect(places({ strata: [{ ...pack.strata[0]!, from: "2019-01" }] })).toEqual([
      "/pack/strata/0/from",
    ]);
    expect(places({ strata: [{ ...pack.strata[0]!, settings: "2030-01-01" }] })).toEqual([
      "/pack/strata/0/settings",
    ]);
  });
});
