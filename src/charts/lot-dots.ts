import * as Plot from "@observablehq/plot";
import { hash64 } from "../numbers/digest.js";
import { quantile } from "../numbers/quantiles.js";
import { InputError } from "../problems/input-error.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { type DotAxis, dotAxis } from "./dot-axis.js";
import { legend, type LegendItem } from "./legend.js";
import { type Mark, markers } from "./markers.js";
import { element, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { formatNumber } from "./number-format.js";
import { GRID, INK, type Route, ROUTES, SOFT, WHITE } from "./palette.js";
import { acrossName, type Frame, type Plotted, plotted } from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { labelColumn, labelRoom } from "./row-labels.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** One lot as a dot. */
export interface LotDot {
  /** Class of fabric, one of those listed. */
  readonly fabric: string;
  /** Route it took. */
  readonly route: Route;
  /** Quantity per m². */
  readonly value: number;
  /** Area printed. [m²] */
  readonly area: number;
}

/** Lots of both routes by class of fabric. */
export interface LotDotsData {
  /** Name of the quantity, such as `water withdrawn`. */
  readonly quantity: string;
  /** Unit as printed, such as `L/m²`. */
  readonly unit: string;
  /** Decimals of medians. */
  readonly digits: number;
  /** Names of the routes as printed. */
  readonly names: Readonly<Record<Route, string>>;
  /** Classes of fabric from top to bottom. */
  readonly classes: readonly string[];
  /** The lots. */
  readonly lots: readonly LotDot[];
}

const LARGEST_RADIUS = 6;
const SMALLEST_RADIUS = 2;

/** Below this many lots a lane does not fill its height. */
const FEW_LOTS = 12;

/** How far a dot at 0 may be shifted sideways where 0 stands apart from the axis. */
const SIDEWAYS = 12;

interface Lane {
  readonly fabric: string;
  readonly route: Route;
  readonly y: number;
  readonly lots: readonly (LotDot & { readonly index: number })[];
}

/**
 * Draws lots as dots by class of fabric, the dye route above the pigment route in each class, with a
 * tick at the median of the lots and its value in a column to the right. The axis is logarithmic
 * where the lots span more than two powers of ten; its name says so.
 *
 * Dots are shifted up or down by a hash of their place in the list, so that the same lots always give
 * the same picture.
 *
 * @param data - lots and classes
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite, an area is not above 0, or a class is not listed
 */
export function lotDots(
  data: LotDotsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  data.lots.forEach(checkLot(data.classes));
  const axis = dotAxis(data.lots.map(({ value }) => value));
  const widest = Math.max(0, ...data.lots.map(({ area }) => area));
  const key = legend(
    [
      ...ROUTES.map((route) => routeItem(route, data.names[route])),
      ...sizeItems(widest),
      TICK_ITEM,
    ],
    0,
    width,
    measure,
  );
  const top = key.height + 20;
  const pitch = Math.min(64, Math.max(34, 420 / Math.max(1, data.classes.length)));
  const lanes = lanesOf(data, top, pitch);
  const notes = lanes.map(({ lots }) => note(lots, data.digits));
  const column = labelColumn(
    data.classes.map((name) => ({ name })),
    measure,
    { ...labelRoom(width), lines: 2 },
  );
  const noteRoom = Math.max(
    measure(HEAD, SMALL_SIZE),
    ...notes.map((text) => measure(text, SMALL_SIZE)),
  );
  const frame: Frame = {
    left: column.width + 6,
    right: width - Math.ceil(noteRoom) - 15,
    top,
    bottom: top + data.classes.length * pitch,
  };
  const scale = { domain: axis.domain, type: axis.isLog ? ("log" as const) : ("linear" as const) };
  const plot = plotted(frame, scale, undefined, [
    Plot.gridX(axis.ticks, { stroke: GRID, strokeOpacity: 1, strokeWidth: 0.75 }),
    Plot.axisX(axis.ticks, {
      tickSize: 0,
      tickPadding: 6,
      label: null,
      fill: SOFT,
      tickFormat: axis.print,
    }),
    Plot.ruleY(
      data.classes.map((_, index) => top + index * pitch),
      { stroke: GRID, strokeWidth: 0.75 },
    ),
    ...(axis.breakAt === undefined
      ? []
      : [Plot.ruleX([axis.breakAt], { stroke: SOFT, strokeDasharray: "2 3" })]),
  ]);
  const name = acrossName(`${data.quantity}, ${data.unit}${axis.note}`, frame, measure);
  const spread = pitch / 4 - 5;
  const ticks = lanes.map((lane) => ({ lane, nodes: tick(lane, axis, plot, pitch / 4 - 1) }));
  const nodes = [
    ...key.nodes,
    words(width - 1, key.height + 8, HEAD, { anchor: "end", size: SMALL_SIZE, fill: SOFT }),
    plot.node,
    ...data.classes.flatMap((_, index) => column.draw(index, top + (index + 0.5) * pitch)),
    // Of few dots one would be hidden by the tick, so there they lie over it.
    ...ticks.filter(({ lane }) => isSparse(lane)).flatMap(({ nodes: low }) => low),
    ...ROUTES.flatMap((route) =>
      markers(
        route,
        lanes
          .filter((lane) => lane.route === route)
          .flatMap((lane) => dots(lane, axis, plot, spread, widest)),
      ),
    ),
    ...ticks.filter(({ lane }) => !isSparse(lane)).flatMap(({ nodes: over }) => over),
    ...lanes.map((lane, index) =>
      words(width - 1, lane.y, notes[index] ?? "", { anchor: "end", size: SMALL_SIZE }),
    ),
    ...name.nodes,
  ];
  return sheet(frame.bottom + 20 + name.height, nodes, width);
}

const HEAD = "median, lots";

const TICK_ITEM: LegendItem = {
  label: "median of the lots",
  sign: (x, y) => medianTick(x, y, 6),
};

function checkLot(classes: readonly string[]): (lot: LotDot) => void {
  const known = new Set(classes);
  return ({ fabric, value, area }) => {
    if (!known.has(fabric)) {
      throw new Error(
        `a lot has the fabric class "${fabric}"; expected one of ${classes.join(", ")}`,
      );
    }
    drawable(`picture of lots, ${fabric}`, value);
    if (!(area > 0 && area < Infinity)) {
      throw new InputError(`picture of lots, area of ${fabric}`, area, "expected m² above 0");
    }
  };
}

function lanesOf(data: LotDotsData, top: number, pitch: number): readonly Lane[] {
  const lots = data.lots.map((lot, index) => ({ ...lot, index }));
  return data.classes.flatMap((fabric, row) =>
    ROUTES.map((route, half) => ({
      fabric,
      route,
      y: top + (row + 0.25 + half * 0.5) * pitch,
      lots: lots.filter((lot) => lot.fabric === fabric && lot.route === route),
    })),
  );
}

function dots(
  lane: Lane,
  axis: DotAxis,
  plot: Plotted,
  spread: number,
  widest: number,
): readonly Mark[] {
  // Few lots stay near their line.
  const reach = spread * Math.min(1, lane.lots.length / FEW_LOTS);
  return [...lane.lots]
    .sort((a, b) => b.area - a.area || a.index - b.index)
    .map(({ value, area, index }) => {
      const [up, side] = hash64(String(index)).map((hash) => (2 * hash) / 2 ** 32 - 1);
      const isApart = value === 0 && axis.breakAt !== undefined;
      return {
        x: plot.x(axis.place(value)) + (isApart ? SIDEWAYS * (side ?? 0) : 0),
        y: lane.y + reach * (up ?? 0),
        radius: radiusOf(area, widest),
      };
    });
}

// The area of a dot goes with the area printed.
function radiusOf(area: number, widest: number): number {
  return Math.max(SMALLEST_RADIUS, LARGEST_RADIUS * Math.sqrt(area / widest));
}

function isSparse({ lots }: Lane): boolean {
  return lots.length < FEW_LOTS;
}

function tick(lane: Lane, axis: DotAxis, plot: Plotted, half: number): readonly DrawingNode[] {
  // A single lot is its own median; a tick would hide it.
  if (lane.lots.length < 2) return [];
  return medianTick(plot.x(axis.place(medianOf(lane.lots))), lane.y, half);
}

function medianTick(x: number, y: number, half: number): readonly DrawingNode[] {
  const at = { x1: x, x2: x, y1: y - half, y2: y + half };
  return [
    element("line", { ...at, stroke: WHITE, "stroke-width": 4.5 }),
    element("line", { ...at, stroke: INK, "stroke-width": 2 }),
  ];
}

function medianOf(lots: readonly LotDot[]): number {
  return quantile(
    Float64Array.from(lots, ({ value }) => value),
    0.5,
  );
}

function note(lots: readonly LotDot[], digits: number): string {
  if (lots.length === 0) return "no lots";
  const count = `${formatNumber(lots.length, 0)} ${lots.length === 1 ? "lot" : "lots"}`;
  return `${formatNumber(medianOf(lots), digits)}, ${count}`;
}

function routeItem(route: Route, label: string): LegendItem {
  return { label, sign: (x, y) => markers(route, [{ x, y, radius: 4.5 }]) };
}

// Two round areas, the larger one at most the largest lot.
function sizeItems(widest: number): readonly LegendItem[] {
  if (!(widest > 0)) return [];
  const power = 10 ** Math.floor(Math.log10(widest));
  const large = power * ([5, 2, 1].find((lead) => lead * power <= widest) ?? 1);
  return [large / 10, large].map((area) => ({
    label: `${formatNumber(area, Math.max(0, -Math.floor(Math.log10(area))))} m² printed`,
    sign: (x: number, y: number) => [
      element("circle", { cx: x, cy: y, r: radiusOf(area, widest), fill: "none", stroke: INK }),
    ],
  }));
}
