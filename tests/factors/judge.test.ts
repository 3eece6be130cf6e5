import { describe, expect, it } from "vitest";
import type { Factor } from "../../src/factors/factor.js";
import { judgeFactor } from "../../src/factors/judge.js";
import type { StatedFactor } from "../../src/factors/stated.js";
import { readYaml, type YamlText } from "../../src/factors/yaml-text.js";
import type { Judged } from "../../src/problems/problem.js";

const QUALITY = { reliability: 1, completeness: 1, time: 1, place: 1, technology: 1 };

const PROVENANCE = {
  source: "meter",
  from: "2026-01-01",
  entered: "2026-11-25",
  year: 2026,
  region: "here",
  quality: QUALITY,
};

const VALUE = {
  path: ["factors", "pad.speed", "values", 0],
  row: false,
  value: 25,
  spread: { shape: "triangular", low: 10, high: 40 },
  provenance: PROVENANCE,
} as const;

const SPEED: StatedFactor = {
  id: "pad.speed",
  path: ["factors", "pad.speed"],
  words: "cloth speed",
  unit: "m/min",
  basis: undefined,
  plausible: [1, 150],
  values: [VALUE],
};

function yamlOf(text: string): YamlText {
  const yaml = readYaml({ name: "pad.yaml", text }).value;
  if (yaml === undefined) throw new Error("not YAML");
  return yaml;
}

const YAML = yamlOf(
  "factors:\n  pad.speed:\n    unit: m/min\n    plausible: [1, 150]\n    values:\n      - value: 25\n        source: meter\n",
);

function judge(changes: Partial<StatedFactor>, shipped?: Factor): Judged<Factor> {
  return judgeFactor({ ...SPEED, ...changes }, YAML, new Set(["meter", "sheet"]), shipped);
}

function withProvenance(changes: Partial<Record<keyof typeof PROVENANCE, unknown>>): StatedFactor {
  const provenance = { ...PROVENANCE, ...changes } as typeof PROVENANCE;
  return { ...SPEED, values: [{ ...VALUE, provenance }] };
}

function shippedWith(changes: Partial<Factor>): Factor {
  const { value } = judge({});
  if (value === undefined) throw new Error("the sample is at fault");
  return { ...value, ...changes };
}

describe("judgeFactor", () => {
  it("makes a factor of what is in order", () => {
    expect(judge({})).toEqual({
      value: {
        id: "pad.speed",
        unit: "m/min",
        words: "cloth speed",
        basis: undefined,
        plausible: [1, 150],
        values: [
          {
            ...PROVENANCE,
            spread: { shape: "triangular", low: 10, value: 25, high: 40 },
            page: undefined,
            note: undefined,
          },
        ],
        overruled: false,
      },
      problems: [],
    });
  });

  it.each<[string, Partial<StatedFactor>, string, string, number]>([
    ["words are missing", { words: undefined }, "missing-key", "factors.pad.speed.words", 2],
    [
      "nothing is plausible",
      { plausible: undefined },
      "missing-key",
      "factors.pad.speed.plausible",
      4,
    ],
    ["the unit cannot be read", { unit: "m/min kg" }, "factor-unit", "factors.pad.speed.unit", 3],
    [
      "plausible values are swapped",
      { plausible: [150, 1] },
      "factor-plausible",
      "factors.pad.speed.plausible",
      4,
    ],
    [
      "plausible values are one",
      { plausible: [1, 1] },
      "factor-plausible",
      "factors.pad.speed.plausible",
      4,
    ],
    [
      "the value is implausible",
      { plausible: [30, 150] },
      "factor-implausible",
      "factors.pad.speed.values[0].value",
      6,
    ],
    [
      "an end is implausible",
      { plausible: [1, 39] },
      "factor-implausible",
      "factors.pad.speed.values[0].spread.high",
      6,
    ],
    [
      "the source is missing",
      withProvenance({ source: undefined }),
      "factor-no-source",
      "factors.pad.speed.values[0].source",
      7,
    ],
    [
      "the source is unknown",
      withProvenance({ source: "mete" }),
      "factor-unknown-source",
      "factors.pad.speed.values[0].source",
      7,
    ],
    [
      "no start is given",
      withProvenance({ from: undefined }),
      "missing-key",
      "factors.pad.speed.values[0].from",
      6,
    ],
    [
      "no day of entry is given",
      withProvenance({ entered: undefined }),
      "missing-key",
      "factors.pad.speed.values[0].entered",
      6,
    ],
    [
      "the year is missing",
      withProvenance({ year: undefined }),
      "missing-key",
      "factors.pad.speed.values[0].year",
      6,
    ],
    [
      "the place is missing",
      withProvenance({ region: undefined }),
      "missing-key",
      "factors.pad.speed.values[0].region",
      6,
    ],
    [
      "the scores are missing",
      withProvenance({ quality: undefined }),
      "missing-key",
      "factors.pad.speed.values[0].quality",
      6,
    ],
  ])("refuses it when %s", (_, changes, code, key, line) => {
    const { value, problems } = judge(changes);
    expect(value).toBeUndefined();
    expect(problems).toMatchObject([{ code, key, line, severity: "refused", file: "pad.yaml" }]);
  });

  it("suggests the source that was meant", () => {
    expect(judge(withProvenance({ source: "mete" })).problems[0]?.remedy).toContain("Write meter");
    expect(judge(withProvenance({ source: "bill" })).problems[0]?.remedy).toBe(
      "Add the source there.",
    );
  });

  it("has no key to point to in a row", () => {
    const row = { ...VALUE, path: ["factors"], row: true, value: 500 };
    const provenance = { ...PROVENANCE, source: "bill" };
    expect(judge({ values: [{ ...row, provenance }] }).problems).toMatchObject([
      { code: "factor-unknown-source", key: "factors" },
      { code: "factor-implausible", key: "factors" },
    ]);
  });

  type Dates = readonly [from: string, entered: string];
  const vintage = ([from, entered]: Dates): StatedFactor["values"][number] => ({
    ...VALUE,
    provenance: { ...PROVENANCE, from, entered },
  });

  it.each([
    ["a newer start above", ["2026-01-01", "2026-01-05"], ["2024-01-01", "2026-01-05"]],
    ["a correction above", ["2024-01-01", "2026-02-01"], ["2024-01-01", "2026-01-05"]],
    [
      "a late entry for an early start below",
      ["2026-01-01", "2026-01-05"],
      ["2020-01-01", "2026-09-09"],
    ],
  ] as const)("takes %s", (_, above, below) => {
    expect(judge({ values: [vintage(above), vintage(below)] }).value?.values).toHaveLength(2);
  });

  it.each([
    ["an older start above", ["2024-01-01", "2026-01-05"], ["2026-01-01", "2026-01-05"]],
    ["a correction below", ["2024-01-01", "2026-01-05"], ["2024-01-01", "2026-02-01"]],
    ["the same vintage twice", ["2024-01-01", "2026-01-05"], ["2024-01-01", "2026-01-05"]],
  ] as const)("refuses %s", (_, above, below) => {
    const { value, problems } = judge({ values: [vintage(above), vintage(below)] });
    expect(value).toBeUndefined();
    expect(problems).toMatchObject([{ code: "factor-dates" }]);
  });
});

