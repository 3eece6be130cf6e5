import { describe, expect, it } from "vitest";
import { readMeters } from "../../src/meters/read-meters.js";
import type { Plant } from "../../src/plant/plant.js";
import { smallMill } from "../report/compose/small-mill.js";

const PLANT = smallMill({
  meters: {
    well: { quantity: "water", unit: "m3", covers: "site" },
    gas: { quantity: "gas", unit: "kWh", covers: "site", basis: "gross" },
    "net gas": { quantity: "gas", unit: "kWh", covers: "site", basis: "net" },
    power: { quantity: "electricity", unit: "kWh", covers: "site" },
    dial: {
      quantity: "water",
      unit: "m3",
      covers: "site",
      kind: "register",
      digits: 5,
      multiplier: 10,
    },
    heat: { quantity: "steam", unit: "GJ", covers: "site" },
    sample: { quantity: "cod", unit: "mg/L", covers: "site" },
  },
});

const NET = 0.9;
const CONDITIONS = { netPerGross: NET, steamEnthalpy: 2768 };

// eslint-disable-next-line @typescript-eslint/require-await -- a file comes in chunks, as a stream does
async function* chunksOf(text: string): AsyncGenerator<Uint8Array> {
  yield new TextEncoder().encode(text);
}

function read(...rows: readonly string[]): ReturnType<typeof readMeters> {
  return readAt(PLANT, ...rows);
}

function readAt(plant: Plant, ...rows: readonly string[]): ReturnType<typeof readMeters> {
  const text = ["meter,from,to,reading,unit", ...rows].join("\n");
  return readMeters("meters.csv", chunksOf(text), plant, CONDITIONS);
}

describe("readMeters", () => {
  it("turns readings into litres and kWh", async () => {
    const { readings, problems } = await read(
      "well,2026-01-01,2026-01-31,3,m3",
      "power,2026-01-01,2026-01-31,2,MWh",
      "power,2026-02-01,2026-02-28,7.2,MJ",
    );
    expect(problems.map(({ code }) => code)).toEqual(["meter-two-units"]);
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
    ["brook,2026-01-01,2026-01-31,3,m3", "meter", "brook", /well, gas, net gas, power, dial/],
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
      CONDITIONS,
    );
    expect(readings).toEqual([]);
    expect(problems.map(({ severity, column }) => [severity, column])).toEqual([["refused", "to"]]);
  });
});

describe("dials", () => {
  const rows = (...figures: readonly string[]): readonly string[] =>
    figures.map((figure, i) => `dial,,2026-0${i + 1}-28,${figure},m3`);

  it("give differences, each step of the dial for ten cubic metres", async () => {
    const { readings, problems } = await read(...rows("100", "112", "130"));
    expect(problems).toEqual([]);
    expect(readings).toEqual([
      { meter: "dial", from: "2026-01-29", to: "2026-02-28", amount: 120_000 },
      { meter: "dial", from: "2026-03-01", to: "2026-03-28", amount: 180_000 },
    ]);
  });

  it("begin anew behind their last digit", async () => {
    const { readings } = await read(...rows("99990", "15"));
    expect(readings.map(({ amount }) => amount)).toEqual([250_000]);
  });

  it("are named when they run back", async () => {
    const { readings, problems } = await read(...rows("500", "400", "520"));
    expect(readings.map(({ amount }) => amount)).toEqual([200_000]);
    expect(problems).toMatchObject([
      { code: "meter-runs-back", severity: "set-aside", line: 3, value: "400" },
    ]);
    expect(problems[0]?.remedy).toContain("digits");
  });

  it("are changed for others", async () => {
    const text = [
      "meter,from,to,reading,unit,register,event,quality",
      "dial,,2026-01-31,100,m3,,,",
      "dial,,2026-02-15,120,m3,7,swap,",
      "dial,,2026-02-28,9,m3,,,estimated",
    ].join("\n");
    const { readings, problems } = await readMeters(
      "meters.csv",
      chunksOf(text),
      PLANT,
      CONDITIONS,
    );
    expect(problems).toEqual([]);
    expect(readings).toEqual([
      { meter: "dial", from: "2026-02-01", to: "2026-02-15", amount: 200_000 },
      { meter: "dial", from: "2026-02-16", to: "2026-02-28", amount: 20_000, estimated: true },
    ]);
  });

  it.each([
    ["dial,,2026-02-15,120,m3,,swap,", "register"],
    ["dial,,2026-02-15,120,m3,,moved,", "event"],
    ["well,2026-02-01,2026-02-15,120,m3,,,perhaps", "quality"],
  ])("sets %j aside for its %s", async (row, column) => {
    const text = `meter,from,to,reading,unit,register,event,quality\n${row}`;
    const { readings, problems } = await readMeters(
      "meters.csv",
      chunksOf(text),
      PLANT,
      CONDITIONS,
    );
    expect(readings).toEqual([]);
    expect(problems).toMatchObject([{ code: `meter-${column}`, column }]);
  });
});

describe("rows that say the same days", () => {
  it("are set aside after the first", async () => {
    const { readings, problems } = await read(
      "well,2026-01-01,2026-01-31,3,m3",
      "well,2026-01-31,2026-02-28,4,m3",
    );
    expect(readings.map(({ amount }) => amount)).toEqual([3000]);
    expect(problems).toMatchObject([{ code: "meter-overlap", line: 3, severity: "set-aside" }]);
  });

  it("give way to a corrected one", async () => {
    const text = [
      "meter,from,to,reading,unit,quality",
      "well,2026-01-01,2026-01-31,3,m3,estimated",
      "well,2026-01-01,2026-01-31,5,m3,corrected",
    ].join("\n");
    const { readings, problems } = await readMeters(
      "meters.csv",
      chunksOf(text),
      PLANT,
      CONDITIONS,
    );
    expect(problems).toEqual([]);
    expect(readings.map(({ amount }) => amount)).toEqual([5000]);
  });

  it("are told when their units differ", async () => {
    const { readings, problems } = await read(
      "well,2026-01-01,2026-01-31,3,m3",
      "well,2026-02-01,2026-02-28,3,L",
    );
    expect(readings).toHaveLength(2);
    expect(problems).toMatchObject([{ code: "meter-two-units", severity: "warning", value: "L" }]);
  });
});

describe("samples", () => {
  it("below the limit of the method keep the limit, and may share a day", async () => {
    const { readings, problems } = await read(
      "sample,2026-01-05,2026-01-05,<10,mg/L",
      "sample,2026-01-05,2026-01-05,850,mg/L",
    );
    expect(problems).toEqual([]);
    expect(readings).toMatchObject([
      { amount: expect.closeTo(0.01, 12) as number, below: true },
      { amount: expect.closeTo(0.85, 12) as number },
    ]);
  });
});
