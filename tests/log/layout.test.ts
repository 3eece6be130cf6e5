import { describe, expect, it } from "vitest";
import type { LogDialect } from "../../src/log/dialect.js";
import {
  cellOf,
  headingOf,
  holdsRequired,
  type Layout,
  type LaidOut,
  layOut,
} from "../../src/log/layout.js";
import { HEAD } from "./made.js";

function laid(heads: string, dialect: LogDialect = {}): LaidOut {
  return layOut("log.csv", { fields: heads.split(","), line: 3 }, dialect);
}

function layoutOf(heads: string, dialect: LogDialect = {}): Layout {
  const { layout, problems } = laid(heads, dialect);
  if (layout === undefined) throw new Error(JSON.stringify(problems));
  return layout;
}

function converted(name: string, unit: string, logged: number): number | undefined {
  const dialect: LogDialect = { columns: { [name]: { heading: "theirs", unit } } };
  const { columns } = layoutOf(`${HEAD.replace(`${name},`, "")},theirs`, dialect);
  return columns.find(({ column }) => column.name === name)?.convert(logged);
}

describe("layOut", () => {
  it("finds headings whatever their order, case and the spaces around them", () => {
    const layout = layoutOf(" Route ,LOT,date,fibre,gsm,Width_M,length_m");
    expect(layout.columns.find(({ column }) => column.name === "lot")?.at).toBe(1);
    expect(headingOf(layout, "route")).toBe("Route");
    expect(headingOf(layout, "note")).toBe("note");
  });

  it("finds a heading written with letters put together from two signs", () => {
    const dialect: LogDialect = { columns: { note: "Länge".normalize("NFD") } };
    expect(headingOf(layoutOf(`${HEAD.replace("note", "x")},Länge`, dialect), "note")).toBe(
      "Länge",
    );
  });

  it("names each missing required column with its line and what stands there instead", () => {
    const { layout, problems } = laid("lot,date,fibre,gsm,widht_m,length_m");
    expect(layout).toBeUndefined();
    expect(problems).toEqual([
      {
        code: "missing-column",
        severity: "refused",
        file: "log.csv",
        line: 3,
        column: "width_m",
        value: "lot, date, fibre, gsm, widht_m, length_m",
        expected: "a column width_m (width of the cloth)",
        remedy:
          'Is it the column "widht_m"? Add it to the export, or map the heading under `log: columns:` in plant.yaml.',
      },
      expect.objectContaining({ code: "missing-column", column: "route" }),
    ]);
    expect(problems[1]?.remedy).toMatch(/^Add it/);
  });

  it("refuses a mapping to a heading that is not there, though the column is optional", () => {
    expect(laid(HEAD, { columns: { note: "Bemerkung" } }).problems).toMatchObject([
      { code: "missing-column", column: "Bemerkung" },
    ]);
  });

  it("refuses a heading that stands twice, but only when it is used", () => {
    expect(laid(`${HEAD},gsm`).problems).toMatchObject([
      { code: "heading-twice", line: 3, column: "gsm", value: "gsm" },
    ]);
    expect(laid(`${HEAD},other,other`).problems).toEqual([]);
  });

  it.each([
    ["width_m", "parsec", "no unit known here", "Use one of"],
    ["gsm", "oz/yd", "running yard", "Give oz/yd2"],
    ["note", "m", "it has none", "Leave `unit` out"],
    ["fix_temp_c", "Reaumur", "no unit of temperature", "Give °C"],
  ])("refuses for %s the unit %j", (name, unit, reason, remedy) => {
    const dialect: LogDialect = { columns: { [name]: { heading: "theirs", unit } } };
    const heads = HEAD.split(",").filter((head) => head !== name);
    const { problems } = laid([...heads, "theirs"].join(","), dialect);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({
      code: "unknown-unit",
      line: 3,
      column: "theirs",
      value: unit,
    });
    expect(problems[0]?.expected).toContain(reason);
    expect(problems[0]?.remedy).toContain(remedy);
  });

  // Factors: NIST Special Publication 811 (2008), appendix B.8.
  it.each([
    ["width_m", "cm", 150, 1.5],
    ["length_m", "yd", 100, 91.44],
    ["gsm", "oz/yd2", 4, 4 * 33.90575],
    ["ink_ml", "L", 2, 2000],
    ["fix_temp_c", "°F", 212, 100],
    ["fix_temp_c", "K", 373.15, 100],
    ["dwell_s", "min", 8, 480],
    ["coverage_pct", "share", 0.25, 25],
    ["gsm", "g/m²", 140, 140],
  ])("converts %s from %s", (name, unit, logged, own) => {
    expect(converted(name, unit, logged)).toBeCloseTo(own, 4);
  });

  it("takes a constant for a column that the log does not have", () => {
    const layout = layoutOf(HEAD.replace("fibre,", ""), { constants: { fibre: "cotton" } });
    const placed = layout.columns.find(({ column }) => column.name === "fibre");
    if (placed === undefined) throw new Error("no column fibre");
    expect(placed.at).toBe(-1);
    expect(cellOf({ fields: ["L-1"], line: 4 }, placed)).toBe("cotton");
  });

  it("lets a column rule over a constant for it, and says so", () => {
    const { layout, problems } = laid(HEAD, { constants: { client: "Client Oak" } });
    const placed = layout?.columns.find(({ column }) => column.name === "client");
    expect(placed?.constant).toBe("");
    expect(problems).toEqual([
      {
        ...{ code: "constant-not-used", severity: "warning", file: "log.csv", line: 3 },
        ...{ column: "client", value: "Client Oak" },
        expected: "client either in a column or as a constant",
        remedy:
          "The column was used; take `client` out of `constants:` under `log:` in plant.yaml, or the column out of the log.",
      },
    ]);
  });

  it("refuses one heading for two of our columns", () => {
    expect(laid(HEAD, { columns: { rejected_m: "length_m" } }).problems).toMatchObject([
      { code: "heading-shared", severity: "refused", column: "length_m", line: 3 },
    ]);
  });

  it("lists the headings that are not used", () => {
    expect(laid(`${HEAD},Shift,,Operator`).unused).toEqual(["Shift", "Operator"]);
  });
});

