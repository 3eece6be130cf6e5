import { InputError } from "../problems/input-error.js";
import type { Drawing, DrawingNode } from "./drawing.js";
import { coordinate, element, sheet, SHEET_WIDTH, words } from "./nodes.js";
import { BAND, GRID, INK, SOFT, WHITE } from "./palette.js";

/** Point of a curve: value, and density to any scale that both curves share. */
export type CurvePoint = readonly [number, number];

/** A spread, as it is drawn. */
export interface SpreadCurveData {
  /** Unit of the values; empty for a bare ratio. */
  readonly unit: string;
  /** Density of the spread in force, values rising; empty for a number without doubt. */
  readonly curve: readonly CurvePoint[];
  /** Density of another spread to compare with, drawn as a broken line; empty when there is none. */
  readonly other: readonly CurvePoint[];
  /** The value as it is stated. */
  readonly value: number;
  /** Ends of the 95 % interval of the spread in force. */
  readonly interval: readonly [number, number];
  /** Lower end, value and upper end as they are to be printed. */
  readonly printed: readonly [string, string, string];
}

const SIDE = 60;
const TOP = 24;
const BASE = 74;
const HEIGHT = 94;

/**
 * Draws a spread as a curve, its 95 % interval filled, with a line at the stated value; and beside it the
 * outline of another spread.
 *
 * @param data - curves, value and interval
 * @returns the picture
 * @throws InputError when a number is not finite, a curve does not rise, or the interval has no order
 */
export function spreadCurve(data: SpreadCurveData): Drawing {
  const { curve, other, value, interval, printed, unit } = data;
  const [low, high] = interval;
  if (!(low <= high) || !Number.isFinite(value)) {
    throw new InputError("picture of a spread", value, "expected a value and an interval in order");
  }
  const all = [...checked(curve), ...checked(other)];
  const from = Math.min(value, low, ...all.map(([at]) => at));
  const to = Math.max(value, high, ...all.map(([at]) => at));
  const top = Math.max(...all.map(([, density]) => density));
  const x = (at: number): number =>
    to > from ? SIDE + ((at - from) / (to - from)) * (SHEET_WIDTH - 2 * SIDE) : SHEET_WIDTH / 2;
  const y = (density: number): number => BASE - (density / top) * (BASE - TOP);
  const path = (points: readonly CurvePoint[]): string =>
    points
      .map(
        ([at, density], i) =>
          `${i === 0 ? "M" : "L"}${coordinate(x(at))},${coordinate(y(density))}`,
      )
      .join("");
  const inside = within(curve, low, high);
  const nodes: DrawingNode[] = [
    element("line", { x1: SIDE, x2: SHEET_WIDTH - SIDE, y1: BASE, y2: BASE, stroke: GRID }),
  ];
  if (inside.length > 0) {
    const filled = `${path([[low, 0], ...inside, [high, 0]])}Z`;
    nodes.push(
      element("path", { d: filled, fill: BAND }),
      element("path", { d: path(curve), fill: "none", stroke: INK }),
    );
  }
  if (other.length > 0) {
    nodes.push(
      element("path", { d: path(other), fill: "none", stroke: SOFT, "stroke-dasharray": "3 3" }),
    );
  }
  nodes.push(
    element("line", {
      x1: x(value),
      x2: x(value),
      y1: TOP - 6,
      y2: BASE,
      stroke: INK,
      "stroke-width": 2,
    }),
    words(x(value), TOP - 14, `${printed[1]} ${unit}`.trim(), {
      anchor: "middle",
      strong: true,
      halo: WHITE,
    }),
  );
  if (high > low) {
    for (const [at, text] of [
      [low, printed[0]],
      [high, printed[2]],
    ] as const) {
      nodes.push(
        element("line", { x1: x(at), x2: x(at), y1: BASE, y2: BASE + 4, stroke: INK }),
        words(x(at), BASE + 12, text, { anchor: "middle", fill: SOFT }),
      );
    }
  }
  return sheet(HEIGHT, nodes);
}

function checked(points: readonly CurvePoint[]): readonly CurvePoint[] {
  points.forEach(([at, density], i) => {
    if (!(
      at > (points[i - 1]?.[0] ?? -Infinity) &&
      density >= 0 &&
      Number.isFinite(at + density)
    )) {
      throw new InputError("picture of a spread", at, "expected finite points whose values rise");
    }
  });
  return points;
}

// The stretch of the curve between two values, cut straight where an end falls between two points.
function within(curve: readonly CurvePoint[], low: number, high: number): readonly CurvePoint[] {
  const at = (value: number): CurvePoint[] => {
    const next = curve.findIndex(([v]) => v >= value);
    const [v1, d1] = curve[next] ?? [NaN, NaN];
    const [v0, d0] = curve[next - 1] ?? [v1, d1];
    const share = v1 > v0 ? (value - v0) / (v1 - v0) : 1;
    return next < 0 ? [] : [[value, d0 + share * (d1 - d0)]];
  };
  return [...at(low), ...curve.filter(([v]) => v > low && v < high), ...at(high)];
}
