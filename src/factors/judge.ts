/**
 * Whether a stated factor can be relied on: every value sourced, plausible, in order and with a doubt.
 */

import type { Judged, Problem } from "../problems/problem.js";
import { readUnit, sameUnit } from "../units/dimension.js";
import type { Factor, FactorValue } from "./factor.js";
import { nearest } from "./nearest.js";
import { spreadOf } from "./spread-of.js";
import type { StatedFactor, StatedValue } from "./stated.js";
import { type Fault, type KeyPath, problemAt, type YamlText } from "./yaml-text.js";

/**
 * Judges one factor.
 *
 * A factor of the user that overrules a shipped one takes over what it leaves out of words, basis and
 * plausible values. Figures of fuels and efficiencies of what burns them say their basis themselves, and it
 * is net: a figure on gross calorific value would be taken for one a tenth off. It must keep the unit and may narrow the plausible values, never widen them: the steps
 * were checked for no others.
 *
 * @param stated - the factor as it stands in its file
 * @param yaml - the file
 * @param sources - keys of all sources
 * @param shipped - the shipped factor it overrules, if there is one
 * @returns the factor, or every fault: `missing-key`, `factor-unit`, `factor-basis`,
 *   `factor-plausible`, `factor-no-source`,
 *   `factor-unknown-source`, `factor-dates`, and those of a spread
 */
export function judgeFactor(
  stated: StatedFactor,
  yaml: YamlText,
  sources: ReadonlySet<string>,
  shipped: Factor | undefined,
): Judged<Factor> {
  const problems: Problem[] = [];
  const complain = (path: KeyPath, fault: Fault): void => {
    problems.push(problemAt(yaml, path, fault));
  };
  const words = stated.words ?? shipped?.words;
  const plausible = stated.plausible ?? shipped?.plausible;
  if (words === undefined) complain([...stated.path, "words"], missing("words"));
  if (plausible === undefined) complain([...stated.path, "plausible"], missing("plausible"));
  const unitFault = faultOfUnit(stated.unit, shipped);
  if (unitFault !== undefined) complain([...stated.path, "unit"], unitFault);
  const rangeFault = faultOfRange(plausible, shipped);
  if (rangeFault !== undefined) complain([...stated.path, "plausible"], rangeFault);
  const basisFault = faultOfBasis(stated);
  if (basisFault !== undefined) complain([...stated.path, "basis"], basisFault);
  if (problems.length > 0 || words === undefined || plausible === undefined) return { problems };

  const found = stated.values
    .map((value) => judgeValue(value, stated.unit, plausible, sources, complain))
    .filter((value) => value !== undefined);
  for (const [index, value] of found.entries()) {
    const before = found[index - 1];
    const at = stated.values[index];
    if (problems.length === 0 && before !== undefined && at !== undefined) {
      if (!later(before, value)) complain(at.path, DATES);
    }
  }
  if (problems.length > 0) return { problems };
  const basis = stated.basis ?? shipped?.basis;
  const { id, unit } = stated;
  const overruled = shipped !== undefined;
  return { value: { id, unit, words, basis, plausible, values: found, overruled }, problems };
}

type Complain = (path: KeyPath, fault: Fault) => void;

const DATES: Fault = {
  code: "factor-dates",
  expected: "vintages newest first: by from and, where that is the same, by entered",
  remedy: "Put the newer one above, and give a correction a later entered.",
};

const PROVENANCE = ["source", "from", "entered", "year", "region", "quality"] as const;

function judgeValue(
  stated: StatedValue,
  unit: string,
  plausible: readonly [number, number],
  sources: ReadonlySet<string>,
  complain: Complain,
): FactorValue | undefined {
  const { path, value, spread } = stated;
  const { source, from, entered, year, region, quality, page, note } = stated.provenance;
  for (const key of PROVENANCE) {
    if (stated.provenance[key] === undefined) {
      complain([...path, key], key === "source" ? NO_SOURCE : missing(key));
    }
  }
  if (source !== undefined && !sources.has(source)) {
    complain(stated.row ? path : [...path, "source"], unknownSource(source, sources));
  }
  if (quality === undefined) return undefined;
  const judged = spreadOf({ value, unit, plausible, spread, quality });
  if ("fault" in judged) {
    complain(stated.row ? path : [...path, ...judged.at], judged.fault);
    return undefined;
  }
  if (source === undefined || from === undefined || entered === undefined) return undefined;
  if (year === undefined || region === undefined) return undefined;
  return { from, entered, spread: judged.spread, source, page, year, region, quality, note };
}

const NO_SOURCE: Fault = {
  code: "factor-no-source",
  expected: "a source for every value",
  remedy: "Add source with a key of sources.yaml; an estimate has a source too, own-estimate.",
};

function missing(key: string): Fault {
  return {
    code: "missing-key",
    expected: `${key} with every factor and value`,
    remedy: `Add ${key} here or, for provenance, under shared.`,
  };
}

function unknownSource(source: string, sources: ReadonlySet<string>): Fault {
  const meant = nearest(source, sources);
  return {
    code: "factor-unknown-source",
    value: source,
    expected: "a key of sources.yaml",
    remedy:
      meant === undefined ? "Add the source there." : `Write ${meant}, or add the source there.`,
  };
}

const NET = "net calorific value";

/** Efficiencies of what burns fuel, which are per calorific value as fuels are. */
const BURNING = new Set(["boiler.efficiency", "oil-heater.efficiency", "burner.efficiency"]);

// More may follow the calorific value, such as `biogenic`. A bare ratio of a fuel, such as net per gross, has no basis of its own.
function faultOfBasis({ id, unit, basis }: StatedFactor): Fault | undefined {
  const fuel = id.startsWith("fuel.") && !sameUnit(unit, "1");
  if ((!fuel && !BURNING.has(id)) || basis?.split(", ", 1)[0] === NET) return undefined;
  return {
    code: "factor-basis",
    ...(basis === undefined ? {} : { value: basis }),
    expected: `\`basis: ${NET}\`, on which every figure of fuel is counted here`,
    remedy:
      "Add it where the figure is net. Where it is gross, convert it first: one per energy, or an efficiency, divided by net per gross of the fuel; a calorific value times it.",
  };
}

function faultOfUnit(unit: string, shipped: Factor | undefined): Fault | undefined {
  const code = "factor-unit";
  if (readUnit(unit) === undefined) {
    const expected = "a unit as a product of symbols, such as kJ/(kg K)";
    return { code, value: unit, expected, remedy: "Write it so." };
  }
  if (shipped === undefined || sameUnit(unit, shipped.unit)) return undefined;
  const expected = `the unit of the shipped factor, ${shipped.unit}`;
  return { code, value: unit, expected, remedy: "Convert the value." };
}

function faultOfRange(
  plausible: readonly [number, number] | undefined,
  shipped: Factor | undefined,
): Fault | undefined {
  if (plausible === undefined) return undefined;
  const [low, high] = plausible;
  const [lowest, highest] = shipped?.plausible ?? [-Infinity, Infinity];
  const code = "factor-plausible";
  const value = `${low} to ${high}`;
  if (!(low < high)) {
    return { code, value, expected: "the lower number first", remedy: "Put them in order." };
  }
  if (low >= lowest && high <= highest) return undefined;
  return {
    code,
    value,
    expected: `a part of ${lowest} to ${highest}, which the steps were checked for`,
    remedy: "Narrow it or leave it out.",
  };
}

function later(a: FactorValue, b: FactorValue): boolean {
  return a.from > b.from || (a.from === b.from && a.entered > b.entered);
}
