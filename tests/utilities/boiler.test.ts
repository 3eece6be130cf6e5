import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import { liquidEnthalpy, vapourEnthalpy, waterEnthalpy } from "../../src/physics/steam.js";
import {
  type BoilerHouse,
  coilSteam,
  returnOfRaised,
  steamConversions,
  steamEnthalpyOf,
} from "../../src/utilities/boiler.js";
import { valueOf } from "../steps/context.js";

interface Numbers {
  readonly pressure?: number;
  readonly efficiency?: number;
  readonly blowdown?: number;
  readonly lineLoss?: number;
  readonly back?: number;
  readonly backAt?: number;
  readonly feedAt?: number;
  readonly power?: number;
  readonly fuel?: string;
}

function house(numbers: Numbers = {}): BoilerHouse {
  return {
    pressure: constant("p", numbers.pressure ?? 8, "bar"),
    efficiency: constant("eta", numbers.efficiency ?? 0.85),
    blowdown: constant("b", numbers.blowdown ?? 0),
    lineLoss: constant("l", numbers.lineLoss ?? 0),
    condensateReturn: constant("r", numbers.back ?? 0),
    condensateTemperature: constant("t-cond", numbers.backAt ?? 90, "°C"),
    makeUpTemperature: constant("t-mk", numbers.feedAt ?? 80, "°C"),
    power: constant("power", numbers.power ?? 0, "kWh/kg"),
    fuel: numbers.fuel ?? "natural-gas",
  };
}

/** Sum of a flow at the fence per kg of steam, with or without return. */
function per(boiler: BoilerHouse, to: string, coil = false): number {
  return steamConversions(boiler, coil ? returnOfRaised(boiler) : undefined)
    .filter((conversion) => conversion.to === to)
    .reduce((sum, { rate }) => sum + valueOf(rate), 0);
}

describe("a boiler without blowdown, loss and return", () => {
  it("burns G (h_g − h_mk)/η", () => {
    const wanted = (vapourEnthalpy(8) - waterEnthalpy(8, 80)) / 0.85 / 1000;
    expect(per(house(), "fuel.natural-gas")).toBeCloseTo(wanted, 12);
  });

  // Difference of enthalpies from IAPWS-IF97 (regions 1, 2 and 4), worked out apart from this code; 56.1 kg
  // CO2 per GJ from IPCC 2006, vol. 2, ch. 2.
  it("[B9] takes 2.862064 MJ and 160.562 kg CO2 per t at 8 bar, 80 °C and 0.85", () => {
    const fuel = per(house(), "fuel.natural-gas");
    expect(fuel / 2.862064).toBeCloseTo(1, 6);
    expect((fuel * 56.1) / 160.562).toBeCloseTo(1, 5);
  });

  // From memory of common tables, rounded as there: h_g 2773 kJ/kg near 9 bar, 335 kJ/kg at 80 °C.
  it("[W13] takes about 2868 kJ or 0.797 kWh at 9 bar", () => {
    const fuel = per(house({ pressure: 9 }), "fuel.natural-gas");
    expect(Math.abs(1000 * fuel - 2868)).toBeLessThan(2);
    expect(fuel / 3.6).toBeCloseTo(0.797, 3);
    expect(fuel * 0.0561).toBeCloseTo(0.161, 3);
  });

  // US DOE, Steam Tip Sheet 15, Benchmark the Fuel Cost of Steam Generation: Btu per lb of saturated steam of
  // 150 psig by the temperature of feed water in °F, without losses, printed to 1 Btu.
  it.each([
    [50, 1178],
    [100, 1128],
    [150, 1078],
    [200, 1028],
    [250, 977],
  ])("[B6] gives the tip sheet's figure for feed water of %i °F", (fahrenheit, btu) => {
    const boiler = house({
      pressure: (150 + 14.696) * 0.0689476,
      efficiency: 1,
      feedAt: (fahrenheit - 32) / 1.8,
    });
    expect(Math.abs((per(boiler, "fuel.natural-gas") * 1000) / 2.326 - btu)).toBeLessThan(1);
  });
});

const share = (max: number): fc.Arbitrary<number> => fc.double({ min: 0, max, noNaN: true });
const houses = fc
  .record({
    blowdown: share(0.3),
    lineLoss: share(0.5),
    back: share(1),
    feedAt: fc.double({ min: 2, max: 45, noNaN: true }),
  })
  .map((numbers) => house(numbers));

