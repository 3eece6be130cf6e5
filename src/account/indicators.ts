/**
 * What is reported of the flows at the fence: each indicator is a sum of flows times intensities.
 */

import { constant, derive, ONE, type Quantity } from "../numbers/quantity.js";
import type { GivenNumber, SiteText } from "../plant/schema.js";
import { givenSpread } from "../plant/given.js";
import type { Site } from "../plant/site.js";

/** An indicator for one site. */
export interface Indicator {
  /** Id: `water`, `cod`, `energy`, … */
  readonly id: string;
  /** Unit of its total. */
  readonly unit: string;
  /** Plain words. */
  readonly words: string;
  /** Intensities by flow at the fence. */
  readonly intensities: ReadonlyMap<string, Quantity>;
}

/** Ids of the indicators, in the order of the report. */
export const INDICATOR_IDS = [
  "water",
  "evaporated",
  "discharged",
  "consumed",
  "cod",
  "nitrogen",
  "salt",
  "energy",
  "electricity",
  "heat",
  "co2-location",
  "co2-market",
  "scope-1",
  "scope-2-location",
  "scope-2-market",
  "biogenic",
  "carbon-to-air",
  "formaldehyde",
  "hours",
  "labour",
  "ink",
  "paper",
  "cost",
] as const;

/** Id of an indicator. */
export type IndicatorId = (typeof INDICATOR_IDS)[number];

const KWH_PER_MJ = constant("kilowatt-hours-per-megajoule", 1 / 3.6, "kWh/MJ", "1 MJ in kWh");

const LESS = constant("less", -1, "1", "taken off");

/** Fuels whose carbon was in the air not long ago: its CO2 stands apart. */
const BIOGENIC = new Set(["wood"]);

/**
 * Indicators of a site.
 *
 * @param site - the site
 * @param text - as written in the plant file
 * @param gwp - set of global warming potentials
 * @param ink - ink of the route, for its price
 * @returns indicators by id; cost only where prices are given
 */
export function indicatorsOf(
  site: Site,
  text: SiteText,
  gwp: "AR5" | "AR6",
  ink?: string,
): ReadonlyMap<IndicatorId, Indicator> {
  const fuels = site.fuels.map((fuel) => ({ fuel, flow: `fuel.${fuel}` }));
  const location =
    given(text.electricity?.intensity, site, {
      name: "electricity.intensity",
      unit: "kg CO2e/kWh",
      words: "greenhouse gases of the electricity, location-based",
    }) ?? site.at(`grid.${text.place}.intensity`);
  const market =
    given(text.electricity?.market?.intensity, site, {
      name: "electricity.market",
      unit: "kg CO2e/kWh",
      words: "greenhouse gases of the electricity, as its supplier states",
    }) ?? location;
  const steam = given(text.steam_intensity, site, {
    name: "steam-intensity",
    unit: "kg CO2e/MJ",
    words: "greenhouse gases of bought steam",
  });
  const scope1 = new Map(fuels.map(({ fuel, flow }) => [flow, fuelIntensity(site, fuel, gwp)]));
  const scope2 = (electricity: Quantity): Map<string, Quantity> =>
    new Map([
      ["electricity", electricity],
      ...(steam === undefined ? [] : [["steam.bought", steam] as const]),
    ]);
  const heat = new Map<string, Quantity>([
    ...fuels.map(({ flow }) => [flow, KWH_PER_MJ] as const),
    ["steam.bought", KWH_PER_MJ],
    ["bought.heat", KWH_PER_MJ],
  ]);
  // Work done by a partner house belongs to the route that asks for it: it counts in the totals, with the
  // place's grid and the site's burner fuel, and in no scope of the mill.
  const partner = (electricity: Quantity): readonly (readonly [string, Quantity])[] => [
    ["bought.electricity", electricity],
    ["bought.heat", fuelIntensity(site, site.fuels[0] ?? "natural-gas", gwp)],
  ];
  const all: readonly (readonly [IndicatorId, string, string, ReadonlyMap<string, Quantity>])[] = [
    ["water", "L", "water withdrawn", one("water.withdrawn")],
    ["evaporated", "L", "water evaporated", one("water.evaporated")],
    ["discharged", "L", "water discharged", one("water.discharged")],
    // Not what evaporates: water of inks and chemicals evaporates and was never withdrawn.
    [
      "consumed",
      "L",
      "water consumed: withdrawn less discharged",
      new Map([
        ["water.withdrawn", ONE],
        ["water.discharged", LESS],
      ]),
    ],
    ["cod", "g", "COD load to the drain, before treatment", one("cod")],
    ["nitrogen", "g", "nitrogen load to the drain, before treatment", one("nitrogen")],
    ["salt", "g", "dissolved salts to the drain", one("salt")],
    [
      "energy",
      "kWh",
      "final energy",
      new Map([...heat, ["electricity", ONE], ["bought.electricity", ONE]]),
    ],
    [
      "electricity",
      "kWh",
      "electricity",
      new Map([
        ["electricity", ONE],
        ["bought.electricity", ONE],
      ]),
    ],
    ["heat", "kWh", "fuel and bought heat", heat],
    [
      "co2-location",
      "kg CO2e",
      "CO2e of scopes 1 and 2, location-based",
      new Map([...scope1, ...scope2(location), ...partner(location)]),
    ],
    [
      "co2-market",
      "kg CO2e",
      "CO2e of scopes 1 and 2, market-based",
      new Map([...scope1, ...scope2(market), ...partner(market)]),
    ],
    ["scope-1", "kg CO2e", "CO2e of scope 1", scope1],
    ["scope-2-location", "kg CO2e", "CO2e of scope 2, location-based", scope2(location)],
    ["scope-2-market", "kg CO2e", "CO2e of scope 2, market-based", scope2(market)],
    ["biogenic", "kg CO2", "biogenic CO2, outside the scopes", biogenic(site)],
    ["carbon-to-air", "g C", "organic carbon to air", one("carbon.air")],
    ["formaldehyde", "g", "formaldehyde to air", one("formaldehyde")],
    ["hours", "h", "machine hours", one("machine.hours")],
    ["labour", "h", "labour hours", one("labour.hours")],
    ["ink", "L", "ink", one("ink")],
    ["paper", "m2", "protecting paper", one("paper")],
    ["cost", text.tariffs?.currency ?? "", "cost of the priced flows", prices(site, text, ink)],
  ];
  return new Map(
    all
      .filter(([id]) => id !== "cost" || text.tariffs !== undefined)
      .map(([id, unit, words, intensities]) => [id, { id, unit, words, intensities }]),
  );
}

