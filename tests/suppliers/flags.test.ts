import { describe, expect, it } from "vitest";
import { type Candidate, candidateOf } from "../../src/suppliers/candidate.js";
import { type FlagId, FLAGS, flagsOf } from "../../src/suppliers/flags.js";
import type { Pack } from "../../src/suppliers/schema.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { houseOf } from "./made.js";

const metered = houseOf("A");
const house = { ...metered, pack: { ...metered.pack, meters: [] as Pack["meters"] } };
const MONTHS = Array.from({ length: 12 }, (_, i) => `2026-${String(i + 1).padStart(2, "0")}`);

function candidate(change: Partial<Pack> = {}): Candidate {
  return candidateOf(
    { alias: "A", pack: { ...house.pack, ...change } },
    SHIPPED,
    "2026-11-25",
  ) as Candidate;
}

function outcome(id: FlagId, change: Partial<Pack> = {}): string {
  const own = candidate(change);
  return flagsOf(own, [own]).find((flag) => flag.id === id)!.outcome;
}

const meter = (
  values: readonly number[],
  quantity: "water" | "electricity" = "electricity",
): Partial<Pack> => ({
  meters: [
    {
      quantity,
      unit: quantity === "water" ? "m³" : "kWh",
      months: MONTHS.map((month, i) => ({ month, metered: values[i % values.length]! })),
    },
  ],
});

describe("checks of suppliers", () => {
  it("are all made, in their order", () => {
    expect(flagsOf(candidate(), [candidate()]).map(({ id }) => id)).toEqual(FLAGS);
  });

  it.each<[FlagId, Partial<Pack>, Partial<Pack>]>([
    ["months", { months: house.pack.months.slice(0, 5) }, {}],
    ["rows set aside", { counts: { ...house.pack.counts, rows: 100, aside: 8 } }, {}],
    [
      "joined strata",
      { strata: house.pack.strata.map((one) => ({ ...one, weight: "other" })) },
      {},
    ],
    ["all accepted", { totals: { ...house.pack.totals, accepted: house.pack.totals.printed } }, {}],
    ["meters constant", meter([15000]), meter([15123, 17250, 13870])],
    ["meters constant", meter([15000, 15010, 14990]), meter([15123, 17250, 13870])],
    ["meters round", meter([15000, 17000, 21000]), meter([15123, 17250, 13870])],
    ["meters above", meter([900, 1100], "water"), meter([0.4, 0.5], "water")],
    ["meters below", meter([0.1, 0.08], "water"), meter([900, 1100], "water")],
    [
      "more out than in",
      {
        figures: house.pack.figures.map((one) =>
          one.indicator === "discharged" ? { ...one, median: 1e6 } : one,
        ),
      },
      {},
    ],
    [
      "few months carry",
      { months: house.pack.months.map((one, i) => ({ ...one, accepted: i < 3 ? 5000 : 10 })) },
      {},
    ],
  ])("ask after %s where it shows, and not where it does not", (id, shown, plain) => {
    expect([outcome(id, shown), outcome(id, plain)]).toEqual(["flag", "pass"]);
  });

  it("ask after steps of a partner, boilers without fuel and machines that serve nothing", () => {
    const routes = house.pack.boundary.routes.map((route) => ({
      ...route,
      steps: route.steps.map((step) => ({ ...step, partner: step.role === "wash" })),
    }));
    expect(outcome("partner steps", { boundary: { ...house.pack.boundary, routes } })).toBe("flag");
    const { boiler: _boiler, ...site } = house.pack.plant.sites["main"]!;
    expect(
      outcome("steam without fuel", { plant: { ...house.pack.plant, sites: { main: site } } }),
    ).toBe("flag");
    expect(outcome("machines unused")).toBe("pass");
    const machines = { ...house.pack.plant.sites["main"]!.machines, spare: { kind: "pad" } };
    expect(
      outcome("machines unused", {
        plant: {
          ...house.pack.plant,
          sites: { main: { ...house.pack.plant.sites["main"]!, machines } },
        },
      }),
    ).toBe("flag");
  });

  it("find one pack under two names", () => {
    const twin = candidateOf(houseOf("B"), SHIPPED, "2026-11-25") as Candidate;
    const [first] = flagsOf(candidate(), [candidate(), twin]);
    expect([first?.outcome, first?.found]).toEqual(["flag", ["A", "B"]]);
  });

  it("judge roundness in the unit that was read", () => {
    const read = (unit: string, ...values: readonly number[]): string =>
      outcome("meters round", {
        meters: [
          {
            quantity: "water",
            unit: "L",
            read: unit,
            months: MONTHS.map((month, i) => ({ month, metered: values[i % values.length]! })),
          },
        ],
      });
    // Whole cubic metres are how a meter is read, and are whole thousands of litres.
    expect(read("m3", 67000, 59000, 71000)).toBe("pass");
    expect(read("L", 67000, 59000, 71000)).toBe("flag");
    expect(read("m3", 150000, 140000, 160000)).toBe("flag");
  });

  it("ask after values far from those of two other houses, and after none of fewer", () => {
    const water = (alias: string, fresh: number): Candidate =>
      candidateOf(
        houseOf(alias, {
          settings: {
            "wash-range.fresh-water": { value: fresh, low: 0.9 * fresh, high: 1.1 * fresh },
          },
        }),
        SHIPPED,
        "2026-11-25",
      ) as Candidate;
    const [few, b, c] = [water("A", 6), water("B", 20), water("C", 24)];
    const far = (all: readonly Candidate[], own: Candidate) =>
      flagsOf(own, all).find(({ id }) => id === "values far")!;
    expect(far([few, b, c], few).outcome).toBe("flag");
    expect(far([few, b, c], few).found[0]).toMatch(/^wash-range\.fresh-water 6 /);
    expect(far([few, b, c], b).outcome).toBe("pass");
    expect(far([few, b], few).outcome).toBe("not present");
  });

  it("have nothing to look at without readings", () => {
    expect([
      outcome("meters constant"),
      outcome("no readings"),
      outcome("no readings", meter([1, 2])),
    ]).toEqual(["not present", "flag", "pass"]);
  });
});
