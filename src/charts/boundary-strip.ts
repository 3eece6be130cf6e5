import type { Drawing, DrawingNode } from "./drawing.js";
import { legend } from "./legend.js";
import {
  coordinate,
  element,
  LETTER_SIZE,
  LINE_HEIGHT,
  lineStack,
  sheet,
  SHEET_WIDTH,
  SMALL_SIZE,
  words,
} from "./nodes.js";
import { INK, PALE, type Route, ROUTES, SOFT, WHITE } from "./palette.js";
import type { Box } from "./pattern.js";
import { labelColumn, labelRoom } from "./row-labels.js";
import { cutText, interWidth, type TextMeasure } from "./text-width.js";

/** How a step stands to the boundary of a route. */
export type Standing = "counted" | "not counted" | "not present";

/** A step and how it stands on each route. */
export interface BoundaryStep {
  /** Name of the step. */
  readonly name: string;
  /** On the dye route. */
  readonly dye: Standing;
  /** On the pigment route. */
  readonly pigment: Standing;
}

/** The steps of both routes, in order. */
export interface BoundaryStripData {
  /** Names of the routes as printed. */
  readonly names: Readonly<Record<Route, string>>;
  /** Steps in the order the cloth takes them; one that only one route has stands in it all the same. */
  readonly steps: readonly BoundaryStep[];
}

const STANDINGS: readonly Standing[] = ["counted", "not counted", "not present"];
const NARROWEST = 74;
const WIDEST = 120;
const BETWEEN = 10;

/** How far below the boxes the cloth passes those that its route does not have. */
const BYPASS = 5;

/**
 * Draws the steps of both routes as boxes in order, the same step below itself, with what is counted
 * and what is not present. Outline and words tell them apart, not colour. A line follows the cloth from step
 * to step, and below those that its route does not have. Steps that do not fit into one row go on in
 * the next.
 *
 * @param data - steps
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 */
export function boundaryStrip(
  data: BoundaryStripData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const used = STANDINGS.filter((standing) =>
    data.steps.some((step) => ROUTES.some((route) => step[route] === standing)),
  );
  const key = legend(
    used.map((standing) => ({
      label: standing,
      sign: (x: number, y: number) =>
        outline({ x: x - 8, y: y - 5, width: 16, height: 10 }, standing),
    })),
    0,
    width,
    measure,
  );
  const column = labelColumn(
    ROUTES.map((route) => ({ name: data.names[route], route })),
    measure,
    { width: Math.min(96, labelRoom(width).width), lines: 3 },
  );
  const room = width - 1 - column.width;
  const perRow = Math.max(1, Math.floor((room + BETWEEN) / (NARROWEST + BETWEEN)));
  const rows = Math.max(1, Math.ceil(data.steps.length / perRow));
  const across = Math.max(1, Math.ceil(data.steps.length / rows));
  const broad = Math.min(WIDEST, (room + BETWEEN) / across - BETWEEN);
  const names = data.steps.map(
    ({ name }) => cutText(name, broad - 8, 4, (text) => measure(text, LETTER_SIZE)).lines,
  );
  const height = (Math.max(1, ...names.map((lines) => lines.length)) + 1) * LINE_HEIGHT + 8;
  const boxAt = (place: number, y: number): Box => ({
    x: column.width + place * (broad + BETWEEN),
    y,
    width: broad,
    height,
  });
  const nodes: DrawingNode[] = [...key.nodes];
  let y = key.height;
  for (let row = 0; row < rows; row++) {
    ROUTES.forEach((route, index) => {
      nodes.push(...column.draw(index, y + height / 2));
      const steps = data.steps.slice(row * across, (row + 1) * across);
      steps.forEach((step, place) => {
        nodes.push(...stepBox(boxAt(place, y), step[route], names[row * across + place] ?? []));
      });
      const present = data.steps.map((step) => step[route] !== "not present");
      nodes.push(...flow(present, row * across, steps.length, (place) => boxAt(place, y)));
      y += height + (index === 0 ? BYPASS + 6 : BYPASS + 10);
    });
  }
  return sheet(y - 6, nodes, width);
}

function outline(box: Box, standing: Standing): readonly DrawingNode[] {
  const look = {
    counted: { fill: WHITE, stroke: INK, "stroke-width": 1.5 },
    "not counted": { fill: PALE, stroke: SOFT, "stroke-width": 0.75 },
    "not present": { fill: WHITE, stroke: SOFT, "stroke-dasharray": "3 3" },
  }[standing];
  return [element("rect", { ...box, ...look })];
}

function stepBox(box: Box, standing: Standing, name: readonly string[]): readonly DrawingNode[] {
  const isCounted = standing === "counted";
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const look = { anchor: "middle", fill: isCounted ? INK : SOFT } as const;
  const names = lineStack(x, isCounted ? y : y - LINE_HEIGHT / 2, name, look);
  const below = y + (name.length * LINE_HEIGHT) / 2;
  const said = isCounted ? [] : [words(x, below, standing, { ...look, size: SMALL_SIZE })];
  return [...outline(box, standing), ...names, ...said];
}

// The way of the cloth through one row of boxes: from each step that the route has to the next one.
function flow(
  present: readonly boolean[],
  first: number,
  count: number,
  boxAt: (place: number) => Box,
): readonly DrawingNode[] {
  const has = (place: number): boolean => present[first + place] === true;
  const isAfter = present.slice(0, first).includes(true);
  const goesOn = present.slice(first + count).includes(true);
  const half = BETWEEN / 2;
  let d = "";
  let last: number | undefined = isAfter ? -1 : undefined;
  const lead = (from: number, to: number): void => {
    const [start, end] = [boxAt(from), boxAt(to)];
    const y = start.y + start.height / 2;
    const low = start.y + start.height + BYPASS;
    const [left, right] = [start.x + start.width, end.x];
    const isOpen = from === -1;
    if (to === from + 1) {
      if (!isOpen) d += `M${coordinate(left + 1)},${coordinate(y)}H${coordinate(right - 1)}`;
      return;
    }
    d += isOpen
      ? `M${coordinate(left + BETWEEN)},${coordinate(low)}`
      : `M${coordinate(left + 1)},${coordinate(y)}H${coordinate(left + half)}V${coordinate(low)}`;
    d += `H${coordinate(right - half)}V${coordinate(y)}H${coordinate(right - 1)}`;
  };
  for (let place = 0; place < count; place++) {
    if (!has(place)) continue;
    if (last !== undefined) lead(last, place);
    last = place;
  }
  if (goesOn && last !== undefined) d += onward(boxAt(last), boxAt(count - 1), last === count - 1);
  return d === "" ? [] : [element("path", { d, fill: "none", stroke: SOFT })];
}

// To the end of a row, from where the next one goes on.
function onward(from: Box, end: Box, isEnd: boolean): string {
  const y = from.y + from.height / 2;
  const [left, right] = [from.x + from.width, end.x + end.width];
  const start = `M${coordinate(left + 1)},${coordinate(y)}`;
  if (isEnd) return `${start}H${coordinate(left + BETWEEN - 1)}`;
  const low = coordinate(from.y + from.height + BYPASS);
  return `${start}H${coordinate(left + BETWEEN / 2)}V${low}H${coordinate(right)}`;
}