describe("steamConversions", () => {
  it("hand on the steam that is not lost, and let all other water out as it came in", () => {
    fc.assert(
      fc.property(houses, fc.boolean(), (boiler, coil) => {
        const water = (to: string): number => per(boiler, to, coil);
        // Open steam goes on as the user's water: 1 kg. Behind a coil none does.
        const user = coil ? 0 : 1;
        expect(water("water.process")).toBeCloseTo(
          water("water.drained") + water("water.evaporated") + user,
          9,
        );
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("burn as much as leaves by steam, blowdown and return, less what make-up and return bring", () => {
    const boiler = house({ blowdown: 0.05, lineLoss: 0.1, back: 0.8, feedAt: 15 });
    const G = 1 / 0.9;
    const r = 0.8 * 0.9;
    const out = vapourEnthalpy(8) + (0.05 / 0.95) * liquidEnthalpy(8);
    const back = r * waterEnthalpy(8, 90);
    const makeUp = (1 / 0.95 - r) * waterEnthalpy(8, 15);
    expect(per(boiler, "fuel.natural-gas", true)).toBeCloseTo(
      (G * (out - back - makeUp)) / 850,
      12,
    );
    expect(per(boiler, "water.process", true)).toBeCloseTo(G * (1 / 0.95 - r), 12);
  });

  it("take less fuel with return, more with blowdown and loss", () => {
    const base = { blowdown: 0.05, lineLoss: 0.05, back: 0.5, feedAt: 15 };
    const fuel = (numbers: Numbers): number =>
      per(house({ ...base, ...numbers }), "fuel.natural-gas", true);
    expect(fuel({ back: 0.9 })).toBeLessThan(fuel({}));
    expect(fuel({ blowdown: 0.1 })).toBeGreaterThan(fuel({}));
    expect(fuel({ lineLoss: 0.1 })).toBeGreaterThan(fuel({}));
  });

  it("count pumps per steam raised", () => {
    expect(per(house({ lineLoss: 0.2, power: 0.002 }), "electricity")).toBeCloseTo(0.0025, 12);
  });

  it("count condensate hotter than boiling as boiling", () => {
    const hot = house({ pressure: 1.2, back: 1, backAt: 150 });
    const boiling = house({ pressure: 1.2, back: 1, backAt: 104.8 });
    const fuel = (boiler: BoilerHouse): number => per(boiler, "fuel.natural-gas", true);
    expect(fuel(hot)).toBeCloseTo(fuel(boiling), 3);
  });
});

describe("bought steam", () => {
  const bought = house({ fuel: "bought", lineLoss: 0.1, back: 0.8 });

  it("is heat at the fence, less what the return takes back", () => {
    expect(per(bought, "steam.bought")).toBeCloseTo(vapourEnthalpy(8) / 900, 12);
    expect(per(bought, "steam.bought", true)).toBeCloseTo(
      (vapourEnthalpy(8) - 0.72 * waterEnthalpy(8, 90)) / 900,
      12,
    );
  });

  it("burns nothing and draws nothing on site", () => {
    const flows = steamConversions(bought).map(({ to }) => to);
    expect(flows).not.toContain("water.process");
    expect(flows.filter((flow) => flow.startsWith("fuel."))).toEqual([]);
  });

  it("is water that comes in and stays, is lost or is drained", () => {
    // 1/0.9 kg bought for 1 kg of open steam.
    expect(per(bought, "water.steam-bought")).toBeCloseTo(1 / 0.9, 12);
    expect(per(bought, "water.evaporated")).toBeCloseTo(1 / 0.9 - 1, 12);
    expect(per(bought, "water.steam-bought", true)).toBeCloseTo(1 / 0.9 - 0.8, 12);
    expect(per(bought, "water.drained", true)).toBeCloseTo(0.2, 12);
  });
});

describe("steam at main pressure", () => {
  // IAPWS, Revised Release on IF97, saturation: 8 bar, h_g 2768.3 and h_f 720.9 kJ/kg in printed tables (from
  // memory).
  it("has the enthalpy of tables, and gives its heat of condensing behind a coil", () => {
    expect(valueOf(steamEnthalpyOf(house().pressure))).toBeCloseTo(2768.3, 1);
    expect(valueOf(coilSteam(house())) * (2768.3 - 720.9)).toBeCloseTo(1000, 0);
  });
});
