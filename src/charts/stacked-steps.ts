import type { Drawing } from "./drawing.js";
import { SHEET_WIDTH } from "./nodes.js";
import { type Fill, REST_FILL, type Route, ROUTES } from "./palette.js";
import { stepFills } from "./part-fills.js";
import type { Ranged } from "./ranged.js";
import { type Segment, stackedBars } from "./stacked-bars.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** A quantity of one part on each route. */
export interface RoutePart {
  /** Name of the part. */
  readonly name: string;
  /** Quantity on the dye route; 0 where the route does without. */
  readonly dye: number;
  /** Quantity on the pigment route. */
  readonly pigment: number;
}

/** Name and total of a route. */
export interface RouteTotal {
  /** Name of the route as printed. */
  readonly name: string;
  /** Sum of the parts, with its interval. */
  readonly total: Ranged;
}

/** A quantity of both routes, by step. */
export interface StackedStepsData {
  /** Name of the quantity, such as `water withdrawn`. */
  readonly quantity: string;
  /** Unit as printed, such as `L/m²`. */
  readonly unit: string;
  /** Decimals of values. */
  readonly digits: number;
  /** Steps in reading order; the parts of a route add up to its total. */
  readonly steps: readonly RoutePart[];
  /** The two routes. */
  readonly routes: Readonly<Record<Route, RouteTotal>>;
}

/** Steps below this share of the longer bar on both routes are put together. [-] */
const SMALL = 0.02;

/**
 * Draws a quantity of both routes as bars made of steps, each with the fill that its name has everywhere.
 *
 * Steps that are 0 on both routes are left out. Two or more that stay below 2 % of the longer bar on
 * both routes are put together as `other, small`, last; a step that is larger on one route keeps its
 * name on both, so that the two bars can be compared.
 *
 * @param data - steps and totals
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when the steps of a route do not add up to its total
 */
export function stackedSteps(
  data: StackedStepsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const parts = merged(data);
  const legend = parts.map(({ name, fill }) => ({ name, fill }));
  return stackedBars(
    {
      where: "picture by step",
      rows: ROUTES.map((route) => ({
        label: { name: data.routes[route].name, route },
        segments: parts.map((part): Segment => ({ ...part, value: part[route] })),
        total: data.routes[route].total,
      })),
      barHeight: 42,
      legend,
      axis: `${data.quantity}, ${data.unit}`,
      digits: data.digits,
    },
    measure,
    width,
  );
}

function merged(data: StackedStepsData): readonly (RoutePart & { readonly fill: Fill })[] {
  const used = data.steps.filter(({ dye, pigment }) => dye !== 0 || pigment !== 0);
  const longer = Math.max(...ROUTES.map((route) => Math.abs(data.routes[route].total.value)));
  const isSmall = ({ dye, pigment }: RoutePart): boolean =>
    Math.abs(dye) < SMALL * longer && Math.abs(pigment) < SMALL * longer;
  const small = used.filter(isSmall);
  const named = small.length < 2 ? used : used.filter((step) => !isSmall(step));
  const fills = stepFills(named.map(({ name }) => name));
  const filled = named.map((step, index) => ({ ...step, fill: fills[index] ?? REST_FILL }));
  if (named === used) return filled;
  const sum = (route: Route): number => small.reduce((all, step) => all + step[route], 0);
  return [
    ...filled,
    {
      name: `other, small (${small.length} steps)`,
      dye: sum("dye"),
      pigment: sum("pigment"),
      fill: REST_FILL,
    },
  ];
}