describe("judgeFactor with a shipped one", () => {
  it("takes over words, basis and plausible values, and says it overrules", () => {
    const shipped = shippedWith({ words: "speed", basis: "mean", plausible: [1, 120] });
    const { value } = judge({ words: undefined, plausible: undefined }, shipped);
    expect(value).toMatchObject({
      words: "speed",
      basis: "mean",
      plausible: [1, 120],
      overruled: true,
    });
  });

  it("keeps its own words and narrower plausible values", () => {
    const { value } = judge({ words: "mine", plausible: [5, 60] }, shippedWith({}));
    expect(value).toMatchObject({ words: "mine", plausible: [5, 60], overruled: true });
  });

  it("takes another spelling of the unit, and no other unit", () => {
    expect(judge({}, shippedWith({ unit: "m·min⁻¹" })).problems).toEqual([]);
    expect(judge({}, shippedWith({ unit: "m/s" })).problems).toMatchObject([
      { code: "factor-unit", value: "m/min", expected: "the unit of the shipped factor, m/s" },
    ]);
  });

  it.each([[[0, 150]], [[1, 151]]] as const)(
    "refuses the wider plausible values %j",
    (plausible) => {
      expect(judge({ plausible }, shippedWith({})).problems).toMatchObject([
        {
          code: "factor-plausible",
          expected: "a part of 1 to 150, which the steps were checked for",
        },
      ]);
    },
  );
});

describe("judgeFactor of a figure of fuel", () => {
  const NET = "net calorific value";
  const CO2: Partial<StatedFactor> = { id: "fuel.biogas.co2", unit: "kg/TJ" };
  const GAS: Partial<StatedFactor> = { id: "fuel.biogas.ncv", unit: "MJ/kg" };
  const BOILER: Partial<StatedFactor> = { id: "boiler.efficiency", unit: "1" };

  it.each([CO2, GAS, BOILER])("takes $id on net calorific value", (changes) => {
    expect(judge({ ...changes, basis: NET }).value?.basis).toBe(NET);
  });

  it.each([CO2, GAS, BOILER])("refuses $id without a basis, whatever it overrules", (changes) => {
    const shipped = { ...shippedWith({ basis: NET }), id: changes.id!, unit: changes.unit! };
    for (const { value, problems } of [judge(changes), judge(changes, shipped)]) {
      expect(value).toBeUndefined();
      expect(problems).toMatchObject([{ code: "factor-basis", severity: "refused" }]);
      expect(problems[0]?.key).toBe("factors.pad.speed.basis");
      expect(problems[0]?.expected).toContain(`basis: ${NET}`);
    }
  });

  it.each([CO2, GAS, BOILER])(
    "refuses to mix $id on gross with the net of all others",
    (changes) => {
      const { problems } = judge({ ...changes, basis: "gross calorific value" });
      expect(problems).toMatchObject([{ code: "factor-basis", value: "gross calorific value" }]);
      expect(problems[0]?.remedy).toContain("convert it first");
    },
  );

  it("lets more be said behind it", () => {
    expect(judge({ ...CO2, basis: `${NET}, biogenic` }).problems).toEqual([]);
    expect(judge({ ...CO2, basis: "biogenic" }).problems).toMatchObject([{ code: "factor-basis" }]);
  });

  it("asks none of a bare ratio of a fuel, nor of what burns nothing", () => {
    expect(judge({ id: "fuel.biogas.gross-to-net", unit: "1" }).problems).toEqual([]);
    expect(judge({ id: "electric-heat.efficiency", unit: "1" }).problems).toEqual([]);
  });
});
