import { describe, expect, it } from "vitest";
import { checksOf } from "../../src/account/checks.js";
import { inputOf } from "../report/compose/small-mill.js";

const { program } = inputOf().account;

describe("checks of machines", () => {
  it("are one for each dryer kept at a humidity, on every route that has it", () => {
    const dryers = new Set(
      program.classes.flatMap(({ arms }) =>
        Object.values(arms).flatMap(({ route, steps }) =>
          steps
            .filter(({ kind }) => kind === "stenter-dry")
            .map(({ role, machine }) => `${route.name}, ${role}, ${machine}`),
        ),
      ),
    );
    const checks = checksOf(program);
    expect(dryers.size).toBeGreaterThan(1);
    expect(
      checks.map(({ route, step, machine }) => `${route}, ${step}, ${machine}`).sort(),
    ).toEqual([...dryers].sort());
  });

  // A usual stenter dries several hundred kilograms of water an hour at most, with 5 to 50 kg of air for each.
  // Common practice, no source.
  it("come to the air of a stenter", () => {
    for (const { value, unit, most } of checksOf(program)) {
      expect(unit).toBe("kg/h");
      expect(value).toBeGreaterThan(500);
      expect(value).toBeLessThan(60000);
      expect(most).toBeUndefined();
    }
  });

  // The mean of the route is weighted by hours: it lies between those of its classes taken alone.
  it("are means over the classes of a route", () => {
    const alone = program.classes.map((lotClass) => checksOf({ ...program, classes: [lotClass] }));
    for (const { route, step, value } of checksOf(program)) {
      const values = alone.flatMap((checks) =>
        checks.filter((one) => one.route === route && one.step === step).map((one) => one.value),
      );
      expect(value).toBeGreaterThanOrEqual(Math.min(...values) * (1 - 1e-12));
      expect(value).toBeLessThanOrEqual(Math.max(...values) * (1 + 1e-12));
    }
  });
});
