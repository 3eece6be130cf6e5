import type { Drawing } from "./drawing.js";
import { SHEET_WIDTH } from "./nodes.js";
import { type Route, ROUTES } from "./palette.js";
import { SCOPE_FILLS } from "./part-fills.js";
import type { Ranged } from "./ranged.js";
import { stackedBars, type StackRow } from "./stacked-bars.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** Scope 2 on one basis, and the total that goes with it. */
export interface ScopeBasis {
  /** Emissions of bought energy on this basis. */
  readonly scope2: number;
  /** Scope 1 and scope 2 on this basis, with its interval. */
  readonly total: Ranged;
}

/** Emissions of one route. */
export interface RouteScopes {
  /** Name of the route as printed. */
  readonly name: string;
  /** Direct emissions, the same on both bases. */
  readonly scope1: number;
  /** Scope 2 from the grid where the site stands. */
  readonly location: ScopeBasis;
  /** Scope 2 from what was contracted. */
  readonly market: ScopeBasis;
}

/** Emissions of both routes by scope. */
export interface ScopeBarsData {
  /** Name of the quantity, such as `CO₂e, gate to gate, partial`. */
  readonly quantity: string;
  /** Unit as printed, such as `g CO₂e/m²`. */
  readonly unit: string;
  /** Decimals of values. */
  readonly digits: number;
  /** The two routes. */
  readonly routes: Readonly<Record<Route, RouteScopes>>;
}

const BASES = ["location", "market"] as const;
const DIRECT = { name: "scope 1", fill: SCOPE_FILLS.direct };
const BOUGHT = { name: "scope 2, on the basis named at the row", fill: SCOPE_FILLS.bought };

/**
 * Draws the emissions of both routes, each as two bars: scope 1 with scope 2 on the location basis,
 * and scope 1 with scope 2 on the market basis. The two bases stand beside each other and are never
 * added up.
 *
 * @param data - emissions by scope
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when scope 1 and 2 of a basis do not add up to its total
 */
export function scopeBars(
  data: ScopeBarsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const rows = ROUTES.flatMap((route) => {
    const { name, scope1, ...bases } = data.routes[route];
    return BASES.map((basis): StackRow => {
      const { scope2, total } = bases[basis];
      return {
        label: { name, note: `${basis} basis`, route },
        segments: [
          { ...DIRECT, value: scope1 },
          { name: "scope 2", fill: BOUGHT.fill, value: scope2 },
        ],
        total,
      };
    });
  });
  return stackedBars(
    {
      where: "picture by scope",
      rows,
      barHeight: 32,
      legend: [DIRECT, BOUGHT],
      axis: `${data.quantity}, ${data.unit}`,
      digits: data.digits,
    },
    measure,
    width,
  );
}
