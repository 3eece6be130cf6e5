/**
 * The last water on a fibre is bound: taking it off costs more than evaporation alone.
 */

import { InputError, within } from "../problems/input-error.js";

/**
 * Heat it takes, above that of evaporation, to bring cloth from moisture X to bone dry; or, seen the other
 * way, heat set free when bone-dry cloth is wetted to saturation, less what is free already at X.
 *
 *     D(X) = q_w (1 − X / X_s)²   below X_s = 2 q_w / q₀,   0 above
 *
 * The parabola starts at the heat of wetting q_w and with the slope −q₀, the two figures fibre handbooks
 * print, and ends level at X_s. Going from X₁ down to X₂ costs D(X₂) − D(X₁).
 *
 * @param X - moisture, from 0 [kg water / kg bone dry]
 * @param wettingHeat - q_w, heat of wetting from bone dry, from 0 [kJ/kg bone dry]
 * @param sorptionHeat - q₀, differential heat of sorption at zero moisture, above 0 [kJ/kg water]
 * @returns D [kJ/kg bone dry]
 * @throws {@link InputError} outside those ranges
 * @see W. E. Morton and J. W. S. Hearle, Physical Properties of Textile Fibres, 4th ed., 2008, ch. 8, for
 *   both heats; the parabola is our own
 */
export function desorptionHeat(X: number, wettingHeat: number, sorptionHeat: number): number {
  within("moisture of cloth", X, 0, 20, "kg water per kg bone dry");
  within("heat of wetting", wettingHeat, 0, 1000, "kJ per kg bone dry");
  if (!(sorptionHeat > 0)) {
    throw new InputError("heat of sorption", sorptionHeat, "expected above 0 kJ per kg water");
  }
  const bound = (2 * wettingHeat) / sorptionHeat;
  return X < bound ? wettingHeat * (1 - X / bound) ** 2 : 0;
}
