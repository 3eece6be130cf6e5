/**
 * Maps of the share saved over two settings: what the wash takes against what the exhaust of curing carries off,
 * and the grid against the fuel.
 */

import type { MapSide } from "../../charts/two-way-map.js";
import { type MapAsked, type Side, type TwoWayMap, twoWayMaps } from "../../compare/two-way.js";
import { valueInForce } from "../../factors/in-force.js";
import { medianOf } from "../../numbers/distributions.js";
import type { Leaf } from "../../numbers/quantity.js";
import type { Block } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { formatPercent } from "../format.js";
import type { ReportDesk } from "./desk.js";
import { leafUnit, valueText } from "./units.js";

/** Every how manyth point of a map stands in the table behind it. */
const EVERY = 5;

/** g/kWh of 1 kg/TJ. */
const GRAMS_PER_KWH = 0.0036;

/** What the marks of fuels stand for. */
const MARKS =
  " Fuels stand at the carbon dioxide of their factors, `millrace factors fuel`; wood stands at nothing, for its carbon dioxide is biogenic and told apart.";

/** Names that are set in capitals. */
const CAPITALS: Readonly<Record<string, string>> = { lpg: "LPG" };

/**
 * Both maps.
 *
 * @param desk - the report
 * @param areas - accepted area of dye over that of pigment
 * @returns figures with their tables; a gap where the mill lacks one of the two settings
 */
export function mapBlocks(desk: ReportDesk, areas: number): readonly Block[] {
  const { account, factors } = desk.input;
  const intensities = valuesOf(desk, /^grid\..+\.intensity$/);
  const fuels = valuesOf(desk, /^fuel\..+\.co2$/);
  const asked: readonly MapAsked[] = [
    {
      id: "energy",
      across: { factors: [/^wash-range\.(fresh-water|litres-per-bath|flow)$/], range: around },
      up: {
        factors: [
          /^stenter-cure\.exhaust-humidity$/,
          /^stenter-cure\.exhaust-flow$/,
          /^(oven|hot-flue)\.exhaust-(humidity|flow)$/,
          /^stenter-dry\.exhaust-humidity$/,
        ],
        range: around,
      },
    },
    {
      id: "co2-location",
      across: { factors: [/^grid\..+\.intensity$/], range: fromNothing(intensities) },
      up: { factors: [/^fuel\..+\.co2$/], range: fromNothing(fuels) },
    },
  ];
  const [wash, grid] = twoWayMaps(account.program, factors, asked, areas);
  return [
    ...(wash === undefined
      ? [
          desk.gap(
            "map-wash-exhaust",
            "Share saved of final energy over wash water and exhaust air",
            "The mill has no wash or no exhaust of curing that moves its energy, so there is no map.",
          ),
        ]
      : mapOf(desk, wash, "map-wash-exhaust", "final energy", { across: plain, up: plain })),
    ...(grid === undefined
      ? [
          desk.gap(
            "map-grid-fuel",
            "Share saved of CO₂e, location-based, over the grid and the fuel",
            "The mill takes no electricity from a grid or burns no fuel, so there is no map.",
          ),
        ]
      : mapOf(desk, grid, "map-grid-fuel", "CO₂e, location-based", {
          across: gridSide,
          up: (side) => fuelSide(side, fuels),
        })),
  ];
}

// A quarter to three times today's, as far as that is plausible.
function around(today: number, [low, high]: readonly [number, number]): readonly [number, number] {
  return [Math.max(low, today / 4), Math.min(high, 3 * today)];
}

function fromNothing(
  values: readonly (readonly [string, number])[],
): (today: number) => readonly [number, number] {
  return (today) => [0, 1.05 * Math.max(today, ...values.map(([, value]) => value))];
}

// Values in force of all factors of a kind, by the middle part of their ids.
function valuesOf(desk: ReportDesk, kind: RegExp): readonly (readonly [string, number])[] {
  const { factors, date, days } = desk.input;
  return [...factors.factors].flatMap(([id, factor]) => {
    const value = kind.test(id) ? valueInForce(factor, days[1].slice(0, 7), date) : undefined;
    return value === undefined
      ? []
      : [[id.split(".").slice(1, -1).join("."), medianOf(value.value.spread)] as const];
  });
}

