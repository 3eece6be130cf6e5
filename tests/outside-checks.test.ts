import { describe, expect, it } from "vitest";
import { filesUnder, textOf } from "./tools/tree.js";

/** What is held against print: mark in the title of its tests, what it is, and who printed it; none for a law. */
type Check = readonly [mark: string, what: string, source?: string];

// Marks leave room between them: numbers are kept when a check goes.
const CHECKS: readonly Check[] = [
  ["A1", "carbon dioxide of four fuels per MWh", "Carbon Balance and Management"],
  ["A2", "t/TJ as g/kWh", "Sustainable Energy Authority of Ireland"],
  ["A3", "heat times carbon dioxide of fuels by American units", "US EPA"],
  ["A4", "natural gas, gross against net", "US EPA"],
  ["A5", "a gas bill, gross, by three sets of warming potentials", "IPCC 2006"],
  ["A7", "methane that burns and methane that leaks", "GHG Protocol"],
  ["A8", "grid intensities with place and year", "Ember"],
  ["A10", "contracts in market-based figures alone", "GHG Protocol"],
  ["A11", "what belongs to which scope", "GHG Protocol"],
  ["B1", "liquid water", "IAPWS R7-97"],
  ["B2", "steam", "IAPWS R7-97"],
  ["B3", "boiling line, both ways", "IAPWS R7-97"],
  ["B4", "boiling line, there and back"],
  ["B5", "saturation pressure", "ASHRAE Handbook"],
  ["B6", "steam of 150 psig from feed water", "Steam Tip Sheet 15"],
  ["B8", "steam of 600 psig from feed water", "Steam Tip Sheet 15"],
  ["B9", "fuel and carbon dioxide of steam", "IAPWS"],
  ["B10", "humidity from vapour pressure", "psychrolib"],
  ["B11", "enthalpy of moist air", "psychrolib"],
  ["B12", "air of 40 °C with a wet bulb of 20 °C", "ASHRAE Handbook"],
  ["B13", "no saturation at or above boiling", "psychrolib"],
  ["B14", "wet bulb of hot air, there and back", "psychrolib"],
  ["B15", "table of saturated steam", "IAPWS R7-97"],
  ["B16", "standard atmosphere", "ASHRAE Handbook"],
  ["C2", "ceiling of a hot-gas dryer", "Energy Conservation Center, Japan"],
  ["C3", "heat to dry food", "Unit Operations in Food Processing"],
  ["C4", "dryer worked from moist-air enthalpies", "By hand"],
  ["C5", "how dryer heat moves with its exhaust"],
  ["C6", "water and air of a dryer", "exam question"],
  ["C7", "dryer heat above that of evaporation", "IAPWS-IF97"],
  ["D1", "withdrawn is discharged or consumed", "GRI 303"],
  ["D2", "no moisture counted twice", "ISO 14046"],
  ["E1", "four quantities added up", "JCGM 101"],
  ["E3", "lognormals multiplied", "Limpert"],
  ["E4", "mean, quantiles and variation of a lognormal", "Limpert"],
  ["E5", "share of draws in which one arm is less", "Closed form"],
  ["E6", "paired draws", "Henriksson"],
  ["E9", "doubt from quality scores", "Frischknecht"],
  ["E10", "variances of quality scores", "Weidema"],
  ["E11", "doubt from published bounds", "IPCC 2006"],
  ["E12", "error propagation", "IPCC 2006"],
  ["E13", "random numbers", "prng.di.unimi.it"],
  ["E14", "streams that do not move each other"],
  ["E15", "what a fit holds of the Ishigami function", "Ishigami and T. Homma"],
  ["E16", "what a fit holds of the g-function", "Saltelli and I. M. Sobol'"],
  ["F1", "a straight line", "Statistical Reference Datasets"],
  ["F2", "a near collinear plane", "Statistical Reference Datasets"],
  ["F4", "a line through the origin", "Statistical Reference Datasets"],
  ["F5", "means that lose digits", "NIST Statistical Reference Datasets"],
  ["F6", "means of observed data", "NIST Statistical Reference Datasets"],
  ["F10", "residual spread over the mean", "Statistical Reference Datasets"],
  ["F11", "residuals that add up to nothing"],
  ["F7", "quantiles of type 7", "Hyndman and Fan"],
  ["F8", "F that a fit of monthly points must pass", "US Department of Energy"],
  ["F9", "97.5 % point of the normal and of t", "e-Handbook"],
  ["F12", "meters reconciled with their balances", "Narasimhan and C. Jordache"],
  ["H1", "sizes of units", "NIST Special Publication 811"],
  ["H2", "cloth in ounces, energy in Btu", "NIST Special Publication 811"],
  ["H3", "units that can be read in two ways", "NIST Special Publication 811"],
  ["H4", "every pair of units, there and back", "NIST Special Publication 811"],
  ["M1", "net present value", "LibreOffice 7.4 Help"],
  ["M2", "rate of return", "LibreOffice 7.4 Help"],
  ["M3", "rate of return of dated flows", "LibreOffice 7.4 Help"],
  ["M4", "present value of dated flows", "LibreOffice 7.4 Help"],
  ["M5", "modified rate of return", "LibreOffice 7.4 Help"],
  ["M6", "payment of a loan", "LibreOffice 7.4 Help"],
  ["M7", "present sum of payments", "LibreOffice 7.4 Help"],
  ["M8", "rates in parts of a year", "LibreOffice 7.4 Help"],
  ["M9", "number of periods and growth", "LibreOffice 7.4 Help"],
  ["M10", "net present value", "numpy-financial"],
  ["M11", "rate of return", "numpy-financial"],
  ["M12", "payment and number of payments", "numpy-financial"],
  ["M13", "dated flows of two years", "help pages of a spreadsheet"],
  ["M15", "modified rate of return", "help pages of a spreadsheet"],
  ["M17", "present value, index, payback", "public exercise"],
  ["M18", "present value of inflows", "public exercise"],
  ["M19", "equivalent annual cost", "encyclopedia"],
  ["M21", "present worth in the middle of the year", "MIL-HDBK-1003/13A"],
  ["M22", "discount factors", "NIST Handbook 135"],
  ["M23", "steam from gas", "a utility's page"],
  ["M24", "steam from oil", "same page"],
  ["M25", "heat of blowdown", "Steam Tip Sheet"],
  ["M30", "payback of an energy measure", "Sustainable Energy Authority of Ireland"],
  ["M31", "outlay of five savings", "textbook of energy economics"],
  ["M32", "two rates of return", "by hand"],
  ["M33", "purchase of a print house", "by hand"],
  ["M34", "cost of a tonne", "by hand"],
  ["P1", "effluent at standard strength", "NI Water"],
  ["P2", "effluent before and after, to the cent", "NI Water"],
  ["P4", "effluent of excess strength", "City of Austin"],
  ["P3", "cloth by the roll", "NIST Special Publication 811"],
  ["P7", "interval of a saving", "Worked by hand"],
  ["P8", "a meter shared by four keys", "Worked by hand"],
  ["P9", "SHA-256", "FIPS 180-4"],
  ["P19", "base load of twelve months", "Worked outside"],
  ["P20", "cubic metres of gas at 0 and 15 °C", "By hand"],
  ["P10", "canonical JSON of the sample object", "RFC 8785"],
  ["P11", "canonical JSON of the author's files", "author of RFC 8785"],
  ["P12", "numbers of canonical JSON from their bits", "RFC 8785, appendix B"],
  ["P13", "Ed25519", "RFC 8032, 7.1"],
  ["P14", "a signed document", "W3C Data Integrity"],
  ["P15", "digest and signature of a small pack", "two runtimes that are not ours"],
  ["P16", "rates at a standard population", "Malaysian Journal of Medical Sciences"],
  ["P17", "chances of places of three normal values", "numerical integration"],
  ["P18", "tau-b of two lists", "by hand"],
  ["W1", "washing in boxes", "by hand"],
  ["W2", "heat of wash water", "IAPWS R7-97"],
  ["W3", "heat of stenter exhaust", "EU reference document"],
  ["W4", "cloth brought in drier", "BREF on textiles"],
  ["W5", "squeeze and vacuum slot", "pollution prevention in textiles"],
  ["W8", "the least steam of a steamer"],
  ["W7", "nitrogen of urea", "waste water ordinance"],
  ["W10", "air of curing", "(EU) 2022/2508"],
  ["W11", "water of ink", "Worked by hand"],
  ["W13", "a boiler by common tables", "From memory of common tables"],
];

