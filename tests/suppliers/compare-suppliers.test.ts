import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import type { Given } from "../../src/suppliers/candidate.js";
import { compareSuppliers, type SuppliersCompared } from "../../src/suppliers/compare-suppliers.js";
import { sealed } from "../../src/suppliers/make-pack.js";
import { readMix } from "../../src/suppliers/reference.js";
import type { Pack } from "../../src/suppliers/schema.js";
import type { Standing } from "../../src/suppliers/standings.js";
import { verifyPack } from "../../src/suppliers/verify.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { CODE, houseOf, metersOf } from "./made.js";

// Each comparison draws three suppliers several times over.
vi.setConfig({ testTimeout: 120_000 });

const MIX = readMix({
  name: "mix.yaml",
  text: "millrace_mix: 1\nname: half and half\nstrata:\n  - { route: pigment, share: 50 }\n  - { route: dye, share: 50 }",
}).value!;

function compare(given: readonly Given[], change = {}): SuppliersCompared {
  return compareSuppliers(given, {
    shipped: SHIPPED,
    mix: MIX,
    asOf: "2026-11-25",
    draws: 200,
    seed: 1,
    ids: ["water"],
    ...change,
  });
}

function standing(compared: SuppliersCompared, alias: string): Standing {
  const { ranked, unranked } = compared.results[0]!.standings;
  return [...ranked, ...unranked].find((one) => one.alias === alias)!;
}

const WATER = { value: 14, low: 12, high: 16 };
const MUCH = { value: 40, low: 36, high: 44 };
const wash = (water: unknown, belt: unknown = { value: 100, low: 90, high: 110 }) => ({
  "wash-range.fresh-water": water,
  "printer.belt-water": belt,
});
const a = houseOf("A", { lots: [20, 5], settings: wash(MUCH) });
const b = houseOf("B", { lots: [8, 16], settings: wash(WATER) });
const c = houseOf("C", { lots: [12, 12], settings: wash({ value: 20, low: 17, high: 23 }) });
const base = compare([a, b, c]);

/** A pack whose strata are halved, with a name of its own. */
function half({ pack }: Given, alias: string, part: number): Given {
  const cut = (value: number): number => value * part;
  const whole = (value: number): number => Math.round(value * part);
  return {
    alias,
    pack: {
      ...pack,
      alias,
      strata: pack.strata.map((one) => ({
        ...one,
        lots: whole(one.lots),
        amounts: Object.fromEntries(
          Object.entries(one.amounts).map(([name, value]) => [name, cut(value)]),
        ),
      })),
    },
  };
}

/** Places, values and chances by supplier. */
function seen(compared: SuppliersCompared): ReadonlyMap<string, unknown> {
  return new Map(
    compared.results[0]!.standings.ranked.map(({ alias, counted, value, chances }) => [
      alias,
      { counted, value, chances },
    ]),
  );
}

