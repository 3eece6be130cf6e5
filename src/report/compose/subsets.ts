/**
 * Parts of the lots looked at alone: by the pigment route set beside them, and without blends. All are means of
 * draws over the rates of the whole report, so they have no interval of their own.
 */

import { BROKEN_DOWN, type BrokenDown, coefficientsOf } from "../../account/account.js";
import { dot } from "../../account/breakdown.js";
import type { Group } from "../../ledger/ledger.js";
import type { Workflow } from "../../plant/shipped-routes.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatNumber, formatPercent } from "../format.js";
import { amountPlaces } from "./answer.js";
import type { ReportDesk } from "./desk.js";
import { printUnit } from "./names.js";

/** Lots of a part and what they take on both routes. */
export interface Subset {
  /** Lots. */
  readonly lots: number;
  /** Accepted area as logged. [m²] */
  readonly accepted: number;
  /** Mean of an indicator per accepted m² of an arm, in the print unit; NaN where there is no area. */
  readonly per: (id: BrokenDown, arm: Workflow) => number;
}

const WORDS: Readonly<Record<BrokenDown, string>> = {
  water: "Water withdrawn",
  energy: "Final energy",
  electricity: "Electricity",
  "co2-location": "CO₂e, location-based",
  cod: "COD load",
};

/**
 * Sums a part of the lots up.
 *
 * @param desk - the report
 * @param keep - whether a group is of the part; groups without counterpart never are
 * @returns lots, area and means
 */
export function subsetOf(desk: ReportDesk, keep: (group: Group) => boolean): Subset {
  const { account, groups, yields } = desk.input;
  const { accepted } = amountPlaces();
  const kept = groups.filter((group) => group.key.pigment !== "" && keep(group));
  const sum = (of: (group: Group) => number): number =>
    kept.reduce((total, group) => total + of(group), 0);
  const area = (arm: Workflow): number =>
    sum((group) => yields?.areaOf(group, arm) ?? group.amounts[accepted] ?? 0);
  return {
    lots: sum(({ lots }) => lots),
    accepted: sum(({ amounts }) => amounts[accepted] ?? 0),
    per: (id, arm) => {
      const of = coefficientsOf(account, id);
      const { scale } = printUnit(id, account.program.indicators.get(id)?.unit ?? "", "m²");
      const taken = sum(({ key, amounts }) => {
        const lotClass = account.program.classOf(key);
        return lotClass === undefined ? 0 : dot(of(lotClass, arm), amounts);
      });
      const units = area(arm);
      return units > 0 ? (scale * taken) / units : NaN;
    },
  };
}

/**
 * Whether a group is of blends, of which a dye route with one class of dye colours one fibre.
 *
 * @param group - the group
 * @returns true for blends
 */
export function isBlend(group: Group): boolean {
  return group.key.blend.includes(" ");
}

/**
 * Pigment routes apart: the choice between them is the mill's, and moves the answer.
 *
 * @param desk - the report
 * @returns a sentence and a table, one row a pigment route
 */
export function pigmentRouteBlocks(desk: ReportDesk): readonly Block[] {
  const { groups } = desk.input;
  const routes = [...new Set(groups.map(({ key }) => key.pigment))]
    .filter((one) => one !== "")
    .sort();
  const all = subsetOf(desk, () => true);
  const parts = routes.map((route) => {
    const of = (own?: Workflow): Subset =>
      subsetOf(desk, ({ key }) => key.pigment === route && (own === undefined || key.own === own));
    return { route, all: of(), pigment: of("pigment"), dye: of("dye") };
  });
  const share = (part: Subset): string =>
    all.accepted > 0 ? formatPercent(part.accepted / all.accepted) : "–";
  const said = parts.map(
    (part) =>
      `${part.route} stands for pigment on ${share(part.all)} of the accepted area: ${formatNumber(part.pigment.lots, 0)} lots that took it (${share(part.pigment)}) and ${formatNumber(part.dye.lots, 0)} dye lots set beside it (${share(part.dye)})`,
  );
  return [
    paragraph(
      `${said.join("; ")}. Which pigment route a dye lot would have taken is a choice made in the plant file, not something observed.`,
    ),
    {
      kind: "table",
      id: "pigment-routes",
      caption:
        "What the pigment route takes, by pigment route, per accepted m². Means of draws without interval; the rows are different lots, so they differ by fabric too.",
      head: head([
        "Pigment route",
        "Lots",
        "of area",
        "Energy, kWh",
        "Electricity, kWh",
        "Water, L",
        "CO₂e, g",
      ]),
      rows: parts.map(({ route, all: part }): readonly Cell[] => [
        textCell(route, true),
        numberCell(formatNumber(part.lots, 0)),
        numberCell(share(part)),
        ...(["energy", "electricity", "water", "co2-location"] as const).map((id) =>
          numberCell(text(part.per(id, "pigment"))),
        ),
      ]),
      widths: [2.4, 0.8, 0.9, 1.2, 1.4, 1, 1],
    },
  ];
}

/**
 * The savings with and without blends.
 *
 * @param desk - the report
 * @returns a table; a sentence where there are no blends, or nothing else
 */
export function blendBlocks(desk: ReportDesk): readonly Block[] {
  const all = subsetOf(desk, () => true);
  const rest = subsetOf(desk, (group) => !isBlend(group));
  if (rest.lots === all.lots) return [paragraph("No lot is a blend of fibres.")];
  if (!(rest.accepted > 0)) return [paragraph("All lots are blends of fibres.")];
  return [
    {
      kind: "table",
      id: "without-blends",
      caption: `The same answer without the ${formatNumber(all.lots - rest.lots, 0)} lots of blends (${formatPercent(1 - rest.accepted / all.accepted)} of the accepted area). Means of draws per accepted m², without interval; P pigment, D dye.`,
      head: head(["Indicator", "All: P", "D", "saved", "No blends: P", "D", "saved"]),
      rows: BROKEN_DOWN.map((id): readonly Cell[] => [
        textCell(
          `${WORDS[id]}, ${printUnit(id, desk.input.account.program.indicators.get(id)?.unit ?? "", "m²").unit}`,
          true,
        ),
        ...[all, rest].flatMap((part) => [
          numberCell(text(part.per(id, "pigment"))),
          numberCell(text(part.per(id, "dye"))),
          numberCell(savedOf(part, id)),
        ]),
      ]),
      widths: [3, 1, 0.8, 0.8, 1.4, 0.8, 0.8],
    },
  ];
}

/**
 * Share saved by pigment on a part of the lots.
 *
 * @param part - the part
 * @param id - the indicator
 * @returns 1 − P/D of the means in percent; a dash where dye takes nothing
 */
export function savedOf(part: Subset, id: BrokenDown): string {
  const saved = 1 - part.per(id, "pigment") / part.per(id, "dye");
  return Number.isFinite(saved) ? formatPercent(saved) : "–";
}

function text(value: number): string {
  return Number.isFinite(value)
    ? formatNumber(value, digitsFor(value, 0.9 * value, 1.1 * value))
    : "–";
}

function head(words: readonly string[]): readonly Cell[] {
  return words.map((one, i) =>
    i === 0 ? textCell(one) : { ...textCell(one), align: "right" as const },
  );
}

function paragraph(said: string): Block {
  return { kind: "paragraph", runs: [{ kind: "text", text: said }] };
}
