import { describe, expect, it } from "vitest";
import { FactorFile, type ProvenanceText } from "../../src/factors/schema.js";
import type { StatedFactor } from "../../src/factors/stated.js";
import { rowFactors } from "../../src/factors/table-rows.js";
import { type Fault, type KeyPath, pathText, readYaml } from "../../src/factors/yaml-text.js";

interface Laid {
  readonly factors: readonly StatedFactor[];
  readonly problems: readonly (Fault & { readonly at: string })[];
}

function laidOut(text: string, shared: ProvenanceText = {}): Laid {
  const file = FactorFile.parse(readYaml({ name: "grid.yaml", text }).value?.value);
  const [table] = file.tables ?? [];
  if (table === undefined) throw new Error("the sample is at fault");
  const problems: (Fault & { readonly at: string })[] = [];
  const complain = (at: KeyPath, fault: Fault): void => {
    problems.push({ at: pathText(at), ...fault });
  };
  return { factors: rowFactors(table, ["tables", 0], shared, complain), problems };
}

describe("rowFactors", () => {
  const SHARED = {
    source: "own-estimate",
    region: "world",
    year: 1999,
    from: "1999-01-01",
  };
  const GRID = `
tables:
  - id: grid.*.intensity
    words: intensity in *
    unit: kg CO2e/kWh
    basis: life cycle
    source: ember
    region: "*"
    spread: { shape: normal, share: 0.25 }
    columns: [name, words, year, value, note]
    rows:
      - [ITA, Italy, 2024, 0.3]
      - [UZB, Uzbekistan, 2022, 1.2, high]
      - [ITA, Italy, 2023, 0.4]
`;

  it("lays out a table: a factor for each name, a vintage for each of its rows", () => {
    const { factors, problems } = laidOut(GRID, SHARED);
    expect(problems).toEqual([]);
    expect(
      factors.map(({ id, words, basis, values }) => [id, words, basis, values.length]),
    ).toEqual([
      ["grid.ITA.intensity", "intensity in Italy", "life cycle", 2],
      ["grid.UZB.intensity", "intensity in Uzbekistan", "life cycle", 1],
    ]);
    expect(factors[0]?.values[1]).toEqual({
      path: ["tables", 0, "rows", 2],
      row: true,
      value: 0.4,
      spread: { shape: "normal", share: 0.25 },
      provenance: { source: "ember", region: "Italy", year: 2023, from: "2023-01-01" },
    });
    expect(factors[1]?.values[0]?.provenance.note).toBe("high");
  });

  it("takes ends, pages and starts from the columns", () => {
    const { factors } = laidOut(`
tables:
  - id: ink.*.water
    unit: L/L
    from: 2015-01-01
    year: 2026
    page: table 1
    note: for all
    spread: { shape: triangular }
    columns: [name, low, value, high, from, page, note]
    rows:
      - [acid, 0.6, 0.7, 0.8, 2020-05-01, table 2, for one]
      - [pigment, 0.6, 0.7, 0.8]
      - [disperse, 0.6, 0.7, 0.8, "", "", for another]
`);
    const [acid, pigment, disperse] = factors.map(({ values }) => values[0]);
    expect(acid?.spread).toEqual({ shape: "triangular", low: 0.6, high: 0.8 });
    expect(acid?.provenance).toMatchObject({
      from: "2020-05-01",
      page: "table 2",
      note: "for one",
    });
    expect(pigment?.provenance).toMatchObject({ from: "2015-01-01", page: "table 1" });
    expect(disperse?.provenance).toMatchObject({ from: "2015-01-01", page: "table 1" });
    expect(disperse?.provenance.note).toBe("for another");
    expect(factors[0]?.words).toBeUndefined();
  });

  const table = (columns: string, row: string): string =>
    `tables:\n  - id: grid.*.intensity\n    unit: kg/kWh\n    columns: ${columns}\n    rows:\n      - ${row}\n`;

  it.each([
    ["[name, value]", "[ITA, 1, 2]", "3 cells", "2, one for each column"],
    ["[name, value]", "[ITA]", "no cell", "a cell under value"],
    ["[name, value]", '["", 1]', "no cell", "a cell under name"],
    ["[name, value]", "[ITA, low]", "low", "a number under value"],
    ["[name, value]", "[1, 2]", "1", "a name of letters, digits and hyphens under name"],
    ["[name, value]", "[I.A, 2]", "I.A", "a name of letters, digits and hyphens under name"],
    ["[name, value, year]", "[ITA, 2, 24]", "24", "a year such as 2026 under year"],
    ["[name, value, from]", "[ITA, 2, May]", "May", "a day such as 2026-11-25 under from"],
    ["[name, value, note]", "[ITA, 2, 3]", "3", "a text under note"],
    ["[name, low, value]", '[ITA, "1", 2]', "1", "a number under low"],
  ])("refuses under %s the row %s", (columns, row, value, expected) => {
    const { factors, problems } = laidOut(table(columns, row));
    expect(factors).toEqual([]);
    expect(problems).toMatchObject([{ code: "table-row", value, expected }]);
  });

  it.each(["[name, year]", "[value, year]", "[name, value, value]"])(
    "refuses the columns %s",
    (columns) => {
      const { factors, problems } = laidOut(table(columns, "[ITA, 1]"));
      expect(factors).toEqual([]);
      expect(problems).toMatchObject([{ code: "table-columns", at: "tables[0].columns" }]);
    },
  );
});
