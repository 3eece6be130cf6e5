import { describe, expect, it } from "vitest";
import { accountOf } from "../../src/account/account.js";
import {
  INDICATOR_IDS,
  type IndicatorId,
  fuelIntensity,
  indicatorsOf,
} from "../../src/account/indicators.js";
import { writeProgram } from "../../src/account/program.js";
import { Ledger } from "../../src/ledger/ledger.js";
import { lookupIn } from "../../src/plant/quantities.js";
import { buildSite, type Site } from "../../src/plant/site.js";
import { valueOf } from "../steps/context.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { inputOf } from "../report/compose/small-mill.js";
import { EXACT_MILL, exactly, type MillFile, PLAIN_LOT, plantFrom } from "./exact-mill.js";

/** IPCC 2006 defaults for natural gas and wood, kg/TJ, and AR6 potentials, as the test states them. */
const FUELS = exactly({
  "fuel.natural-gas.co2": 56100,
  "fuel.natural-gas.ch4": 1,
  "fuel.natural-gas.n2o": 0.1,
  "fuel.wood.co2": 112000,
  "fuel.wood.ch4": 30,
  "fuel.wood.n2o": 4,
  "gwp.ar6.ch4-combustion": 27,
  "gwp.ar6.n2o": 273,
});

const main = EXACT_MILL.sites.main;

/** The exact mill with other words for its site and its heat sources. */
function mill(site: Readonly<Record<string, unknown>>, heat?: string): MillFile {
  const choices = (role: string): object => (heat === undefined ? {} : { [`${role}.heat`]: heat });
  const machines = (EXACT_MILL.routes["reactive"] as { machines: object }).machines;
  const pigment = (EXACT_MILL.routes["pigment-calender"] as { machines: object }).machines;
  return {
    ...EXACT_MILL,
    sites: {
      main: { ...main, ...site, settings: { ...(main["settings"] as object), ...FUELS } },
    },
    routes: {
      "pigment-calender": {
        like: "pigment-calender",
        machines: pigment,
        choices: {
          ...choices("pretreat-dry"),
          ...(heat === undefined ? {} : { "fix.heat": "electric" }),
        },
      },
      reactive: {
        like: "reactive",
        machines,
        choices: { ...choices("pretreat-dry"), ...choices("dry") },
      },
    },
  };
}

/** Indicators of the dye arm of the plain lot; what is not given is 0. */
function totals(file: MillFile): (id: IndicatorId) => number {
  const plant = plantFrom(file);
  const ledger = new Ledger();
  ledger.add(PLAIN_LOT, plant);
  const account = accountOf(
    writeProgram(plant, SHIPPED, ledger.settled().groups, "2026-11-25"),
    1,
    1,
  );
  return (id) => account.indicators.dye.get(id)?.[0] ?? 0;
}

function siteOf(file: MillFile): { site: Site; text: Parameters<typeof indicatorsOf>[1] } {
  const text = plantFrom(file).sites["main"];
  if (text === undefined) throw new Error("no site");
  return { site: buildSite("main", text, lookupIn(SHIPPED, "2026-03", "2026-11-25")), text };
}

const GRID = { electricity: { intensity: { value: 0.2, exact: true } } };

