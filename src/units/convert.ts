/**
 * Units as people write them, turned into the units of the computation. What can be read in two ways is
 * refused and never guessed.
 */

import { type Target, type UnitRow, UNITS } from "./unit-table.js";

/** Why a unit was not taken, and what to write instead. */
export interface Refusal {
  /** What is wrong, as a clause: `"ton" may be 907, 1000 or 1016 kg`. */
  readonly reason: string;
  /** What to do next, as an instruction. */
  readonly remedy: string;
}

// By the unit in lower case: matched whatever the case, but only after the exact spellings of the target.
const AMBIGUOUS: Readonly<Record<string, Refusal>> = {
  ton: several("ton", "907, 1000 or 1016 kg", ["short ton", "t", "long ton"]),
  gallon: several("gallon", "3.785 or 4.546 L", ["US gal", "imp gal"]),
  therm: several("therm", "105.4804 or 105.506 MJ", ["therm (US)", "therm (EC)"]),
  mbtu: several("MBtu", "a thousand or a million Btu", ["Btu", "MMBtu"]),
  mwh: several("mwh", "a thousandth or a million watt hours", ["Wh", "MWh"]),
  ml: several("ML", "a thousandth of a litre or a million litres", ["mL", "m3"]),
  "oz/yd": {
    reason: '"oz/yd" is a mass per running yard and says nothing per area without the width',
    remedy: "Give oz/yd2 or g/m2.",
  },
  "bar(g)": {
    reason: '"bar(g)" counts from air pressure, not from vacuum',
    remedy: "Add the air pressure, 1.013 bar at sea level, and give bar.",
  },
  "psi(g)": {
    reason: '"psi(g)" counts from air pressure, not from vacuum',
    remedy: "Add the air pressure, 14.7 psi at sea level, and give psi.",
  },
  "m3 of gas": {
    reason: "a volume of gas holds no fixed energy",
    remedy:
      "Multiply by the calorific value on the bill, say whether it is gross or net, and give kWh.",
  },
};

const ALIASES: Readonly<Record<string, string>> = {
  tons: "ton",
  gal: "gallon",
  gallons: "gallon",
  gals: "gallon",
  kgal: "gallon",
  therms: "therm",
  thm: "therm",
  mbtus: "mbtu",
  "oz/linear yd": "oz/yd",
  "oz/linear yard": "oz/yd",
  "oz/yard": "oz/yd",
  barg: "bar(g)",
  psig: "psi(g)",
};

// Mega and milli differ by case alone.
const CASE_MATTERS = /^(?:M[gGm]|m[jJwW])$/;

const GAS_VOLUMES = /^(?:n?m\^?3|scm|scf|ccf|cu ft|ft3)$/;

interface Spellings {
  readonly exact: ReadonlyMap<string, number>;
  readonly anyCase: ReadonlyMap<string, number>;
}

const SPELLINGS = new Map<Target, Spellings>();

/**
 * Size of a unit in a unit of the computation: value × factor is the value in the target unit.
 *
 * Spelling is forgiving (`m²`, `m2`, `sq m`), and case is too where it cannot change the meaning.
 *
 * @param unit - the unit as written
 * @param target - the unit wanted
 * @returns the factor, or why there is none
 * @see NIST Special Publication 811 (2008), appendix B, for the factors
 */
export function unitFactor(unit: string, target: Target): number | Refusal {
  const text = tidy(unit);
  const { exact, anyCase } = spellingsOf(target);
  const factor = exact.get(text);
  if (factor !== undefined) return factor;
  const refusal = ambiguity(text, target);
  if (refusal !== undefined) return refusal;
  const lenient = CASE_MATTERS.test(text) ? undefined : anyCase.get(text.toLowerCase());
  return lenient ?? unknown(unit, target, UNITS[target]);
}

/**
 * A temperature in °C. Temperatures are levels: a factor alone does not turn one into another.
 *
 * @param value - the temperature as given
 * @param unit - °C, °F or K as written
 * @returns the temperature [°C], or why there is none
 */
export function temperatureToCelsius(value: number, unit: string): number | Refusal {
  switch (
    tidy(unit)
      .replace(/^(?:°|deg(?:rees?)?\.? ?)/i, "")
      .toLowerCase()
  ) {
    case "c":
    case "celsius":
      return value;
    case "f":
    case "fahrenheit":
      return (value - 32) / 1.8;
    case "k":
    case "kelvin":
      return value - 273.15;
    default:
      return {
        reason: `"${unit}" is no unit of temperature known here`,
        remedy: "Give °C, °F or K.",
      };
  }
}

function spellingsOf(target: Target): Spellings {
  let known = SPELLINGS.get(target);
  if (known === undefined) {
    const exact = new Map<string, number>();
    const anyCase = new Map<string, number>();
    for (const [factor, ...spellings] of UNITS[target]) {
      for (const spelling of spellings) {
        exact.set(spelling, factor);
        anyCase.set(spelling.toLowerCase(), factor);
      }
    }
    known = { exact, anyCase };
    SPELLINGS.set(target, known);
  }
  return known;
}

function ambiguity(text: string, target: Target): Refusal | undefined {
  const lower = text.toLowerCase();
  if ((target === "kWh" || target === "MJ") && GAS_VOLUMES.test(lower)) {
    return AMBIGUOUS["m3 of gas"];
  }
  const plain = Object.hasOwn(ALIASES, lower) ? ALIASES[lower]! : lower;
  return Object.hasOwn(AMBIGUOUS, plain) ? AMBIGUOUS[plain] : undefined;
}

function several(unit: string, meanings: string, instead: readonly string[]): Refusal {
  return {
    reason: `"${unit}" may be ${meanings}`,
    remedy: `Say which: ${instead.join(" or ")}.`,
  };
}

function unknown(unit: string, target: Target, rows: readonly UnitRow[]): Refusal {
  return {
    reason: `"${unit}" is no unit known here that can be turned into ${target}`,
    remedy: `Use one of ${rows.map(([, spelling]) => spelling).join(", ")}.`,
  };
}

// One way of writing exponents, dots and spaces.
function tidy(unit: string): string {
  return unit
    .trim()
    .replace(/\s+/g, " ")
    .replace(/\s*\/\s*/g, "/")
    .replaceAll("²", "2")
    .replaceAll("³", "3");
}
