import type { Drawing } from "./drawing.js";
import { SHEET_WIDTH } from "./nodes.js";
import { REST_FILL, type Route, ROUTES } from "./palette.js";
import { carrierFills } from "./part-fills.js";
import { type Segment, stackedBars } from "./stacked-bars.js";
import type { RoutePart, RouteTotal } from "./stacked-steps.js";
import { interWidth, type TextMeasure } from "./text-width.js";

/** Final energy of both routes, by carrier. */
export interface CarrierBarsData {
  /** Name of the quantity, such as `final energy`. */
  readonly quantity: string;
  /** Unit as printed, such as `kWh/m²`. */
  readonly unit: string;
  /** Decimals of values. */
  readonly digits: number;
  /** Carriers in reading order; those of a route add up to its total. */
  readonly carriers: readonly RoutePart[];
  /** The two routes. */
  readonly routes: Readonly<Record<Route, RouteTotal>>;
}

/**
 * Draws the energy of both routes as bars made of carriers. Carriers that are 0 on both routes are
 * left out; none is put together with another, however small.
 *
 * @param data - carriers and totals
 * @param measure - measures text
 * @param width - width of the sheet
 * @returns the picture
 * @throws InputError when the carriers of a route do not add up to its total
 */
export function carrierBars(
  data: CarrierBarsData,
  measure: TextMeasure = interWidth,
  width: number = SHEET_WIDTH,
): Drawing {
  const used = data.carriers.filter(({ dye, pigment }) => dye !== 0 || pigment !== 0);
  const fills = carrierFills(used.map(({ name }) => name));
  const parts = used.map((carrier, index) => ({ ...carrier, fill: fills[index] ?? REST_FILL }));
  return stackedBars(
    {
      where: "picture by carrier",
      rows: ROUTES.map((route) => ({
        label: { name: data.routes[route].name, route },
        segments: parts.map((part): Segment => ({ ...part, value: part[route] })),
        total: data.routes[route].total,
      })),
      barHeight: 42,
      legend: parts,
      axis: `${data.quantity}, ${data.unit}`,
      digits: data.digits,
    },
    measure,
    width,
  );
}
