import { describe, expect, it } from "vitest";
import { DECIMALS, DOUBLES, sumOf, toCent, type Money } from "../../src/invest/arithmetic.js";
import {
  type EffluentTariff,
  effluentParts,
  type Strength,
  tariffBy,
  tariffOn,
} from "../../src/invest/effluent-tariff.js";

const strength = (over: Partial<Strength<number>>): Strength<number> => ({
  cod: 0,
  settled: 0,
  bod: 0,
  solids: 0,
  ...over,
});

function charge(tariff: EffluentTariff<number>, volume: number, found: Strength<number>): string {
  const of = DECIMALS.of;
  const exact = effluentParts<Money>(DECIMALS, tariffBy(tariff, of), of(volume), {
    cod: of(found.cod),
    settled: of(found.settled),
    bod: of(found.bod),
    solids: of(found.solids),
  });
  const total = sumOf(
    DECIMALS,
    exact.map(({ money }) => money),
  );
  const drawn = effluentParts(DOUBLES, tariff, volume, found);
  expect(
    Math.abs(
      sumOf(
        DOUBLES,
        drawn.map(({ money }) => money),
      ) - total.toNumber(),
    ),
  ).toBeLessThan(0.005);
  return toCent(total).toFixed(2);
}

// NI Water, trade effluent charges 2024/25: rates, standard strengths and the combined rate at standard strength.
const NORTH: EffluentTariff<number> = {
  form: "mogden",
  reception: 0.3093,
  volumetric: 0.3488,
  biological: 0.2308,
  sludge: 0.2693,
  standard_cod: 260,
  standard_solids: 240,
};

describe("a charge by strength", () => {
  it("[P1] at standard strength is the combined rate that the utility prints", () => {
    expect(charge(NORTH, 10000, strength({ settled: 260, solids: 240 }))).toBe("11582.00");
  });

  it("[P1] has no stray 7", () => {
    // With the 7 that copies of the formula carry the sum at standard strength would be 0.9274.
    const parts = effluentParts(DOUBLES, NORTH, 1, strength({ settled: 260, solids: 240 }));
    expect(parts.find(({ part }) => part.startsWith("sludge"))?.money).toBeCloseTo(0.2693, 12);
  });

  // Rates by NI Water; volumes and strengths invented, worked by hand.
  it("[P2] falls less than the volume when effluent gets stronger", () => {
    const dye = charge(NORTH, 30000, strength({ settled: 900, solids: 120 }));
    const pigment = charge(NORTH, 6000, strength({ settled: 1800, solids: 300 }));
    expect(dye).toBe("47750.19");
    expect(pigment).toBe("15555.43");
    expect(1 - Number(pigment) / Number(dye)).toBeCloseTo(0.6742, 4);
  });

  it("takes the sea outfall instead of volumetric treatment", () => {
    const parts = effluentParts(
      DOUBLES,
      { ...NORTH, sea_outfall: 0.1, biological_volume: 9 },
      1,
      strength({}),
    );
    expect(parts.map(({ part }) => part)).toContain("sea outfall (M)");
    expect(
      sumOf(
        DOUBLES,
        parts.map(({ money }) => money),
      ),
    ).toBeCloseTo(0.3093 + 0.1, 12);
  });
});

// City of Austin, surcharge for excess strength: a month of 0.0116 million gallons.
const AUSTIN: EffluentTariff<number> = {
  form: "excess",
  mass: "lb",
  bod: { above: 200, rate: 0.5043 },
  cod: { above: 450, rate: 0.2, ratio: 2.25 },
  solids: { above: 200, rate: 0.1087 },
};
const MONTH = 0.0116 * 3785.411784;

describe("a charge on excess strength", () => {
  const sample = strength({ bod: 614, solids: 111, cod: 1200 });

  it("[P4] is what the city prints for its sample", () => {
    expect(charge(AUSTIN, MONTH, sample)).toBe("20.20");
  });

  it("[P4] is what the city prints at its later rates", () => {
    const later: EffluentTariff<number> = {
      ...AUSTIN,
      bod: { above: 200, rate: 0.7411 },
      solids: { above: 200, rate: 0.6047 },
    };
    expect(charge(later, MONTH, sample)).toBe("29.68");
  });

  // By hand: 8.34 × 0.0116 × 0.2 × (1500 − 450), because 1500/614 exceeds 2.25.
  it("goes by COD where COD/BOD exceeds the ratio", () => {
    expect(charge(AUSTIN, MONTH, { ...sample, cod: 1500 })).toBe("20.32");
  });

  // By hand: 1,000 m³ × (300 − 200) mg/L = 100 kg at 0.5, and 1,000 m³ at 1.2.
  it("by the kilogram adds to a price by volume", () => {
    const metric: EffluentTariff<number> = {
      form: "excess",
      mass: "kg",
      per_m3: 1.2,
      solids: { above: 200, rate: 0.5 },
      fixed: 40,
    };
    expect(charge(metric, 1000, strength({ solids: 300 }))).toBe("1290.00");
    expect(charge(metric, 1000, strength({ solids: 100 }))).toBe("1240.00");
  });
});

describe("a charge by volume", () => {
  it("takes no notice of strength", () => {
    const tariff: EffluentTariff<number> = { form: "volume", per_m3: 1.1, fixed: 12.5 };
    expect(charge(tariff, 1000, strength({ settled: 9000 }))).toBe("1112.50");
  });
});

describe("tariffs by date", () => {
  const list = [{ from: "2026-01-01" }, { from: "2025-01-01" }, { from: "2027-04-01" }];
  it.each([
    ["2024-06-01", "2025-01-01"],
    ["2025-12-31", "2025-01-01"],
    ["2026-01-01", "2026-01-01"],
    ["2030-01-01", "2027-04-01"],
  ])("on %s is that of %s", (day, from) => {
    expect(tariffOn(list, day)?.from).toBe(from);
  });

  it("is none where there are none", () => {
    const none: readonly { readonly from: string }[] = [];
    expect(tariffOn(none, "2026-01-01")).toBeUndefined();
  });
});
