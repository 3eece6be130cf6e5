import { describe, expect, it } from "vitest";
import { fuelIntensity } from "../../src/account/indicators.js";
import { lookupIn } from "../../src/plant/quantities.js";
import { buildSite } from "../../src/plant/site.js";
import { unitFactor } from "../../src/units/convert.js";
import type { Target } from "../../src/units/unit-table.js";
import { EXACT_MILL, exactly, plantFrom } from "../account/exact-mill.js";
import { valueOf } from "../steps/context.js";
import { central, SHIPPED } from "../tools/shipped-factors.js";
import { expectNear } from "./near.js";

function size(unit: string, target: Target): number {
  const factor = unitFactor(unit, target);
  if (typeof factor === "number") return factor;
  throw new Error(`${factor.reason}. ${factor.remedy}`);
}

/** Intensity of natural gas in a mill with settings of its own. [kg CO2e/MJ net] */
function gasIntensity(settings: Readonly<Record<string, number>>, gwp: "AR5" | "AR6"): number {
  const text = plantFrom({
    ...EXACT_MILL,
    sites: {
      main: {
        ...EXACT_MILL.sites.main,
        settings: {
          ...(EXACT_MILL.sites.main["settings"] as object),
          ...exactly({
            "fuel.natural-gas.co2": 56_100,
            "fuel.natural-gas.ch4": 1,
            "fuel.natural-gas.n2o": 0.1,
            ...settings,
          }),
        },
      },
    },
  }).sites["main"];
  if (text === undefined) throw new Error("no site");
  const site = buildSite("main", text, lookupIn(SHIPPED, "2026-03", "2026-11-25"));
  return valueOf(fuelIntensity(site, "natural-gas", gwp));
}

describe("carbon dioxide per energy", () => {
  // Sustainable Energy Authority of Ireland, emission factors: t CO2 per TJ and g per kWh, both as printed.
  it.each([
    [73.3, 263.9],
    [76, 273.6],
    [94.6, 340.6],
  ])("[A2] %d t/TJ is %d g/kWh", (perTerajoule, perKilowattHour) => {
    const grams = (perTerajoule * size("t", "kg") * 1000) / size("TJ", "kWh");
    expect(Math.abs(grams - perKilowattHour)).toBeLessThan(0.1);
  });

  // US EPA, Emission factors for greenhouse gas inventories, 2024, table 1: million Btu per short ton, kg CO2 per
  // million Btu, and their product as printed. Worked per tonne and kWh on the way.
  it.each([
    ["anthracite", 25.09, 103.69, 2602],
    ["bituminous coal", 24.93, 93.28, 2325],
    ["sub-bituminous coal", 17.25, 97.17, 1676],
    ["lignite", 14.21, 97.72, 1389],
    ["mixed industrial coal", 22.35, 94.67, 2116],
    ["wood", 17.48, 93.8, 1640],
  ])("[A3] a short ton of %s gives off what is printed", (_, heat, carbon, printed) => {
    const heatPerTonne = (heat * size("MMBtu", "MJ")) / size("short ton", "kg");
    const carbonPerHeat = carbon / size("10^6 Btu", "kWh") / size("kWh", "MJ");
    const perPound = heatPerTonne * carbonPerHeat * size("lb", "kg");
    expect(Math.abs(2000 * perPound - printed)).toBeLessThan(0.5);
  });

  // The same table: natural gas 0.001026 million Btu and 0.05444 kg CO2 per cubic foot, 53.06 kg per million Btu.
  it("[A3] a cubic foot of gas gives off what is printed", () => {
    const perCubicMetre = (0.001026 * size("MMBtu", "MJ") * 1000) / size("ft3", "L");
    const perMegajoule = 53.06 / size("MMBtu", "MJ");
    const perFoot = (perCubicMetre * perMegajoule * size("cu ft", "L")) / 1000;
    expect(Math.abs(perFoot - 0.05444)).toBeLessThan(0.000005);
  });
});

describe("gas as billed", () => {
  // 100,000 kWh billed gross, net by 0.9 (IPCC 2006, vol. 2, ch. 1: natural gas is about 10 % lower net than
  // gross), with the factors of table 2.3 (from memory); sums by hand. Warming of methane and nitrous oxide: 25
  // and 298 (IPCC 2007, table 2.14), 28 and 265 (2013, table 8.7), 27 and 273 (2021, table 7.15).
  it.each([
    ["of 2007", "AR5", 25, 298, 18_194.1552],
    ["of 2013", "AR5", 28, 265, 18_194.058],
    ["of 2021", "AR6", 27, 273, 18_193.9932],
  ] as const)("[A5] comes to the sum of the report %s", (_, set, methane, laughingGas, sum) => {
    const intensity = gasIntensity(
      {
        [`gwp.${set.toLowerCase()}.ch4-combustion`]: methane,
        [`gwp.${set.toLowerCase()}.n2o`]: laughingGas,
      },
      set,
    );
    const net = 100_000 * size("kWh", "MJ") * central("fuel.natural-gas.gross-to-net");
    expectNear(net * intensity, sum, 1e-9);
  });

  // GHG Protocol, Global warming potential values, 2024: methane that is burned counts 27.0 by the sixth report,
  // methane that leaks 29.8, because the carbon dioxide of a fuel counts all its carbon already; 28 and 30 by the
  // fifth, without feedback.
  it.each([
    ["AR5", 28, 30, 265],
    ["AR6", 27, 29.8, 273],
  ] as const)("[A7] burned methane counts by %s as %d, not as %d", (set, burned, leaked, oxide) => {
    const name = `gwp.${set.toLowerCase()}`;
    const intensity = gasIntensity(
      {
        [`${name}.ch4-combustion`]: burned,
        [`${name}.ch4-leak`]: leaked,
        [`${name}.n2o`]: oxide,
      },
      set,
    );
    expectNear(intensity, 1e-6 * (56_100 + 1 * burned + 0.1 * oxide), 1e-12);
  });
});
