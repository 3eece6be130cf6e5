import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type Amount,
  AMOUNTS,
  FACTOR_UNITS,
  type FactorName,
  type OpenName,
} from "../../src/steps/amounts.js";

const OPEN: readonly OpenName[] = [
  "ink",
  "coverage",
  "pickup",
  "fixTemp",
  "dwell",
  "liquorRatio",
  "baths",
  "speed",
];

/** The columns of a lot; `undefined` is blank. */
type Columns = Readonly<Record<Exclude<FactorName, OpenName>, number>> &
  Readonly<Record<OpenName, number | undefined>>;

function counts(amount: Amount, lot: Columns): boolean {
  return (
    amount.logged.every((name) => lot[name] !== undefined) &&
    amount.open.every((name) => lot[name] === undefined)
  );
}

function sum(amount: Amount, lots: readonly Columns[]): number {
  let total = 0;
  for (const lot of lots) {
    if (!counts(amount, lot)) continue;
    let product = amount.scale;
    for (const [name, exponent] of factorsOf(amount)) product *= (lot[name] ?? NaN) ** exponent;
    total += product;
  }
  return total;
}

function factorsOf(amount: Amount): (readonly [FactorName, number])[] {
  return (Object.keys(FACTOR_UNITS) as FactorName[]).flatMap((name) => {
    const exponent = amount.product[name];
    return exponent === undefined ? [] : [[name, exponent] as const];
  });
}

function named(name: string): Amount {
  const found = AMOUNTS.filter((amount) => amount.name === name);
  if (found.length !== 1) throw new Error(`${found.length} amounts are named ${name}`);
  return found[0]!;
}

type Powers = Readonly<Record<string, number>>;

/** A unit as powers of base units and a multiplier, enough for the units of the list. */
function dimension(unit: string): { readonly scale: number; readonly powers: Powers } {
  const base: Readonly<Record<string, readonly [number, Powers]>> = {
    "1": [1, {}],
    lots: [1, {}],
    m: [1, { m: 1 }],
    "m²": [1, { m: 2 }],
    g: [1e-3, { kg: 1 }],
    kg: [1, { kg: 1 }],
    L: [1, { L: 1 }],
    s: [1, { s: 1 }],
    min: [60, { s: 1 }],
    h: [3600, { s: 1 }],
    "°C": [1, { K: 1 }],
  };
  let scale = 1;
  const powers: Record<string, number> = {};
  const [over = "", ...under] = unit.split("/");
  for (const [parts, sign] of [
    [over.split("·"), 1],
    [under, -1],
  ] as const) {
    for (const part of parts) {
      const known = base[part];
      if (known === undefined) throw new Error(`${part} in ${unit} is no unit of the list`);
      scale *= known[0] ** sign;
      for (const [name, power] of Object.entries(known[1])) {
        powers[name] = (powers[name] ?? 0) + sign * power;
      }
    }
  }
  return { scale, powers };
}

const positive = fc.double({ min: 0.01, max: 100, noNaN: true });
const maybe = fc.option(positive, { nil: undefined });
const lots = fc.array(
  fc.record<Columns>({
    length: positive,
    width: positive,
    printWidth: positive,
    gsm: positive,
    accepted: positive,
    ink: maybe,
    coverage: maybe,
    pickup: maybe,
    fixTemp: maybe,
    dwell: maybe,
    liquorRatio: maybe,
    baths: maybe,
    speed: maybe,
  }),
  { maxLength: 12 },
);

function mass(lot: Columns): number {
  return (lot.length * lot.width * lot.gsm) / 1000;
}

/** Amounts with the number each is multiplied by, which stands in for the settings of blank columns. */
type Recipe = readonly (readonly [string, number])[];

/** Holds that the recipe gives, over all lots, what `lot` gives for each alone. */
function expectExact(
  settings: number,
  recipe: (...drawn: number[]) => Recipe,
  lot: (lot: Columns, ...drawn: number[]) => number,
): void {
  fc.assert(
    fc.property(
      lots,
      fc.array(positive, { minLength: settings, maxLength: settings }),
      (logged, drawn) => {
        const one = logged.reduce((total, each) => total + lot(each, ...drawn), 0);
        const other = recipe(...drawn).reduce(
          (total, [name, rate]) => total + rate * sum(named(name), logged),
          0,
        );
        expect(Math.abs(other - one)).toBeLessThanOrEqual(1e-12 * one);
      },
    ),
    { seed: 1, numRuns: 200 },
  );
}

