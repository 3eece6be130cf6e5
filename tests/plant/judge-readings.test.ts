import { describe, expect, it } from "vitest";
import { faultsOf, plantFile } from "./plant-file.js";

const faults = (rest: string): readonly (string | undefined)[] =>
  faultsOf(plantFile({ more: `readings:\n  ${rest}\n` })).map(({ key }) => key);

describe("judgeReadings", () => {
  it("takes columns that count machines of the file", () => {
    expect(faults("water_l: { machines: [printer], accuracy: 3 }")).toEqual([]);
    expect(faults("gas_kwh: { machines: [printer], basis: gross }")).toEqual([]);
  });

  it("refuses a machine that is not there, a column that is none, and gas without its basis", () => {
    expect(faults("water_l: { machines: [printer, prnter] }")).toEqual([
      "readings.water_l.machines[1]",
    ]);
    expect(faults("water_m3: { machines: [printer] }")).not.toEqual([]);
    expect(faults("gas_kwh: { machines: [printer] }")).toEqual(["readings.gas_kwh.basis"]);
    expect(faults("steam_kg: { machines: [] }")).toEqual(["readings.steam_kg.machines"]);
  });
});
