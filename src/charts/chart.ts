/**
 * Pictures as data: which kind, and what it shows. They are drawn where they are needed, so that putting a
 * report together does not wait for the drawing.
 */

import { type BoundaryStripData, boundaryStrip } from "./boundary-strip.js";
import { type CarrierBarsData, carrierBars } from "./carrier-bars.js";
import type { Drawing } from "./drawing.js";
import { type ImportBarsData, importBars } from "./import-bars.js";
import { type LotDotsData, lotDots } from "./lot-dots.js";
import { type MeterMonthsData, meterMonths } from "./meter-months.js";
import { type MonthLinesData, monthLines } from "./month-lines.js";
import { type SavingDistributionData, savingDistribution } from "./saving-distribution.js";
import { type ScopeBarsData, scopeBars } from "./scope-bars.js";
import { type SpreadStripData, spreadStrip } from "./spread-strip.js";
import { type StackedStepsData, stackedSteps } from "./stacked-steps.js";
import { type SwingBarsData, swingBars } from "./swing-bars.js";

/** What each kind of chart shows. */
export interface ChartData {
  /** What is in and out of the count. */
  readonly "boundary-strip": BoundaryStripData;
  /** Carriers of both arms. */
  readonly "carrier-bars": CarrierBarsData;
  /** Rows read and what became of them. */
  readonly "import-bars": ImportBarsData;
  /** Lots as dots. */
  readonly "lot-dots": LotDotsData;
  /** Meters beside the model. */
  readonly "meter-months": MeterMonthsData;
  /** Month by month. */
  readonly "month-lines": MonthLinesData;
  /** Draws of savings. */
  readonly "saving-distribution": SavingDistributionData;
  /** CO2e by scope. */
  readonly "scope-bars": ScopeBarsData;
  /** A spread. */
  readonly "spread-strip": SpreadStripData;
  /** Steps of both arms. */
  readonly "stacked-steps": StackedStepsData;
  /** One-at-a-time swings. */
  readonly "swing-bars": SwingBarsData;
}

/** A chart of one kind. */
interface ChartOf<K extends keyof ChartData> {
  /** The kind. */
  readonly kind: K;
  /** What it shows. */
  readonly data: ChartData[K];
}

/** A chart to be drawn. */
export type Chart = { readonly [K in keyof ChartData]: ChartOf<K> }[keyof ChartData];

const DRAWN: { readonly [K in keyof ChartData]: (data: ChartData[K]) => Drawing } = {
  "boundary-strip": (data) => boundaryStrip(data),
  "carrier-bars": (data) => carrierBars(data),
  "import-bars": (data) => importBars(data),
  "lot-dots": (data) => lotDots(data),
  "meter-months": (data) => meterMonths(data),
  "month-lines": (data) => monthLines(data),
  "saving-distribution": (data) => savingDistribution(data),
  "scope-bars": (data) => scopeBars(data),
  "spread-strip": (data) => spreadStrip(data),
  "stacked-steps": (data) => stackedSteps(data),
  "swing-bars": (data) => swingBars(data),
};

/**
 * Draws a chart.
 *
 * @param chart - kind and data
 * @returns the picture
 * @throws Error when the data cannot be drawn
 */
export function drawChart<K extends keyof ChartData>(chart: ChartOf<K>): Drawing {
  return DRAWN[chart.kind](chart.data);
}
