/**
 * Effluent, condensate and samples beside the model.
 */

import type { IndicatorId } from "../../account/indicators.js";
import type { Outflow } from "../../meters/outflow.js";
import { quantiles } from "../../numbers/quantiles.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatInterval, formatNumber, formatPercent } from "../format.js";
import type { ReportDesk } from "./desk.js";

/**
 * What leaves the site, measured and modelled.
 *
 * @param desk - the report
 * @returns a table for each site with such meters, and what they cannot tell; nothing where there are none
 */
export function outflowBlocks(desk: ReportDesk): readonly Block[] {
  return (desk.input.outflows ?? []).flatMap((found) => siteBlocks(desk, found));
}

function siteBlocks(desk: ReportDesk, found: Outflow): readonly Block[] {
  const { groups, plant } = desk.input;
  const printed = new Set(groups.map(({ key }) => key.month));
  const missing = [...printed].filter((month) => !found.months.includes(month));
  const one = Object.keys(plant.sites).length === 1;
  const whole = one && found.effluent !== undefined && missing.length === 0;
  const { effluent, strength } = found;
  const rows: (readonly Cell[])[] = [];
  const notes: string[] = [];
  const row = (words: string, measured: string, scale: number, id: IndicatorId): void => {
    const draws = desk.input.account.indicators.actual.get(id);
    const [low = NaN, middle = NaN, high = NaN] = quantiles(
      draws ?? new Float64Array(1),
      [0.025, 0.5, 0.975],
    ).map((value) => scale * value);
    const digits = Math.max(0, digitsFor(middle, low, high));
    rows.push([
      textCell(words, true),
      numberCell(measured),
      numberCell(
        whole
          ? `${formatNumber(middle, digits)} (${formatInterval(low, high, digits)})`
          : "not set beside",
      ),
    ]);
  };
  if (effluent !== undefined)
    row("Effluent, m³", formatNumber(effluent / 1000, 0), 1e-3, "discharged");
  if (effluent !== undefined && strength !== undefined)
    row("COD load, kg", loadText(effluent, strength), 1e-3, "cod");
  if (strength !== undefined)
    rows.push([
      textCell("COD of samples, mg/L", true),
      numberCell(boundedText(strength, 1000)),
      numberCell(""),
    ]);
  if (found.condensate !== undefined)
    rows.push([
      textCell("Condensate, t", true),
      numberCell(
        `${formatNumber(found.condensate / 1000, 0)}${found.steam === undefined ? "" : `, ${formatPercent(found.condensate / found.steam)} of steam`}`,
      ),
      numberCell(""),
    ]);
  if (found.samples > 0)
    notes.push(
      `${formatNumber(found.samples, 0)} samples, weighted by the effluent of their month; ${formatNumber(found.below, 0)} below the limit of their method count half of it, with 0 and the limit as the ends in brackets`,
    );
  if (found.odd.length > 0)
    notes.push(
      `samples of ${found.odd.join(", ")} are more than five times or less than a fifth of the middle one: look at their unit and at what was drained that day; they are in the mean`,
    );
  if (effluent !== undefined && !whole)
    notes.push(
      one
        ? `effluent is not known of ${missing.sort().join(", ")}, so the model of all months is not set beside it`
        : "the model is of all sites, so it is not set beside the meters of one",
    );
  notes.push(
    "none of these corrects the model: they hold rain, offices and cleaning, and one drain does not tell machines or routes apart. A meter or sampler at the drain of the wash range would",
  );
  return [
    {
      kind: "table",
      id: `meter-outflow-${found.site}`,
      caption:
        "What leaves the site, as metered and sampled, beside the model of the lots as printed, medians with 95 % intervals.",
      head: [
        textCell("Quantity"),
        ...["Measured", "Model, lots as printed"].map((words) => ({
          ...textCell(words),
          align: "right" as const,
        })),
      ],
      rows,
      widths: [2, 1.6, 2],
    },
    {
      kind: "paragraph",
      tone: "small",
      runs: [{ kind: "text", text: `${notes.map(capital).join(". ")}.` }],
    },
  ];
}

function loadText(effluent: number, strength: NonNullable<Outflow["strength"]>): string {
  return boundedText(strength, effluent / 1000);
}

function boundedText(
  { value, low, high }: NonNullable<Outflow["strength"]>,
  scale: number,
): string {
  const middle = formatNumber(scale * value, 0);
  return high > low ? `${middle} (${formatInterval(scale * low, scale * high, 0)})` : middle;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