function plain({ turned: { leaf, today }, range: [low, high] }: Side): MapSide {
  const unit = leafUnit(leaf);
  return { name: unit === "1" ? leaf.words : `${leaf.words}, ${unit}`, low, high, today };
}

// In grams, as the other side is.
function gridSide({ turned: { leaf, today }, range: [low, high] }: Side): MapSide {
  const name = `${leaf.words}, g CO₂e/kWh`;
  return { name, low: 1000 * low, high: 1000 * high, today: 1000 * today };
}

// Wood stands at nothing: its carbon dioxide is told apart from that of the other fuels.
function fuelSide(
  { turned: { today }, range: [low, high] }: Side,
  fuels: readonly (readonly [string, number])[],
): MapSide {
  return {
    name: "CO₂ of the fuel burnt, g/kWh of net calorific value",
    low: low * GRAMS_PER_KWH,
    high: high * GRAMS_PER_KWH,
    today: today * GRAMS_PER_KWH,
    marks: fuels.map(([name, value]) => ({
      label: CAPITALS[name] ?? name.replaceAll("-", " "),
      value: name === "wood" ? 0 : value * GRAMS_PER_KWH,
    })),
  };
}

function plainText(value: number): string {
  return value === 0 ? "0" : valueText(value, "1");
}

function mapOf(
  desk: ReportDesk,
  map: TwoWayMap,
  id: string,
  quantity: string,
  sides: Readonly<Record<"across" | "up", (side: Side) => MapSide>>,
): readonly Block[] {
  const { rows, today } = map;
  if (!Number.isFinite(today)) return [];
  const [across, up] = [sides.across(map.across), sides.up(map.up)];
  const leaves: readonly Leaf[] = [map.across.turned.leaf, map.up.turned.leaf];
  const kept = rows[0]?.flatMap((_, i) => (i % EVERY === 0 ? [i] : [])) ?? [];
  const at = ({ low, high }: MapSide, i: number, of: number): string =>
    plainText(low + ((high - low) * i) / (of - 1));
  return [
    desk.figure(
      id,
      `Share saved of ${quantity}, % of the dye route, over two settings at once`,
      `Bands of the share saved over ${leaves.map(({ words }) => words).join(" and ")}, all else at its median; a ring marks today’s values (${formatPercent(today)} there) and a heavy line, where there is one, nothing saved.`,
      {
        kind: "two-way-map",
        data: {
          quantity,
          across,
          up,
          rows: rows.map((row) => row.map((one) => (Number.isFinite(one) ? 100 * one : null))),
          today: 100 * today,
        },
      },
    ),
    {
      kind: "table",
      id: `${id}-table`,
      caption: `Share saved of ${quantity}, all else at its median. Across: ${across.name}. Down: ${up.name}.`,
      behind: true,
      head: [
        textCell("down, across"),
        ...kept.map((i) => ({
          ...textCell(at(across, i, rows[0]?.length ?? 2)),
          align: "right" as const,
        })),
      ],
      rows: rows.flatMap((row, j) =>
        j % EVERY === 0
          ? [
              [
                textCell(at(up, j, rows.length), true),
                ...kept.map((i) => {
                  const value = row[i] ?? NaN;
                  return numberCell(Number.isFinite(value) ? formatPercent(value) : "–");
                }),
              ],
            ]
          : [],
      ),
    },
    {
      kind: "paragraph",
      tone: "small",
      runs: [
        ...leaves.flatMap((leaf, i) => [
          { kind: "text" as const, text: i === 0 ? "Turned here: " : " and " },
          { kind: "text" as const, text: leaf.common ?? leaf.id, style: "code" as const },
        ]),
        { kind: "text" as const, text: `.${up.marks === undefined ? "" : MARKS}` },
      ],
    },
  ];
}
