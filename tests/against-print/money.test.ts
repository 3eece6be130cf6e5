import { describe, expect, it } from "vitest";
import {
  effectiveRate,
  growthBetween,
  payment,
  periodsBetween,
  periodsOf,
  presentSum,
  quotedRate,
} from "../../src/invest/annuities.js";
import { DECIMALS, DOUBLES, type Arithmetic } from "../../src/invest/arithmetic.js";
import {
  datedPresentValue,
  equivalentAnnual,
  modifiedReturn,
  paybackOf,
  presentValue,
  profitabilityIndex,
  uniformWorth,
  yearsOf,
} from "../../src/invest/present-value.js";
import { ratesOfReturn } from "../../src/invest/rates-of-return.js";
import { unitFactor } from "../../src/units/convert.js";
import type { Target } from "../../src/units/unit-table.js";

/** Present value in doubles and in decimals, which must agree. */
function worth(rate: number, flows: readonly number[]): number {
  const exact = presentValue(DECIMALS, DECIMALS.of(rate), flows.map(DECIMALS.of)).toNumber();
  const drawn = presentValue(DOUBLES, rate, flows);
  expect(Math.abs(exact - drawn)).toBeLessThan(1e-9 * Math.max(1, Math.abs(exact)));
  return exact;
}

const byYear = (flows: readonly number[]) => flows.map((amount, at) => ({ at, amount }));

// Half a unit of the last digit printed.
function expectPrinted(found: number | undefined, printed: number, unit: number): void {
  expect(Math.abs((found ?? NaN) - printed)).toBeLessThanOrEqual(unit / 2 + 1e-12);
}

const SPRING = [
  { day: "2001-01-01", amount: -10000 },
  { day: "2001-02-01", amount: 2000 },
  { day: "2001-03-15", amount: 2500 },
  { day: "2001-05-12", amount: 5000 },
  { day: "2001-08-10", amount: 1000 },
];
const CRISIS = [
  { day: "2008-01-01", amount: -10000 },
  { day: "2008-03-01", amount: 2750 },
  { day: "2008-10-30", amount: 4250 },
  { day: "2009-02-15", amount: 3250 },
  { day: "2009-04-01", amount: 2750 },
];

// LibreOffice 7.4 Help, pages of the functions named.
describe("money as LibreOffice Help prints it", () => {
  it("[M1] NPV", () => {
    expectPrinted(worth(0.0875, [0, 10, 20, 30]), 49.43, 0.01);
    expectPrinted(worth(0.0875, [-40, 10, 20, 30]), 9.43, 0.01);
  });

  it("[M2] IRR", () => {
    const [rate, ...others] = ratesOfReturn(byYear([-10000, 3500, 7600, 1000]));
    expect(others).toEqual([]);
    expectPrinted(rate, 0.1133, 0.0001);
  });

  it("[M3] XIRR", () => {
    expectPrinted(ratesOfReturn(yearsOf(SPRING))[0], 0.1828, 0.0001);
  });

  it("[M4] XNPV", () => {
    expectPrinted(datedPresentValue(0.06, SPRING), 323.02, 0.01);
  });

  it("[M5] MIRR", () => {
    expectPrinted(modifiedReturn([-5, 10, 15, 8], 0.5, 0.1), 0.9416, 0.0001);
  });

  it("[M6] PMT", () => {
    expectPrinted(payment(DOUBLES, 0.0199 / 12, 36, 25000), -715.96, 0.01);
    const rate = DECIMALS.of(0.0199).div(12);
    expect(payment(DECIMALS, rate, 36, DECIMALS.of(25000)).toFixed(2)).toBe("-715.96");
  });

  it("[M7] PV", () => {
    expectPrinted(presentSum(0.08 / 12, 48, 500, 20000), -35019.37, 0.01);
  });

  it("[M8] EFFECT and NOMINAL", () => {
    expectPrinted(effectiveRate(0.0975, 4), 0.1011, 0.0001);
    expectPrinted(quotedRate(0.135, 12), 0.1273, 0.0001);
  });

  it("[M9] PDURATION, RRI and NPER", () => {
    expectPrinted(periodsBetween(0.0475, 25000, 1e6), 79.49, 0.01);
    expectPrinted(growthBetween(4, 7500, 10000), 0.0746, 0.0001);
    expectPrinted(periodsOf(0.06, 153.75, 2600), -12.02, 0.01);
  });
});

// numpy-financial documentation, from memory.
describe("money as numpy-financial prints it", () => {
  it("[M10] NPV", () => {
    expectPrinted(worth(0.08, [-40000, 5000, 8000, 12000, 30000]), 3065.22267, 0.00001);
  });

  it("[M11] IRR", () => {
    expectPrinted(ratesOfReturn(byYear([-100, 39, 59, 55, 20]))[0], 0.28095, 0.00001);
  });

  it("[M12] PMT and NPER", () => {
    expect(payment(DOUBLES, 0.075 / 12, 180, 200000)).toBeCloseTo(-1854.0247200054619, 9);
    expectPrinted(periodsOf(0.07 / 12, -150, 8000), 64.07334877, 1e-8);
  });
});

