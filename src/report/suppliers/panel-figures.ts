/**
 * Figures of many suppliers: a small panel each, as many pictures as pages need.
 */

import type { PanelPart, SupplierPanel } from "../../charts/supplier-panels.js";
import type { IndicatorResult, SuppliersCompared } from "../../suppliers/compare-suppliers.js";
import { asShown, type Standing } from "../../suppliers/standings.js";
import type { Block } from "../document.js";
import { formatPercent } from "../format.js";
import { MOSTLY } from "./many-suppliers.js";
import { printed, printingOf, scaled } from "./supplier-tables.js";
import { capital, listed, ownShare } from "./supplier-words.js";

/** Most panels of one picture, so that it stays on its page. */
const MOST_PANELS = 24;

/** Times the middle upper end beyond which upper ends leave the scale, and an arrow with its number stands for them. [-] */
const FAR = 2.5;

/**
 * C-F1 and C-F2 for many suppliers: values at the mix beside what suppliers take as they stand.
 *
 * @param compared - the comparison
 * @param result - the indicator
 * @returns figures of at most 24 panels, all on one scale; none where nobody has a value
 */
export function panelFigures(
  compared: SuppliersCompared,
  result: IndicatorResult,
): readonly Block[] {
  const { unit } = printingOf(result);
  const parts = partsOf(compared, result);
  const held = heldBy(parts.flatMap(({ panels }) => panels));
  if (held.length === 0) return [];
  const pages = paged(parts);
  return pages.map((page, i) => ({
    kind: "figure",
    id: `panels-${result.id}${i === 0 ? "" : `-${i + 1}`}`,
    title: `${capital(result.words)} at the mix and as it stands, ${unit}${pages.length === 1 ? "" : ` (${i + 1} of ${pages.length})`}`,
    description: `A small panel for each supplier, all on one scale: its ${result.words} at the reference mix with its 95 % interval, and left of it, hollow, what it takes in its own mix. Those told apart first, by name, then those that are not. The numbers stand in the table of suppliers at the mix.`,
    chart: {
      kind: "supplier-panels",
      data: { quantity: `${result.words} at the mix and as it stands`, unit, held, parts: page },
    },
  }));
}

function partsOf(compared: SuppliersCompared, result: IndicatorResult): readonly PanelPart[] {
  const { ranked, unranked } = result.standings;
  const parts: { readonly key: string; readonly words: string; panels: SupplierPanel[] }[] = [];
  const place = (key: string, words: string, one: Standing): void => {
    const panel = panelOf(compared, result, one, key !== "none");
    const last = parts.at(-1);
    if (last?.key === key) last.panels.push(panel);
    else parts.push({ key, words, panels: [panel] });
  };
  for (const one of asShown(ranked)) {
    const { group } = one;
    const others = ranked.filter((other) => other.group === group).length - 1;
    if (group === undefined) place("unborne", "not borne out by meters", one);
    else if (others === 0) place("apart", "told apart from all others", one);
    else place(String(group), "not told apart", one);
  }
  for (const one of asShown(unranked)) place("none", "no place", one);
  return parts.map(({ words, panels }) => ({ words, panels }));
}

function panelOf(
  compared: SuppliersCompared,
  result: IndicatorResult,
  { alias, value, covered }: Standing,
  hasPlace: boolean,
): SupplierPanel {
  const { scale } = printingOf(result);
  const candidate = compared.candidates.find((one) => one.alias === alias);
  const supplier = result.suppliers.find((one) => one.alias === alias);
  // Of less than half of the mix there is a value, but of another mix.
  const range = value === undefined || !hasPlace ? undefined : scaled(value, scale);
  // What leaves a step out is no value of the same thing.
  const holed = supplier?.holed;
  const notes = [
    ...(covered < 1 - 1e-9 ? [`covers ${formatPercent(covered)}`] : []),
    ...(holed === undefined ? [] : [`no ${listed(holed)}`]),
  ];
  return {
    name: alias,
    ...(notes.length === 0 ? {} : { note: notes.join("; ") }),
    ...(range === undefined ? {} : { value: { ...range, printed: printed(range) } }),
    ...(supplier === undefined || holed !== undefined
      ? {}
      : { crude: supplier.crude.median * scale }),
    isHollow: candidate === undefined || ownShare(candidate, result.id) < MOSTLY,
  };
}

// Most suppliers set the scale; an upper end far beyond them would leave no room for the rest.
function heldBy(panels: readonly SupplierPanel[]): readonly number[] {
  const values = panels.flatMap(({ value }) => (value === undefined ? [] : [value]));
  const highs = values.map(({ high }) => high).sort((a, b) => a - b);
  const reach = FAR * (highs[Math.floor((highs.length - 1) / 2)] ?? 0);
  return [
    ...values.flatMap(({ median, low, high }) => [median, low, ...(high > reach ? [] : [high])]),
    ...panels.flatMap(({ crude }) => crude ?? []),
  ];
}

// Pictures of as many panels; a part that goes on in the next says so there.
function paged(parts: readonly PanelPart[]): readonly (readonly PanelPart[])[] {
  const flat = parts.flatMap((part) => part.panels.map((panel) => ({ part, panel })));
  const pages: PanelPart[][] = [];
  for (let from = 0; from < flat.length; from += MOST_PANELS) {
    const here = flat.slice(from, from + MOST_PANELS);
    const before = flat[from - 1]?.part;
    pages.push(
      [...new Set(here.map(({ part }) => part))].map((part) => ({
        words: part.words,
        ...(part === before ? { isContinued: true } : {}),
        panels: here.flatMap((one) => (one.part === part ? [one.panel] : [])),
      })),
    );
  }
  return pages;
}
