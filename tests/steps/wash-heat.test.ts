import { describe, expect, it } from "vitest";
import { constant, ONE } from "../../src/numbers/quantity.js";
import { amountNamed } from "../../src/steps/amounts.js";
import { lastBox, warming } from "../../src/steps/wash-heat.js";
import { washRange } from "../../src/steps/wash-range.js";
import { clothAt, contextFor, COTTON, flowsOf, LOT, type Told, valueOf } from "./context.js";

const DRY_WASH = { settings: { "carry-over": 0.3, surface: 0 } };

function run(told: Told = {}, liquor = 10, filling = 0, tIn = 15) {
  const context = contextFor(washRange, told);
  return flowsOf(
    warming(
      context,
      clothAt(context, 0.075, tIn),
      [{ amount: amountNamed("mass"), rate: constant("liquor", liquor, "L/kg") }],
      constant("filling", filling, "L/lot"),
      {
        running: [{ amount: amountNamed("lots"), rate: constant("hours", 2, "h/lot") }],
        stopped: [],
      },
    ),
  );
}

describe("heat of a wash range", () => {
  // By hand, counter-current at 10 L/kg, all from 15 to 95 °C: 224 × 10 × 4.186 × 80 kJ for the liquor, and
  // the cloth's 1.2093 + 4.186 × 0.3 kJ/(kg K): the warm box first met is warm by its liquor, then 35 K
  // into the first hot box and 35 K less in the warm one behind.
  it("is that of liquor and cloth behind a coil", () => {
    const flow = run({ ...DRY_WASH, choices: { heating: "coil", sequence: "counter-current" } });
    expect(flow("heat.steam-coil")).toBeCloseTo((224 * 10 * 4.186 * 80) / 1000, 6);
    expect(flow("steam.open")).toBe(0);
    expect(flow("water.process")).toBe(0);
  });

  // The balance of energy of the four heated boxes of a range of six at 10 L/kg, each fed by itself: what
  // steam and feed bring, and what drain and cloth take; feed and steam together are the liquor.
  it("closes the balance of energy when steam is blown in", () => {
    const flow = run({ settings: { "carry-over": 1.1, surface: 0 } });
    const steam = flow("steam.open");
    expect(flow("water.process")).toBeCloseTo(-steam, 12);
    const liquor = (224 * 10 * 4) / 6;
    const carried = 224 * (COTTON.heatCapacity + 4.186 * 1.1);
    const brought = steam * 2768.3 + (liquor - steam) * 4.186 * 15 + carried * 15;
    const drained = (liquor / 4) * 4.186 * (60 + 95 + 95 + 60) + carried * 60;
    expect(brought / drained).toBeCloseTo(1, 12);
  });

  // By hand: 12 kW over two hours are 86.4 MJ, and steam replaces water of 15 °C.
  it("holds the loss of open surfaces", () => {
    const lossOf = (flow: string, choices = {}): number => {
      const of = (surface: number) => run({ settings: { surface }, choices })(flow);
      return of(12) - of(0);
    };
    expect(lossOf("heat.steam-coil", { heating: "coil" })).toBeCloseTo(86.4, 9);
    expect(lossOf("steam.open")).toBeCloseTo(86400 / (2768.3 - 4.186 * 15), 9);
  });

  // By hand: 600 L warmed by 250/6 K on average.
  it("warms fillings", () => {
    const choices = { heating: "coil" };
    const steam = run({}, 10, 600)("steam.open") - run()("steam.open");
    expect(steam).toBeCloseTo((600 * 4.186 * 250) / 6 / (2768.3 - 4.186 * 15), 9);
    const extra =
      run({ choices }, 10, 600)("heat.steam-coil") - run({ choices })("heat.steam-coil");
    expect(extra).toBeCloseTo((600 * 4.186 * 250) / 6000, 9);
  });

  // A lot at 1 L/kg, judged at that: cloth that comes in cold warms the first box less.
  it("is more for cloth that comes in colder, until the first box needs none", () => {
    const told = {
      choices: { heating: "coil", sequence: "counter-current" },
      settings: { "fresh-water": 1 },
    };
    const heat = (tIn: number) => run(told, 1, 0, tIn)("heat.steam-coil");
    expect(heat(30)).toBeLessThan(heat(15));
    expect(heat(175)).toBe(heat(100));
  });

  it("names the last box", () => {
    const at = (sequence: string, recovery: number) =>
      valueOf(lastBox(contextFor(washRange, { choices: { sequence }, settings: { recovery } })));
    expect(at("six", 0.5)).toBe(15);
    expect(at("counter-current", 0.5)).toBe(37.5);
  });

  it("refuses a sequence it does not know", () => {
    expect(() => run({ choices: { sequence: "seven" } })).toThrow("seven is no sequence");
    expect(() => run({ choices: { sequence: "toString" } })).toThrow("no sequence");
  });

  it("takes more steam for more liquor that lots logged", () => {
    const context = contextFor(washRange);
    const flow = flowsOf(
      warming(
        context,
        clothAt(context, 0.075, 15),
        [{ amount: amountNamed("mass·liquorRatio[no baths]"), rate: ONE }],
        constant("filling", 0, "L/lot"),
        { running: [], stopped: [] },
      ),
      [{ ...LOT, liquorRatio: 20 }],
    );
    const open = run({ settings: { surface: 0 } }, 20);
    expect(flow("steam.open")).toBeCloseTo(open("steam.open"), 9);
  });
});
