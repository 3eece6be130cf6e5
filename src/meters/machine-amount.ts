/**
 * What one machine takes of a carrier.
 */

import { type Carrier, carrierOf } from "../account/calibration.js";
import { fenceOf, unityOf } from "../account/outlet.js";
import type { Program } from "../account/program.js";
import { type Quantity, weighedSum } from "../numbers/quantity.js";
import { product, shortName } from "../steps/algebra.js";

/** MJ in a kWh. */
const MJ_PER_KWH = 3.6;

/** A machine and what it takes. */
export interface MachineAsked {
  /** Site. */
  readonly site: string;
  /** Machine. */
  readonly machine: string;
  /** Carrier. */
  readonly carrier: Carrier;
}

/**
 * What one machine takes of a carrier, over lots as printed.
 *
 * @param program - the program, not corrected
 * @param asked - site, machine and carrier
 * @param amounts - sums of amounts by class
 * @returns L of water, kWh of electricity and gas, kg of steam, MJ of oil heat, Nm³ of air
 */
export function machineAmount(
  program: Program,
  asked: MachineAsked,
  amounts: readonly Float64Array[],
): Quantity {
  const { site, machine, carrier } = asked;
  const at = (node: number): Quantity => program.nodes.list[node]!.quantity;
  const unity = unityOf(program.nodes);
  const sums = new Map<number, Map<number, number>>();
  for (const term of program.terms) {
    const lotClass = program.classes[term.lotClass];
    const amount = amounts[term.lotClass]?.[term.amount] ?? 0;
    if (lotClass === undefined || amount === 0 || term.machine !== machine) continue;
    if (lotClass.key.own !== term.arm || lotClass.key.site !== site) continue;
    if (carrierOf(term.flow) !== carrier) continue;
    const outlet = lotClass.outlets[term.arm];
    const by =
      term.flow === "heat.steam-coil"
        ? outlet.coilSteam
        : term.flow === "heat.electric"
          ? (fenceOf(outlet, term.flow, unity)[0]?.node ?? unity)
          : unity;
    const rates = sums.get(by) ?? new Map<number, number>();
    sums.set(by, rates.set(term.rate, (rates.get(term.rate) ?? 0) + amount));
  }
  const id = `${site}/${machine} ${carrier}`;
  const parts = [...sums].map(([by, rates], i) => {
    const flow = weighedSum(
      `${id}, flow ${i + 1}`,
      "1",
      "Σ amount × rate",
      [...rates].map(([rate, weight]) => ({ of: at(rate), weight })),
    );
    return by === unity ? flow : product(`${id}, part ${i + 1}`, flow, at(by));
  });
  const scale = carrier === "gas" ? 1 / MJ_PER_KWH : 1;
  return weighedSum(
    id,
    "1",
    parts.map(shortName).join(" + "),
    parts.map((of) => ({ of, weight: scale })),
  );
}
