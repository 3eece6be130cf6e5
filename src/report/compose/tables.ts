/**
 * Tables of numbers on both routes.
 */

import type { IndicatorId } from "../../account/indicators.js";
import { mean } from "../../numbers/quantiles.js";
import type { Block, Cell } from "../document.js";
import { SUBSTANCES } from "../../steps/flows.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatNumber } from "../format.js";
import type { ReportDesk } from "./desk.js";

/**
 * Inventory of water and loads: medians with intervals on both routes.
 *
 * @param desk - the report
 * @param id - id of the table
 * @param caption - its caption
 * @param ids - indicators with words
 * @returns the table
 */
export function inventory(
  desk: ReportDesk,
  id: string,
  caption: string,
  ids: readonly (readonly [IndicatorId, string])[],
): Block {
  const rows = ids.flatMap(([indicator, words]): (readonly Cell[])[] => {
    const noted = desk.compared(indicator);
    if (noted === undefined) return [];
    return [
      [
        textCell(`${words}, ${noted.unit}`, true),
        ...(["pigment", "dye"] as const).flatMap((arm) => {
          const { high } = noted.comparison[arm];
          return [
            numberCell(noted[arm].run),
            numberCell(high === 0 ? "none assumed" : noted[arm].interval),
          ];
        }),
      ],
    ];
  });
  return {
    kind: "table",
    id,
    caption,
    head: ["", "Pigment", "95 % interval", "Dye", "95 % interval"].map((text, i) =>
      i === 0 ? textCell("Quantity") : { ...textCell(text), align: "right" as const },
    ),
    rows,
    widths: [3, 1.1, 1.8, 1.1, 1.8],
  };
}

/**
 * A table of numbers on both routes, behind a picture.
 *
 * @param id - id of the table
 * @param caption - its caption
 * @param head - heading of the first column
 * @param digits - decimals, fewer where the largest number has three digits before
 * @param rows - words, pigment, dye
 * @returns the table
 */
export function table(
  id: string,
  caption: string,
  head: string,
  digits: number,
  rows: readonly (readonly [string, number, number])[],
): Block {
  const largest = Math.max(
    0,
    ...rows.flatMap(([, pigment, dye]) => [Math.abs(pigment), Math.abs(dye)]),
  );
  const places = Math.max(0, Math.min(digits, 4, digitsFor(largest)));
  const least = 10 ** -places;
  // What is there but rounds to nothing is not nothing.
  const text = (value: number): string =>
    value > 0 && value < least / 2
      ? `<\u00a0${formatNumber(least, places)}`
      : formatNumber(value, places);
  return {
    kind: "table",
    id,
    caption,
    behind: true,
    head: [
      textCell(head),
      { ...textCell("Pigment"), align: "right" },
      { ...textCell("Dye"), align: "right" },
    ],
    rows: rows.map(([words, pigment, dye]) => [
      textCell(words, true),
      numberCell(text(pigment)),
      numberCell(text(dye)),
    ]),
    widths: [3, 1, 1],
  };
}

/**
 * Substances used on both routes, wherever they end: means of draws.
 *
 * @param desk - the report
 * @returns a table in g per reference unit, or kg in all
 */
export function substancesTable(desk: ReportDesk): Block {
  const { account, reference } = desk.input;
  const scale = reference.suffix === "" ? 1e-3 : 1;
  const unit = reference.suffix === "" ? "kg" : `g/${reference.suffix}`;
  const places = ["used", "to-cloth", "to-water", "to-air", "to-waste"] as const;
  const of = (place: string, substance: string, arm: "pigment" | "dye"): number =>
    (scale * mean(account.fence[arm].get(`${place}.${substance}`) ?? new Float64Array(1))) /
    desk.units(arm);
  const used = SUBSTANCES.filter((substance) =>
    (["pigment", "dye"] as const).some((arm) => of("used", substance, arm) > 0),
  );
  const text = (value: number): string =>
    value === 0 ? "0" : formatNumber(value, digitsFor(value, 0.9 * value, 1.1 * value));
  return {
    kind: "table",
    id: "substances",
    caption: `Substances used, ${unit}, and where they end on each route (P pigment, D dye): on the cloth, in the drain, in the air, in waste. Means of draws; recipes rest on estimates unless the mill gave its own. Salt that softens water comes with the water and is not among them; ammonia given off is not counted.`,
    behind: true,
    head: [
      textCell("Substance"),
      ...[
        "P used",
        "cloth",
        "drain",
        "air",
        "waste",
        "D used",
        "cloth",
        "drain",
        "air",
        "waste",
      ].map((head) => ({ ...textCell(head), align: "right" as const })),
    ],
    rows: used.map((substance) => [
      textCell(substance.replaceAll("-", " "), true),
      ...(["pigment", "dye"] as const).flatMap((arm) =>
        places.map((place) => numberCell(text(of(place, substance, arm)))),
      ),
    ]),
    widths: [2, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1],
  };
}
