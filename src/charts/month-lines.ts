import * as Plot from "@observablehq/plot";
import { roundAxis, ZERO_ONLY } from "./axis-ticks.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { legend } from "./legend.js";
import { markers } from "./markers.js";
import { calendar, monthFoot } from "./months.js";
import { element, LETTER_SIZE, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { formatNumber } from "./number-format.js";
import { type Route, ROUTE_FILLS, ROUTES, SOFT, WHITE } from "./palette.js";
import { type Frame, type Plotted, plotted, upwardAxis, ZERO_LINE } from "./plot-frame.js";
import { drawable, type Ranged, whiskerOf } from "./ranged.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** What one route did in a month. */
export interface RouteMonth extends Ranged {
  /** Lots printed. */
  readonly lots: number;
}

/** One month of both routes; a route without production is absent. */
export interface ProductionMonth {
  /** Month as ISO 8601 has it, such as `2025-07`. */
  readonly month: string;
  /** Dye route. */
  readonly dye?: RouteMonth;
  /** Pigment route. */
  readonly pigment?: RouteMonth;
}

/** A quantity of both routes, month by month. */
export interface MonthLinesData {
  /** Name of the quantity, such as `water withdrawn`. */
  readonly quantity: string;
  /** Unit as printed, such as `L/m²`. */
  readonly unit: string;
  /** Decimals of values. */
  readonly digits: number;
  /** Names of the routes as printed. */
  readonly names: Readonly<Record<Route, string>>;
  /** Months in any order; those left out in between are gaps. */
  readonly months: readonly ProductionMonth[];
}

const HEIGHT = 190;

interface Point extends RouteMonth {
  readonly index: number;
}

/**
 * Draws a quantity of both routes month by month. A line breaks where a route printed nothing; below
 * each month stands how many lots it rests on.
 *
 * @param data - months
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite, or the months span more than ten years
 */
export function monthLines(
  data: MonthLinesData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const months = calendar(data.months.map(({ month }) => month));
  const byMonth = new Map(data.months.map((month) => [month.month, month]));
  const runs = (route: Route): readonly (Point | undefined)[] =>
    months.map((month, index) => {
      const found = byMonth.get(month)?.[route];
      if (found === undefined) return undefined;
      drawable(`picture by month, ${route} in ${month}`, found.value);
      return { ...found, index };
    });
  const points = { dye: runs("dye"), pigment: runs("pigment") };
  const all = [...points.dye, ...points.pigment].filter((point) => point !== undefined);
  const reach = all.flatMap((point) => {
    const whisker = whiskerOf(point);
    return whisker === undefined ? [point.value] : [point.value, whisker.low, whisker.high];
  });
  const low = Math.min(0, ...reach);
  const high = Math.max(0, ...reach) > low ? Math.max(0, ...reach) : low + 1;
  const note = all.some((point) => whiskerOf(point) !== undefined)
    ? "; thin upright: 95\u00a0% interval"
    : "";
  const { ticks, domain } = reach.every((value) => value === 0)
    ? { ticks: ZERO_ONLY, domain: [low, high] as const }
    : roundAxis(low, high, 5);
  const room = isCrowded(points, ...domain) ? 0.1 * (domain[1] - domain[0]) : 0;

  const key = legend(
    ROUTES.map((route) => lineItem(route, data.names[route])),
    0,
    width,
    measure,
  );
  const rows = ROUTES.map((route) => ({
    name: `lots, ${route}`,
    figures: points[route].map((point) =>
      point === undefined ? "–" : formatNumber(point.lots, 0),
    ),
  }));
  const numbers = ticks.values.map((tick) =>
    measure(formatNumber(tick, ticks.digits), LETTER_SIZE),
  );
  const names = rows.map(({ name }) => measure(name, SMALL_SIZE));
  const top = key.height + 34;
  const left = Math.ceil(Math.max(...numbers, ...names)) + 14;
  const frame: Frame = { left, right: width - 16, top, bottom: top + HEIGHT };
  const plot = plotted(
    frame,
    { domain: [-0.5, Math.max(1, months.length) - 0.5] },
    { domain: [domain[0] - room, domain[1]] },
    [
      ...upwardAxis(ticks),
      ...ROUTES.flatMap((route) => [whiskers(points[route]), line(route, points[route])]),
      Plot.ruleY([0], ZERO_LINE),
    ],
  );
  const foot = monthFoot({ months, rows }, plot.x, frame.bottom, frame.left - 8, measure);
  const nodes = [
    ...key.nodes,
    words(0, key.height + 8, `${data.quantity}, ${data.unit}${note}`, {
      fill: SOFT,
    }),
    plot.node,
    ...ROUTES.flatMap((route) => marked(route, points[route], plot)),
    ...values(points, plot, data.digits, measure),
    ...foot.nodes,
  ];
  return sheet(frame.bottom + foot.height, nodes, width);
}

// Where both routes come near zero the lower value has to be printed below the zero line.
function isCrowded(
  points: Readonly<Record<Route, readonly (Point | undefined)[]>>,
  low: number,
  high: number,
): boolean {
  const unit = (high - low) / HEIGHT;
  return points.dye.some((dye, index) => {
    const pigment = points.pigment[index];
    if (dye === undefined || pigment === undefined) return false;
    const lower = dye.value < pigment.value ? dye : pigment;
    const apart = Math.abs(dye.value - pigment.value);
    return apart < 34 * unit && (whiskerOf(lower)?.low ?? lower.value) - low < 20 * unit;
  });
}

function whiskers(points: readonly (Point | undefined)[]): Plot.Markish {
  const shown = points.filter((point) => point !== undefined && whiskerOf(point) !== undefined);
  return Plot.ruleX(shown, { x: "index", y1: "low", y2: "high", stroke: SOFT, strokeWidth: 1 });
}

// An edge in ink keeps the light line in sight on white.
function line(route: Route, points: readonly (Point | undefined)[]): Plot.Markish[] {
  const pens = {
    dye: [
      ["#6b4f00", 3.4],
      [ROUTE_FILLS.dye.colour, 2],
    ],
    pigment: [[ROUTE_FILLS.pigment.colour, 2]],
  } as const;
  return pens[route].map(([stroke, strokeWidth]) =>
    Plot.line(points, {
      x: (_: unknown, index: number) => index,
      y: (point: Point | undefined) => point?.value ?? Number.NaN,
      stroke,
      strokeWidth,
    }),
  );
}

function marked(
  route: Route,
  points: readonly (Point | undefined)[],
  plot: Plotted,
): readonly DrawingNode[] {
  const shown = points.filter((point) => point !== undefined);
  return markers(
    route,
    shown.map(({ index, value }) => ({ x: plot.x(index), y: plot.y(value), radius: 4 })),
  );
}

function lineItem(route: Route, label: string) {
  return {
    label,
    sign: (x: number, y: number): readonly DrawingNode[] => [
      element("line", {
        x1: x - 8,
        x2: x + 8,
        y1: y,
        y2: y,
        stroke: ROUTE_FILLS[route].colour,
        "stroke-width": 2,
      }),
      ...markers(route, [{ x, y, radius: 4 }]),
    ],
  };
}

// In each month the higher value stands above its mark and the lower one below. Where months are too
// narrow for that, only the highest and the lowest of each route are printed.
function values(
  points: Readonly<Record<Route, readonly (Point | undefined)[]>>,
  plot: Plotted,
  digits: number,
  measure: TextMeasure,
): readonly DrawingNode[] {
  const print = (point: Point): string => formatNumber(point.value, digits);
  const pitch = plot.x(1) - plot.x(0);
  const fits = [...points.dye, ...points.pigment].every(
    (point) => point === undefined || measure(print(point), SMALL_SIZE) < pitch - 4,
  );
  return ROUTES.flatMap((route) => {
    const own = points[route].filter((point) => point !== undefined);
    const other = points[route === "dye" ? "pigment" : "dye"];
    const sorted = [...own].sort((a, b) => a.value - b.value);
    const [lowest, highest] = [sorted[0], sorted.at(-1)];
    const shown = fits ? own : own.filter((point) => point === lowest || point === highest);
    return shown.map((point) => {
      const beside = other[point.index];
      const above = fits
        ? beside === undefined || isHigher(route, point, beside)
        : point === highest;
      return value(point, above, beside, plot, print(point));
    });
  });
}

// Of two values alike the dye route's stands above.
function isHigher(route: Route, own: Point, other: Point): boolean {
  return own.value > other.value || (own.value === other.value && route === "dye");
}

function value(
  point: Point,
  above: boolean,
  beside: Point | undefined,
  plot: Plotted,
  text: string,
): DrawingNode {
  const mark = plot.y(point.value);
  const whisker = whiskerOf(point);
  const over = Math.min(mark, plot.y(whisker?.high ?? point.value)) - (whisker ? 8 : 11);
  const under = Math.max(mark, plot.y(whisker?.low ?? point.value)) + (whisker ? 8 : 11);
  const zero = plot.y(0);
  // Clear of the zero line: over the mark where there is room for it, else below the line.
  const crosses = Math.abs(under - zero) < 8 || (mark <= zero && under > zero);
  const isFree = beside === undefined || plot.y(beside.value) < mark - 34;
  const below = !crosses ? under : isFree ? over : Math.max(under, zero + 9);
  return words(plot.x(point.index), above ? over : below, text, {
    anchor: "middle",
    size: SMALL_SIZE,
    halo: WHITE,
  });
}
