import type {
  Block,
  Cell,
  Drawing,
  DrawingNode,
  Figure,
  FigureTerm,
  ReportDocument,
  Run,
} from "../../../src/report/document.js";

/** Plain text as a run. */
export function text(value: string, style?: "bold" | "italic" | "code"): Run {
  return style ? { kind: "text", text: value, style } : { kind: "text", text: value };
}

/** A number as a run. */
export function number(figure: string, value: string): Run {
  return { kind: "figure-ref", figure, text: value };
}

/** A cell of runs or of plain text. */
export function cell(value: string | Run, options: Omit<Cell, "runs"> = {}): Cell {
  return { runs: [typeof value === "string" ? text(value) : value], ...options };
}

const right = { align: "right" } as const;

/** Texts that try to be something else. */
export const HOSTILE = {
  markup: `<script>alert("x")</script> & 'quoted' </title></style>`,
  turning: "left \u202ethgir\u202c again",
  control: "bell\u0007 and null\u0000",
  long: "Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft",
  foreign: "Łódź, Çorlu, Iași, Αθήνα, Київ, 佛山, العربية",
} as const;

const SHARES = { measured: 0.4267, allocated: 0.2033, modelled: 0.29, default: 0.08 };

function term(
  step: string,
  flow: string,
  share: number,
  rest: Partial<FigureTerm> = {},
): FigureTerm {
  return {
    step,
    route: "reactive, steam and wash",
    flow,
    amount: "conditioned mass",
    sum: 40_312.4,
    unit: "kg",
    rate: "fresh feed of the range",
    median: share * 0.61,
    low: share * 0.52,
    high: share * 0.72,
    share,
    reads: [`${step}.feed @ machine ${step}-1`, "cotton.regain"],
    ...rest,
  };
}

const WATER_TERMS: readonly FigureTerm[] = [
  term("wash-range", "water.process", 0.624),
  term("printer", "water.process", 0.171, {
    amount: "printer hours",
    sum: 1_204.6,
    unit: "h",
    rate: "belt washing",
    reads: ["printer.belt-water @ machine printer-2"],
  }),
  term("steamer", "steam.open", 0.083, { rate: "steam over boiler make-up" }),
  ...Array.from({ length: 11 }, (_, index) => term("pad", "water.process", 0.012 - index * 0.0005)),
  term("boiler", "water.blowdown", 0.0002),
];

function estimate(value: number, low: number, high: number, unit: string, digits: number): Figure {
  return { value, low, high, unit, digits, of: "median", provenance: SHARES };
}

const FIGURES: Record<string, Figure> = {
  lots: { value: 1284, unit: "lots", digits: 0, of: "count" },
  "water.dye": { ...estimate(61.5, 55.2, 68.9, "L/m²", 0), terms: WATER_TERMS },
  "water.pigment": { ...estimate(20.2, 17.1, 24.6, "L/m²", 0), terms: WATER_TERMS.slice(0, 3) },
  "water.difference": { ...estimate(-41.3, -48, -35.1, "L/m²", 0), terms: WATER_TERMS },
  "cod.dye": estimate(38.1, 29.9, 49.2, "g/m²", 0),
  "cod.pigment": estimate(12.7, 9.6, 17.2, "g/m²", 0),
  "cod.difference": estimate(-25.4, -31.8, -19.2, "g/m²", 0),
  "energy.dye": estimate(0.921, 0.81, 1.06, "kWh/m²", 2),
  "energy.pigment": estimate(0.612, 0.52, 0.73, "kWh/m²", 2),
  "energy.difference": estimate(-0.309, -0.41, -0.19, "kWh/m²", 2),
  "electricity.dye": estimate(0.249, 0.21, 0.3, "kWh/m²", 2),
  "electricity.pigment": estimate(0.259, 0.22, 0.31, "kWh/m²", 2),
  "electricity.difference": estimate(0.01, -0.02, 0.04, "kWh/m²", 2),
};

const LOTS = Array.from({ length: 14 }, (_, index) => {
  const value = ((index * 7919) % 1000) / 10 + 4;
  FIGURES[`lot.${index}`] = {
    value,
    low: value * 0.9,
    high: value * 1.12,
    unit: "L/m²",
    digits: 0,
    of: "median",
  };
  FIGURES[`length.${index}`] = {
    value: 100 + ((index * 373) % 900),
    unit: "m",
    digits: 0,
    of: "count",
  };
  return [
    cell(`L-25-${String(index + 1).padStart(4, "0")}`),
    cell(["Albers Home", "Corvane", "Lindqvist & Daughter"][index % 3] ?? ""),
    cell(index % 5 === 4 ? "cotton 60 polyester 40, mercerised" : "cotton"),
    cell(number(`length.${index}`, String(100 + ((index * 373) % 900))), right),
    cell(number(`lot.${index}`, value.toFixed(0)), right),
  ];
});

