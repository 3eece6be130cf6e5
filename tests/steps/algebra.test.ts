import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import { product, ratio, scaled, shortName, total } from "../../src/steps/algebra.js";
import { valueOf } from "./context.js";

const power = constant("power", 12, "kW");
const hours = constant("hours", 2.5, "h/lot");

describe("algebra", () => {
  it("multiplies numbers and units", () => {
    const energy = product("energy", power, hours, constant("conversion", 3.6, "MJ/(kW h)"));
    expect(valueOf(energy)).toBeCloseTo(108, 12);
    expect(energy.unit).toBe("MJ/lot");
    expect(energy.words).toBe("power × hours × conversion");
  });

  it("takes an empty product for one", () => {
    expect(valueOf(product("nothing"))).toBe(1);
    expect(product("nothing").unit).toBe("1");
  });

  it("adds", () => {
    const sum = total(
      "exhaust",
      "°C",
      constant("cloth", 160, "°C"),
      constant("approach", 10, "°C"),
    );
    expect(valueOf(sum)).toBe(170);
    expect(sum.unit).toBe("°C");
    expect(sum.words).toBe("cloth + approach");
  });

  it("divides, with a multiplier that the formula names", () => {
    const perMetre = ratio(
      "hours",
      "h/m",
      constant("one", 1),
      constant("speed", 30, "m/min"),
      1 / 60,
    );
    expect(valueOf(perMetre)).toBeCloseTo(1 / 1800, 15);
    expect(perMetre.words).toContain("one / speed");
    expect(ratio("share", "1", power, power).words).toBe("power / power");
  });

  it("scales into a unit of its own", () => {
    const slope = scaled("slope", "MJ/(kg °C)", constant("water", 2, "kg/kg"), -0.5);
    expect(valueOf(slope)).toBe(-1);
    expect(slope.unit).toBe("MJ/(kg °C)");
  });

  it("names a leaf by its factor and a formula by its id", () => {
    expect(shortName({ ...power, id: "power @ machine pad-1", factor: "pad.power" })).toBe(
      "pad.power",
    );
    expect(shortName(product("energy", power, hours))).toBe("energy");
  });
});