// Help pages of a spreadsheet, from memory.
describe("money as help pages of a spreadsheet print it", () => {
  it("[M13] XIRR and XNPV", () => {
    // Its own search stops at eight digits.
    expect(Math.abs((ratesOfReturn(yearsOf(CRISIS))[0] ?? 0) - 0.373362535)).toBeLessThan(2e-9);
    expectPrinted(datedPresentValue(0.09, CRISIS), 2086.65, 0.01);
  });

  it("[M15] MIRR", () => {
    const flows = [-120000, 39000, 30000, 21000, 37000, 46000];
    expectPrinted(modifiedReturn(flows, 0.1, 0.12), 0.1261, 0.0001);
  });
});

describe("money as exercises and handbooks print it", () => {
  // A public exercise of capital budgeting: five unequal inflows at 10 %.
  it("[M17] present value, index and payback", () => {
    const inflows = [0, 14000, 14000, 10000, 10000, 8000];
    const flows = [-45000, ...inflows.slice(1)];
    expectPrinted(worth(0.1, inflows), 43608.17, 0.01);
    expectPrinted(worth(0.1, flows), -1391.83, 0.01);
    expectPrinted(profitabilityIndex(DOUBLES, 45000, worth(0.1, flows)), 0.969, 0.001);
    expectPrinted(paybackOf(flows), 3.7, 0.01);
  });

  // A public exercise: three inflows at 10 %, index by hand.
  it("[M18] present value of inflows", () => {
    expectPrinted(worth(0.1, [0, 6200, 5600, 3900]), 13194.59, 0.01);
    expectPrinted(
      profitabilityIndex(DOUBLES, 12000, worth(0.1, [-12000, 6200, 5600, 3900])),
      1.099549,
      1e-6,
    );
  });

  // An encyclopedia's example of equivalent annual cost, from memory.
  it("[M19] equivalent annual cost", () => {
    const a = equivalentAnnual(DOUBLES, 0.05, 50000, 3) + 13000;
    const b = equivalentAnnual(DOUBLES, 0.05, 150000, 8) + 7500;
    expectPrinted(a, 31360, 1);
    expectPrinted(b, 30708, 1);
  });

  // MIL-HDBK-1003/13A (UFC 3-440-04): present worth of 25 years, middle of the year, 10 %. Its table was worked
  // with rounded factors, so the last digit is off by up to two.
  it.each([
    [0.07, 18.049, 0.002],
    [0.08, 20.05, 0.001],
    [0.1, 25, 0.001],
  ])("[M21] mid-year present worth with growth of %d", (growth, printed, slack) => {
    expect(
      Math.abs(uniformWorth(DOUBLES, 0.1, 25, growth, "mid-year") - printed),
    ).toBeLessThanOrEqual(slack);
    expect(Math.abs(uniformWorth(DOUBLES, 0.1, 25, growth) - printed)).toBeGreaterThan(
      growth === 0.1 ? -1 : 0.1,
    );
  });

  // NIST Handbook 135, supplement, tables of discount factors at 3 %, from memory.
  it.each([
    [1, 0.971, 0.97],
    [5, 0.863, 4.58],
    [10, 0.744, 8.53],
    [15, 0.642, 11.94],
    [20, 0.554, 14.88],
    [25, 0.478, 17.41],
    [30, 0.412, 19.6],
  ])("[M22] factors of %d years", (years, single, uniform) => {
    expectPrinted(worth(0.03, [...Array.from({ length: years }, () => 0), 1]), single, 0.001);
    expectPrinted(uniformWorth(DOUBLES, 0.03, years), uniform, 0.01);
  });
});

describe("steam in money", () => {
  const size = (unit: string, target: Target): number => {
    const factor = unitFactor(unit, target);
    return typeof factor === "number" ? factor : NaN;
  };

  // A utility's page on the cost of steam: 1,073 Btu/lb, 8.00 $/MMBtu, 81 %.
  it("[M23] from gas", () => {
    const perPound = size("Btu", "MJ") * 1073;
    const perMegajoule = 8 / size("MMBtu", "MJ");
    expectPrinted((1000 * perPound * perMegajoule) / 0.81, 10.6, 0.01);
  });

  // The same page: 9,000 gallons of oil at 2.50 $ for 10⁶ lb.
  it("[M24] from oil", () => {
    const oil = 0.009 * size("US gal/lb", "L/kg");
    const perLitre = 2.5 / size("US gal", "L");
    expectPrinted(oil * perLitre * 1000 * size("lb", "kg"), 22.5, 0.01);
  });

  // US DOE Steam Tip Sheet, Recover Heat from Boiler Blowdown: the text says 1.8, its arithmetic uses 1.67.
  it("[M25] from blowdown", () => {
    const share = 3200 / (3200 + 50000);
    expectPrinted(100 * share, 6, 0.1);
    const saved = (1.67 * 50000 * 8000) / 1e5 / 0.82;
    expectPrinted(saved, 8146, 1);
    // 24,439 by its own figures; it multiplies the rounded heat.
    expectPrinted(Math.round(saved) * 3, 24438, 1);
  });
});

