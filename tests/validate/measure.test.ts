import { describe, expect, it } from "vitest";
import { accountOf } from "../../src/account/account.js";
import { medianOf } from "../../src/numbers/distributions.js";
import { STEP_KINDS } from "../../src/steps/kinds.js";
import { newest } from "../tools/shipped-factors.js";
import { FABRICS, hallOf, LENGTH, PIGMENT_ROUTES, programOf, WIDTH } from "./hall.js";
import { atMedians, drawsAt, ofSettings, perKilogram, quotient, rangeOf } from "./measure.js";
import { ALL_STEPS } from "./steps-asked.js";

const DAY = "2026-11-25";
const FABRIC = { fibre: "cotton", gsm: 140 } as const;
const MASS = (LENGTH * WIDTH * FABRIC.gsm) / 1000;
const program = programOf(hallOf("usual"), FABRIC, DAY);

const median = (id: string): number => medianOf(newest(id).spread);

describe("perKilogram", () => {
  it("adds up to the account, draw by draw", () => {
    const [count, seed] = [40, 3];
    const account = accountOf(program, count, seed);
    for (const id of ["water", "heat", "electricity", "carbon-to-air"] as const) {
      for (const arm of ["pigment", "dye"] as const) {
        const readings = PIGMENT_ROUTES.map((route) => perKilogram(program, { route, arm }, id));
        const draws = drawsAt(program, readings, count, seed);
        const total = account.indicators[arm].get(id) ?? new Float64Array();
        expect(total.length).toBe(count);
        total.forEach((value, i) => {
          const sum = draws.reduce((all, of) => all + (of[i] ?? NaN) * MASS, 0);
          expect(sum / value).toBeCloseTo(1, 9);
        });
      }
    }
  });

  it("counts the steps of a route once each", () => {
    const place = { route: "pigment-calender", arm: "dye" } as const;
    const roles = ["pretreat", "pretreat-dry", "pretreat-store", "print", "steam", "wash"];
    const one = (...some: readonly string[]) =>
      perKilogram(program, { ...place, roles: some }, "energy");
    const [whole = NaN, ...parts] = atMedians(program, [
      perKilogram(program, place, "energy"),
      ...[...roles, "squeeze", "dry", "store"].map((role) => one(role)),
    ]);
    expect(parts.reduce((sum, part) => sum + part, 0)).toBeCloseTo(whole, 9);
    const [wash, dry, both = NaN] = atMedians(program, [
      one("wash"),
      one("dry"),
      one("wash", "dry"),
    ]);
    expect((wash ?? 0) + (dry ?? 0)).toBeCloseTo(both, 9);
  });

  it("gives the printer its belt and flush water, with the reject of softening", () => {
    // By hand: belt L/h × m² / (m²/h), and flush water a lot, of which softening lets a share go.
    const hours = (LENGTH * WIDTH) / median("printer.rate");
    const asked = median("printer.belt-water") * hours + median("printer.flush-water");
    const drawn = asked / (1 - median("water-works.softening-reject"));
    const place = { route: "pigment-calender", arm: "dye", roles: ["print"] } as const;
    const [water] = atMedians(program, [perKilogram(program, place, "water")]);
    expect(water).toBeCloseTo(drawn / MASS, 6);
  });

  it("names a step that the route lacks, and a route that no lot took", () => {
    const wash = { route: "pigment-calender", arm: "pigment", roles: ["wash"] } as const;
    expect(() => perKilogram(program, wash, "water")).toThrow("no step wash");
    expect(() => perKilogram(program, { route: "felt", arm: "dye" }, "water")).toThrow("felt");
  });
});

describe("readings", () => {
  it("take settings at their medians, and complain of one that is not read", () => {
    const product = ofSettings(
      program,
      ["printer.rate", "pad.pickup"],
      (rate = 0, pickup = 0) => rate * pickup,
    );
    const [value] = atMedians(program, [product]);
    expect(value).toBeCloseTo(median("printer.rate") * median("pad.pickup"), 9);
    expect(() => ofSettings(program, ["felt.speed"], () => 0)).toThrow("felt.speed");
  });

  it("divide draw by draw", () => {
    const rate = ofSettings(program, ["printer.rate"], (value = 0) => value);
    const [twice = new Float64Array()] = drawsAt(program, [quotient(rate, rate, 2)], 30, 1);
    expect([...twice]).toEqual(new Array(30).fill(2));
  });

  it("hold 95 of 100 draws between the ends", () => {
    const draws = Float64Array.from({ length: 1001 }, (_, i) => i);
    expect(rangeOf(draws)).toEqual({ low: 25, median: 500, high: 975 });
  });
});

describe("hall", () => {
  it("runs worse when run poorly, on every fabric", { timeout: 60_000 }, () => {
    const halls = (["poor", "usual", "well"] as const).map(hallOf);
    for (const fabric of FABRICS) {
      const [poor = [], usual = [], well = []] = halls.map((hall) => {
        const one = programOf(hall, fabric, DAY);
        const readings = PIGMENT_ROUTES.flatMap((route) =>
          (["pigment", "dye"] as const).flatMap((arm) =>
            (["water", "energy"] as const).map((id) => perKilogram(one, { route, arm }, id)),
          ),
        );
        return atMedians(one, readings);
      });
      expect(usual.length).toBe(16);
      usual.forEach((value, i) => {
        expect(poor[i]).toBeGreaterThan(value);
        expect(well[i]).toBeLessThan(value);
      });
    }
  });

  it("holds every kind of step but the store, which asks for nothing", () => {
    const held = new Set(
      program.classes.flatMap(({ arms }) =>
        [arms.pigment, arms.dye].flatMap(({ steps }) => steps.map(({ kind }) => kind)),
      ),
    );
    expect([...held].sort()).toEqual(Object.keys(STEP_KINDS).sort());
    const listed = new Set(ALL_STEPS.flatMap(({ steps }) => steps.roles ?? []));
    const roles = program.classes.flatMap(({ arms }) =>
      [arms.pigment, arms.dye].flatMap(({ steps }) =>
        steps.filter(({ kind }) => kind !== "stored").map(({ role }) => role),
      ),
    );
    expect(roles.filter((role) => !listed.has(role))).toEqual([]);
  });
});
