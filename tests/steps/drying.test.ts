import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import { amountNamed } from "../../src/steps/amounts.js";
import type { DryerRun } from "../../src/steps/dryer-run.js";
import { dry } from "../../src/steps/drying.js";
import { stenterDry } from "../../src/steps/stenter.js";
import { flowName } from "../../src/steps/term.js";
import { clothAt, contextFor, flowsOf, LOT, part, valueOf, waterOn } from "./context.js";

const context = contextFor(stenterDry);
const number = (value: number, unit = "1") => constant("number", value, unit);
const RUN: DryerRun = {
  hours: [{ amount: amountNamed("lots"), rate: number(2, "h/lot") }],
  moistureOut: number(0.05, "kg/kg"),
  clothOut: number(95, "°C"),
  air: {
    rise: number(0.09, "kg/kg"),
    exhaust: number(130, "°C"),
    recovery: number(0),
    fan: number(0, "kg/h"),
  },
  standing: number(30, "kW"),
  power: number(40, "kW"),
  idle: number(0.25),
  idlePower: number(0.4),
  heat: "oil",
};
const DRY_MASS = 224 / 1.075;

describe("drying", () => {
  it("drives off what is above the moisture set", () => {
    const { terms, cloth } = dry(context, clothAt(context, 0.8, 20), RUN);
    expect(flowsOf(terms)("water.evaporated")).toBeCloseTo(0.75 * DRY_MASS, 9);
    expect(waterOn(cloth)).toBeCloseTo(0.05 * DRY_MASS, 9);
    expect(valueOf(cloth.temperature)).toBe(95);
    expect(valueOf(cloth.moisture!)).toBe(0.05);
  });

  it("drives off all liquor of a pad, lot by lot", () => {
    const { terms } = dry(
      context,
      {
        water: [part("mass", 0.07), part("mass·pickup", 0.94), part("mass[no pickup]", 0.7)],
        temperature: context.hall.temperature,
      },
      RUN,
    );
    const lots = [LOT, { ...LOT, pickup: 0.6 }];
    expect(flowsOf(terms, lots)("water.evaporated")).toBeCloseTo(
      224 * (2 * (0.07 - 0.05 / 1.075) + 0.7 + 0.564),
      9,
    );
  });

  // Polyester in the hall holds less water than a dryer is set to leave on cotton.
  it("never wets cloth", () => {
    for (const asNumber of [true, false]) {
      const { terms, cloth } = dry(context, clothAt(context, 0.004, 26, asNumber), RUN);
      expect(flowsOf(terms)("water.evaporated")).toBeCloseTo(0, 9);
      expect(valueOf(cloth.moisture!)).toBeCloseTo(0.004, 12);
    }
  });

  // By hand: 2 h running and half an hour waiting; 30 kW lost over 2.5 h, 40 kW over 2 h and 16 kW over 0.5 h.
  it("loses heat, draws power and is held while it runs and waits", () => {
    const wet = clothAt(context, 0.8, 20);
    const flow = flowsOf(dry(context, wet, RUN).terms);
    const tight = flowsOf(dry(context, wet, { ...RUN, standing: number(0, "kW") }).terms);
    expect(flow("heat.oil") - tight("heat.oil")).toBeCloseTo(270, 9);
    expect(flow("electricity")).toBeCloseTo(88, 9);
    expect(flow("machine.hours")).toBeCloseTo(2.5, 12);
    expect(flow("labour.hours")).toBeCloseTo(2.5, 12);
  });

  // Of the same, the half hour waiting: 54 MJ lost, 8 kWh at two fifths of 40 kW.
  it("tells waiting apart, and the air and vapour of cloth are none of it", () => {
    const { terms } = dry(context, clothAt(context, 0.8, 20), RUN);
    const idle = flowsOf(terms.filter(({ part }) => part === "waiting"));
    expect(idle("heat.oil")).toBeCloseTo(54, 9);
    expect(idle("electricity")).toBeCloseTo(8, 9);
    expect(idle("machine.hours")).toBeCloseTo(0.5, 12);
    expect(idle("water.evaporated")).toBe(0);
  });

  it.each(["burner", "oil", "electric", "steam-coil"] as const)(
    "takes all its heat from %s",
    (heat) => {
      const { terms } = dry(context, clothAt(context, 0.8, 20), { ...RUN, heat });
      const drawn = new Set(
        terms.map(({ flow }) => flowName(flow)).filter((name) => name.startsWith("heat")),
      );
      expect([...drawn]).toEqual([`heat.${heat}`]);
    },
  );
});
