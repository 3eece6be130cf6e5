import { describe, expect, it } from "vitest";
import { type BaseAsked, baseStream } from "../../src/meters/base-stream.js";
import { interval95, medianOf } from "../../src/numbers/distributions.js";

const MODELLED = Float64Array.of(100, 160, 80, 130, 190, 60, 110, 70, 140, 170, 120, 90);
const asked = (change: Partial<BaseAsked> = {}): BaseAsked => ({
  name: "main",
  meter: { quantity: "water", unit: "m3", covers: "site" },
  unit: 1000,
  metered: MODELLED.map((value, i) => 40 + 1.2 * value + (i % 3) - 1),
  modelled: MODELLED,
  covered: new Float64Array(12).fill(1),
  below: 0,
  unlogged: 0,
  mix: () => ({ mean: 0, sd: 0 }),
  ...change,
});

describe("baseStream", () => {
  it("is found by regression where there is enough to tell", () => {
    const { by, leaf } = baseStream(asked());
    expect(by).toBe("regression");
    expect(medianOf(leaf!.spread) / 480).toBeCloseTo(1, 1);
  });

  it("is freed of what a mix of goods bends, and is in as much doubt as that", () => {
    const straight = baseStream(asked());
    const strays = baseStream(asked({ mix: () => ({ mean: 120, sd: 48 }) }));
    const width = (found: typeof straight): number => {
      const [low, high] = interval95(found.leaf!.spread);
      return Math.log(high / low);
    };
    expect(medianOf(strays.leaf!.spread)).toBeLessThan(0.9 * medianOf(straight.leaf!.spread));
    expect(width(strays)).toBeGreaterThan(3 * width(straight));
    // A mix that could be anything leaves what was known before.
    expect(baseStream(asked({ mix: () => ({ mean: 0, sd: 1e4 }) })).by).toBe("wide");
  });

  it("asks the mix for the months by the weights of the intercept", () => {
    let seen = new Float64Array();
    baseStream(
      asked({
        mix: (weights) => {
          seen = weights.slice();
          return { mean: 0, sd: 0 };
        },
      }),
    );
    expect(seen.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(12, 9);
    expect(seen.reduce((sum, weight, at) => sum + weight * MODELLED[at]!, 0)).toBeCloseTo(0, 9);
  });

  it("holds what goes by degree days, where they pay", () => {
    const values = Float64Array.of(300, 280, 200, 90, 0, 0, 0, 0, 10, 60, 180, 290);
    const heated = asked().metered.map((value, i) => value + 0.3 * values[i]!);
    const degrees = { words: "degree days below 15 °C", values };
    const told = baseStream(asked({ metered: heated, degrees }));
    // 40 a month and 0.3 for each of 1,410 degree days.
    expect(medianOf(told.leaf!.spread) / (480 + 423)).toBeCloseTo(1, 1);
    const fit = told.regression;
    if ("refused" in fit) throw new Error(fit.refused);
    expect(fit.tested?.pays).toBe(true);
    expect(fit.coefficients[2]?.value).toBeCloseTo(0.3, 1);
    const without = baseStream(asked({ metered: heated })).regression;
    if ("refused" in without) throw new Error(without.refused);
    expect(fit.cv).toBeLessThan(0.3 * without.cv);
  });

  it("leaves out what meters below count as theirs", () => {
    const { leaf } = baseStream(asked({ below: 200 }));
    expect(medianOf(leaf!.spread) / 280).toBeCloseTo(1, 1);
  });

  it("is wide where months are too few, wider for a site than for a machine", () => {
    const few = {
      metered: Float64Array.of(100, 120),
      modelled: Float64Array.of(90, 100),
      covered: Float64Array.of(1, 1),
    };
    const site = baseStream(asked(few));
    expect(site.by).toBe("wide");
    expect(site.leaf?.provenance).toBe("default");
    const machine = baseStream(
      asked({ ...few, meter: { quantity: "water", unit: "m3", covers: { machines: ["range"] } } }),
    );
    expect(interval95(machine.leaf!.spread)[1]).toBeLessThan(interval95(site.leaf!.spread)[1]);
    expect(interval95(site.leaf!.spread)[0]).toBeGreaterThan(0);
    // Lots that are in no figure still took something.
    const unlogged = baseStream(asked({ ...few, unlogged: 0.2 }));
    expect(medianOf(unlogged.leaf!.spread)).toBeGreaterThan(medianOf(site.leaf!.spread));
  });

  it("is what the mill read at night, in the unit of the meter", () => {
    const base = { value: 3, low: 2, high: 4, source: "read over a holiday" };
    const { by, leaf } = baseStream(asked({ meter: { ...asked().meter, base } }));
    expect(by).toBe("given");
    expect(interval95(leaf!.spread)[0]).toBeCloseTo(24_000, 3);
    expect(interval95(leaf!.spread)[1]).toBeCloseTo(48_000, 3);
    const none = { ...base, value: 0, low: 0, high: 0 };
    expect(baseStream(asked({ meter: { ...asked().meter, base: none } })).leaf).toBeUndefined();
  });

  it("is not used when it would be below 0, and that is told", () => {
    const { by, refused } = baseStream(
      asked({ metered: MODELLED.map((value) => 1.5 * value - 30) }),
    );
    expect(by).toBe("wide");
    expect(refused).toBeLessThan(0);
  });
});