function row(name: string, id: string, ...printed: readonly string[]): readonly Cell[] {
  const [dye = "", pigment = "", difference = "", interval = "", share = ""] = printed;
  return [
    cell(name, { strong: true }),
    cell(number(`${id}.dye`, dye), right),
    cell(number(`${id}.pigment`, pigment), right),
    cell(number(`${id}.difference`, difference), right),
    cell(interval, right),
    cell(share, right),
  ];
}

function node(
  tag: string,
  attributes: Readonly<Record<string, string | number>> = {},
  ...children: readonly DrawingNode[]
): DrawingNode {
  const written = Object.entries(attributes).map(([name, value]) => [name, String(value)] as const);
  return { tag, attributes: Object.fromEntries(written), children };
}

const STEPS = [
  ["washing", 38.4, 2.9],
  ["printer belt and heads", 10.5, 10.9],
  ["steaming", 6.9, 0],
  ["pad and dry", 3.6, 4.1],
  ["boiler and water works", 2.1, 2.3],
] as const;

const BARS: Drawing = {
  width: 640,
  height: 270,
  children: [
    node(
      "g",
      { "font-size": 11, fill: "#1e2733" },
      ...[0, 10, 20, 30, 40].flatMap((tick) => [
        node("line", {
          x1: 150 + tick * 11,
          x2: 150 + tick * 11,
          y1: 14,
          y2: 232,
          stroke: "#d9dde3",
          "stroke-width": 0.75,
        }),
        node(
          "text",
          { x: 150 + tick * 11, y: 248, "text-anchor": "middle", fill: "#5b6675" },
          String(tick),
        ),
      ]),
      ...STEPS.flatMap(([name, dye, pigment], index) => {
        const top = 20 + index * 43;
        return [
          node("text", { x: 142, y: top + 20, "text-anchor": "end" }, name),
          node("rect", { x: 150, y: top, width: dye * 11, height: 15, fill: "#f2c647" }),
          node("text", { x: 156 + dye * 11, y: top + 11 }, dye.toFixed(1)),
          node("rect", { x: 150, y: top + 16, width: pigment * 11, height: 15, fill: "#2a3f5e" }),
          node("text", { x: 156 + pigment * 11, y: top + 28 }, pigment.toFixed(1)),
        ];
      }),
      node("line", { x1: 150, x2: 150, y1: 14, y2: 232, stroke: "#1e2733" }),
      node(
        "text",
        { x: 590, y: 264, "text-anchor": "end", fill: "#5b6675" },
        "litres per accepted square metre",
      ),
    ),
  ],
};

