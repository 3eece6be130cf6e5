import * as Plot from "@observablehq/plot";
import { axisTicks } from "./axis-ticks.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { legend } from "./legend.js";
import { markers } from "./markers.js";
import { calendar, monthFoot } from "./months.js";
import { element, LETTER_SIZE, sheet, SHEET_WIDTH, SMALL_SIZE, words } from "./nodes.js";
import { formatNumber } from "./number-format.js";
import { INK, type Route, ROUTE_FILLS, ROUTES, SOFT, WHITE } from "./palette.js";
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
 * @returns the picture
 * @throws InputError when a number is not finite, or the months span more than ten years
 */
export function monthLines(data: MonthLinesData, measure: TextMeasure = interWidth): Drawing {
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
  const ticks = axisTicks(low, high, 5);

  const key = legend(
    ROUTES.map((route) => lineItem(route, data.names[route])),
    0,
    SHEET_WIDTH,
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
  const frame: Frame = { left, right: SHEET_WIDTH - 16, top, bottom: top + HEIGHT };
  const plot = plotted(
    frame,
    { domain: [-0.5, Math.max(1, months.length) - 0.5] },
    { domain: [low, high] },
    [
      ...upwardAxis(ticks),
      ...ROUTES.flatMap((route) => [whiskers(points[route]), line(route, points[route])]),
      Plot.ruleY([0], ZERO_LINE),
    ],
  );
  const foot = monthFoot({ months, rows }, plot.x, frame.bottom, frame.left - 8, measure);
  return sheet(frame.bottom + foot.height, [
    ...key.nodes,
    words(0, key.height + 8, `${data.quantity}, ${data.unit}; thin upright: 95 % interval`, {
      fill: SOFT,
    }),
    plot.node,
    ...ROUTES.flatMap((route) => marked(route, points[route], plot)),
    ...values(points, plot, data.digits, measure),
    ...foot.nodes,
  ]);
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
  const pitch = plot.x(1) - plot.x(0);
  return ROUTES.flatMap((route) => {
    const own = points[route].filter((point) => point !== undefined);
    const fits = own.every(
      ({ value }) => measure(formatNumber(value, digits), SMALL_SIZE) < pitch - 4,
    );
    const sorted = [...own].sort((a, b) => a.value - b.value);
    const shown = fits
      ? own
      : [...new Set([sorted[0], sorted.at(-1)])].filter((p) => p !== undefined);
    return shown.map((point) => {
      const other = points[route === "dye" ? "pigment" : "dye"][point.index];
      const isUpper = other === undefined || point.value >= other.value;
      const whisker = whiskerOf(point);
      const edge = isUpper ? (whisker?.high ?? point.value) : (whisker?.low ?? point.value);
      const from = isUpper
        ? Math.min(plot.y(edge), plot.y(point.value) - 4)
        : Math.max(plot.y(edge), plot.y(point.value) + 4);
      return words(
        plot.x(point.index),
        from + (isUpper ? -8 : 8),
        formatNumber(point.value, digits),
        {
          anchor: "middle",
          size: SMALL_SIZE,
          fill: INK,
          halo: WHITE,
        },
      );
    });
  });
}