describe("holdsRequired", () => {
  it("asks for every required heading as mapped, constants apart", () => {
    const fields = HEAD.split(",");
    expect(holdsRequired(fields, {})).toBe(true);
    expect(holdsRequired([" ROUTE ", ...fields.filter((head) => head !== "route")], {})).toBe(true);
    const without = fields.filter((head) => head !== "gsm");
    expect(holdsRequired(without, {})).toBe(false);
    expect(holdsRequired(without, { constants: { gsm: "140" } })).toBe(true);
    expect(holdsRequired(without, { columns: { gsm: "Gewicht" } })).toBe(false);
    const mapped: LogDialect = { columns: { gsm: { heading: "Gewicht", unit: "g/m2" } } };
    expect(holdsRequired([...without, "Gewicht"], mapped)).toBe(true);
  });
});

describe("cellOf", () => {
  it("takes off what guards text or formulas in spreadsheets, and nothing else", () => {
    const layout = layoutOf(HEAD);
    const [lot] = layout.columns;
    if (lot === undefined) throw new Error("no columns");
    const cell = (text: string): string => cellOf({ fields: [text], line: 4 }, lot);
    expect(
      ['="001"', '= "001"', '="a ""b"""', '=""', '="a"&"b"', `'="001"`, "=1+1"].map(cell),
    ).toEqual(["001", '= "001"', 'a "b"', "", '="a"&"b"', "001", "=1+1"]);
    expect(["+5 m", "@home", "=SUM(A1)"].map(cell)).toEqual(["+5 m", "@home", "=SUM(A1)"]);
    expect([cell("'=1+1"), cell("'-5 m"), cell("'s Lot"), cell("'1"), cell(" a ")]).toEqual([
      "=1+1",
      "-5 m",
      "'s Lot",
      "'1",
      "a",
    ]);
  });
});
