/**
 * Units that logs, meters, bills and data sheets come in, by the unit they are turned into.
 *
 * Factors between customary and metric units are exact by definition unless marked; see NIST Special
 * Publication 811 (2008), appendix B.
 */

/** A unit the computation works in; `1` is a bare ratio. */
export type Target =
  | "m"
  | "m2"
  | "g/m2"
  | "L"
  | "kg"
  | "kWh"
  | "MJ"
  | "kW"
  | "m/min"
  | "s"
  | "h"
  | "bar"
  | "L/kg"
  | "g/L"
  | "kJ/kg"
  | "1";

/** One unit: its size in the target unit, then the ways it is written. */
export type UnitRow = readonly [factor: number, ...spellings: string[]];

const INCH = 0.0254;
const FOOT = 0.3048;
const YARD = 0.9144;
const POUND = 0.45359237;
const OUNCE = POUND / 16;
const US_GALLON = 3.785411784;
const IMPERIAL_GALLON = 4.54609;
const MJ_PER_KWH = 3.6;
/** International table value, exact. [kJ] */
const BTU = 1.05505585262;
const STANDARD_GRAVITY = 9.80665;

// Energies in MJ. The therm of the United States and that of the European Communities are defined apart
// from each other and from 100 000 Btu.
const ENERGIES: readonly UnitRow[] = [
  [1e-6, "J"],
  [1e-3, "kJ"],
  [1, "MJ"],
  [1e3, "GJ"],
  [1e6, "TJ"],
  [MJ_PER_KWH * 1e-3, "Wh"],
  [MJ_PER_KWH, "kWh", "kW h", "kW·h"],
  [MJ_PER_KWH * 1e3, "MWh", "MW h", "MW·h", "MWH"],
  [MJ_PER_KWH * 1e6, "GWh"],
  [BTU * 1e-3, "Btu", "Btu_IT"],
  [BTU * 1e3, "MMBtu", "mmBtu", "million Btu", "10^6 Btu"],
  [105.4804, "therm (US)", "therms (US)", "US therm", "US therms", "therm US"],
  [105.506, "therm (EC)", "therms (EC)", "EC therm", "EC therms", "therm EC"],
  [4.1868e-3, "kcal", "kcal_IT"],
  [4.184e-3, "kcal_th"],
  [4186.8, "Gcal"],
  [41_868, "toe"],
];

const inKilowattHours = ([factor, ...spellings]: UnitRow): UnitRow => [
  factor / MJ_PER_KWH,
  ...spellings,
];

