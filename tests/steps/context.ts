/** A mill on paper: contexts with constant settings, lots with columns, and what steps make of them. */

import { constant, evaluate, type Leaf, type Quantity } from "../../src/numbers/quantity.js";
import {
  type Amount,
  amountNamed,
  FACTOR_UNITS,
  type FactorName,
  type OpenName,
} from "../../src/steps/amounts.js";
import type { Cloth, WaterPart } from "../../src/steps/cloth.js";
import type { Substance } from "../../src/steps/flows.js";
import type { ClothKind, LoggedColumn, StepContext, StepKind } from "../../src/steps/step.js";
import { flowName, type Term } from "../../src/steps/term.js";
import { type Numbers, USUAL } from "./usual.js";

/** Cotton: heat capacity 1.3 kJ/(kg K), regain 7.5 %, and the heats of wetting and sorption. */
export const COTTON: Readonly<Record<keyof ClothKind, number>> = {
  dryShare: 1 / 1.075,
  heatCapacity: 1.3 / 1.075,
  regain: 0.075,
  wettingHeat: 46,
  sorptionHeat: 1250,
};

const CLOTH_UNITS: Readonly<Record<keyof ClothKind, string>> = {
  dryShare: "kg/kg",
  heatCapacity: "kJ/(kg K)",
  regain: "kg/kg",
  wettingHeat: "kJ/kg",
  sorptionHeat: "kJ/kg",
};

/** What a test says of a step; all else is usual. */
export interface Told {
  readonly settings?: Numbers;
  readonly choices?: Readonly<Record<string, string>>;
  /** Columns that lots bring; none when absent. */
  readonly takes?: readonly LoggedColumn[];
  readonly cloth?: Partial<Readonly<Record<keyof ClothKind, number>>>;
  /** Hall air, 26 °C, 0.0115 kg/kg and 1.01325 bar when absent. */
  readonly hall?: {
    readonly temperature?: number;
    readonly humidity?: number;
    readonly pressure?: number;
  };
  /** Supply water, 15 °C when absent. */
  readonly supply?: number;
  /** Enthalpy of steam, 2768.3 kJ/kg when absent: 8 bar absolute. */
  readonly steam?: number;
  /** Content in g/L for a printer, in g/kg for all others. */
  readonly recipe?: Partial<Readonly<Record<Substance, number>>>;
  readonly burnerVapour?: number;
  readonly burnerEfficiency?: number;
  readonly own?: boolean;
  readonly inkWater?: number;
}

/** A context of the kind whose every number is a constant. */
export function contextFor(kind: StepKind, told: Told = {}): StepContext {
  const settings: Numbers = { ...USUAL[kind.kind], ...told.settings };
  const fibres = { ...COTTON, ...told.cloth };
  const cloth = (name: keyof ClothKind): Leaf =>
    constant(`fibre.${name}`, fibres[name], CLOTH_UNITS[name]);
  return {
    role: "step",
    set: (name) => {
      const spec = kind.settings[name];
      const value = settings[name];
      if (spec === undefined) throw new Error(`${kind.kind} has no setting ${name}`);
      if (value === undefined) throw new Error(`no value for ${kind.kind}.${name}`);
      return constant(`${kind.kind}.${name}`, value, spec.unit, spec.words);
    },
    choose: (name) => {
      const spec = kind.choices[name];
      if (spec === undefined) throw new Error(`${kind.kind} has no choice ${name}`);
      return told.choices?.[name] ?? spec.usual;
    },
    takes: (column) => (told.takes ?? []).includes(column),
    kind: {
      dryShare: cloth("dryShare"),
      heatCapacity: cloth("heatCapacity"),
      regain: cloth("regain"),
      wettingHeat: cloth("wettingHeat"),
      sorptionHeat: cloth("sorptionHeat"),
    },
    hall: {
      temperature: constant("hall.temperature", told.hall?.temperature ?? 26, "°C"),
      humidity: constant("hall.humidity", told.hall?.humidity ?? 0.0115, "kg/kg"),
      pressure: constant("site.pressure", told.hall?.pressure ?? 1.01325, "bar"),
    },
    supplyTemperature: constant("water.supply-temperature", told.supply ?? 15, "°C"),
    steam: { enthalpy: constant("steam.enthalpy", told.steam ?? 2768.3, "kJ/kg") },
    recipe: Object.entries(told.recipe ?? {}).map(([substance, content]) => ({
      substance: substance as Substance,
      content: constant(`recipe.${substance}`, content, kind.kind === "printer" ? "g/L" : "g/kg"),
    })),
    inkWater: constant("ink.water", told.inkWater ?? 0.7, "1"),
    own: told.own ?? true,
    burnerVapour: constant("fuel.vapour", told.burnerVapour ?? 0.045, "kg/MJ"),
    burnerEfficiency: constant("burner.efficiency", told.burnerEfficiency ?? 0.995, "1"),
  };
}

