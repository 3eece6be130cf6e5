import { beforeAll, describe, expect, it } from "vitest";
import { PUBLISHED } from "./published.js";
import { REASONS } from "./reasons.js";
import { type Compared, resultsOf } from "./results.js";

const range = (id: string) => {
  const found = PUBLISHED.find((published) => published.id === id);
  if (found === undefined) throw new Error(`there is no range ${id}`);
  return found;
};

const PAIRS = PUBLISHED.flatMap(({ id, beside }) => beside.map((one) => `${id}/${one.id}`));

describe("published ranges", () => {
  it("have ends in order and names of their own", () => {
    expect(PUBLISHED.filter(({ low, high }) => !(low >= 0 && low < high))).toEqual([]);
    expect(new Set(PUBLISHED.map(({ id }) => id)).size).toBe(PUBLISHED.length);
    expect(new Set(PAIRS).size).toBe(PAIRS.length);
  });

  it("print GJ/t as kWh/kg: 3.6 MJ are 1 kWh", () => {
    const given = PUBLISHED.flatMap(({ words, low, high }) => {
      const found = /([\d.]+) to ([\d.]+) GJ\/t/.exec(words);
      return found === null ? [] : [[Number(found[1]), Number(found[2]), low, high] as const];
    });
    expect(given.length).toBeGreaterThan(5);
    for (const [from, to, low, high] of given) {
      expect(low).toBeCloseTo(from / 3.6, 2);
      expect(high).toBeCloseTo(to / 3.6, 2);
    }
  });

  // NIST Special Publication 811: a gallon is 3.785412 L, a pound 0.45359237 kg.
  it("print gal/lb as L/kg", () => {
    const given = PUBLISHED.flatMap(({ words, high }) => {
      const found = /([\d.]+) gal\/lb/.exec(words);
      return found === null ? [] : [[Number(found[1]), high] as const];
    });
    expect(given.length).toBeGreaterThan(2);
    for (const [gallons, litres] of given) {
      expect(litres).toBeCloseTo((gallons * 3.785412) / 0.45359237, 0);
    }
  });

  // EU reference document of 2003, section 4.8.1, for the humidities; heats of air and vapour from common
  // psychrometrics. Worked by hand: hall air of 25 °C and 0.010 kg/kg.
  it("work out the heat of an exhaust from its humidity", () => {
    const heat = (humidity: number, exhaust: number): number => {
      const air = 1 / (humidity - 0.01);
      return (
        (air * (1.006 + 1.86 * 0.01) * (exhaust - 25) + 2501 + 1.86 * exhaust - 4.19 * 25) / 1000
      );
    };
    const { low, high } = range("exhaust-balance");
    expect(heat(0.15, 130)).toBeCloseTo(low, 1);
    expect(heat(0.03, 150)).toBeCloseTo(high, 1);
  });

  // (EU) 2022/2508, table 1.2, lower end of 0.5 kWh/kg, from memory; 20 m³/kg from memory. By hand.
  it("work out the air of curing", () => {
    const { low, high } = range("cure-air");
    expect((0.5 * 3600) / (1.02 * (160 - 25))).toBeCloseTo(low, 0);
    expect(20 * 1.2).toBeCloseTo(high, 0);
  });
});

describe("ours beside them", () => {
  let compared: readonly Compared[] = [];

  beforeAll(() => {
    ({ compared } = resultsOf({ asOf: "2026-11-25", draws: 0, seed: 1 }));
  }, 60_000);

  it("sets every pair beside each other on the fabrics it is asked of", () => {
    expect(compared.map(({ published, beside }) => `${published.id}/${beside.id}`)).toEqual(PAIRS);
    for (const { beside, fabrics } of compared) {
      expect(fabrics.length).toBe(3 * (beside.fibres?.length ?? 5));
    }
  });

  it("gives a reason wherever ours goes beyond, and none for what is not compared", () => {
    const silent = compared
      .filter(({ verdict }) => verdict !== "inside")
      .map(({ published, beside }) => `${published.id}/${beside.id}`)
      .filter((pair) => REASONS[pair] === undefined);
    expect(silent).toEqual([]);
    expect(Object.keys(REASONS).filter((pair) => !PAIRS.includes(pair))).toEqual([]);
  });

  it("has a usual hall inside wherever only the ends are said to go beyond", () => {
    const told = compared.filter(
      ({ published, beside, verdict }) =>
        verdict !== "inside" && REASONS[`${published.id}/${beside.id}`]?.rests === "ends",
    );
    const beyond = told
      .filter(({ fabrics }) => !fabrics.some(({ usualInside }) => usualInside))
      .map(({ published, beside }) => `${published.id}/${beside.id}`);
    expect(told.length).toBeGreaterThan(0);
    expect(beyond).toEqual([]);
  });
});
