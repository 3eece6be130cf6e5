/**
 * Charges for effluent, as tariffs by date. A tariff is a function of the volume and the strength of what is let go.
 *
 *     volume    C = fixed + V · rate
 *     strength  C = fixed + V · (R + [V̇ + Bv, or M] + B · Ot/Os + S · St/Ss)
 *     excess    C = fixed + V · rate + mass of V · Σ rateᵢ · max(0, cᵢ − limitᵢ)
 *
 * The strength form is the one known as Mogden's: R reception, V̇ volumetric and primary treatment, Bv further
 * volumetric treatment where it is biological, M sea outfall, B biological treatment and S sludge at standard
 * strength; Ot is the COD after settlement and St the suspended solids of the effluent, both at pH 7, Os and Ss
 * those of standard sewage. The 7 that some pages print behind the last fraction belongs to the pH.
 */

import type { Arithmetic } from "./arithmetic.js";

/** How strong effluent is. [mg/L] */
export interface Strength<T> {
  /** Chemical oxygen demand of the raw effluent. */
  readonly cod: T;
  /** Chemical oxygen demand after an hour of settlement. */
  readonly settled: T;
  /** Biochemical oxygen demand. */
  readonly bod: T;
  /** Suspended solids. */
  readonly solids: T;
}

/** Charge by volume alone. */
export interface VolumeTariff<P> {
  /** Form. */
  readonly form: "volume";
  /** Money per m³. */
  readonly per_m3: P;
}

/** Charge by strength against standard sewage. */
export interface StrengthTariff<P> {
  /** Form. */
  readonly form: "mogden";
  /** Reception and conveyance. [money/m³] */
  readonly reception: P;
  /** Volumetric and primary treatment. [money/m³] */
  readonly volumetric: P;
  /** Further volumetric treatment where it is biological. [money/m³] */
  readonly biological_volume?: P | undefined;
  /** Treatment and disposal by a sea outfall, instead of both volumetric parts. [money/m³] */
  readonly sea_outfall?: P | undefined;
  /** Biological treatment at standard strength. [money/m³] */
  readonly biological: P;
  /** Sludge at standard strength. [money/m³] */
  readonly sludge: P;
  /** COD of settled standard sewage. [mg/L] */
  readonly standard_cod: P;
  /** Suspended solids of standard sewage. [mg/L] */
  readonly standard_solids: P;
}

/** A charge on what exceeds a strength. */
export interface ExcessRate<P> {
  /** Strength that goes free. [mg/L] */
  readonly above: P;
  /** Money per mass. */
  readonly rate: P;
}

/** Charge on what exceeds strengths. */
export interface ExcessTariff<P> {
  /** Form. */
  readonly form: "excess";
  /** Money per m³, whatever the strength. */
  readonly per_m3?: P | undefined;
  /** Unit of the mass; `lb` takes 8.34 lb per million US gallons and mg/L, as such tariffs print it. */
  readonly mass: "kg" | "lb";
  /** On biochemical oxygen demand. */
  readonly bod?: ExcessRate<P> | undefined;
  /** On chemical oxygen demand, instead of that on BOD where COD/BOD exceeds a ratio; always where none is given. */
  readonly cod?: (ExcessRate<P> & { readonly ratio?: P | undefined }) | undefined;
  /** On suspended solids. */
  readonly solids?: ExcessRate<P> | undefined;
}

/** A tariff. */
export type EffluentTariff<P> = (VolumeTariff<P> | StrengthTariff<P> | ExcessTariff<P>) & {
  /** Money per year, whatever is let go. */
  readonly fixed?: P | undefined;
};

/** A part of a charge. */
export interface ChargePart<T> {
  /** What it is for. */
  readonly part: string;
  /** Money per m³; absent for a fixed part. */
  readonly per?: T;
  /** Money. */
  readonly money: T;
}

/** Litres of a US gallon, and pounds of a million of them for each mg/L, as American tariffs print it. */
const US_GALLON = 3.785411784;
const POUNDS = 8.34;

/**
 * Works a charge out, part by part.
 *
 * @param math - arithmetic
 * @param tariff - the tariff, its numbers in that arithmetic
 * @param volume - volume let go [m³]
 * @param strength - its strength
 * @returns parts that add up to the charge
 */
export function effluentParts<T>(
  math: Arithmetic<T>,
  tariff: EffluentTariff<T>,
  volume: T,
  strength: Strength<T>,
): readonly ChargePart<T>[] {
  const fixed = tariff.fixed === undefined ? [] : [{ part: "fixed", money: tariff.fixed }];
  const of = (part: string, per: T): ChargePart<T> => ({
    part,
    per,
    money: math.times(volume, per),
  });
  switch (tariff.form) {
    case "volume":
      return [...fixed, of("volume", tariff.per_m3)];
    case "mogden":
      return [...fixed, ...byStrength(math, tariff, strength).map(([part, per]) => of(part, per))];
    case "excess":
      return [...fixed, ...byExcess(math, tariff, strength).map(([part, per]) => of(part, per))];
  }
}

