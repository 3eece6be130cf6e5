import { describe, expect, it } from "vitest";
import { calibrate } from "../../src/meters/calibrate.js";
import { seriesOf } from "../../src/meters/series.js";
import { inUse, madeMill, monthly } from "./made.js";

describe("seriesOf", () => {
  const mill = madeMill({ main: { quantity: "water", unit: "m3", covers: "site" } });
  const { program, groups } = mill;
  const readings = monthly("main", (month) => 3000 + 1.2 * mill.takes(month, "water"));
  const meters = inUse(mill, readings);
  const found = calibrate({ program, groups, meters, draws: 1000, seed: 1 });
  const [series] = seriesOf(found?.meters ?? []);

  it("has months in print units, with the model as it was", () => {
    expect(series).toMatchObject({ meter: "main", quantity: "water", unit: "m³" });
    expect(series?.months).toHaveLength(12);
    expect(series?.months[0]?.metered).toBeCloseTo(readings[0]!.amount / 1000, 9);
    expect(series?.months[0]?.modelled).toBeCloseTo(mill.takes("2025-01", "water") / 1000, 9);
  });

  it("has machines and the stream come to the reading over the year", () => {
    const sum = (of: (month: NonNullable<typeof series>["months"][number]) => number): number =>
      (series?.months ?? []).reduce((all, month) => all + of(month), 0);
    const parts = sum(({ machines, stream }) =>
      [...(machines?.values() ?? [])].reduce((all, value) => all + value, stream ?? 0),
    );
    const share = parts / sum(({ metered }) => metered ?? 0);
    // Medians do not quite add up.
    expect(share).toBeGreaterThan(0.92);
    expect(share).toBeLessThan(1.08);
  });

  it("tells a base load that was found, as it was put in, and none where months are too few to find it", () => {
    // 3,000 L a month in the readings above.
    expect(series?.base).toBeGreaterThan(2.7);
    expect(series?.base).toBeLessThan(3.3);
    const few = calibrate({
      program,
      groups,
      meters: inUse(mill, readings.slice(0, 5)),
      draws: 200,
      seed: 1,
    });
    expect(seriesOf(few?.meters ?? []).map(({ base }) => base)).toEqual([undefined]);
  });
});