/** Cloth as it lies in the hall. */
export function storedCloth(context: StepContext): Cloth {
  const { regain, dryShare } = context.kind;
  return {
    water: [part("mass", valueOf(regain) * valueOf(dryShare))],
    temperature: context.hall.temperature,
    moisture: regain,
  };
}

/** Cloth of one moisture [kg/kg bone dry] and temperature [°C], told as a number or left to the parts. */
export function clothAt(
  context: StepContext,
  moisture: number,
  temperature: number,
  asNumber = true,
): Cloth {
  const cloth = {
    water: [part("mass", moisture * valueOf(context.kind.dryShare))],
    temperature: constant("cloth.temperature", temperature, "°C"),
  };
  return asNumber ? { ...cloth, moisture: constant("cloth.moisture", moisture, "kg/kg") } : cloth;
}

/** A part of the water on cloth, by the name of its amount. */
export function part(amount: string, rate: number): WaterPart {
  return { amount: amountNamed(amount), rate: constant(`water on ${amount}`, rate, "kg/kg") };
}

/** The columns of a lot; `undefined` is blank. */
export type Columns = Readonly<Record<Exclude<FactorName, OpenName>, number>> &
  Readonly<Record<OpenName, number | undefined>>;

/** 1000 m of cotton, 1.6 m wide and 140 g/m²: 224 kg. All columns that may be blank are. */
export const LOT: Columns = {
  length: 1000,
  width: 1.6,
  printWidth: 1.6,
  gsm: 140,
  accepted: 980,
  ink: undefined,
  coverage: undefined,
  pickup: undefined,
  fixTemp: undefined,
  dwell: undefined,
  liquorRatio: undefined,
  baths: undefined,
  speed: undefined,
};

/** Conditioned mass of a lot. [kg] */
export function massOf(lot: Columns): number {
  return (lot.length * lot.width * lot.gsm) / 1000;
}

/** Value of a quantity all of whose leaves are constants. */
export function valueOf(quantity: Quantity): number {
  return evaluate(quantity, ({ id, spread }) => {
    if (spread.shape !== "fixed") throw new Error(`${id} is drawn`);
    return spread.value;
  });
}

/** Sum of an amount over lots. */
export function amountOf(amount: Amount, lots: readonly Columns[]): number {
  let sum = 0;
  for (const lot of lots) {
    if (amount.logged.some((name) => lot[name] === undefined)) continue;
    if (amount.open.some((name) => lot[name] !== undefined)) continue;
    let product = amount.scale;
    for (const name of Object.keys(FACTOR_UNITS) as FactorName[]) {
      product *= (lot[name] ?? 1) ** (amount.product[name] ?? 0);
    }
    sum += product;
  }
  return sum;
}

/** Sums the terms of lots to one number a flow; a flow that is not named is 0. */
export function flowsOf(
  terms: readonly Term[],
  lots: readonly Columns[] = [LOT],
): (flow: string) => number {
  const sums = new Map<string, number>();
  for (const { flow, amount, rate } of terms) {
    const name = flowName(flow);
    sums.set(name, (sums.get(name) ?? 0) + amountOf(amount, lots) * valueOf(rate));
  }
  return (name) => sums.get(name) ?? 0;
}

/** Water on the cloth of lots. [kg] */
export function waterOn(cloth: Cloth, lots: readonly Columns[] = [LOT]): number {
  let sum = 0;
  for (const { amount, rate } of cloth.water) sum += amountOf(amount, lots) * valueOf(rate);
  return sum;
}
