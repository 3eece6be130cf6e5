/**
 * Properties of a blend from those of its fibres, shares taken on conditioned mass.
 */

import { constant, derive, type Quantity } from "../numbers/quantity.js";
import type { ClothKind } from "../steps/step.js";
import type { Asked } from "./quantities.js";

/** A fibre and its share of the conditioned mass. */
export interface Share {
  /** Fibre. */
  readonly fibre: string;
  /** Share. [-] */
  readonly share: number;
}

/**
 * Writes a blend as one word for keys: `cotton 60 polyester 40`.
 *
 * @param blend - fibres and shares
 * @returns the word
 */
export function blendText(blend: readonly Share[]): string {
  return blend.length === 1
    ? (blend[0]?.fibre ?? "")
    : blend.map(({ fibre, share }) => `${fibre} ${Math.round(share * 1000) / 10}`).join(" ");
}

/**
 * Reads a blend back from its word. The word holds tenths of a per cent, so three thirds must be brought
 * up to one again.
 *
 * @param text - as made by `blendText`
 * @returns fibres and shares, which add up to 1
 */
export function blendOf(text: string): readonly Share[] {
  const words = text.split(" ");
  if (words.length === 1) return [{ fibre: text, share: 1 }];
  const shares: Share[] = [];
  for (let i = 0; i + 1 < words.length; i += 2) {
    shares.push({ fibre: words[i] ?? "", share: Number(words[i + 1]) / 100 });
  }
  const sum = shares.reduce((all, { share }) => all + share, 0);
  return shares.map(({ fibre, share }) => ({ fibre, share: share / sum }));
}

/**
 * What the cloth of a blend is like.
 *
 *     dry share = Σ sᵢ/(1 + Rᵢ);   heat capacity = Σ sᵢ cᵢ/(1 + Rᵢ);   regain = 1/dry share − 1
 *
 * @param blend - fibres and shares
 * @param lookup - where fibre factors are found
 * @returns the properties
 */
export function clothKind(blend: readonly Share[], lookup: (asked: Asked) => Quantity): ClothKind {
  const weights = blend.map(({ share }) => constant("share", share, "1", "share of the fibre"));
  const of = (property: string): readonly Quantity[] =>
    blend.map(({ fibre }) => lookup({ id: `fibre.${fibre}.${property}`, owner: "" }));
  const regains = of("regain");
  const n = blend.length;
  // Shares, regains and values come in one list, each n long.
  const weighted = (
    id: string,
    unit: string,
    words: string,
    values: readonly Quantity[],
  ): Quantity =>
    derive(id, unit, words, [...weights, ...regains, ...values], (...numbers) => {
      let sum = 0;
      for (let i = 0; i < n; i++) {
        sum += ((numbers[i] ?? 0) / (1 + (numbers[n + i] ?? 0))) * (numbers[2 * n + i] ?? 1);
      }
      return sum;
    });
  const dryShare = weighted("dry-share", "kg/kg", "Σ s/(1 + R)", []);
  const perDry = (id: string, unit: string, property: string): Quantity => {
    const value = weighted(`${id}-of-fibres`, unit, `Σ s ${property}/(1 + R)`, of(property));
    return derive(
      id,
      unit,
      `Σ s ${property}/(1 + R) / dry share`,
      [value, dryShare],
      (v = 0, d = 1) => v / d,
    );
  };
  return {
    dryShare,
    heatCapacity: weighted("dry-heat-capacity", "kJ/(kg °C)", "Σ s c/(1 + R)", of("heat-capacity")),
    regain: derive("regain", "kg/kg", "1/dry share − 1", [dryShare], (d = 1) => 1 / d - 1),
    wettingHeat: perDry("wetting-heat", "kJ/kg", "wetting-heat"),
    sorptionHeat: perDry("sorption-heat", "kJ/kg", "sorption-heat"),
  };
}
