/**
 * Tables by fabric and client, and of what the mill really did.
 */

import { byGroup } from "../../account/breakdown.js";
import type { FoldedNames } from "../../ledger/fold-names.js";
import type { LedgerKey } from "../../ledger/key.js";
import { mean } from "../../numbers/quantiles.js";
import type { Workflow } from "../../plant/shipped-routes.js";
import type { Block, Cell } from "../document.js";
import { numberCell, textCell } from "../figure-desk.js";
import { digitsFor, formatNumber, formatPercent } from "../format.js";
import { amountPlaces } from "./answer.js";
import type { ReportDesk } from "./desk.js";
import { fabricClass } from "./lots.js";
import { printUnit } from "./names.js";

/** Names shown in a table before the rest is left out. */
const MOST_NAMES = 60;

/**
 * Both routes by fabric or by client: means and share saved.
 *
 * @param desk - the report
 * @param by - `fabric` or `client`
 * @returns a sentence and a table
 */
export function breakdownBlocks(desk: ReportDesk, by: "fabric" | "client"): readonly Block[] {
  const { account, groups, yields, folded } = desk.input;
  const places = amountPlaces();
  const name = (key: LedgerKey): string =>
    by === "fabric"
      ? fabricClass(key)
      : key.kind === "overhead" && key.client === ""
        ? "strike-offs, trials and cleaning"
        : key.client === ""
          ? "no client logged"
          : key.client;
  const water = byGroup(account, groups, "water", name, places.accepted);
  const energy = byGroup(account, groups, "energy", name, places.accepted);
  const area = (group: string, arm: Workflow): number | undefined =>
    yields === undefined
      ? undefined
      : groups
          .filter(({ key }) => key.pigment !== "" && name(key) === group)
          .reduce((sum, one) => sum + yields.areaOf(one, arm), 0);
  const per = (total: number, units: number): string => {
    if (!(units > 0)) return "–";
    const value = total / units;
    return formatNumber(value, digitsFor(value, 0.9 * value, 1.1 * value));
  };
  const largest = [...water].sort(([, a], [, b]) => b.accepted - a.accepted).slice(0, MOST_NAMES);
  const rows: (readonly Cell[])[] = largest.map(([key, entry]) => {
    const heat = energy.get(key);
    const pigment = area(key, "pigment") ?? entry.accepted;
    const dye = area(key, "dye") ?? entry.accepted;
    const less = (sums: { readonly pigment: number; readonly dye: number } | undefined): string =>
      sums !== undefined && sums.dye > 0 && pigment > 0
        ? formatPercent(1 - (sums.pigment / sums.dye) * (dye / pigment))
        : "–";
    return [
      textCell(key, true),
      numberCell(String(entry.lots)),
      numberCell(formatNumber(entry.accepted, 0)),
      numberCell(per(entry.pigment, pigment)),
      numberCell(per(entry.dye, dye)),
      numberCell(pigment > 0 ? less(entry) : "–"),
      numberCell(per(heat?.pigment ?? 0, pigment)),
      numberCell(per(heat?.dye ?? 0, dye)),
      numberCell(less(heat)),
    ];
  });
  const saved = largest.flatMap(([key, { pigment, dye, accepted }]) =>
    dye > 0 && accepted > 0 ? [{ key, saved: 1 - pigment / dye }] : [],
  );
  const names =
    by === "client" && desk.input.scope.client === ""
      ? " This table names all clients; a copy for one client is made with --client."
      : "";
  const table: Block = {
    kind: "table",
    id: `by-${by}`,
    caption: `Both routes by ${by}, per accepted m². Means of draws without interval: for orientation, not for quoting.${water.size > MOST_NAMES ? ` The ${MOST_NAMES} largest of ${water.size} are shown.` : ""}${foldedWords(folded?.[by], by)}${names}`,
    head: [
      by === "fabric" ? "Fabric" : "Client",
      "Lots",
      "m² accepted",
      "Water P, L",
      "Water D, L",
      "saved",
      "Energy P, kWh",
      "Energy D, kWh",
      "saved",
    ].map((text, i) => (i === 0 ? textCell(text) : { ...textCell(text), align: "right" as const })),
    rows,
    widths: [2.4, 0.7, 1.2, 1, 1, 0.8, 1.1, 1.1, 0.8],
  };
  return [...groupFinding(by, saved), table];
}

function groupFinding(
  by: "fabric" | "client",
  saved: readonly { readonly key: string; readonly saved: number }[],
): readonly Block[] {
  const sorted = [...saved].sort((a, b) => a.saved - b.saved);
  const [least, most] = [sorted[0], sorted.at(-1)];
  if (least === undefined || most === undefined || least === most) return [];
  return [
    {
      kind: "paragraph",
      runs: [
        {
          kind: "text",
          text: `By ${by}, the share of water saved runs from ${formatPercent(least.saved)} (${least.key}) to ${formatPercent(most.saved)} (${most.key}), in means of draws.`,
        },
      ],
    },
  ];
}

function foldedWords(names: FoldedNames | undefined, by: "fabric" | "client"): string {
  return names === undefined
    ? ""
    : ` The ${formatNumber(names.names, 0)} ${by}s with the least accepted area (${formatNumber(names.lots, 0)} lots, ${formatNumber(names.accepted, 0)} m²) are added up as “${names.into}”.`;
}

/**
 * Totals of what the mill really did beside both arms.
 *
 * @param desk - the report
 * @returns a table
 */
export function actualTable(desk: ReportDesk): Block {
  const { account } = desk.input;
  const rows = (["water", "energy", "co2-location", "cod"] as const).map((id) => {
    const { unit, scale } = printUnit(id, account.program.indicators.get(id)?.unit ?? "", "");
    const of = (side: "actual" | "pigment" | "dye"): string => {
      const value = scale * mean(account.indicators[side].get(id) ?? new Float64Array(1));
      return formatNumber(value, digitsFor(value, 0.95 * value, 1.05 * value));
    };
    const words = {
      water: "Water withdrawn",
      energy: "Final energy",
      "co2-location": "CO₂e, location-based",
      cod: "COD load",
    }[id];
    return [
      textCell(`${words}, ${unit}`, true),
      numberCell(of("actual")),
      numberCell(of("pigment")),
      numberCell(of("dye")),
    ];
  });
  return {
    kind: "table",
    id: "as-printed",
    caption:
      "All lots of the period: as they were printed, and had all gone one route. Means of draws. Site overhead is outside.",
    head: ["Quantity", "As printed", "All pigment", "All dye"].map((text, i) =>
      i === 0 ? textCell(text) : { ...textCell(text), align: "right" as const },
    ),
    rows,
    widths: [2.6, 1, 1, 1],
  };
}