/** Every unit known, by target. */
export const UNITS: Readonly<Record<Target, readonly UnitRow[]>> = {
  m: [
    [1, "m", "metre", "metres", "meter", "meters", "mtr", "mtrs"],
    [1e-3, "mm", "millimetre", "millimetres", "millimeter", "millimeters"],
    [1e-2, "cm", "centimetre", "centimetres", "centimeter", "centimeters"],
    [1e3, "km"],
    [INCH, "in", "inch", "inches", '"'],
    [FOOT, "ft", "foot", "feet"],
    [YARD, "yd", "yds", "yard", "yards"],
  ],
  m2: [
    [1, "m2", "m^2", "sqm", "sq m", "square metre", "square metres"],
    [1e-4, "cm2"],
    [FOOT ** 2, "ft2", "sq ft", "sqft", "square feet"],
    [YARD ** 2, "yd2", "sq yd", "sqyd", "square yards"],
  ],
  "g/m2": [
    [1, "g/m2", "g/m^2", "gsm", "g/sqm", "g m-2"],
    [1e3, "kg/m2"],
    [(1e3 * OUNCE) / YARD ** 2, "oz/yd2", "oz/yd^2", "osy", "oz/sq yd", "oz/sqyd"],
    [(1e3 * POUND) / YARD ** 2, "lb/yd2", "lb/sq yd"],
  ],
  L: [
    [1, "L", "l", "litre", "litres", "liter", "liters", "dm3"],
    [1e-3, "mL", "ml", "cm3", "cc", "millilitre", "millilitres", "milliliter", "milliliters"],
    [1e-2, "cL"],
    [1e2, "hL"],
    [1e3, "m3", "m^3", "cbm", "kL", "KL", "kilolitre", "kilolitres", "cubic metre", "cubic metres"],
    [US_GALLON, "US gal", "gal (US)", "gal US", "US gallon", "US gallons"],
    [1e3 * US_GALLON, "1000 US gal", "kgal (US)"],
    [
      IMPERIAL_GALLON,
      ...["imp gal", "gal (imp)", "gal imp", "imperial gallon", "imperial gallons"],
      ...["UK gal", "gal (UK)", "UK gallon", "UK gallons"],
    ],
    [1e3 * FOOT ** 3, "ft3", "cu ft", "cubic feet"],
  ],
  kg: [
    [1, "kg", "kgs", "kilogram", "kilograms", "kilo", "kilos"],
    [1e-6, "mg"],
    [1e-3, "g", "gram", "grams", "gm", "gms"],
    [1e3, "t", "tonne", "tonnes", "metric ton", "metric tons", "MT", "te"],
    [POUND, "lb", "lbs", "pound", "pounds"],
    [OUNCE, "oz", "ounce", "ounces"],
    [2000 * POUND, "short ton", "short tons", "ton (US)", "US ton"],
    [2240 * POUND, "long ton", "long tons", "ton (UK)", "UK ton"],
  ],
  kWh: ENERGIES.map(inKilowattHours),
  MJ: ENERGIES,
  kW: [
    [1, "kW", "kJ/s"],
    [1e-3, "W"],
    [1e3, "MW"],
    [BTU / 3600, "Btu/h"],
    // As printed, rounded to five digits.
    [9.8095, "boiler horsepower", "boiler hp"],
    [(12_000 * BTU) / 3600, "ton of refrigeration", "tons of refrigeration"],
  ],
  "m/min": [
    [1, "m/min", "mpm", "m min-1"],
    [60, "m/s"],
    [1 / 60, "m/h", "m/hr"],
    [YARD, "yd/min", "ypm"],
    [FOOT, "ft/min", "fpm"],
  ],
  s: [
    [1, "s", "sec", "secs", "second", "seconds"],
    [60, "min", "mins", "minute", "minutes"],
    [3600, "h", "hr", "hrs", "hour", "hours"],
  ],
  h: [
    [1, "h", "hr", "hrs", "hour", "hours"],
    [1 / 60, "min", "mins", "minute", "minutes"],
    [1 / 3600, "s", "sec", "secs", "second", "seconds"],
    [24, "d", "day", "days"],
  ],
  bar: [
    [1, "bar", "bar(a)", "bara", "bar absolute"],
    [1e-3, "mbar", "hPa"],
    [1e-5, "Pa"],
    [1e-2, "kPa"],
    [10, "MPa"],
    [1.01325, "atm"],
    [STANDARD_GRAVITY / 10, "kgf/cm2", "at", "ata"],
    [(POUND * STANDARD_GRAVITY) / INCH ** 2 / 1e5, "psi", "psia", "psi(a)", "lbf/in2"],
  ],
  "L/kg": [
    [1, "L/kg", "l/kg", "m3/t"],
    [US_GALLON / POUND, "US gal/lb", "gal (US)/lb"],
  ],
  "g/L": [
    [1, "g/L", "g/l", "kg/m3"],
    [1e-3, "mg/L", "mg/l", "g/m3"],
    [(1e3 * POUND) / (1e3 * US_GALLON), "lb/1000 US gal"],
  ],
  "kJ/kg": [
    [1, "kJ/kg", "J/g", "MJ/t"],
    [1e3, "MJ/kg", "GJ/t"],
    [4.1868, "kcal/kg"],
    [2.326, "Btu/lb"],
  ],
  "1": [
    [1, "1", "kg/kg", "share", "fraction", "ratio"],
    [1e-2, "%", "percent", "per cent", "pct", "% owf", "% owg"],
    [1e-3, "‰", "per mille", "g/kg"],
  ],
};
