/**
 * Pictures as data: which kind, and what it shows. They are drawn where they are needed, so that putting a
 * report together does not wait for the drawing.
 */

import { type BoundaryStripData, boundaryStrip } from "./boundary-strip.js";
import { type CarrierBarsData, carrierBars } from "./carrier-bars.js";
import { type ChanceCellsData, chanceCells } from "./chance-cells.js";
import type { Drawing } from "./drawing.js";
import { type ImportBarsData, importBars } from "./import-bars.js";
import { type LotDotsData, lotDots } from "./lot-dots.js";
import { type MeterMonthsData, meterMonths } from "./meter-months.js";
import { type MonthLinesData, monthLines } from "./month-lines.js";
import { NARROW_WIDTH, SHEET_WIDTH } from "./nodes.js";
import { type SavingDistributionData, savingDistribution } from "./saving-distribution.js";
import { type ScopeBarsData, scopeBars } from "./scope-bars.js";
import { type SlopeLinesData, slopeLines } from "./slope-lines.js";
import { type SpreadCurveData, spreadCurve } from "./spread-curve.js";
import { type StackedStepsData, stackedSteps } from "./stacked-steps.js";
import { type SupplierPanelsData, supplierPanels } from "./supplier-panels.js";
import { type SupplierRowsData, supplierRows } from "./supplier-rows.js";
import { type SwingBarsData, swingBars } from "./swing-bars.js";
import { type CashBandData, cashBand } from "./cash-band.js";
import { type CostStepsData, costSteps } from "./cost-steps.js";
import { type WorthLineData, worthLine } from "./worth-line.js";
import { type TurnRowsData, turnRows } from "./turn-rows.js";
import { type MonthLoadData, monthLoad } from "./month-load.js";
import { type TimeBoxesData, timeBoxes } from "./time-boxes.js";
import { type TwoWayMapData, twoWayMap } from "./two-way-map.js";

/** What each kind of chart shows. */
export interface ChartData {
  /** What is in and out of the count. */
  readonly "boundary-strip": BoundaryStripData;
  /** Carriers of both arms. */
  readonly "carrier-bars": CarrierBarsData;
  /** Chances of places. */
  readonly "chance-cells": ChanceCellsData;
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
  /** Values or places under several heads. */
  readonly "slope-lines": SlopeLinesData;
  /** A spread. */
  readonly "spread-curve": SpreadCurveData;
  /** Steps of both arms. */
  readonly "stacked-steps": StackedStepsData;
  /** Many suppliers, a small panel each. */
  readonly "supplier-panels": SupplierPanelsData;
  /** Suppliers at one mix. */
  readonly "supplier-rows": SupplierRowsData;
  /** One-at-a-time swings. */
  readonly "swing-bars": SwingBarsData;
  /** Discounted money over the years. */
  readonly "cash-band": CashBandData;
  /** Steps from one cost to another. */
  readonly "cost-steps": CostStepsData;
  /** Lines of equal worth over two drivers. */
  readonly "worth-line": WorthLineData;
  /** How far drivers are from turning a sign. */
  readonly "turn-rows": TurnRowsData;
  /** What a machine is asked for, month by month. */
  readonly "month-load": MonthLoadData;
  /** How long lots take. */
  readonly "time-boxes": TimeBoxesData;
  /** A share saved over two settings. */
  readonly "two-way-map": TwoWayMapData;
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

const DRAWN: {
  readonly [K in keyof ChartData]: (data: ChartData[K], width: number) => Drawing;
} = {
  "boundary-strip": (data, width) => boundaryStrip(data, undefined, width),
  "carrier-bars": (data, width) => carrierBars(data, undefined, width),
  "chance-cells": (data, width) => chanceCells(data, undefined, width),
  "import-bars": (data, width) => importBars(data, undefined, width),
  "lot-dots": (data, width) => lotDots(data, undefined, width),
  "meter-months": (data, width) => meterMonths(data, undefined, width),
  "month-lines": (data, width) => monthLines(data, undefined, width),
  "saving-distribution": (data, width) => savingDistribution(data, undefined, width),
  "scope-bars": (data, width) => scopeBars(data, undefined, width),
  "slope-lines": (data, width) => slopeLines(data, undefined, width),
  "spread-curve": (data) => spreadCurve(data),
  "stacked-steps": (data, width) => stackedSteps(data, undefined, width),
  "supplier-panels": (data, width) => supplierPanels(data, undefined, width),
  "supplier-rows": (data, width) => supplierRows(data, undefined, width),
  "swing-bars": (data, width) => swingBars(data, undefined, width),
  "cash-band": (data, width) => cashBand(data, undefined, width),
  "cost-steps": (data, width) => costSteps(data, undefined, width),
  "worth-line": (data, width) => worthLine(data, undefined, width),
  "turn-rows": (data, width) => turnRows(data, undefined, width),
  "month-load": (data, width) => monthLoad(data, undefined, width),
  "time-boxes": (data, width) => timeBoxes(data, undefined, width),
  "two-way-map": (data, width) => twoWayMap(data, undefined, width),
};

/**
 * Draws a chart.
 *
 * @param chart - kind and data
 * @param width - width of the sheet
 * @returns the picture
 * @throws Error when the data cannot be drawn
 */
export function drawChart<K extends keyof ChartData>(
  chart: ChartOf<K>,
  width: number = SHEET_WIDTH,
): Drawing {
  return DRAWN[chart.kind](chart.data, width);
}

/**
 * Draws a chart for a screen held in the hand.
 *
 * @param chart - kind and data
 * @returns the picture; nothing where the chart is as small on any screen
 * @throws Error when the data cannot be drawn
 */
export function drawNarrow<K extends keyof ChartData>(chart: ChartOf<K>): Drawing | undefined {
  return chart.kind === "spread-curve" ? undefined : drawChart(chart, NARROW_WIDTH);
}