function byStrength<T>(
  math: Arithmetic<T>,
  tariff: StrengthTariff<T>,
  { settled, solids }: Strength<T>,
): readonly (readonly [string, T])[] {
  const treated: readonly (readonly [string, T])[] =
    tariff.sea_outfall === undefined
      ? [
          ["volumetric (V)", tariff.volumetric],
          ...(tariff.biological_volume === undefined
            ? []
            : [["biological volume (Bv)", tariff.biological_volume] as const]),
        ]
      : [["sea outfall (M)", tariff.sea_outfall]];
  const scaled = (rate: T, found: T, standard: T): T =>
    math.over(math.times(rate, found), standard);
  return [
    ["reception (R)", tariff.reception],
    ...treated,
    ["biological (B · Ot/Os)", scaled(tariff.biological, settled, tariff.standard_cod)],
    ["sludge (S · St/Ss)", scaled(tariff.sludge, solids, tariff.standard_solids)],
  ];
}

function byExcess<T>(
  math: Arithmetic<T>,
  tariff: ExcessTariff<T>,
  { cod, bod, solids }: Strength<T>,
): readonly (readonly [string, T])[] {
  const mass = tariff.mass === "kg" ? 1e-3 : POUNDS / (1e3 * US_GALLON);
  const excess = (found: T, { above, rate }: ExcessRate<T>): T => {
    const over = math.minus(found, above);
    if (!(math.number(over) > 0)) return math.of(0);
    return math.times(math.times(math.of(mass), rate), over);
  };
  const byCod =
    tariff.cod !== undefined &&
    (tariff.cod.ratio === undefined ||
      math.number(cod) > math.number(tariff.cod.ratio) * math.number(bod));
  return [
    ...(tariff.per_m3 === undefined ? [] : [["volume", tariff.per_m3] as const]),
    ...(byCod
      ? [["excess COD", excess(cod, tariff.cod)] as const]
      : tariff.bod === undefined
        ? []
        : [["excess BOD", excess(bod, tariff.bod)] as const]),
    ...(tariff.solids === undefined
      ? []
      : [["excess solids", excess(solids, tariff.solids)] as const]),
  ];
}

/**
 * The tariff in force on a day.
 *
 * @param tariffs - tariffs with the first day of each, in any order
 * @param day - day as ISO 8601
 * @returns the newest that has begun; the oldest where none has
 */
export function tariffOn<K extends { readonly from: string }>(
  tariffs: readonly K[],
  day: string,
): K | undefined {
  const sorted = [...tariffs].sort((a, b) => (a.from < b.from ? -1 : 1));
  return sorted.findLast(({ from }) => from <= day) ?? sorted[0];
}

/**
 * A tariff with its numbers taken over by some rule.
 *
 * @param tariff - the tariff
 * @param of - the rule
 * @returns the same form with other numbers
 */
export function tariffBy<P, T>(
  tariff: EffluentTariff<P>,
  of: (price: P, key: string) => T,
): EffluentTariff<T> {
  const maybe = (price: P | undefined, key: string): T | undefined =>
    price === undefined ? undefined : of(price, key);
  const rate = (one: ExcessRate<P> | undefined, key: string): ExcessRate<T> | undefined =>
    one === undefined
      ? undefined
      : { above: of(one.above, `${key}.above`), rate: of(one.rate, `${key}.rate`) };
  const fixed = maybe(tariff.fixed, "fixed");
  switch (tariff.form) {
    case "volume":
      return { form: "volume", fixed, per_m3: of(tariff.per_m3, "per_m3") };
    case "mogden":
      return {
        form: "mogden",
        fixed,
        reception: of(tariff.reception, "reception"),
        volumetric: of(tariff.volumetric, "volumetric"),
        biological_volume: maybe(tariff.biological_volume, "biological_volume"),
        sea_outfall: maybe(tariff.sea_outfall, "sea_outfall"),
        biological: of(tariff.biological, "biological"),
        sludge: of(tariff.sludge, "sludge"),
        standard_cod: of(tariff.standard_cod, "standard_cod"),
        standard_solids: of(tariff.standard_solids, "standard_solids"),
      };
    case "excess": {
      const cod = rate(tariff.cod, "cod");
      return {
        form: "excess",
        fixed,
        mass: tariff.mass,
        per_m3: maybe(tariff.per_m3, "per_m3"),
        bod: rate(tariff.bod, "bod"),
        cod:
          cod === undefined ? undefined : { ...cod, ratio: maybe(tariff.cod?.ratio, "cod.ratio") },
        solids: rate(tariff.solids, "solids"),
      };
    }
  }
}