// Worked examples of the project, computed twice by independent means; inputs invented unless a source is named.
describe("worked examples of an investment", () => {
  const flat = (outlay: number, each: number, years: number, end = 0): number[] => [
    -outlay,
    ...Array.from({ length: years }, (_, i) => each + (i + 1 === years ? end : 0)),
  ];

  // Sustainable Energy Authority of Ireland, appendix on appraisal: 10,000 for 5,000 a year; the rest by hand.
  it("[M30] Irish energy agency", () => {
    const flows = flat(10000, 5000, 3);
    expectPrinted(paybackOf(flows), 2, 0.1);
    expectPrinted(worth(0.1, flows), 2434.26, 0.01);
    expectPrinted(worth(0.05, flows), 3616.24, 0.01);
    expectPrinted(ratesOfReturn(byYear(flows))[0], 0.23375, 0.00001);
    const discounted = flows.map((flow, t) => flow / 1.1 ** t);
    expectPrinted(paybackOf(discounted), 2.352, 0.001);
  });

  // A textbook of energy economics: outlay of five yearly savings, "just over 15 %" and "between 19 and 21 %".
  it("[M31] outlay of five savings", () => {
    expectPrinted(ratesOfReturn(byYear(flat(5, 1, 10)))[0], 0.15098, 0.00001);
    expectPrinted(ratesOfReturn(byYear(flat(5, 1, 20)))[0], 0.19426, 0.00001);
  });

  // Common textbook case of two rates of return; worked by hand: 1.1 and 1.4 solve x² − 2.5 x + 1.54 = 0.
  it("[M32] two rates of return", () => {
    const flows = [-1000, 2500, -1540];
    const rates = ratesOfReturn(byYear(flows));
    expect(rates).toHaveLength(2);
    expect(rates[0]).toBeCloseTo(0.1, 10);
    expect(rates[1]).toBeCloseTo(0.4, 10);
    expectPrinted(worth(0.25, flows), 14.4, 0.01);
  });

  // Invented print house, worked by hand from the formulas.
  it("[M33] print house", () => {
    const house = flat(900000, 170000, 10, 40000);
    expectPrinted(uniformWorth(DOUBLES, 0.08, 10), 6.710081, 1e-6);
    expectPrinted(worth(0.08, house), 259241.58, 0.01);
    expectPrinted(ratesOfReturn(byYear(house))[0], 0.13931, 0.00001);
    expectPrinted(900000 / 170000, 5.294, 0.001);
    expectPrinted(paybackOf(house), 5.294, 0.001);
    expectPrinted(paybackOf(house.map((flow, t) => flow / 1.08 ** t)), 7.162, 0.001);
    expectPrinted(worth(0.08, flat(900000, 131365.36, 10, 40000)), 0, 0.1);
    expectPrinted(worth(0.08, flat(900000, 136000, 10, 40000)), 31098.81, 0.01);
    expectPrinted(worth(0.08, flat(900000, 119000, 10, 40000)), -82972.57, 0.01);
    expectPrinted(worth(0.08, flat(1035000, 170000, 10, 40000)), 124241.58, 0.01);
    expectPrinted(worth(0.12, house), 73416.84, 0.01);
    expectPrinted(worth(0.08, flat(900000, 170000, 7, 40000)), 8422.53, 0.01);
    expectPrinted(-worth(0.08, house) / 4200, -61.72, 0.01);
    expectPrinted(-worth(0.08, house) / (420 * uniformWorth(DOUBLES, 0.08, 10)), -91.99, 0.01);
    const ink = 20000 * uniformWorth(DOUBLES, 0.08, 10);
    expectPrinted(ink, 134201.63, 0.01);
    expectPrinted(worth(0.08, house) / ink, 1.9317, 0.0001);
  });

  // Invented, worked by hand: outlay as equal yearly cost at 6 % for each tonne.
  it("[M34] cost of a tonne", () => {
    const each = (outlay: number, saved: number, tonnes: number, years: number): number =>
      (equivalentAnnual(DOUBLES, 0.06, outlay, years) - saved) / tonnes;
    expectPrinted(each(200000, 15000, 120, 15), 46.6046, 0.0001);
    expectPrinted(each(50000, 12000, 80, 10), -65.0825, 0.0001);
  });
});

describe("formulas in two arithmetics", () => {
  const both: readonly (readonly [string, Arithmetic<unknown>])[] = [
    ["doubles", DOUBLES as Arithmetic<unknown>],
    ["decimals", DECIMALS as Arithmetic<unknown>],
  ];

  it.each(both)("equivalent annual cost gives its worth back in %s", (_, math) => {
    const rate = math.of(0.07);
    const each = equivalentAnnual(math, rate, math.of(1000), 12);
    expect(math.number(math.times(each, uniformWorth(math, rate, 12)))).toBeCloseTo(1000, 9);
  });
});
