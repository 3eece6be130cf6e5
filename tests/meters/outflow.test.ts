import { describe, expect, it } from "vitest";
import { outflowsOf } from "../../src/meters/outflow.js";
import type { Reading } from "../../src/meters/reading.js";
import { smallMill } from "../report/compose/small-mill.js";
import { monthly } from "./made.js";

const plant = smallMill({
  meters: {
    drain: { quantity: "effluent", unit: "m3", covers: "site" },
    cod: { quantity: "cod", unit: "mg/L", covers: "site" },
    back: { quantity: "condensate", unit: "kg", covers: "site" },
    steam: { quantity: "steam", unit: "kg", covers: "site" },
  },
});
const sample = (to: string, amount: number, below = false): Reading => ({
  meter: "cod",
  from: to,
  to,
  amount,
  ...(below ? { below: true as const } : {}),
});
const drain = monthly("drain", (month) => (month === "2025-01" ? 3000 : 1000));

describe("outflowsOf", () => {
  it("weighs samples by the flow of their month", () => {
    const [found] = outflowsOf(
      plant,
      [...drain, sample("2025-01-10", 0.4), sample("2025-02-10", 0.8)],
      () => true,
    );
    expect(found?.effluent).toBe(14_000);
    // By hand: (3 × 0.4 + 1 × 0.8) / 4.
    expect(found?.strength?.value).toBeCloseTo(0.5, 12);
    expect(found?.strength?.low).toBe(found?.strength?.high);
  });

  it("counts a limit at half, and carries both ends", () => {
    const [found] = outflowsOf(
      plant,
      [...drain, sample("2025-02-10", 0.01, true), sample("2025-03-10", 0.03)],
      () => true,
    );
    expect(found).toMatchObject({ samples: 2, below: 1 });
    expect(found?.strength?.value).toBeCloseTo(0.0175, 12);
    expect(found?.strength?.low).toBeCloseTo(0.015, 12);
    expect(found?.strength?.high).toBeCloseTo(0.02, 12);
  });

  it("names samples far from the middle one", () => {
    const [found] = outflowsOf(
      plant,
      [...drain, ...[0.5, 0.6, 0.55].map((one, i) => sample(`2025-0${i + 2}-10`, one))].concat(
        sample("2025-06-10", 4),
      ),
      () => true,
    );
    expect(found?.odd).toEqual(["2025-06-10"]);
  });

  it("sets condensate beside steam of the same months, and looks at months wanted only", () => {
    const [found] = outflowsOf(
      plant,
      [...drain, ...monthly("back", () => 60), ...monthly("steam", () => 100).slice(6)],
      (month) => month !== "2025-12",
    );
    expect(found).toMatchObject({ condensate: 300, steam: 500, effluent: 13_000 });
  });

  it("finds nothing where no meter counts what leaves", () => {
    expect(outflowsOf(smallMill({}), drain, () => true)).toEqual([]);
  });
});
