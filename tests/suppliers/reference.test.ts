import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Classes } from "../../src/suppliers/cloth.js";
import {
  coveredWeight,
  MOST_STRATA,
  type MixArea,
  placeIn,
  pooledMix,
  readMix,
  routeFree,
} from "../../src/suppliers/reference.js";

const mix = (strata: string, name = "orders"): ReturnType<typeof readMix> =>
  readMix({ name: "mix.yaml", text: `millrace_mix: 1\nname: ${name}\nstrata:\n${strata}` });
const area = (change: Partial<Classes>, size: number): MixArea => ({
  classes: { cloth: "cotton", weight: "0-150", coverage: "50-100", route: "pigment", ...change },
  area: size,
});

describe("a mix from a file", () => {
  it("has weights that add up to 1, the heaviest first, and a digest", () => {
    const { value } = mix("  - { route: pigment, share: 30 }\n  - { route: dye, share: 70 }");
    expect(value?.strata.map(({ words, weight }) => [words, weight])).toEqual([
      ["dye", 0.7],
      ["pigment", 0.3],
    ]);
    expect(value?.digest).toMatch(/^[0-9a-f]{64}$/);
    // The digest is of strata and weights, not of the name or the order of lines.
    expect(
      mix("  - { route: dye, share: 70 }\n  - { route: pigment, share: 30 }", "x").value?.digest,
    ).toBe(value?.digest);
    expect(
      mix("  - { route: dye, share: 71 }\n  - { route: pigment, share: 29 }").value?.digest,
    ).not.toBe(value?.digest);
  });

  it.each([
    ["shares that do not add up", "  - { route: pigment, share: 30 }", "mix-unfit"],
    [
      "strata that hold the same cloth",
      "  - { route: pigment, share: 50 }\n  - { cloth: cotton, share: 50 }",
      "mix-unfit",
    ],
    ["an unknown key", "  - { colour: red, share: 100 }", "unknown-key"],
    [
      "a share of nothing",
      "  - { route: pigment, share: 0 }\n  - { route: dye, share: 100 }",
      "wrong-value",
    ],
  ])("is refused with %s", (_, strata, code) => {
    expect(mix(strata).problems.map((problem) => problem.code)).toContain(code);
  });

  it("takes any dye for dye, and finds no place for other cloth", () => {
    const { value } = mix(
      "  - { cloth: cotton, route: pigment, share: 30 }\n  - { cloth: cotton, route: dye, share: 70 }",
    );
    expect(placeIn(value!, area({ route: "acid" }, 1).classes)).toBe(0);
    expect(placeIn(value!, area({}, 1).classes)).toBe(1);
    expect(placeIn(value!, area({ cloth: "silk" }, 1).classes)).toBe(-1);
    expect(placeIn(value!, area({ route: "?" }, 1).classes)).toBe(-1);
  });

  it("can leave the route to the supplier", () => {
    const { value } = mix(
      "  - { cloth: cotton, route: pigment, share: 30 }\n  - { cloth: cotton, route: dye, share: 50 }\n  - { cloth: silk, route: acid, share: 20 }",
    );
    expect(
      routeFree(value!)?.strata.map(({ words, weight }) => [words, Number(weight.toFixed(9))]),
    ).toEqual([
      ["cotton", 0.8],
      ["silk", 0.2],
    ]);
    expect(routeFree(routeFree(value!)!)).toBeUndefined();
  });
});

describe("a pooled mix", () => {
  const some = [
    [area({}, 300), area({ route: "reactive" }, 100)],
    [area({}, 100), area({ route: "reactive" }, 500)],
  ];

  it("weighs strata by the area of all", () => {
    const pooled = pooledMix(some);
    expect(pooled.strata.map(({ weight }) => weight)).toEqual([0.6, 0.4]);
    expect(coveredWeight(pooled, [area({}, 5)])).toBe(0.4);
  });

  it("is as fine as all suppliers can follow", () => {
    const fine = pooledMix(some.map((areas) => areas.map((one) => ({ ...one }))));
    expect(fine.strata[0]?.classes).toHaveProperty("weight");
    // One that prints heavier cloth shares no fine stratum with the rest.
    const coarse = pooledMix([
      ...some,
      [area({ weight: "250+" }, 200), area({ weight: "250+", route: "reactive" }, 50)],
    ]);
    expect(coarse.strata[0]?.classes).not.toHaveProperty("weight");
  });

  it("does not hang on order, names or splitting, and keeps to twelve strata", () => {
    const areas = fc.array(
      fc
        .record({
          cloth: fc.constantFrom("cotton", "silk", "viscose", "linen", "wool"),
          weight: fc.constantFrom("0-150", "150-250", "250+", "?"),
          coverage: fc.constantFrom("0-50", "50-100", "?"),
          route: fc.constantFrom("pigment", "reactive", "acid"),
          size: fc.integer({ min: 1, max: 1000 }),
        })
        .map(({ size, ...classes }) => area(classes, size)),
      { minLength: 1, maxLength: 12 },
    );
    fc.assert(
      fc.property(fc.array(areas, { minLength: 1, maxLength: 5 }), (suppliers) => {
        const pooled = pooledMix(suppliers);
        expect(pooled.strata.length).toBeLessThanOrEqual(MOST_STRATA);
        expect(pooled.strata.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
        expect(pooledMix([...suppliers].reverse()).digest).toBe(pooled.digest);
        const [first = [], ...rest] = suppliers;
        const half = first.map((one) => ({ ...one, area: one.area / 2 }));
        expect(pooledMix([half, half, ...rest]).digest).toBe(pooled.digest);
      }),
      { seed: 1, numRuns: 100 },
    );
  });
});