function one(flow: string): ReadonlyMap<string, Quantity> {
  return new Map([[flow, ONE]]);
}

/**
 * CO2e of burning a fuel: CO2 + CH4 × GWP + N2O × GWP, methane from combustion at its lower value because
 * the fuel's CO2 counts all its carbon already; biogenic CO2 left out.
 *
 * @param site - the site
 * @param fuel - the fuel
 * @param gwp - set of global warming potentials
 * @returns kg CO2e per MJ of net calorific value
 */
export function fuelIntensity(site: Site, fuel: string, gwp: "AR5" | "AR6"): Quantity {
  const set = gwp.toLowerCase();
  return derive(
    `fuel.${fuel}.co2e`,
    "kg CO2e/MJ",
    "(CO2 + CH4 × GWP + N2O × GWP) / 10⁶",
    [
      site.at(`fuel.${fuel}.co2`),
      site.at(`fuel.${fuel}.ch4`),
      site.at(`fuel.${fuel}.n2o`),
      site.at(`gwp.${set}.ch4-combustion`),
      site.at(`gwp.${set}.n2o`),
    ],
    (co2 = 0, ch4 = 0, n2o = 0, gwpCh4 = 0, gwpN2o = 0) =>
      1e-6 * ((BIOGENIC.has(fuel) ? 0 : co2) + ch4 * gwpCh4 + n2o * gwpN2o),
  );
}

function biogenic(site: Site): ReadonlyMap<string, Quantity> {
  return new Map(
    site.fuels
      .filter((fuel) => BIOGENIC.has(fuel))
      .map((fuel) => [
        `fuel.${fuel}`,
        derive(
          "biogenic",
          "kg CO2/MJ",
          "CO2 / 10⁶",
          [site.at(`fuel.${fuel}.co2`)],
          (co2 = 0) => 1e-6 * co2,
        ),
      ]),
  );
}

function prices(
  site: Site,
  text: SiteText,
  ink: string | undefined,
): ReadonlyMap<string, Quantity> {
  const tariffs = text.tariffs;
  if (tariffs === undefined) return new Map();
  const price = (
    value: GivenNumber | undefined,
    name: string,
    scale: number,
  ): Quantity | undefined => {
    const leaf = given(value, site, {
      name: `tariffs.${name}`,
      unit: tariffs.currency,
      words: `tariffs.${name}`,
    });
    return leaf === undefined
      ? undefined
      : derive(`price.${name}`, tariffs.currency, `${scale} × price`, [leaf], (p = 0) => scale * p);
  };
  const list: readonly (readonly [string, Quantity | undefined])[] = [
    ["electricity", price(tariffs.electricity, "electricity", 1)],
    ...site.fuels.map(
      (fuel) => [`fuel.${fuel}`, price(tariffs.fuel?.[fuel], `fuel.${fuel}`, 1 / 3.6)] as const,
    ),
    ["steam.bought", price(tariffs.steam, "steam", 1 / 3.6)],
    ["water.withdrawn", price(tariffs.water, "water", 1e-3)],
    ["water.discharged", price(tariffs.effluent, "effluent", 1e-3)],
    ["machine.hours", price(tariffs.labour, "labour", 1)],
    ...(ink === undefined ? [] : ([["ink", price(tariffs.ink?.[ink], `ink.${ink}`, 1)]] as const)),
  ];
  return new Map(
    list.flatMap(([flow, quantity]) => (quantity === undefined ? [] : [[flow, quantity] as const])),
  );
}

function given(
  value: GivenNumber | undefined,
  site: Site,
  { name, unit, words }: { readonly name: string; readonly unit: string; readonly words: string },
): Quantity | undefined {
  if (value === undefined) return undefined;
  return {
    kind: "leaf",
    id: `${name} @ site ${site.name}`,
    factor: name,
    unit,
    words,
    spread: givenSpread(value, [0, 1e9]),
    provenance: "plant",
    source:
      (typeof value === "number" ? undefined : value.source) ??
      `plant.yaml, sites.${site.name}.${name}`,
  };
}
