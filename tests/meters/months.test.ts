import { describe, expect, it } from "vitest";
import { meterMonths, readMeters, type Reading } from "../../src/meters/months.js";
import type { Plant } from "../../src/plant/plant.js";
import { smallMill } from "../report/compose/small-mill.js";

const PLANT = smallMill({
  meters: {
    well: { quantity: "water", unit: "m3", covers: "site" },
    gas: { quantity: "gas", unit: "kWh", covers: "site", basis: "gross" },
    "net gas": { quantity: "gas", unit: "kWh", covers: "site", basis: "net" },
    power: { quantity: "electricity", unit: "kWh", covers: "site" },
  },
});

const NET = 0.9;

// eslint-disable-next-line @typescript-eslint/require-await -- a file comes in chunks, as a stream does
async function* chunksOf(text: string): AsyncGenerator<Uint8Array> {
  yield new TextEncoder().encode(text);
}

function read(...rows: readonly string[]): ReturnType<typeof readMeters> {
  return readAt(PLANT, ...rows);
}

function readAt(plant: Plant, ...rows: readonly string[]): ReturnType<typeof readMeters> {
  const text = ["meter,from,to,reading,unit", ...rows].join("\n");
  return readMeters("meters.csv", chunksOf(text), plant, NET);
}

describe("readMeters", () => {
  it("turns readings into litres and kWh", async () => {
    const { readings, problems } = await read(
      "well,2026-01-01,2026-01-31,3,m3",
      "power,2026-01-01,2026-01-31,2,MWh",
      "power,2026-02-01,2026-02-28,7.2,MJ",
    );
    expect(problems).toEqual([]);
    expect(readings.map(({ amount }) => amount)).toEqual([3000, 2000, 2]);
  });

  it("turns gross gas into net, and leaves net gas as it is", async () => {
    const { readings } = await read(
      "gas,2026-01-01,2026-01-31,100,kWh",
      "net gas,2026-01-01,2026-01-31,100,kWh",
    );
    expect(readings.map(({ amount }) => amount)).toEqual([100 * NET, 100]);
  });

  it("takes no gas for net or gross unasked", async () => {
    const { basis: _, ...gas } = PLANT.text.meters?.["gas"] ?? { quantity: "gas" as const };
    const meters = { ...PLANT.text.meters, gas } as Plant["text"]["meters"];
    const plant = { ...PLANT, text: { ...PLANT.text, meters } };
    const { readings, problems } = await readAt(plant, "gas,2026-01-01,2026-01-31,3,kWh");
    expect(readings).toEqual([]);
    expect(problems).toMatchObject([{ code: "meter-meter", severity: "set-aside", value: "gas" }]);
    expect(problems[0]?.expected).toContain("net or gross");
  });

  it.each([
    ["brook,2026-01-01,2026-01-31,3,m3", "meter", "brook", /well, gas, net gas, power/],
    ["well,January,2026-01-31,3,m3", "from", "January", /2026-01-01/],
    ["well,2026-02-01,2026-01-31,3,m3", "to", "2026-01-31", /not before/],
    ["well,2026-01-01,2026-01-31,-3,m3", "reading", "-3", /0 or more/],
    ["well,2026-01-01,2026-01-31,much,m3", "reading", "much", /0 or more/],
    ["well,2026-01-01,2026-01-31,3,kWh", "unit", "kWh", /water/],
  ])("sets %j aside for its %s", async (row, column, value, expected) => {
    const { readings, problems } = await read(row, "well,2026-01-01,2026-01-31,1,m3");
    expect(readings).toHaveLength(1);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      code: `meter-${column}`,
      severity: "set-aside",
      file: "meters.csv",
      line: 2,
      column,
      value,
    });
    expect(problems[0]?.expected).toMatch(expected);
    expect(problems[0]?.remedy).toMatch(/\w/);
  });

  it("refuses a file without its columns", async () => {
    const { readings, problems } = await readMeters(
      "meters.csv",
      chunksOf("meter,from,reading,unit\nwell,2026-01-01,3,m3"),
      PLANT,
      NET,
    );
    expect(readings).toEqual([]);
    expect(problems.map(({ severity, column }) => [severity, column])).toEqual([["refused", "to"]]);
  });
});

describe("meterMonths", () => {
  const reading = (meter: string, from: string, to: string, amount: number): Reading => ({
    meter,
    from,
    to,
    amount,
  });

  it("shares a reading across months by days, and loses nothing", () => {
    // 10 days of January, 28 of February and 2 of March 2026.
    const [series] = meterMonths(
      [reading("power", "2026-01-22", "2026-03-02", 400)],
      PLANT,
      () => new Map(),
    );
    const months = series?.months ?? [];
    expect(months.map(({ month }) => month)).toEqual(["2026-01", "2026-02", "2026-03"]);
    const amounts = months.map(({ metered }) => metered ?? NaN);
    [100, 280, 20].forEach((amount, at) => {
      expect(amounts[at]).toBeCloseTo(amount, 9);
    });
    expect(amounts.reduce((sum, amount) => sum + amount, 0)).toBeCloseTo(400, 9);
  });

  it("adds the readings of a month, and a day is one day", () => {
    const [series] = meterMonths(
      [
        reading("power", "2026-01-01", "2026-01-15", 30),
        reading("power", "2026-01-16", "2026-01-16", 4),
      ],
      PLANT,
      () => new Map(),
    );
    expect(series?.months).toHaveLength(1);
    expect(series?.months[0]?.metered).toBeCloseTo(34, 9);
  });

  it("sets water in m³ beside the model, also in months that only one of them has", () => {
    const asked: string[] = [];
    const series = meterMonths(
      [reading("well", "2026-01-01", "2026-01-31", 5000)],
      PLANT,
      (quantity) => {
        asked.push(quantity);
        return new Map([
          ["2026-01", 4000],
          ["2026-02", 1000],
        ]);
      },
    );
    expect(asked).toEqual(["water"]);
    expect(series).toEqual([
      {
        meter: "well",
        quantity: "water",
        unit: "m³",
        months: [
          { month: "2026-01", metered: expect.closeTo(5, 9) as number, modelled: 4 },
          { month: "2026-02", modelled: 1 },
        ],
      },
    ]);
  });

  it("shows no meter without readings", () => {
    expect(meterMonths([], PLANT, () => new Map([["2026-01", 1]]))).toEqual([]);
  });
});
