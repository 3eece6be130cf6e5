import type { Drawing, DrawingNode } from "./drawing.js";
import { legend } from "./legend.js";
import {
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
import { labelColumn } from "./row-labels.js";
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

/**
 * Draws the steps of both routes as boxes in order, the same step below itself, with what is counted
 * and what is not present. Outline and words tell them apart, not colour. Steps that do not fit into
 * one row go on in the next.
 *
 * @param data - steps
 * @param measure - measures text
 * @returns the picture
 */
export function boundaryStrip(data: BoundaryStripData, measure: TextMeasure = interWidth): Drawing {
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
    SHEET_WIDTH,
    measure,
  );
  const column = labelColumn(
    ROUTES.map((route) => ({ name: data.names[route], route })),
    measure,
    { width: 96, lines: 3 },
  );
  const room = SHEET_WIDTH - 1 - column.width;
  const perRow = Math.max(1, Math.floor((room + BETWEEN) / (NARROWEST + BETWEEN)));
  const rows = Math.max(1, Math.ceil(data.steps.length / perRow));
  const across = Math.max(1, Math.ceil(data.steps.length / rows));
  const width = Math.min(WIDEST, (room + BETWEEN) / across - BETWEEN);
  const names = data.steps.map(
    ({ name }) => cutText(name, width - 8, 4, (text) => measure(text, LETTER_SIZE)).lines,
  );
  const height = (Math.max(1, ...names.map((lines) => lines.length)) + 1) * LINE_HEIGHT + 8;
  const nodes: DrawingNode[] = [...key.nodes];
  let y = key.height;
  for (let row = 0; row < rows; row++) {
    ROUTES.forEach((route, index) => {
      nodes.push(...column.draw(index, y + height / 2));
      const steps = data.steps.slice(row * across, (row + 1) * across);
      steps.forEach((step, place) => {
        const box = { x: column.width + place * (width + BETWEEN), y, width, height };
        nodes.push(...stepBox(box, step[route], names[row * across + place] ?? []));
        const goesOn = row * across + place < data.steps.length - 1;
        if (goesOn) nodes.push(...link(box));
      });
      y += height + (index === 0 ? 6 : 14);
    });
  }
  return sheet(y - 6, nodes);
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

function link(box: Box): readonly DrawingNode[] {
  const y = box.y + box.height / 2;
  const x1 = box.x + box.width;
  return [element("line", { x1: x1 + 1, x2: x1 + BETWEEN - 1, y1: y, y2: y, stroke: SOFT })];
}
