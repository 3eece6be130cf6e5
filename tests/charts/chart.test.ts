import { describe, expect, it } from "vitest";
import { type Chart, drawChart, drawNarrow } from "../../src/charts/chart.js";
import { drawingFaults } from "../../src/charts/drawing-rules.js";
import { importBars } from "../../src/charts/import-bars.js";
import { chances, NAMES, totalsOf } from "./sample-data.js";
import { sound } from "./sound.js";

const ROWS = { accepted: 90, corrected: 6, setAside: 4, outside: 0 };

describe("drawChart", () => {
  it("draws what its kind names", () => {
    const drawn = drawChart({ kind: "import-bars", data: ROWS });
    expect(drawn).toEqual(importBars(ROWS));
    expect(drawingFaults(drawn)).toEqual([]);
  });

  it("survives a way through JSON, so that it can be sent elsewhere to be drawn", () => {
    const data = JSON.parse(JSON.stringify(ROWS)) as typeof ROWS;
    expect(drawChart({ kind: "import-bars", data })).toEqual(importBars(ROWS));
  });

  it("complains of what its kind complains of", () => {
    expect(() => drawChart({ kind: "import-bars", data: { ...ROWS, accepted: -1 } })).toThrow(
      thrownBy(() => importBars({ ...ROWS, accepted: -1 })),
    );
  });
});

const STEPS = [
  { name: "pad pre-treatment", dye: 0.2, pigment: 0.2 },
  { name: "wash range", dye: 4.2, pigment: 0 },
];
const SCOPES = {
  scope1: 155,
  location: { scope2: 30, total: { value: 185, low: 150, high: 240 } },
};
const MONTHS = chances(12).map((chance, index) => ({
  month: `2025-${String(index + 1).padStart(2, "0")}`,
  chance,
}));
const CHARTS: readonly Chart[] = [
  {
    kind: "boundary-strip",
    data: {
      names: NAMES,
      steps: ["pad", "dry", "print", "steam", "wash"].map((name, index) => ({
        name,
        dye: "counted",
        pigment: index < 3 ? "counted" : "not present",
      })),
    },
  },
  {
    kind: "stacked-steps",
    data: { quantity: "water", unit: "L/m²", digits: 1, steps: STEPS, routes: totalsOf(STEPS) },
  },
  {
    kind: "carrier-bars",
    data: { quantity: "energy", unit: "kWh", digits: 1, carriers: STEPS, routes: totalsOf(STEPS) },
  },
  {
    kind: "scope-bars",
    data: {
      quantity: "CO₂e, partial, gate to gate",
      unit: "g CO₂e/m²",
      digits: 0,
      routes: {
        dye: { name: NAMES.dye, ...SCOPES, market: SCOPES.location },
        pigment: { name: NAMES.pigment, ...SCOPES, market: SCOPES.location },
      },
    },
  },
  {
    kind: "lot-dots",
    data: {
      quantity: "water withdrawn",
      unit: "L/m²",
      digits: 1,
      names: NAMES,
      classes: ["cotton sateen", "silk habotai"],
      lots: chances(60).map((chance, index) => ({
        fabric: index % 4 === 0 ? "silk habotai" : "cotton sateen",
        route: index % 2 === 0 ? "dye" : "pigment",
        value: 1 + 8 * chance,
        area: 100 + 900 * chance,
      })),
    },
  },
  {
    kind: "month-lines",
    data: {
      quantity: "water withdrawn",
      unit: "L/m²",
      digits: 1,
      names: NAMES,
      months: MONTHS.map(({ month, chance }) => ({
        month,
        dye: { value: 5 + chance, lots: 120 },
        pigment: { value: 1 + chance / 4, lots: 90 },
      })),
    },
  },
  {
    kind: "meter-months",
    data: {
      quantity: "town water",
      unit: "m³",
      months: MONTHS.map(({ month, chance }) => ({
        month,
        metered: 250 + 90 * chance,
        modelled: 240,
      })),
    },
  },
  {
    kind: "saving-distribution",
    data: {
      panels: [
        {
          indicator: "water withdrawn",
          unit: "%",
          digits: 0,
          draws: Float64Array.from(chances(400), (chance) => 70 + 20 * chance),
          median: 80,
          low: 71,
          high: 89,
        },
      ],
    },
  },
  {
    kind: "swing-bars",
    data: {
      saving: "share saved of water withdrawn (84 %)",
      digits: 0,
      factors: [
        {
          factor: "water of the belt washer (printer-1)",
          low: { label: "329 L/h", change: -14 },
          high: { label: "43.8 L/h", change: 7 },
        },
        {
          factor: "fresh water of the whole wash per conditioned cloth",
          low: { label: "5.64 L/kg", change: -1 },
          high: { label: "111 L/kg", change: 4 },
        },
      ],
    },
  },
  {
    kind: "supplier-panels",
    data: {
      quantity: "water withdrawn at the mix and as it stands",
      unit: "L/m²",
      held: [1.2, 6],
      parts: [
        {
          words: "told apart from all others",
          panels: Array.from({ length: 9 }, (_, i) => ({
            name: `Supplier ${i + 1}`,
            value: { median: 2 + i / 4, low: 1.5, high: 6, printed: "2.1" },
            crude: 1.2,
            isHollow: i === 3,
          })),
        },
        {
          words: "no place",
          panels: [{ name: "Supplier Dell", note: "covers 20 %", isHollow: true }],
        },
      ],
    },
  },
  {
    kind: "supplier-rows",
    data: {
      quantity: "water withdrawn at the mix",
      unit: "L/m²",
      rows: [
        {
          name: "Supplier Brook",
          value: 1.7,
          low: 1.5,
          high: 1.9,
          counted: 2.1,
          isHollow: false,
          group: 1,
        },
        {
          name: "Supplier Cliff",
          note: "covers 80 %",
          value: 2.1,
          low: 1.9,
          high: 2.4,
          counted: 2.2,
          isHollow: true,
          group: 1,
        },
        { name: "Supplier Dell", value: 3, low: 1, high: 6, isHollow: true },
      ],
    },
  },
  {
    kind: "slope-lines",
    data: {
      columns: ["as it stands", "at the mix"],
      isPlaces: false,
      note: "water withdrawn, L/m²",
      lines: [
        { name: "Supplier Ash", values: [1.5, 3.5], printed: ["1.5", "3.5"] },
        { name: "Supplier Brook", values: [1.6, 1.7], printed: ["1.6", "1.7"] },
        { name: "Supplier Dell", values: [0.9, null], printed: ["0.9", ""] },
      ],
    },
  },
  {
    kind: "chance-cells",
    data: {
      columns: ["1", "2"],
      across: "place",
      rows: [
        { name: "Supplier Brook", chances: [0.9, 0.1], printed: ["90 %", "10 %"] },
        { name: "Supplier Cliff", chances: [0.1, 0.9], printed: ["10 %", "90 %"] },
      ],
    },
  },
  { kind: "import-bars", data: ROWS },
];

describe("drawNarrow", () => {
  it.each(CHARTS)("draws $kind for a screen held in the hand, and as soundly", (chart) => {
    const narrow = sound(() => drawNarrow(chart) ?? { width: 0, height: 0, children: [] });
    expect(narrow.width).toBe(360);
    expect(drawChart(chart).width).toBe(640);
  });
});

function thrownBy(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    return (error as Error).message;
  }
  throw new Error("nothing was thrown");
}
