/**
 * Chapters on water, effluent load, energy and CO2e: a picture, the table behind it.
 */

import type { Chart, ChartData } from "../../charts/chart.js";
import type { BrokenDown } from "../../account/account.js";
import { byStep, type StepMean, waitingOf } from "../../account/breakdown.js";
import type { IndicatorId } from "../../account/indicators.js";
import { mean } from "../../numbers/quantiles.js";
import type { Block } from "../document.js";
import type { NotedComparison, ReportDesk } from "./desk.js";
import { carrierWords, stepWords } from "./names.js";
import { table } from "./tables.js";

/** Names of the routes as printed. */
export const ROUTE_NAMES = { pigment: "Pigment, heat", dye: "Dye, steam and wash" } as const;

/**
 * Quantity by step on both routes: picture and table.
 *
 * @param desk - the report
 * @param id - the indicator
 * @param words - what it is
 * @returns blocks
 */
export function stepBlocks(desk: ReportDesk, id: BrokenDown, words: string): readonly Block[] {
  const noted = desk.compared(id);
  if (noted === undefined) return [];
  const steps = byStep(desk.input.account, id)
    .map((step): StepMean => ({
      role: step.role,
      pigment: desk.per(id, step.pigment, "pigment"),
      dye: desk.per(id, step.dye, "dye"),
    }))
    .filter(({ pigment, dye }) => Math.abs(pigment) + Math.abs(dye) > 0);
  const digits = Math.max(noted.pigment.digits, noted.dye.digits);
  // A load leaves in the wash, and is charged to where it came from.
  const by = id === "cod" ? "the step that adds the substance" : "step";
  const charged =
    id === "cod"
      ? " The step that adds a substance is charged with it, not the step that discharges it."
      : "";
  const picture: Chart = {
    kind: "stacked-steps",
    data: {
      quantity: words,
      unit: noted.unit,
      digits,
      steps: steps.map(({ role, pigment, dye }) => ({
        name: stepWords(role),
        pigment: Math.max(0, pigment),
        dye: Math.max(0, dye),
      })),
      routes: routeTotals(noted, steps),
    },
  };
  return [
    desk.figure(
      `${id}-by-step`,
      `${words} by ${by}, ${noted.unit}, means of draws`,
      `Stacked bars of ${words} for the dye and the pigment route, split by ${by}; the table below holds the numbers.${charged}`,
      picture,
    ),
    table(
      `${id}-steps`,
      `${words} by ${by}, ${noted.unit}. Means of draws, which add up; the medians on page one differ a little.${charged}`,
      "Step",
      digits + 1,
      [
        ...steps.map(({ role, pigment, dye }) => [stepWords(role), pigment, dye] as const),
        ["Total of means", sum(steps, "pigment"), sum(steps, "dye")],
        ...waitingRow(desk, id),
      ],
    ),
  ];
}

// What the machines take while they wait is in the steps above, and is told apart below their total.
function waitingRow(
  desk: ReportDesk,
  id: BrokenDown,
): readonly (readonly [string, number, number])[] {
  const { pigment, dye } = waitingOf(desk.input.account, id);
  if (pigment === 0 && dye === 0) return [];
  const words = "of this, machines hot and waiting";
  return [[words, desk.per(id, pigment, "pigment"), desk.per(id, dye, "dye")]];
}

function routeTotals(
  noted: NotedComparison,
  steps: readonly { readonly pigment: number; readonly dye: number }[],
): ChartData["stacked-steps"]["routes"] {
  const of = (
    arm: "pigment" | "dye",
  ): { name: string; total: { value: number; low: number; high: number } } => ({
    name: ROUTE_NAMES[arm],
    total: {
      value: sum(steps, arm),
      low: noted.comparison[arm].low * noted.scale,
      high: noted.comparison[arm].high * noted.scale,
    },
  });
  return { pigment: of("pigment"), dye: of("dye") };
}

function sum(
  list: readonly { readonly pigment: number; readonly dye: number }[],
  arm: "pigment" | "dye",
): number {
  return list.reduce((total, entry) => total + entry[arm], 0);
}

/**
 * Final energy by carrier: picture and table.
 *
 * @param desk - the report
 * @returns blocks
 */
