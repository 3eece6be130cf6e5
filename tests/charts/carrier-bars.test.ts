import { describe, expect, it } from "vitest";
import { carrierBars } from "../../src/charts/carrier-bars.js";
import type { RoutePart } from "../../src/charts/stacked-steps.js";
import { totalsOf } from "./sample-data.js";
import { sound, texts } from "./sound.js";

const said = (carriers: readonly RoutePart[]): readonly string[] =>
  texts(
    sound(() =>
      carrierBars({
        quantity: "final energy",
        unit: "kWh/m²",
        digits: 2,
        carriers,
        routes: totalsOf(carriers),
      }),
    ),
  ).map(({ text }) => text);

const CARRIERS: readonly RoutePart[] = [
  { name: "electricity", dye: 0.31, pigment: 0.35 },
  { name: "natural gas", dye: 1.42, pigment: 0.51 },
  { name: "heating oil", dye: 0, pigment: 0 },
  { name: "bought steam", dye: 0.84, pigment: 0 },
  { name: "LPG", dye: 0.001, pigment: 0 },
];

describe("picture by carrier", () => {
  it("names every carrier that is used, however small, in reading order", () => {
    const names = said(CARRIERS).filter((text) => CARRIERS.some(({ name }) => name === text));
    expect([...new Set(names)]).toEqual(["electricity", "natural gas", "bought steam", "LPG"]);
  });

  it("prints totals with their intervals", () => {
    expect(said(CARRIERS)).toEqual(
      expect.arrayContaining(["2.57", "2.06 to 3.09", "0.86", "0.69 to 1.03"]),
    );
  });

  it("can be drawn with one carrier, with many and with none", () => {
    said(CARRIERS.slice(0, 1));
    said(Array.from({ length: 16 }, (_, n) => ({ name: `carrier ${n}`, dye: 1, pigment: 0.2 })));
    said([]);
  });
});