describe("scopes", () => {
  // GHG Protocol: scope 1 what is burned on site, scope 2 what is bought as electricity, steam or heat.
  it("[A11] put a fuel of the house into scope 1, and nothing else there", () => {
    const of = totals(mill({ electricity: { intensity: { value: 0, exact: true } } }));
    // (56100 + 1 × 27 + 0.1 × 273) kg/TJ = 0.0561543 kg/MJ.
    expect(of("scope-1") / (of("heat") * 3.6 * 0.0561543)).toBeCloseTo(1, 9);
    expect(of("scope-2-location")).toBe(0);
    expect(of("co2-location")).toBe(of("scope-1"));
  });

  it("[A11] put bought steam and electricity into scope 2, and nothing else there", () => {
    const of = totals(
      mill(
        { ...GRID, boiler: { fuel: "bought" }, steam_intensity: { value: 0.07, exact: true } },
        "steam-coil",
      ),
    );
    expect(of("scope-1")).toBe(0);
    expect(of("heat")).toBeGreaterThan(0);
    expect(
      of("scope-2-location") / (of("heat") * 3.6 * 0.07 + of("electricity") * 0.2),
    ).toBeCloseTo(1, 9);
    expect(of("co2-location")).toBe(of("scope-2-location"));
  });

  it("[A11] leave biogenic carbon dioxide out, methane and nitrous oxide in", () => {
    const of = totals(mill({ ...GRID, boiler: { fuel: "wood" } }, "steam-coil"));
    expect(of("biogenic") / (of("heat") * 3.6 * 0.112)).toBeCloseTo(1, 9);
    // (30 × 27 + 4 × 273) kg/TJ = 0.001902 kg/MJ.
    expect(of("scope-1") / (of("heat") * 3.6 * 0.001902)).toBeCloseTo(1, 9);
    expect(of("co2-location") / (of("scope-1") + of("electricity") * 0.2)).toBeCloseTo(1, 9);
  });

  it("[A10] take a contract for market-based figures alone, and the grid where there is none", () => {
    const contract = {
      electricity: {
        intensity: { value: 0.2, exact: true },
        market: {
          intensity: { value: 0.05, exact: true },
          rung: "supplier",
          source: "disclosure, invented",
        },
      },
    };
    const of = totals(mill(contract));
    expect(of("scope-2-market") / of("scope-2-location")).toBeCloseTo(0.25, 9);
    expect(of("co2-market") - of("scope-2-market")).toBeCloseTo(of("scope-1"), 6);
    const without = totals(mill(GRID));
    expect(without("scope-2-market")).toBe(without("scope-2-location"));
  });
});

describe("fuelIntensity", () => {
  it("adds methane and nitrous oxide by their potentials", () => {
    const { site } = siteOf(mill({}));
    expect(valueOf(fuelIntensity(site, "natural-gas", "AR6"))).toBeCloseTo(0.0561543, 12);
    expect(valueOf(fuelIntensity(site, "wood", "AR6"))).toBeCloseTo(0.001902, 12);
  });
});

describe("indicatorsOf", () => {
  it("has cost only where prices are given", () => {
    const { site, text } = siteOf(mill({}));
    const ids = [...indicatorsOf(site, text, "AR6").keys()];
    expect(ids).toEqual(INDICATOR_IDS.filter((id) => id !== "cost"));
  });

  // Two people at every machine: twice the hours that machines are held.
  it("counts the hours of people beside those of machines", () => {
    const crew = exactly(
      Object.fromEntries(
        ["pad", "stenter-dry", "printer", "steamer", "wash-range", "squeeze"].map((kind) => [
          `${kind}.crew`,
          2,
        ]),
      ),
    );
    const settings = { ...(main["settings"] as object), ...crew };
    const file = { ...EXACT_MILL, sites: { main: { ...main, settings } } };
    const of = totals(file);
    expect(of("hours")).toBeGreaterThan(0);
    expect(of("labour") / of("hours")).toBeCloseTo(2, 12);
  });

  // GRI 303: Water and Effluents 2018, disclosure 303-5: consumption is withdrawal less discharge.
  it("[D1] consumes what is withdrawn and not discharged, on both arms", () => {
    const { account } = inputOf();
    for (const arm of ["pigment", "dye"] as const) {
      const of = (id: IndicatorId): Float64Array =>
        account.indicators[arm].get(id) ?? new Float64Array(0);
      const [water, discharged, consumed] = [of("water"), of("discharged"), of("consumed")];
      expect(consumed.length).toBeGreaterThan(0);
      consumed.forEach((value, i) => {
        const less = (water[i] ?? NaN) - (discharged[i] ?? NaN);
        expect(Math.abs(value - less)).toBeLessThan(1e-9 * (water[i] ?? NaN));
        expect(value).toBeGreaterThan(0);
      });
      expect(consumed).not.toEqual(of("evaporated"));
    }
  });

  it("prices the flows of the tariff list, each in its own unit", () => {
    const price = (value: number): object => ({ value, exact: true });
    const of = totals(
      mill({
        tariffs: {
          currency: "EUR",
          date: "2026-09-30",
          electricity: price(0.2),
          fuel: { "natural-gas": price(0.05) },
          water: price(2),
          effluent: price(1.5),
          labour: price(20),
        },
      }),
    );
    // kWh, kWh net, m³ withdrawn, m³ discharged, machine hours.
    const wanted =
      0.2 * of("electricity") +
      0.05 * of("heat") +
      (2 * of("water")) / 1000 +
      (1.5 * of("discharged")) / 1000 +
      20 * of("hours");
    expect(of("cost") / wanted).toBeCloseTo(1, 9);
  });
});