describe("amounts", () => {
  it("have names of their own", () => {
    const names = AMOUNTS.map((amount) => amount.name);
    expect(new Set(names).size).toBe(names.length);
  });

  it("are no two the same sum", () => {
    const sums = AMOUNTS.map((amount) =>
      JSON.stringify([factorsOf(amount), [...amount.logged].sort(), [...amount.open].sort()]),
    );
    expect(new Set(sums).size).toBe(sums.length);
  });

  it.each(AMOUNTS)("$name has the unit of its product", (amount) => {
    const stated = dimension(amount.unit);
    const powers: Record<string, number> = {};
    let scale = 1;
    for (const [name, exponent] of factorsOf(amount)) {
      const unit = dimension(FACTOR_UNITS[name]);
      scale *= unit.scale ** exponent;
      for (const [base, power] of Object.entries(unit.powers)) {
        powers[base] = (powers[base] ?? 0) + exponent * power;
      }
    }
    const left = Object.fromEntries(Object.entries(powers).filter(([, power]) => power !== 0));
    expect(left).toEqual(stated.powers);
    expect(scale / stated.scale / amount.scale).toBeCloseTo(1, 12);
  });

  it.each(AMOUNTS)("$name multiplies by no column that may be blank", (amount) => {
    for (const [name, exponent] of factorsOf(amount)) {
      expect(Number.isInteger(exponent)).toBe(true);
      if ((OPEN as readonly string[]).includes(name)) expect(amount.logged).toContain(name);
    }
    for (const name of amount.open) expect(amount.logged).not.toContain(name);
  });

  // Each group is what one question is asked of: a lot must be counted once in it, whatever is blank.
  it.each([
    [["mass·pickup", "mass[no pickup]"]],
    [["mass·fixTemp", "mass[no fixTemp]"]],
    [["length·dwell", "length/speed[no dwell]", "length[no dwell, speed]"]],
    [
      [
        "length·dwell·fixTemp",
        "length·dwell[no fixTemp]",
        "length/speed·fixTemp[no dwell]",
        "length/speed[no dwell, fixTemp]",
        "length·fixTemp[no dwell, speed]",
        "length[no dwell, speed, fixTemp]",
      ],
    ],
    [["ink", "printed·coverage[no ink]", "printed[no ink, coverage]"]],
    [
      [
        "mass·liquorRatio·baths",
        "mass·liquorRatio[no baths]",
        "mass·baths[no liquorRatio]",
        "mass[no liquorRatio, baths]",
      ],
    ],
  ])("%j count every lot once, whichever columns are blank", (group) => {
    for (let blanks = 0; blanks < 2 ** OPEN.length; blanks++) {
      const filled = Object.fromEntries(
        OPEN.map((name, bit) => [name, (blanks >> bit) % 2 === 0 ? 1 : undefined]),
      ) as Record<OpenName, number | undefined>;
      const lot = { length: 1, width: 1, printWidth: 1, gsm: 1, accepted: 1, ...filled };
      expect(group.filter((name) => counts(named(name), lot))).toHaveLength(1);
    }
  });

  it.each<[string, (lot: Columns) => number]>([
    ["lots", () => 1],
    ["length", (lot) => lot.length],
    ["area", (lot) => lot.length * lot.width],
    ["printed", (lot) => lot.length * lot.printWidth],
    ["accepted", (lot) => lot.accepted * lot.printWidth],
    ["mass", mass],
  ])("give the %s of all lots", (name, lot) => {
    expectExact(0, () => [[name, 1]], lot);
  });

  it("give the liquor of the pad, the setting standing in for a blank pick-up", () => {
    expectExact(
      1,
      (pickup) => [
        ["mass·pickup", 1],
        ["mass[no pickup]", pickup],
      ],
      (lot, pickup) => mass(lot) * (lot.pickup ?? pickup),
    );
  });

  it("give the cloth heated to its fixation temperature", () => {
    expectExact(
      1,
      (heat) => [
        ["mass·fixTemp", 1],
        ["mass[no fixTemp]", heat],
      ],
      (lot, heat) => mass(lot) * (lot.fixTemp ?? heat),
    );
  });

  // Hours = length × dwell / length in the machine, or length / speed; a logged dwell rules.
  function hours(lot: Columns, inside: number, dwell: number): number {
    if (lot.dwell !== undefined) return (lot.length * lot.dwell) / inside / 3600;
    if (lot.speed !== undefined) return lot.length / lot.speed / 60;
    return (lot.length * dwell) / inside / 3600;
  }

  it("give the hours under the fixing machine, by dwell, by speed or by the setting", () => {
    expectExact(
      2,
      (inside, dwell) => [
        ["length·dwell", 1 / inside],
        ["length/speed[no dwell]", 1],
        ["length[no dwell, speed]", dwell / inside / 3600],
      ],
      (lot, inside, dwell) => hours(lot, inside, dwell),
    );
  });

  it("give those hours times the temperature, each from the log or from its setting", () => {
    expectExact(
      3,
      (inside, dwell, heat) => [
        ["length·dwell·fixTemp", 1 / inside],
        ["length·dwell[no fixTemp]", heat / inside],
        ["length/speed·fixTemp[no dwell]", 1],
        ["length/speed[no dwell, fixTemp]", heat],
        ["length·fixTemp[no dwell, speed]", dwell / inside / 3600],
        ["length[no dwell, speed, fixTemp]", (heat * dwell) / inside / 3600],
      ],
      (lot, inside, dwell, heat) => hours(lot, inside, dwell) * (lot.fixTemp ?? heat),
    );
  });

  it("give the ink, from the log, from coverage or from the mean laydown", () => {
    expectExact(
      2,
      (full, mean) => [
        ["ink", 1],
        ["printed·coverage[no ink]", full],
        ["printed[no ink, coverage]", mean],
      ],
      (lot, full, mean) =>
        lot.ink ??
        lot.length * lot.printWidth * (lot.coverage === undefined ? mean : lot.coverage * full),
    );
  });

  it("give the water of the wash, whichever of ratio and baths is blank", () => {
    expectExact(
      2,
      (ratio, baths) => [
        ["mass·liquorRatio·baths", 1],
        ["mass·liquorRatio[no baths]", baths],
        ["mass·baths[no liquorRatio]", ratio],
        ["mass[no liquorRatio, baths]", ratio * baths],
      ],
      (lot, ratio, baths) => mass(lot) * (lot.liquorRatio ?? ratio) * (lot.baths ?? baths),
    );
  });

  // Worked by hand: 1000 m of 1.5 m cloth at 200 g/m² weigh 300 kg; two lots of it washed with
  // 3 L/kg in 8 baths and with 8 L/kg in 3 take 2 × 24 × 300 L, where the product of the means
  // (5.5 × 5.5) would say 18150 L.
  it("keep a product of logged columns apart from the product of their means", () => {
    const lot: Columns = {
      length: 1000,
      width: 1.5,
      printWidth: 1.4,
      gsm: 200,
      accepted: 950,
      ink: undefined,
      coverage: undefined,
      pickup: 0.7,
      fixTemp: undefined,
      dwell: 360,
      liquorRatio: 3,
      baths: 8,
      speed: undefined,
    };
    const both = [lot, { ...lot, liquorRatio: 8, baths: 3 }];
    expect(sum(named("mass"), both)).toBeCloseTo(600, 9);
    expect(sum(named("mass·pickup"), both)).toBeCloseTo(420, 9);
    expect(sum(named("mass·liquorRatio·baths"), both)).toBeCloseTo(14400, 9);
    expect(sum(named("length·dwell"), both)).toBeCloseTo(200, 9);
    expect(sum(named("accepted"), both)).toBeCloseTo(2660, 9);
  });
});
