import type { Block, Cell, ReportDocument } from "../../../src/report/document.js";
import { bars } from "./sample-drawing.js";
import { HOSTILE, cell, figure, text } from "./sample-text.js";

const LOREM = [
  "The wash range takes most of the water: six boxes run in counterflow, and the last three are kept at 95 °C while the reactive lots pass.",
  "Pigment lots skip steaming and washing. They need a hotter stenter instead, and the binder brings its own load into the exhaust air.",
  "Where a meter serves several lots its reading was shared in proportion to the conditioned mass of the cloth, and the share is shown as allocated.",
  "Settings that were not logged were drawn from the range the mill stated; the interval given beside each figure holds nineteen draws out of twenty.",
] as const;

function long(rows: number): readonly (readonly Cell[])[] {
  const clients = ["Albers Home", "Corvane", "Lindqvist & Daughter", "North Quay Outfitters"];
  return Array.from({ length: rows }, (_, index) => {
    const value = ((index * 7919) % 1000) / 10 + 4;
    return [
      cell(`L-25-${String(index + 1).padStart(4, "0")}`),
      cell(clients[index % clients.length] ?? ""),
      cell(
        index % 9 === 4
          ? "cotton 60 polyester 40, mercerised, with elastane in the weft"
          : "cotton",
      ),
      figure((((index * 37) % 900) + 100).toLocaleString("en")),
      figure(value.toFixed(1)),
      figure(`${(value * 0.91).toFixed(1)}\u2013${(value * 1.12).toFixed(1)}`),
      figure((((index * 31) % 100) / 100).toFixed(2)),
    ];
  });
}

