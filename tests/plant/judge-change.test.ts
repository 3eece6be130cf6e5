import { describe, expect, it } from "vitest";
import { faultsOf, lineOf, plantFile } from "./plant-file.js";

const PRICED = { site: "tariffs: { currency: EUR, date: 2026-01-01, water: 1.4 }" };

/** Faults of one change, each with its key inside it. */
function faults(change: string, base = {}): readonly (readonly (string | undefined)[])[] {
  const more = `changes:\n  - from: 2026-07-01\n    ${change}\n`;
  return faultsOf(plantFile({ ...base, more })).map(({ line, key, value, code, remedy }) => {
    expect(line).toBe(lineOf({ ...base, more }, change.split("\n")[0] ?? ""));
    expect(remedy).toMatch(/\.$/);
    return [key?.replace(/^changes\[0\]\./, ""), value, code];
  });
}

describe("judgeChange", () => {
  it("takes what is whole", () => {
    const machines = ["pad", "stenter", "printer", "calender"].map(
      (kind) => `${kind}: { kind: ${kind} }`,
    );
    expect(faults("sites: { main: { machines: { flue: { kind: hot-flue } } } }")).toEqual([]);
    expect(faults(`sites: { hall: { place: DEU, machines: { ${machines.join(", ")} } } }`)).toEqual(
      [],
    );
    expect(
      faults("routes: { other: { like: pigment-stenter, finish: none, machines: {} } }").map(
        ([, , code]) => code,
      ),
    ).toEqual(Array<string>(4).fill("route-misses-step"));
  });

  it.each([
    ["sites: { mian: { settings: { hall.temperature: 29 } } }", "sites.mian", "mian"],
    ["sites: { main: { machines: { pda: { words: new } } } }", "sites.main.machines.pda", "pda"],
    ["routes: { pigmnt: { settings: { fix.dwell: 40 } } }", "routes.pigmnt", "pigmnt"],
  ])("takes a new name without its parts for a slip: %s", (change, key, value) => {
    expect(faults(change)).toEqual([[key, value, "unknown-name"]]);
  });

  it("says no more of a thing that was refused already", () => {
    expect(faults("sites: { main: { machines: { flue: { kind: 5 } } } }")).toEqual([
      ["sites.main.machines.flue.kind", "5", "wrong-value"],
    ]);
  });

  it("lets prices change that were stated before", () => {
    expect(
      faults("sites: { main: { tariffs: { date: 2026-07-01, water: 1.6 } } }", PRICED),
    ).toEqual([]);
  });

  it("refuses a price that lots before would not have", () => {
    const change = "sites: { main: { tariffs: { date: 2026-07-01, effluent: 1 } } }";
    expect(faults(change, PRICED)).toEqual([
      ["sites.main.tariffs.effluent", "effluent", "price-from-change"],
    ]);
    expect(faults(change)).toEqual([["sites.main.tariffs", "2026-07-01", "price-from-change"]]);
  });

  it("refuses another currency, and prices without their day", () => {
    expect(
      faults("sites: { main: { tariffs: { date: 2026-07-01, currency: USD } } }", PRICED),
    ).toEqual([["sites.main.tariffs.currency", "USD", "currency-changed"]]);
    expect(faults("sites: { main: { tariffs: { water: 1.6 } } }", PRICED)).toEqual([
      ["sites.main.tariffs.date", undefined, "missing-key"],
    ]);
  });

  it("refuses shares of first quality, which hold for the whole period", () => {
    expect(faults("sites: { main: { yield: {} } }")).toEqual([
      ["sites.main.yield", "yield", "unknown-key"],
    ]);
  });
});
