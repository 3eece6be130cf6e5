import { describe, expect, it } from "vitest";
import type { Group } from "../../../src/ledger/ledger.js";
import { settingsSentence } from "../../../src/report/compose/settings-in-force.js";
import { EXACT_MILL, plantFrom } from "../../account/exact-mill.js";

const CHANGES = [
  { from: "2026-07-01", note: "new boiler", sites: { main: { effluent: "municipal" } } },
  { from: "2026-08-01", sites: { main: { words: "hall" } } },
];

/** The sentence with plain blanks, wherever lines may not break. */
function said(input: Parameters<typeof settingsSentence>[0]): string {
  return settingsSentence(input).replace(/\s/g, " ");
}

function groups(lots: readonly (readonly [string, number])[]): readonly Group[] {
  return lots.map(([settings, count]) => ({ key: { settings }, lots: count }) as unknown as Group);
}

describe("settingsSentence", () => {
  it("says nothing where the plant file states no changes", () => {
    const plant = plantFrom(EXACT_MILL);
    expect(settingsSentence({ plant, groups: groups([["", 3]]) })).toBe("");
  });

  it("counts the lots under each change, and leaves out changes without lots", () => {
    const plant = plantFrom({ ...EXACT_MILL, changes: CHANGES });
    const taken = groups([
      ["", 1],
      ["2026-07-01", 12],
      ["2026-07-01", 34],
    ]);
    expect(said({ plant, groups: taken })).toBe(
      "Settings are those in force on the day of the lot: 1 lot under the plant file without its changes, 46 lots under its changes up to 1 July 2026 (new boiler).",
    );
    expect(said({ plant, groups: groups([["2026-08-01", 2]]) })).toBe(
      "Settings are those in force on the day of the lot: 2 lots under its changes up to 1 August 2026.",
    );
  });
});