const BODY: readonly Block[] = [
  { kind: "heading", level: 1, text: "Water and energy of printed lots, June 2025", id: "title" },
  {
    kind: "paragraph",
    tone: "lead",
    runs: [
      text("Pigment with heat fixation would have drawn "),
      { kind: "figure-ref", figure: "water", text: "41.3 litres per kilogram" },
      text(" less water than the route the lots took, and would have used "),
      text("more gas at the stenter", "bold"),
      text("."),
      { kind: "note-ref", note: "interval" },
    ],
  },
  {
    kind: "table",
    id: "t-answer",
    caption: "Table 1. Both routes, per kilogram of accepted cloth, median and 95 % interval",
    widths: [2.2, 1.1, 1.1, 1.3, 1.4, 1],
    head: [
      cell("Indicator and unit"),
      cell("Reactive, steam and wash"),
      cell("Pigment, heat"),
      cell("Difference"),
      cell("95 % interval"),
      cell("Measured share"),
    ],
    rows: [
      row(
        "Water withdrawn, L/kg",
        "61.5",
        "20.2",
        "\u221241.3",
        "\u221248.0 to \u221235.1",
        "71 %",
      ),
      row(
        "Effluent load (COD), g/kg",
        "38.1",
        "12.7",
        "\u221225.4",
        "\u221231.8 to \u221219.2",
        "12 %",
      ),
      row("Final energy, kWh/kg", "4.72", "3.95", "\u22120.77", "\u22121.30 to \u22120.21", "44 %"),
      row("Electricity, kWh/kg", "0.61", "0.66", "+0.05", "\u22120.04 to +0.14", "83 %"),
      row("Stenter gas, kWh/kg", "1.05", "1.64", "+0.59", "+0.31 to +0.88", "83 %", true),
    ],
  },
  {
    kind: "strip",
    words: "Provenance of the quantities in Table 1, by mass of water",
    shares: { measured: 0.4267, allocated: 0.2033, modelled: 0.29, default: 0.08 },
  },
  {
    kind: "box",
    title: "Caution",
    tone: "caution",
    blocks: [
      {
        kind: "paragraph",
        runs: [
          text("An indicative calculation from data supplied by the user. It is "),
          text("not", "italic"),
          text(" legal, financial, engineering or safety advice; a licensed engineer decides."),
        ],
      },
      {
        kind: "list",
        ordered: false,
        items: [
          [text("Gas is counted at its net calorific value.")],
          [text("Hand-feel and rub fastness differ between the routes.")],
        ],
      },
    ],
  },
  { kind: "heading", level: 2, text: "What the lots took", id: "took" },
  paragraph(0, 1),
  { kind: "heading", level: 3, text: "Water by step", id: "steps" },
  {
    kind: "paragraph",
    runs: [
      text(LOREM[2]),
      text(" See "),
      { kind: "link", text: "the lots one by one", href: "#t-lots" },
      text(", the "),
      {
        kind: "link",
        text: "method of the meter sheet",
        href: "https://example.org/meters?a=1&b=2",
      },
      text(" and the setting "),
      text("stenter.exhaust-humidity", "code"),
      text(" in the plant file."),
      { kind: "note-ref", note: "meter" },
    ],
  },
  {
    kind: "figure",
    id: "f-water",
    title: "Figure 1. Water withdrawn by step and route, litres per kilogram of cloth",
    description:
      "Bars for four steps. Washing takes 46.2 on the dye route and 3.1 on the pigment route.",
    drawing: bars,
  },
  {
    kind: "table",
    id: "t-behind",
    behind: true,
    caption: "Data behind Figure 1",
    head: [cell("Step"), cell("Dye route, L/kg"), cell("Pigment route, L/kg"), cell("Note")],
    rows: [
      [cell("washing"), figure("46.2"), figure("3.1"), cell("two readings")],
      [cell("steaming"), figure("7.4"), figure("0.0"), cell("condensate lost")],
      [cell("pad and dry"), figure("2.1"), figure("2.6"), cell("")],
      [cell("All steps", { strong: true, span: 3 }), cell("sums in Table 1", { strong: true })],
    ],
  },
  {
    kind: "list",
    ordered: true,
    items: [
      [
        text(
          "Meters were read at the turn of each shift; readings of the boiler house were taken twice.",
        ),
      ],
      ...Array.from({ length: 10 }, (_, index) => [
        text(`Rule ${index + 2}: `, "bold"),
        text(LOREM[index % LOREM.length] ?? ""),
      ]),
    ],
  },
  {
    kind: "strip",
    words: "Provenance of the quantities lot by lot",
    shares: { measured: 0.12, allocated: 0.6, modelled: 0.275, default: 0.005 },
  },
  {
    kind: "table",
    id: "t-lots",
    caption: "Table 2. Lots of June 2025, in the order they were printed",
    head: [
      cell("Lot"),
      cell("Client"),
      cell("Fibre"),
      cell("Length, m"),
      cell("Water, L/kg"),
      cell("95 % interval"),
      cell("Measured share"),
    ],
    rows: long(104),
  },
  {
    kind: "figure",
    id: "f-cost",
    title: "Figure 2. Cost by route, euro per metre",
    description: "Not drawn.",
    missing:
      "No tariffs are given. Add them to plant.yaml under utilities.tariffs and run the report again.",
  },
  { kind: "heading", level: 2, text: "Odd texts", id: "odd", newPage: true },
  ...Object.values(HOSTILE).map((value): Block => ({ kind: "paragraph", runs: [text(value)] })),
  {
    kind: "table",
    id: "t-odd",
    caption: `Table 3. ${HOSTILE.markup} ${HOSTILE.turning}`,
    head: [cell("Text"), cell(HOSTILE.long.slice(0, 60)), cell("Number")],
    rows: [
      [cell(HOSTILE.long), cell(HOSTILE.emoji), figure("1,234.5")],
      [cell(HOSTILE.control), cell(HOSTILE.foreign), figure("\u2212987.6")],
      [cell(HOSTILE.address), cell(""), figure("11.1")],
    ],
  },
  {
    kind: "paragraph",
    runs: [
      { kind: "link", text: "not followed", href: "javascript:alert(1)" },
      text(" and "),
      { kind: "link", text: "nowhere", href: "#nowhere" },
      text(" and "),
      { kind: "note-ref", note: "unknown" },
    ],
  },
  {
    kind: "box",
    title: "What would help most",
    tone: "plain",
    blocks: [
      paragraph(2, 3),
      {
        kind: "table",
        id: "t-box",
        caption: "Table 4. In a box",
        head: [cell("Reading"), cell("Value")],
        rows: [
          [cell("steam meter of the wash range"), figure("12.0")],
          [cell("gas meter"), figure("7.5")],
        ],
      },
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
      {
        id: "meter",
        runs: [
          text("Meter sheets are kept by the boiler house. "),
          { kind: "link", text: "Scheme", href: "mailto:meters@example.org" },
        ],
      },
      { id: "unused", runs: [text("A note that nothing refers to.")] },
    ],
  },
];

function row(
  name: string,
  ...values: readonly string[] | readonly [...string[], boolean]
): readonly Cell[] {
  const strong = values.at(-1) === true;
  return [
    cell(name, { strong: true }),
    ...values.flatMap((value) => (typeof value === "string" ? [figure(value, { strong })] : [])),
  ];
}

function paragraph(...which: readonly number[]): Block {
  return { kind: "paragraph", runs: [text(which.map((index) => LOREM[index] ?? "").join(" "))] };
}

/** A report with every kind of block, tables over several pages and hostile texts. */
export const sample: ReportDocument = {
  title: "Water and energy of printed lots, June 2025",
  author: "Tarnbeck Print House",
  language: "en-GB",
  date: "2025-07-04",
  footer: "Inputs 3f9a c1d2 77e0 · factors 2025.1 · policy 4 · unreviewed",
  blocks: BODY,
  figures: {},
};
