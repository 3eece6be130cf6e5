import { describe, expect, it } from "vitest";
import { medianOf } from "../../src/numbers/distributions.js";
import { inUse, madeMill, monthly } from "./made.js";

const MAIN = { quantity: "water", unit: "m3", covers: "site" };

describe("metersInUse", () => {
  const mill = madeMill({
    main: MAIN,
    range: { ...MAIN, covers: { machines: ["range"] }, within: "main", accuracy: 3 },
    drain: { ...MAIN, quantity: "effluent" },
    unread: MAIN,
  });
  const all = inUse(mill, [
    ...monthly("main", (month) => 2000 + 1.1 * mill.takes(month, "water")),
    ...monthly("range", (month) => mill.takes(month, "water", ["range"])).map((reading, i) =>
      i === 0 ? { ...reading, estimated: true as const } : reading,
    ),
    ...monthly("drain", () => 5),
  ]);

  it("are those with readings of what lots take", () => {
    expect(all.map(({ name, within }) => [name, within])).toEqual([
      ["main", undefined],
      ["range", "main"],
    ]);
    expect(all[0]?.below.map(({ name }) => name)).toEqual(["range"]);
  });

  it("find their base by regression, less those of meters below", () => {
    const [main, range] = all;
    expect(main?.stream.by).toBe("regression");
    const below = range?.stream.leaf === undefined ? 0 : medianOf(range.stream.leaf.spread);
    expect((medianOf(main!.stream.leaf!.spread) + below) / 24_000).toBeCloseTo(1, 1);
  });

  it("add up the months that have both, and widen for what was estimated", () => {
    const [, range] = all;
    expect(range?.months).toHaveLength(12);
    expect(range?.accuracy).toBeGreaterThan(0.03);
    expect(range?.accuracy).toBeLessThan(0.04);
    for (const { metered, modelled } of range?.months ?? [])
      expect(metered / modelled).toBeCloseTo(1, 9);
  });

  it("count a month in the share of its days that was read", () => {
    const [main] = inUse(mill, [
      { meter: "main", from: "2025-01-01", to: "2025-02-14", amount: 4500 },
    ]);
    expect(main?.spread).toBe(true);
    expect(main?.months.map(({ covered }) => covered)).toEqual([1, expect.closeTo(0.5, 9)]);
    expect(main?.months[1]?.modelled).toBeCloseTo(0.5 * mill.takes("2025-02", "water"), 6);
  });
});
