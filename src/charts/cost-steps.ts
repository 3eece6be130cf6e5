import * as Plot from "@observablehq/plot";
import { roundAxis } from "./axis-ticks.js";
import type { Drawing } from "./drawing.js";
import { fillItem, legend } from "./legend.js";
import { element, sheet, SHEET_WIDTH, words } from "./nodes.js";
import { formatChange, formatNumber } from "./number-format.js";
import { BAND, fill, INK, SOFT, WHITE } from "./palette.js";
import { patterned } from "./pattern.js";
import { acrossAxis, acrossName, plotted, TICK_ROOM, tickCount } from "./plot-frame.js";
import { drawable } from "./ranged.js";
import { labelColumn, labelRoom } from "./row-labels.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** A step from one cost to another. */
export interface CostStep {
  /** What it is. */
  readonly name: string;
  /** Change of the cost; above 0 it rises. */
  readonly change: number;
}

/** Steps from one cost to another. */
export interface CostStepsData {
  /** What is stepped over, with unit, such as `cost per accepted m², EUR`. */
  readonly cost: string;
  /** Where it starts. */
  readonly from: { readonly name: string; readonly value: number };
  /** Steps in order. */
  readonly steps: readonly CostStep[];
  /** What the end is called. */
  readonly to: string;
  /** Decimals. */
  readonly digits: number;
}

const PITCH = 22;
const BAR = 13;
const WHOLE = fill(SOFT, "plain", WHITE, WHITE);
const RISES = fill(BAND, "falling", INK);
const FALLS = fill(WHITE, "plain", INK);

interface Row {
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly label: string;
  readonly fill: typeof WHOLE;
}

/**
 * Draws how one cost becomes another, each step beginning where the one before ended; what rises and what falls are
 * told apart by pattern and by sign.
 *
 * @param data - start and steps
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when a number is not finite
 */
export function costSteps(
  data: CostStepsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  drawable("picture of cost steps", data.from.value);
  const key = legend(
    [fillItem("cost", WHOLE), fillItem("rises", RISES), fillItem("falls", FALLS)],
    0,
    width,
    measure,
  );
  const rows = rowsOf(data);
  const column = labelColumn(
    rows.map(({ name }) => ({ name })),
    measure,
    labelRoom(width),
  );
  const ends = rows.flatMap(({ low, high }) => [low, high]);
  // Steps are small beside the whole, so the axis begins near the least of them and says so.
  const [least, most] = [Math.min(...ends.filter((end) => end !== 0)), Math.max(...ends)];
  const room = 0.15 * (most - least || Math.abs(most) || 1);
  const cut = least > 0 && least - room > 0 && most - least < 0.6 * most;
  const left = column.width + 6;
  const frame = {
    left,
    right: width - 62,
    top: key.height + 4,
    bottom: key.height + 8 + rows.length * PITCH,
  };
  const axis = roundAxis(cut ? least - room : Math.min(0, least), most, tickCount(frame));
  const start = axis.domain[0];
  const plot = plotted(frame, { domain: axis.domain }, undefined, [
    ...acrossAxis(axis.ticks),
    Plot.ruleX([start], { stroke: SOFT }),
  ]);
  const note = cut ? "; the axis does not begin at 0" : "";
  const name = acrossName(`${data.cost}${note}`, frame, measure);
  const nodes = rows.flatMap((row, i) => {
    const y = frame.top + 4 + (i + 0.5) * PITCH;
    const [x1, x2] = [plot.x(Math.max(start, row.low)), plot.x(row.high)];
    const box = { x: x1, y: y - BAR / 2, width: Math.max(1, x2 - x1), height: BAR };
    return [
      ...column.draw(i, y),
      element("rect", { ...box, fill: row.fill.colour, stroke: INK, "stroke-width": 0.75 }),
      ...patterned(box, row.fill),
      words(x2 + 5, y, row.label),
    ];
  });
  return sheet(
    frame.bottom + TICK_ROOM + name.height,
    [...key.nodes, plot.node, ...nodes, ...name.nodes],
    width,
  );
}

function rowsOf({ from, steps, to, digits }: CostStepsData): readonly Row[] {
  let at = from.value;
  const whole = (name: string, value: number): Row => ({
    name,
    low: 0,
    high: value,
    label: formatNumber(value, digits),
    fill: WHOLE,
  });
  return [
    whole(from.name, at),
    ...steps.map(({ name, change }): Row => {
      drawable(`picture of cost steps, ${name}`, change);
      const next = at + change;
      const row = {
        name,
        low: Math.min(at, next),
        high: Math.max(at, next),
        label: formatChange(change, digits),
        fill: change > 0 ? RISES : FALLS,
      };
      at = next;
      return row;
    }),
    whole(to, at),
  ];
}