interface Marked {
  readonly mark: string;
  readonly file: string;
}

// A title: the first word in quotes behind `it(`, or behind the bracket that ends the rows of `it.each`.
const TITLE = /(?:\bit|\))\(\s*["'`]\[(?<marks>[A-Z]\d+(?:, [A-Z]\d+)*)\] /gu;

function marksOf(file: string, text: string): readonly Marked[] {
  return [...text.matchAll(TITLE)].flatMap((match) =>
    (match.groups?.["marks"] ?? "").split(", ").map((mark) => ({ mark, file })),
  );
}

const found = filesUnder("tests", ".test.ts").flatMap((file) => marksOf(file, textOf(file)));

describe("outside checks", () => {
  it("are all there", () => {
    const there = new Set(found.map(({ mark }) => mark));
    expect(CHECKS.filter(([mark]) => !there.has(mark))).toEqual([]);
  });

  it("are all listed, once", () => {
    const listed = CHECKS.map(([mark]) => mark);
    expect(new Set(listed).size).toBe(listed.length);
    expect(found.filter(({ mark }) => !listed.includes(mark))).toEqual([]);
  });

  const printed = CHECKS.flatMap(([mark, what, source]) =>
    source === undefined ? [] : [[mark, what, source] as const],
  );

  it.each(printed)("%s, %s, names %s beside it", (mark, _, source) => {
    const files = [...new Set(found.filter((each) => each.mark === mark).map(({ file }) => file))];
    const named = files.filter((file) =>
      textOf(file)
        .replace(/\n\s*\/\/ /g, " ")
        .toLowerCase()
        .includes(source.toLowerCase()),
    );
    expect(named, files.join(", ")).not.toEqual([]);
  });

  it("are read from titles and from nothing else", () => {
    const text = [
      'it("[B5] pressure", () => {});',
      'it.each([[1], ["[A1] no title"]])("[B6, B8] steam", () => {});',
      '  ])(\n    "[B14] of hot air", () => {});',
      "// see [C9] elsewhere",
      'it("pressure [B7]", () => {});',
    ].join("\n");
    expect(marksOf("a.test.ts", text).map(({ mark }) => mark)).toEqual(["B5", "B6", "B8", "B14"]);
  });
});
