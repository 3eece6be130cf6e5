import { describe, expect, it } from "vitest";
import { judgeBy } from "../../src/factors/schema-problems.js";
import { FactorFile } from "../../src/factors/schema.js";
import { type Stated, statedFactors } from "../../src/factors/stated.js";
import { readYaml } from "../../src/factors/yaml-text.js";

function stated(text: string): Stated {
  const yaml = readYaml({ name: "grid.yaml", text }).value;
  const file = yaml === undefined ? undefined : judgeBy(FactorFile, yaml).value;
  if (yaml === undefined || file === undefined) throw new Error("the sample is at fault");
  return statedFactors(file, yaml);
}

describe("statedFactors", () => {
  it("fills in shared provenance where a value says nothing of its own", () => {
    const { factors } = stated(`
shared: { entered: 2026-11-25, source: own-estimate, region: world }
factors:
  pad.speed:
    words: cloth speed
    unit: m/min
    plausible: [1, 150]
    values:
      - { value: 25, region: Italy, note: slow }
      - { value: 20, source: meter }
`);
    expect(factors).toEqual([
      {
        id: "pad.speed",
        path: ["factors", "pad.speed"],
        words: "cloth speed",
        unit: "m/min",
        basis: undefined,
        plausible: [1, 150],
        values: [
          {
            path: ["factors", "pad.speed", "values", 0],
            row: false,
            value: 25,
            spread: undefined,
            provenance: {
              entered: "2026-11-25",
              source: "own-estimate",
              region: "Italy",
              note: "slow",
            },
          },
          {
            path: ["factors", "pad.speed", "values", 1],
            row: false,
            value: 20,
            spread: undefined,
            provenance: { entered: "2026-11-25", source: "meter", region: "world" },
          },
        ],
      },
    ]);
  });

  it("sets tables behind single factors, and places the faults of their rows", () => {
    const { factors, problems } = stated(`
factors:
  grid.here.intensity: { unit: kg/kWh, values: [{ value: 1 }] }
tables:
  - id: grid.*.intensity
    unit: kg/kWh
    columns: [name, value]
    rows:
      - [ITA, 0.3]
      - [ESP]
`);
    expect(factors.map(({ id }) => id)).toEqual(["grid.here.intensity", "grid.ITA.intensity"]);
    expect(problems).toMatchObject([
      { code: "table-row", severity: "refused", file: "grid.yaml", line: 10 },
    ]);
  });
});
