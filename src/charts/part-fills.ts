/**
 * Fills of the parts of a bar: one for each step and each carrier by its name, so that a part looks the
 * same in every picture. Steps that wet the cloth are blue and those that heat it orange or brown;
 * carriers are violet and scopes grey, so that no two kinds of part are taken for each other. Within a kind no
 * two have both the same lightness and the same pattern, so that a grey print can be read.
 */

import { BAND, fill, type Fill, PALE, REST_FILL, SOFT, WHITE } from "./palette.js";

/** Grounds, from light to dark. */
const WATER = { light: "#d5e6f3", middling: "#90c3e4", dark: "#35719c" } as const;
const HEAT = { light: "#f3dcc0", middling: "#e39a4f", dark: "#7c4a1c" } as const;
const CARRIER = { light: "#cbc0df", middling: "#a593c6", dark: "#6c5a94" } as const;
const STORE = "#98a3b1";

/** Lines on dark grounds. */
const ON_WATER = "#b5d3e8";
const ON_HEAT = "#dcb183";
const ON_CARRIER = "#cbc0df";

/** Steps as reports name them. */
const STEPS: Readonly<Record<string, Fill>> = {
  "pad pre-treatment": fill(WATER.light, "level", "#4d7f9f"),
  "dry after pad": fill(HEAT.middling),
  "print, belt and heads": fill(WATER.dark, "plain", WHITE, WHITE),
  "heat fixation": fill(HEAT.dark, "upright", ON_HEAT, WHITE),
  steam: fill(HEAT.light, "upright", "#a8703a"),
  "wash range": fill(WATER.middling),
  squeeze: fill(WATER.light, "crossed", "#4d7f9f"),
  "dry after wash": fill(HEAT.middling, "level", HEAT.dark),
  store: fill(STORE, "upright", "#454e5a"),
  "finish pad": fill(WATER.dark, "level", ON_WATER, WHITE),
  "finish stenter": fill(HEAT.dark, "crossed", ON_HEAT, WHITE),
  "store after finish": fill(STORE, "crossed", "#454e5a"),
};

/** Taken in turn by steps of other names. */
const OTHER_STEPS: readonly Fill[] = [
  fill(WATER.dark, "grid", ON_WATER, WHITE),
  fill(HEAT.light, "falling", "#a8703a"),
  fill(STORE, "grid", "#454e5a"),
];

/** Carriers as reports name them. */
const CARRIERS: Readonly<Record<string, Fill>> = {
  electricity: fill(CARRIER.dark, "plain", WHITE, WHITE),
  "natural gas": fill(CARRIER.light, "level", CARRIER.dark),
  "bought steam": fill(CARRIER.middling),
};

/** Taken in turn by carriers of other names. */
const OTHER_CARRIERS: readonly Fill[] = [
  fill(CARRIER.middling, "upright", "#4a3d69"),
  fill(CARRIER.light, "crossed", CARRIER.dark),
  fill(CARRIER.dark, "upright", ON_CARRIER, WHITE),
  fill(CARRIER.light),
  fill(CARRIER.middling, "grid", "#4a3d69"),
  fill(CARRIER.dark, "level", ON_CARRIER, WHITE),
];

/** Emissions on the site, and those of bought energy. */
export const SCOPE_FILLS = {
  direct: fill(SOFT, "plain", WHITE, WHITE),
  bought: fill(BAND, "level", SOFT),
} as const satisfies Record<string, Fill>;

/** What became of the rows of a log. */
export const ROW_FILLS = {
  accepted: fill(SOFT, "plain", WHITE, WHITE),
  corrected: fill(BAND, "level", SOFT),
  setAside: fill(WHITE, "crossed", SOFT),
  outside: fill(PALE, "upright", "#8d99a8"),
} as const satisfies Record<string, Fill>;

/** The two ends of a range. */
export const END_FILLS = {
  low: fill(SOFT, "plain", WHITE, WHITE),
  high: fill(BAND, "level", SOFT),
} as const satisfies Record<string, Fill>;

/**
 * Gives the fills of steps.
 *
 * @param names - names of the steps of one picture, none twice
 * @returns one fill for each, in order; no two are alike as long as there are enough of them
 */
export function stepFills(names: readonly string[]): readonly Fill[] {
  return fillsOf(names, STEPS, OTHER_STEPS);
}

/**
 * Gives the fills of carriers.
 *
 * @param names - names of the carriers of one picture, none twice
 * @returns one fill for each, in order; no two are alike as long as there are enough of them
 */
export function carrierFills(names: readonly string[]): readonly Fill[] {
  return fillsOf(names, CARRIERS, OTHER_CARRIERS);
}

// A name that is not listed takes the place its letters lead to, or the next one that is free.
function fillsOf(
  names: readonly string[],
  known: Readonly<Record<string, Fill>>,
  others: readonly Fill[],
): readonly Fill[] {
  const own = (name: string): Fill | undefined =>
    Object.hasOwn(known, name) ? known[name] : undefined;
  const taken = new Set(names.map(own));
  const all = [...others, ...Object.values(known)];
  return names.map((name) => {
    const listed = own(name);
    if (listed !== undefined) return listed;
    const start = Array.from(name).reduce((sum, letter) => sum + (letter.codePointAt(0) ?? 0), 0);
    const turn = start % others.length;
    const order = [...others.slice(turn), ...others.slice(0, turn), ...all];
    const free = order.find((one) => !taken.has(one)) ?? order[0];
    taken.add(free);
    return free ?? fill(PALE);
  });
}

/**
 * Fills of machines behind a meter, in turn; what is for no lot looks the same in every picture.
 *
 * @param names - names of parts, in order
 * @returns a fill each
 */
export function machineFills(names: readonly string[]): ReadonlyMap<string, Fill> {
  const all = [
    fill(WATER.middling),
    fill(HEAT.middling),
    fill(WATER.dark, "plain", WHITE, WHITE),
    fill(HEAT.light, "upright", "#a8703a"),
    fill(CARRIER.middling),
    fill(WATER.light, "level", "#4d7f9f"),
    fill(HEAT.dark, "crossed", ON_HEAT, WHITE),
    fill(CARRIER.light, "crossed", CARRIER.dark),
    fill(STORE, "upright", "#454e5a"),
  ];
  const machines = [...new Set(names)].filter((name) => name !== NO_LOT);
  return new Map([
    ...machines.map((name, i) => [name, all[i % all.length]!] as const),
    ...(names.includes(NO_LOT) ? [[NO_LOT, REST_FILL] as const] : []),
  ]);
}

/** Name of what a meter counts that no lot asks for. */
const NO_LOT = "no lot";