export function carrierBlocks(desk: ReportDesk): readonly Block[] {
  const noted = desk.compared("energy");
  if (noted === undefined) return [];
  const { fence } = desk.input.account;
  const flows = [...new Set([...fence.dye.keys(), ...fence.pigment.keys()])].filter(
    (flow) =>
      flow === "electricity" ||
      flow.startsWith("fuel.") ||
      flow === "steam.bought" ||
      flow.startsWith("bought."),
  );
  const carriers = flows.map((flow) => {
    const kwh = flow.endsWith("electricity") ? 1 : 1 / 3.6;
    const of = (arm: "pigment" | "dye"): number => {
      const draws = fence[arm].get(flow);
      return draws === undefined ? 0 : desk.per("energy", mean(draws) * kwh, arm);
    };
    return { name: carrierWords(flow), pigment: of("pigment"), dye: of("dye") };
  });
  const digits = Math.max(noted.pigment.digits, noted.dye.digits);
  return [
    desk.figure(
      "energy-by-carrier",
      `Final energy by carrier, ${noted.unit}, net calorific value, means of draws`,
      "Stacked bars of final energy by carrier for both routes; the table below holds the numbers.",
      {
        kind: "carrier-bars",
        data: {
          quantity: "final energy",
          unit: noted.unit,
          digits,
          carriers,
          routes: routeTotals(noted, carriers),
        },
      },
    ),
    table(
      "energy-carriers",
      `Final energy by carrier, ${noted.unit}, fuels on net calorific value. Means of draws.`,
      "Carrier",
      digits + 1,
      [
        ...carriers.map(({ name, pigment, dye }) => [name, pigment, dye] as const),
        ["Total of means", sum(carriers, "pigment"), sum(carriers, "dye")],
      ],
    ),
  ];
}

/**
 * CO2e by scope: picture and table.
 *
 * @param desk - the report
 * @returns blocks
 */
export function scopeBlocks(desk: ReportDesk): readonly Block[] {
  const location = desk.compared("co2-location");
  const market = desk.compared("co2-market");
  if (location === undefined || market === undefined) return [];
  const { account } = desk.input;
  const meanOf = (id: IndicatorId, arm: "pigment" | "dye"): number =>
    desk.per(id, mean(account.indicators[arm].get(id) ?? new Float64Array(1)), arm);
  const digits = Math.max(location.pigment.digits, location.dye.digits);
  const route = (arm: "pigment" | "dye"): ChartData["scope-bars"]["routes"]["dye"] => {
    const basis = (
      noted: NotedComparison,
      scope2: IndicatorId,
    ): ChartData["scope-bars"]["routes"]["dye"]["location"] => ({
      scope2: meanOf(scope2, arm),
      total: {
        // A partner's share stands in the table only: it belongs to no scope of the mill.
        value: meanOf("scope-1", arm) + meanOf(scope2, arm),
        low: noted.comparison[arm].low * noted.scale,
        high: noted.comparison[arm].high * noted.scale,
      },
    });
    return {
      name: ROUTE_NAMES[arm],
      scope1: meanOf("scope-1", arm),
      location: basis(location, "scope-2-location"),
      market: basis(market, "scope-2-market"),
    };
  };
  const rows = (
    [
      ["Scope 1, fuels burned on site", "scope-1"],
      ["Scope 2, location-based", "scope-2-location"],
      ["Scope 2, market-based", "scope-2-market"],
      ["Total, location-based, outsourced steps included", "co2-location"],
      ["Total, market-based, outsourced steps included", "co2-market"],
    ] as const
  ).map(([words, id]) => [words, meanOf(id, "pigment"), meanOf(id, "dye")] as const);
  return [
    desk.figure(
      "co2-by-scope",
      `CO₂e by scope, ${location.unit}, partial, gate to gate, means of draws`,
      "Bars of scope 1 and scope 2 emissions for both routes, once location-based and once market-based.",
      {
        kind: "scope-bars",
        data: {
          quantity: "CO₂e, partial, gate to gate",
          unit: location.unit,
          digits,
          routes: { pigment: route("pigment"), dye: route("dye") },
        },
      },
    ),
    table(
      "co2-scopes",
      `CO₂e by scope, ${location.unit}. The two bases of scope 2 are alternatives and are never added. Means of draws.`,
      "Scope",
      digits + 1,
      rows,
    ),
  ];
}
