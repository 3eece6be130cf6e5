/**
 * Tariffs as the file has them: each form asks for its own rates.
 */

import type { EffluentTariff } from "./effluent-tariff.js";
import type { TariffText } from "./schema.js";

/** Rates that each form asks for. */
const NEEDED = {
  volume: ["per_m3"],
  mogden: ["reception", "volumetric", "biological", "sludge", "standard_cod", "standard_solids"],
  excess: ["mass"],
} as const satisfies Record<string, readonly (keyof TariffText)[]>;

/** Keys that only some forms know. */
const ALLOWED: Readonly<Record<TariffText["form"], ReadonlySet<string>>> = {
  volume: new Set(["per_m3"]),
  mogden: new Set([...NEEDED.mogden, "biological_volume", "sea_outfall"]),
  excess: new Set(["mass", "per_m3", "bod", "cod", "solids"]),
};

const COMMON = new Set(["form", "from", "currency", "tag", "source", "fixed"]);

/**
 * Reads a tariff.
 *
 * @param text - as written
 * @returns the tariff; or keys that its form misses, or does not know
 */
export function tariffFrom(
  text: TariffText,
):
  | EffluentTariff<number>
  | { readonly missing: readonly string[]; readonly strange: readonly string[] } {
  const missing: string[] = NEEDED[text.form].filter((key) => text[key] === undefined);
  if (text.form === "excess" && !text.bod && !text.cod && !text.solids)
    missing.push("bod, cod or solids");
  const strange = Object.keys(text).filter(
    (key) => !COMMON.has(key) && !ALLOWED[text.form].has(key),
  );
  if (missing.length > 0 || strange.length > 0) return { missing, strange };
  const { fixed, per_m3 = 0 } = text;
  switch (text.form) {
    case "volume":
      return { form: "volume", fixed, per_m3 };
    case "mogden": {
      const { reception = 0, volumetric = 0, biological = 0, sludge = 0 } = text;
      const { standard_cod = NaN, standard_solids = NaN, biological_volume, sea_outfall } = text;
      return {
        form: "mogden",
        fixed,
        reception,
        volumetric,
        biological_volume,
        sea_outfall,
        biological,
        sludge,
        standard_cod,
        standard_solids,
      };
    }
    case "excess": {
      const { mass = "kg", bod, cod, solids } = text;
      return { form: "excess", fixed, mass, per_m3: text.per_m3, bod, cod, solids };
    }
  }
}
