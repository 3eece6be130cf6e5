/**
 * Corrections of machines and boilers by meters, as the program takes them. One correction multiplies all rates
 * of a machine's carrier, on both arms; where water or open steam is corrected, the difference leaves by the
 * drain or as vapour, so that water stays balanced.
 */

import { constant, derive, type Quantity } from "../numbers/quantity.js";
import { shortName } from "../steps/algebra.js";
import type { Outlet } from "./outlet.js";
import type { Program, ProgramTerm } from "./program.js";

/** What a machine takes that meters can tell of. */
export type Carrier = "water" | "electricity" | "gas" | "steam" | "oil" | "air";

const CARRIER_OF: Readonly<Record<string, Carrier>> = {
  "water.process": "water",
  electricity: "electricity",
  "heat.electric": "electricity",
  "heat.burner": "gas",
  "steam.open": "steam",
  "heat.steam-coil": "steam",
  "heat.oil": "oil",
  "air.compressed": "air",
};

/**
 * Carrier that a flow at a machine belongs to.
 *
 * @param flow - name of the flow
 * @returns the carrier; undefined for flows that no meter at a machine counts
 */
export function carrierOf(flow: string): Carrier | undefined {
  return CARRIER_OF[flow];
}

/** A correction with what it rests on. */
export interface Correction {
  /** Number that multiplies rates; 1 changes nothing. */
  readonly factor: Quantity;
  /** `measured` by a meter of the machine, `allocated` from one that others share. */
  readonly by: "measured" | "allocated";
}

/** Corrections of a house. */
export interface Calibration {
  /** Correction of a machine's carrier; undefined where no meter tells of it. */
  readonly of: (site: string, machine: string, carrier: Carrier) => Correction | undefined;
  /** Number that multiplies fuel or bought heat per steam of a site's boiler. */
  readonly boiler: (site: string) => Quantity | undefined;
}

/** A correction as plain data. */
export interface DrawnCorrection extends Pick<Correction, "by"> {
  /** Site. */
  readonly site: string;
  /** Machine; `boiler` for the boiler of a site. */
  readonly machine: string;
  /** Carrier; `boiler` for fuel per steam. */
  readonly carrier: Carrier | "boiler";
  /** What it is called. */
  readonly name: string;
  /** Its draws. [-] */
  readonly draws: Float64Array;
}

/**
 * Corrections whose draws were worked out elsewhere, with the mill they were read from.
 *
 * @param corrections - corrections as plain data
 * @returns the same for programs of as many draws or fewer
 */
export function calibrationOf(corrections: readonly DrawnCorrection[]): Calibration {
  const known = new Map(
    corrections.map(({ site, machine, carrier, name, by, draws }) => {
      const one = constant(`${name} (${site})`, 1, "1", name, "meters.csv");
      return [`${site}|${machine}|${carrier}`, { by, factor: { ...one, drawn: draws } }] as const;
    }),
  );
  return {
    of: (site, machine, carrier) => known.get(`${site}|${machine}|${carrier}`),
    boiler: (site) => known.get(`${site}|boiler|boiler`)?.factor,
  };
}

/**
 * Whether a correction of the boiler multiplies a flow at the fence.
 *
 * @param flow - name of the flow
 * @returns true for fuels and bought steam
 */
export function isBoilerInput(flow: string): boolean {
  return flow.startsWith("fuel.") || flow === "steam.bought";
}

/**
 * A program with its machines and boilers corrected.
 *
 * @param program - as the model has it; it shares its quantities with the result
 * @param calibration - corrections
 * @returns the same classes and terms at corrected rates
 */
export function calibrated(program: Program, calibration: Calibration): Program {
  const { nodes } = program;
  const at = (node: number): Quantity => nodes.list[node]!.quantity;
  const outlets = new Map<Outlet, Outlet>();
  const outletOf = (outlet: Outlet, site: string): Outlet => {
    const boiler = calibration.boiler(site);
    if (boiler === undefined) return outlet;
    let found = outlets.get(outlet);
    if (found === undefined) {
      const fence = new Map(
        [...outlet.fence].map(([flow, list]) => [
          flow,
          carrierOf(flow) !== "steam"
            ? list
            : list.map(({ to, node }) => ({
                to,
                node: isBoilerInput(to) ? nodes.number(corrected(at(node), boiler)) : node,
              })),
        ]),
      );
      outlets.set(outlet, (found = { ...outlet, fence }));
    }
    return found;
  };
  const classes = program.classes.map((lotClass) => {
    const { outlets: both, key } = lotClass;
    return {
      ...lotClass,
      outlets: { pigment: outletOf(both.pigment, key.site), dye: outletOf(both.dye, key.site) },
    };
  });
  const terms = program.terms.flatMap((term): readonly ProgramTerm[] => {
    const carrier = carrierOf(term.flow);
    const site = program.classes[term.lotClass]?.key.site ?? "";
    const correction =
      carrier === undefined ? undefined : calibration.of(site, term.machine, carrier);
    if (correction === undefined) return [term];
    const { factor, by } = correction;
    return correctedFlows({ ...term, rate: at(term.rate) }, factor).map(({ flow, rate }) => ({
      ...term,
      flow,
      rate: nodes.number(rate),
      known: by,
    }));
  });
  return { ...program, classes, terms };
}

/**
 * A rate corrected.
 *
 * @param rate - rate of the model
 * @param factor - the correction
 * @returns rate × correction, under the name of the rate
 */
function corrected(rate: Quantity, factor: Quantity): Quantity {
  return {
    ...derive(
      shortName(rate),
      rate.unit,
      `${rate.kind === "leaf" ? rate.factor : rate.words} × ${shortName(factor)}`,
      [rate, factor],
      (r = 0, by = 1) => r * by,
    ),
    multiplies: true,
  };
}

// Water that a meter adds to the model has to leave: by the drain, or from a steamer as vapour; where it finds
// less, less leaves.
function correctedFlows(
  { flow, rate, kind }: { readonly flow: string; readonly rate: Quantity; readonly kind: string },
  factor: Quantity,
): readonly { readonly flow: string; readonly rate: Quantity }[] {
  const all = [{ flow, rate: corrected(rate, factor) }];
  if (flow !== "water.process" && flow !== "steam.open") return all;
  const drained = flow === "water.process" || kind === "wash-range";
  return [
    ...all,
    { flow: drained ? "water.drained" : "water.evaporated", rate: surplus(rate, factor) },
  ];
}

function surplus(rate: Quantity, factor: Quantity): Quantity {
  return derive(
    `${shortName(rate)}, corrected part`,
    rate.unit,
    `${rate.kind === "leaf" ? rate.factor : rate.words} × (${shortName(factor)} − 1)`,
    [rate, factor],
    (r = 0, by = 1) => r * (by - 1),
  );
}
