/** The drying balance for one whole lot in plain numbers, its burner solved by halving: the judge of the terms. */

/** Everything the balance asks for. */
export interface DryerLot {
  /** Conditioned cloth. [kg] */
  readonly mass: number;
  /** Bone-dry share and heat capacity of the fibres per conditioned cloth, heats of wetting and sorption. */
  readonly fibres: {
    readonly dryShare: number;
    readonly heatCapacity: number;
    readonly wettingHeat: number;
    readonly sorptionHeat: number;
  };
  /** Moisture in and out. [kg/kg bone dry] */
  readonly X1: number;
  readonly X2: number;
  /** Cloth in and out, hall and exhaust. [°C] */
  readonly t1: number;
  readonly t2: number;
  readonly tHall: number;
  readonly tExhaust: number;
  /** Hall air. [kg/kg] */
  readonly W1: number;
  /** Exhaust humidity [kg/kg], dry air in all [kg], or neither. */
  readonly air: { readonly W2: number } | { readonly kilograms: number } | undefined;
  readonly recovery: number;
  /** Standing loss of the whole lot. [MJ] */
  readonly standing: number;
  /** Vapour and efficiency of a burner; absent for indirect heat. */
  readonly burner?: { readonly vapour: number; readonly efficiency: number };
}

/** Heat drawn for the lot. [MJ] */
export function dryerHeat(lot: DryerLot): number {
  const m = lot.mass * lot.fibres.dryShare;
  const w = m * (lot.X1 - lot.X2);
  const vapour = lot.burner?.vapour ?? 0;
  const needed = (Q: number): number => {
    let dryAir = 0;
    if (lot.air !== undefined) {
      dryAir = "W2" in lot.air ? (w + vapour * Q) / (lot.air.W2 - lot.W1) : lot.air.kilograms;
    }
    const own = lot.air === undefined ? 0 : vapour * Q;
    const kilojoules =
      dryAir * (1.006 + 1.86 * lot.W1) * (lot.tExhaust - lot.tHall) * (1 - lot.recovery) +
      own * 1.86 * (lot.tExhaust - lot.tHall) +
      w * (2501 + 1.86 * lot.tExhaust - 4.186 * lot.t1) +
      (lot.mass * lot.fibres.heatCapacity + m * 4.186 * lot.X2) * (lot.t2 - lot.t1) +
      m * (bound(lot.X2, lot) - bound(lot.X1, lot));
    return kilojoules / 1000 + lot.standing;
  };
  let low = -1e7;
  let high = 1e7;
  for (let step = 0; step < 200; step++) {
    const middle = (low + high) / 2;
    if (needed(middle) > middle) low = middle;
    else high = middle;
  }
  return high / (lot.burner?.efficiency ?? 1);
}

function bound(X: number, { fibres }: DryerLot): number {
  const saturation = (2 * fibres.wettingHeat) / fibres.sorptionHeat;
  return X < saturation ? fibres.wettingHeat * (1 - X / saturation) ** 2 : 0;
}