const BODY: readonly Block[] = [
  {
    kind: "heading",
    level: 1,
    text: "Water and energy of printed lots, January to June 2025",
    id: "title",
  },
  {
    kind: "paragraph",
    tone: "lead",
    runs: [
      text("Printed with pigment and heat, the same "),
      number("lots", "1\u202f284 lots"),
      text(" would have drawn "),
      number("water.difference", "41 litres per square metre"),
      text(" less water than on the route they took, and would have needed "),
      text("about as much electricity", "bold"),
      text("."),
      { kind: "note-ref", note: "interval" },
    ],
  },
  {
    kind: "table",
    id: "t-answer",
    caption: "Table 1. Both routes, per accepted square metre, median and 95 % interval",
    head: [
      cell("Indicator and unit"),
      cell("Dye, steam and wash", right),
      cell("Pigment, heat", right),
      cell("Difference", right),
      cell("95 % interval", right),
      cell("Measured", right),
    ],
    rows: [
      row("Water withdrawn, L", "water", "62", "20", "\u221241", "\u221248 to \u221235", "71 %"),
      row("Effluent load (COD), g", "cod", "38", "13", "\u221225", "\u221232 to \u221219", "12 %"),
      row(
        "Final energy, kWh",
        "energy",
        "0.92",
        "0.61",
        "\u22120.31",
        "\u22120.41 to \u22120.19",
        "44 %",
      ),
      row(
        "Electricity alone, kWh",
        "electricity",
        "0.25",
        "0.26",
        "+0.01",
        "\u22120.02 to +0.04",
        "83 %",
      ),
    ],
  },
  {
    kind: "strip",
    words: "Provenance of the quantities in Table 1, by volume of water",
    shares: SHARES,
  },
  {
    kind: "box",
    title: "What gets worse",
    tone: "plain",
    blocks: [
      {
        kind: "paragraph",
        runs: [
          text("Organic carbon to air rises with the binder. Electricity rises by "),
          number("electricity.difference", "0.01 kWh per square metre"),
          text(", which the data cannot tell from nothing."),
        ],
      },
    ],
  },
  {
    kind: "box",
    title: "Use and limits",
    tone: "caution",
    blocks: [
      {
        kind: "list",
        ordered: false,
        items: [
          [text("For talks with one client about lots of the same cloth and weight.")],
          [text("Not for advertising, and not for comparing print houses.")],
          [
            text("Gas is counted at its net calorific value; see "),
            { kind: "link", text: "the settings", href: "#settings" },
            text("."),
          ],
        ],
      },
    ],
  },
  { kind: "heading", level: 2, text: "Where the water goes", id: "water", newPage: true },
  {
    kind: "paragraph",
    runs: [
      text(
        "The wash range draws most of it: six boxes in counterflow, the last three held at 95 °C while reactive lots pass. On the pigment route the belt of the printer is what is left. Meters that serve several lots were shared by conditioned mass.",
      ),
      { kind: "note-ref", note: "meter" },
    ],
  },
  {
    kind: "figure",
    id: "f-water",
    title: "Figure 1. Water withdrawn by step and route, litres per accepted square metre",
    description:
      "Bars for five steps. Washing takes 38.4 on the dye route and 2.9 on the pigment route.",
    drawing: BARS,
  },
  {
    kind: "table",
    id: "t-water",
    behind: true,
    caption: "Data behind Figure 1",
    head: [cell("Step"), cell("Dye route, L/m²", right), cell("Pigment route, L/m²", right)],
    rows: [
      ...STEPS.map(([name, dye, pigment]) => [
        cell(name),
        cell(dye.toFixed(1), right),
        cell(pigment.toFixed(1), right),
      ]),
      [
        cell("All steps", { strong: true }),
        cell(number("water.dye", "61.5"), { ...right, strong: true }),
        cell(number("water.pigment", "20.2"), { ...right, strong: true }),
      ],
    ],
  },
  { kind: "heading", level: 3, text: "Lot by lot", id: "lots" },
  {
    kind: "table",
    id: "t-lots",
    caption: "Table 2. The first lots of June 2025",
    head: [
      cell("Lot"),
      cell("Client"),
      cell("Fibre"),
      cell("Length, m", right),
      cell("Water, L/m²", right),
    ],
    rows: LOTS,
  },
  { kind: "heading", level: 2, text: "Cost", id: "cost" },
  {
    kind: "figure",
    id: "f-cost",
    title: "Figure 2. Cost by route, euro per metre",
    description: "Not drawn.",
    missing:
      "No tariffs are given. Add them to plant.yaml under utilities.tariffs and run the report again.",
  },
  { kind: "heading", level: 2, text: "Settings and conditions", id: "settings" },
  {
    kind: "list",
    ordered: true,
    items: [
      [
        text("The setting "),
        text("stenter.exhaust-humidity", "code"),
        text(" was "),
        text("not", "italic"),
        text(" logged; it was drawn from the range the mill stated."),
      ],
      [
        text("The method of the meter sheet is "),
        { kind: "link", text: "described elsewhere", href: "https://example.org/meters?a=1&b=2" },
        text("."),
      ],
    ],
  },
  ...Object.values(HOSTILE).map((value): Block => ({ kind: "paragraph", runs: [text(value)] })),
  {
    kind: "table",
    id: "t odd <b>",
    caption: `Table 3. ${HOSTILE.markup}`,
    head: [cell("Text"), cell(HOSTILE.long), cell("Number", right)],
    rows: [
      [cell(HOSTILE.markup), cell(HOSTILE.turning), cell(number("lots", "1\u202f284"), right)],
      [cell("Two columns", { span: 2 }), cell("none", right)],
    ],
  },
  {
    kind: "paragraph",
    tone: "small",
    runs: [
      { kind: "link", text: "not followed", href: "javascript:alert(1)" },
      text(", "),
      { kind: "link", text: "nowhere", href: "#nowhere" },
      text(", "),
      { kind: "link", text: "not kept safe", href: "http://example.org" },
      text(" and "),
      { kind: "note-ref", note: "unknown" },
    ],
  },
  { kind: "heading", level: 2, text: "Notes", id: "notes" },
  {
    kind: "notes",
    notes: [
      {
        id: "interval",
        runs: [text("The interval holds 95 % of ten thousand draws of all settings and factors.")],
      },
      { id: "meter", runs: [text("Meter sheets are kept by the boiler house.")] },
      { id: "unused", runs: [text("A note that nothing refers to.")] },
    ],
  },
];

/** A report of an invented print house with every kind of block and texts that misbehave. */
export const sample: ReportDocument = {
  title: "Water and energy of printed lots, January to June 2025",
  author: "Tarnbeck Print House",
  language: "en-GB",
  date: "2025-07-04",
  footer: "Inputs 3f9a c1d2 77e0 · factors 2025.1 · policy 4 · unreviewed",
  blocks: BODY,
  figures: FIGURES,
};

/** The smallest report around some blocks. */
export function page(blocks: readonly Block[], rest: Partial<ReportDocument> = {}): ReportDocument {
  return { ...sample, blocks, figures: FIGURES, ...rest };
}