describe("suppliers compared", () => {
  it("stand otherwise at one mix than in their own, and the reason is told", () => {
    const [result] = base.results;
    const crude = result!.suppliers.map(({ crude: { median } }) => median);
    expect(crude[0]).toBeLessThan(crude[1]!);
    expect(result!.standings.ranked.map(({ alias }) => alias)).toEqual(["B", "C", "A"]);
    expect(result!.reversal).toMatchObject({
      first: { alias: "A" },
      second: { alias: "C" },
      of: "pigment",
      inMix: 0.5,
    });
    expect(result!.reversal!.first.share).toBeGreaterThan(0.75);
  });

  it("do not change places when they are named or ordered otherwise", () => {
    const turned = compare([c, a, b]);
    const renamed = compare(
      [a, b, c].map(({ alias, pack }) => ({
        alias: `New ${alias}`,
        pack: { ...pack, alias: `New ${alias}`, plant: { ...pack.plant, house: "x" } },
      })),
    );
    for (const [alias, there] of seen(base)) {
      expect(seen(turned).get(alias)).toEqual(there);
      expect(seen(renamed).get(`New ${alias}`)).toEqual(there);
    }
  });

  it("do not change values when one of them is split in two, and its parts come to the whole", () => {
    const split = compare([half(a, "A1", 0.4), half(a, "A2", 0.6), b, c]);
    for (const alias of ["B", "C"]) {
      expect(standing(split, alias).counted!.median).toBeCloseTo(
        standing(base, alias).counted!.median,
        9,
      );
      expect(standing(split, alias).value!.median).toBeCloseTo(
        standing(base, alias).value!.median,
        9,
      );
    }
    // The parts have machines drawn anew, for who they are is not known: the same but for chance.
    expect(standing(split, "A1").value!.median / standing(base, "A").value!.median).toBeCloseTo(
      1,
      1,
    );
    // Two lots by dye leave more doubt than five.
    expect(standing(split, "A1").chances![2]! + standing(split, "A1").chances![3]!).toBeGreaterThan(
      0.98,
    );
    const order = split.results[0]!.standings.ranked.map(({ alias }) => alias[0]);
    expect(order).toEqual(["B", "C", "A", "A"]);
  });

  it("stay out where they are the same under two names, whatever the order", () => {
    const twin = {
      alias: "Twin",
      pack: { ...b.pack, alias: "Twin", plant: { ...b.pack.plant, house: "Twin" } },
    };
    const compared = compare([a, twin, b]);
    expect(compared.gate.refused.map(({ alias, cause }) => [alias, cause])).toEqual([
      ["Twin", "twin"],
      ["B", "twin"],
    ]);
    expect(compared.gate.verdict).toBe("not comparable");
    expect(compared.results[0]!.standings.ranked.map(({ alias }) => alias)).toEqual(["A"]);
    // Months, meters and the last day can be moved without moving a figure.
    const other = {
      ...twin,
      pack: {
        ...twin.pack,
        meters: [] as Pack["meters"],
        period: { ...twin.pack.period, to: "2026-10-31" },
        months: twin.pack.months.slice(1),
      },
    };
    for (const order of [
      [a, b, c, other],
      [other, c, b, a],
    ])
      expect(
        compare(order)
          .gate.refused.map(({ alias }) => alias)
          .sort(),
      ).toEqual(["B", "Twin"]);
  });

  it("share places alike where they take the same", () => {
    // A step of its own name sets the files apart and changes nothing that is taken.
    const review = { ...b.pack.plant, review: "somebody" } as unknown as Pack["plant"];
    const alike = compare([a, b, { alias: "Like B", pack: { ...b.pack, plant: review } }]);
    expect(standing(alike, "B").chances).toEqual(standing(alike, "Like B").chances);
    expect(standing(alike, "B").chances![0]).toBeCloseTo(0.5, 9);
    expect(standing(alike, "B").group).toBe(standing(alike, "Like B").group);
  });

  it("tell nobody apart whom meters do not bear out, and whoever sends none", () => {
    const many = { ...b, pack: { ...b.pack, meters: metersOf(b.pack, 5) } };
    const none = { ...b, pack: { ...b.pack, meters: [] as Pack["meters"] } };
    const short = { ...b, pack: { ...b.pack, meters: metersOf(b.pack, 0.3) } };
    expect(standing(base, "B")).toMatchObject({ group: 1 });
    for (const change of [many, none, short]) {
      const one = standing(compare([a, change, c]), "B");
      expect([one.unborne, one.group, one.beforeNext]).toEqual([true, undefined, undefined]);
      // The others are told apart as before.
      expect(standing(compare([a, change, c]), "C").beforeNext).toBeGreaterThan(0.9);
    }
  });

  it("do not win by one bare number", () => {
    const low = (water: unknown): Given => houseOf("X", { settings: wash(water, undefined) });
    const said = standing(compare([low({ value: 8, low: 7, high: 9 }), b, c]), "X");
    const bare = standing(compare([low(8), b, c]), "X");
    const width = ({ value }: Standing): number => value!.high - value!.low;
    expect(width(bare)).toBeGreaterThan(1.5 * width(said));
  });

  it("gain no place by hiding a value, however bad it is", () => {
    // Up to the plausible limits of both settings, far beyond the intervals of their defaults.
    const settings = fc.record({
      water: fc.integer({ min: 6, max: 400 }),
      belt: fc.integer({ min: 50, max: 2800 }),
      less: fc.constantFrom("water", "belt", "both"),
    });
    fc.assert(
      fc.property(settings, ({ water, belt, less }) => {
        const around = (value: number) => ({
          value,
          low: 0.95 * value,
          high: Math.max(value, Math.min(1.05 * value, value > 400 ? 3000 : 400)),
        });
        const said = wash(around(water), around(belt));
        const silent = {
          ...(less === "belt" ? { "wash-range.fresh-water": said["wash-range.fresh-water"] } : {}),
          ...(less === "water" ? { "printer.belt-water": said["printer.belt-water"] } : {}),
        };
        const before = standing(compare([houseOf("X", { settings: said }), b, c]), "X");
        const after = standing(compare([houseOf("X", { settings: silent }), b, c]), "X");
        expect(after.counted!.median).toBeGreaterThanOrEqual(before.counted!.median - 1e-9);
        expect(after.chances![0]!).toBeLessThanOrEqual(before.chances![0]! + 1e-9);
        expect(after.expected!).toBeGreaterThanOrEqual(before.expected! - 1e-9);
      }),
      { seed: 1, numRuns: 20 },
    );
  });

  it("gain no place on others by leaving out the stratum in which they do worse", () => {
    const drop = (given: Given, own: "pigment" | "dye"): Given => ({
      ...given,
      pack: { ...given.pack, strata: given.pack.strata.filter((one) => one.own !== own) },
    });
    for (const house of [a, b, c]) {
      const compared = compare([a, b, c].map((one) => (one === house ? drop(one, "dye") : one)));
      const place = (of: SuppliersCompared): number =>
        of.results[0]!.standings.ranked.findIndex(({ alias }) => alias === house.alias);
      expect(standing(compared, house.alias).covered).toBe(0.5);
      expect(place(compared)).toBeGreaterThanOrEqual(place(base));
    }
  });

  it("stay out when no cloth was accepted", () => {
    const { gate, results } = compare([a, b, { ...c, pack: { ...c.pack, strata: [] } }]);
    expect(
      gate.refused.map(({ alias, why }) => [alias, why.includes("no cloth was accepted")]),
    ).toEqual([["C", true]]);
    expect(results[0]!.standings.unranked).toEqual([]);
  });

  it("stay out when their pack does not verify, with the place", () => {
    const text = sealed(b.pack).replace(/"median":/, '"median":1');
    const verified = verifyPack("b.json", new TextEncoder().encode(text), {
      shipped: SHIPPED,
      code: CODE,
    });
    const { gate, results } = compare([a, { ...b, verified }, c]);
    expect(gate.refused[0]).toMatchObject({ alias: "B" });
    expect(gate.refused[0]!.places).toContain("/pack/figures");
    expect(results[0]!.standings.ranked.map(({ alias }) => alias)).toEqual(["C", "A"]);
  });

  it("stay out when they cannot be worked out, and nobody is left to compare", () => {
    const odd = (given: Given): Given => ({
      ...given,
      pack: { ...given.pack, plant: {} as Pack["plant"] },
    });
    const { gate, results } = compare([odd(a), odd(b)]);
    expect(gate.verdict).toBe("not comparable");
    expect(gate.refused.map(({ why }) => why.startsWith("cannot be worked out"))).toEqual([
      true,
      true,
    ]);
    expect(results).toEqual([]);
  });

  it("answer the other question too: the route left to the supplier", () => {
    const [result] = base.results;
    // A prints four in five by pigment, and where the route is free that counts for it.
    const free = (alias: string): number =>
      result!.free!.ranked.find((one) => one.alias === alias)!.value!.median;
    expect(free("A")).toBeLessThan(free("C"));
    expect(result!.standings.others.map(({ id }) => id)).toContain("route free");
  });
});
