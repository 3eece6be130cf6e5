/**
 * The amounts every lot is asked for: additive quantities made of nothing but what the log says.
 * They hold no factor, no setting and no doubt, so they can be summed before anything is drawn.
 *
 * An amount is a product of log columns with whole exponents, taken over the lots in which the
 * columns of `logged` are filled and those of `open` are not. A setting that is logged for some lots
 * only gives two amounts: one with the logged value as a factor, one over the lots without it; the
 * open one is later multiplied by the setting drawn. The sum of both patterns is exact.
 */

/** Columns that may be a factor of an amount, each in the unit shown. */
export const FACTOR_UNITS = {
  /** Length of the lot. */
  length: "m",
  /** Width of the cloth. */
  width: "m",
  /** Printed width; the width of the cloth when the plant file names none. */
  printWidth: "m",
  /** Mass per area. */
  gsm: "g/m²",
  /** Length of first quality. */
  accepted: "m",
  /** Ink used. */
  ink: "L",
  /** Share of the printed area under full laydown. */
  coverage: "1",
  /** Pick-up of the first pad: liquor per conditioned cloth. */
  pickup: "kg/kg",
  /** Cloth temperature at fixation. */
  fixTemp: "°C",
  /** Time at fixation temperature. */
  dwell: "s",
  /** Fresh water per bath, or of the whole wash when no baths are logged. */
  liquorRatio: "L/kg",
  /** Number of baths of the wash. */
  baths: "1",
  /** Speed of the fixing machine. */
  speed: "m/min",
} as const;

/** A column that may be a factor of an amount. */
export type FactorName = keyof typeof FACTOR_UNITS;

/** Columns that may be blank and whose absence selects lots. */
export type OpenName =
  "ink" | "coverage" | "pickup" | "fixTemp" | "dwell" | "liquorRatio" | "baths" | "speed";

/** One entry of the list of amounts. */
export interface Amount {
  /** Short name, unique: `mass·pickup`, `mass[no pickup]`. */
  readonly name: string;
  /** Unit of the sum. */
  readonly unit: string;
  /** Fixed multiplier that brings the product into `unit`. */
  readonly scale: number;
  /** Factors with their exponents. */
  readonly product: Readonly<Partial<Record<FactorName, number>>>;
  /** Counted only over lots in which these are filled. */
  readonly logged: readonly OpenName[];
  /** Counted only over lots in which these are blank. */
  readonly open: readonly OpenName[];
}

interface Base {
  readonly unit: string;
  readonly scale: number;
  readonly product: Readonly<Partial<Record<FactorName, number>>>;
}

const LOTS: Base = { unit: "lots", scale: 1, product: {} };
const LENGTH: Base = { unit: "m", scale: 1, product: { length: 1 } };
const MASS: Base = { unit: "kg", scale: 1e-3, product: { length: 1, width: 1, gsm: 1 } };
const PRINTED: Base = { unit: "m²", scale: 1, product: { length: 1, printWidth: 1 } };

// A chain of the ways in which the hours under the fixing machine may be known; dwell rules over speed.
const HOUR_WAYS = [
  {
    tag: "·dwell",
    unit: "m·h",
    scale: 1 / 3600,
    product: { dwell: 1 },
    logged: ["dwell"],
    open: [],
  },
  {
    tag: "/speed",
    unit: "h",
    scale: 1 / 60,
    product: { speed: -1 },
    logged: ["speed"],
    open: ["dwell"],
  },
  { tag: "", unit: "m", scale: 1, product: {}, logged: [], open: ["dwell", "speed"] },
] as const;

const TEMPERATURE_WAYS = [
  { tag: "·fixTemp", unit: "·°C", product: { fixTemp: 1 }, logged: ["fixTemp"], open: [] },
  { tag: "", unit: "", product: {}, logged: [], open: ["fixTemp"] },
] as const;

function amount(
  stem: string,
  base: Base,
  logged: readonly OpenName[] = [],
  open: readonly OpenName[] = [],
): Amount {
  const tag = open.length > 0 ? `[no ${open.join(", ")}]` : "";
  return { name: stem + tag, ...base, logged, open };
}

function fixationHours(): Amount[] {
  return HOUR_WAYS.flatMap((way) => [
    amount(
      `length${way.tag}`,
      { unit: way.unit, scale: way.scale, product: { length: 1, ...way.product } },
      way.logged,
      way.open,
    ),
    ...TEMPERATURE_WAYS.map((heat) =>
      amount(
        `length${way.tag}${heat.tag}`,
        {
          unit: way.unit + heat.unit,
          scale: way.scale,
          product: { length: 1, ...way.product, ...heat.product },
        },
        [...way.logged, ...heat.logged],
        // A logged temperature is told from an open one by the tag, so an empty list is left out.
        [...way.open, ...heat.open],
      ),
    ),
  ]);
}

/**
 * The one list of amounts, in the order of the ledger's vectors. Adding one moves no number; changing
 * or removing one changes the digest of the list, and ledgers saved before are refused.
 */
export const AMOUNTS: readonly Amount[] = [
  amount("lots", LOTS),
  amount("length", LENGTH),
  amount("area", { unit: "m²", scale: 1, product: { length: 1, width: 1 } }),
  amount("printed", PRINTED),
  amount("accepted", { unit: "m²", scale: 1, product: { accepted: 1, printWidth: 1 } }),
  amount("mass", MASS),
  amount("mass·pickup", { ...MASS, product: { ...MASS.product, pickup: 1 } }, ["pickup"]),
  amount("mass", MASS, [], ["pickup"]),
  amount("mass·fixTemp", { ...MASS, unit: "kg·°C", product: { ...MASS.product, fixTemp: 1 } }, [
    "fixTemp",
  ]),
  amount("mass", MASS, [], ["fixTemp"]),
  ...fixationHours(),
  amount("ink", { unit: "L", scale: 1, product: { ink: 1 } }, ["ink"]),
  amount(
    "printed·coverage",
    { ...PRINTED, product: { ...PRINTED.product, coverage: 1 } },
    ["coverage"],
    ["ink"],
  ),
  amount("printed", PRINTED, [], ["ink", "coverage"]),
  amount(
    "mass·liquorRatio·baths",
    { unit: "L", scale: 1e-3, product: { ...MASS.product, liquorRatio: 1, baths: 1 } },
    ["liquorRatio", "baths"],
  ),
  amount(
    "mass·liquorRatio",
    { unit: "L", scale: 1e-3, product: { ...MASS.product, liquorRatio: 1 } },
    ["liquorRatio"],
    ["baths"],
  ),
  amount(
    "mass·baths",
    { unit: "kg", scale: 1e-3, product: { ...MASS.product, baths: 1 } },
    ["baths"],
    ["liquorRatio"],
  ),
  amount("mass", MASS, [], ["liquorRatio", "baths"]),
];

const BY_NAME: ReadonlyMap<string, Amount> = new Map(AMOUNTS.map((entry) => [entry.name, entry]));

/**
 * Finds an amount of the list.
 *
 * @param name - its name, such as `mass·pickup`
 * @returns the amount
 * @throws Error when the list has no such amount: a fault of the step that asks
 */
export function amountNamed(name: string): Amount {
  const found = BY_NAME.get(name);
  if (found === undefined) throw new Error(`No amount is called ${name}.`);
  return found;
}
