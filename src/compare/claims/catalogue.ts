/**
 * Claims a print house wants to make, by plain names: which quantity they speak of, and which can never be
 * assessed from a log.
 */

import type { IndicatorId } from "../../account/indicators.js";

/** A claim that can be asked for. */
export interface ClaimKind {
  /** Name in the plant file. */
  readonly id: string;
  /** What is claimed, in plain words. */
  readonly words: string;
  /** Indicator that must be lower on the pigment route; absent where the claim is of another kind. */
  readonly indicator?: IndicatorId;
  /** Evidence that is asked for beside the gates. */
  readonly needs: string;
  /** Why it is never printed, where that is so. */
  readonly refused?: string;
  /** Whether it may leave the house. */
  readonly internal?: true;
}

/** All claims, in the order of a report. */
export const CLAIM_KINDS: readonly ClaimKind[] = [
  {
    id: "less-water",
    words: "less process water",
    indicator: "water",
    needs: "water meters of the printing, steaming and washing steps, for both routes",
  },
  {
    id: "no-wash-off",
    words: "no wash-off step",
    needs: "the route of every lot, with belt, head and floor water still counted",
  },
  {
    id: "less-effluent-load",
    words: "less COD load to the drain",
    indicator: "cod",
    needs: "flow meter and composite samples; load and concentration both shown",
  },
  {
    id: "less-energy",
    words: "less final energy",
    indicator: "energy",
    needs: "gas, steam and electricity meters of the machines, on one heating value",
  },
  {
    id: "less-heat",
    words: "less fuel and bought heat",
    indicator: "heat",
    needs: "gas and steam meters, with pressure and condensate return",
  },
  {
    id: "lower-co2e",
    words: "lower CO2e of scopes 1 and 2",
    indicator: "co2-location",
    needs: "what energy needs, and factors with their year; both bases of scope 2 shown",
  },
  {
    id: "less-nitrogen",
    words: "less nitrogen from urea to the drain",
    indicator: "nitrogen",
    needs: "recipes times laid-down volume, held against stock records",
  },
  {
    id: "less-salt",
    words: "less dissolved salt to the drain",
    indicator: "salt",
    needs: "recipes times laid-down volume, held against stock records",
  },
  {
    id: "less-machine-time",
    words: "less machine time",
    indicator: "hours",
    needs: "run times of the machines, with set-up and stops",
  },
  {
    id: "faster-delivery",
    words: "faster delivery",
    needs: "times of order and dispatch; the log holds days of printing only",
  },
  {
    id: "fewer-rejects",
    words: "fewer rejects",
    needs: "rejected metres of lots of both routes, reprints joined to what they replace",
  },
  {
    id: "yearly-saving",
    words: "a yearly saving of the site",
    needs: "a year before and a year after, both metered and set on one volume of work",
  },
  {
    id: "better-than-competitor",
    words: "better than a competitor",
    needs: "a public comparison asks for a review panel, and the competitor's own figures",
    internal: true,
  },
  {
    id: "better-than-average",
    words: "better than an average of the trade",
    needs: "a source for the average, with year, boundary and technology",
  },
  {
    id: "future-saving",
    words: "a saving by a machine not yet bought",
    needs: "an appraisal for the owner; a forecast is not for publication",
    internal: true,
  },
  {
    id: "renewable-electricity",
    words: "renewable electricity",
    needs: "contract and certificates cancelled for the period and the site",
  },
  {
    id: "within-limit",
    words: "within the limit of a standard",
    needs: "a report of an accredited laboratory on the product",
  },
  {
    id: "same-durability",
    words: "the same durability",
    needs: "rub, wash and light fastness of lots of both routes",
  },
  {
    id: "stressed-basin",
    words: "less water drawn from a stressed basin",
    needs: "a published class of the basin, and withdrawal month by month",
  },
  {
    id: "equivalents",
    words: "so many pools, cars or trees",
    needs: "none would do",
    refused: "Equivalents turn a measured quantity into a picture that no evidence supports.",
  },
];

/** Names of all claims. */
export const CLAIM_IDS: readonly string[] = CLAIM_KINDS.map(({ id }) => id);

/** Claims assessed when the plant file names none: those of page one. */
export const USUAL_CLAIMS: readonly string[] = [
  "less-water",
  "less-effluent-load",
  "less-energy",
  "lower-co2e",
];

/**
 * A claim by its name.
 *
 * @param id - name
 * @returns the claim; undefined when there is none
 */
export function claimKind(id: string): ClaimKind | undefined {
  return CLAIM_KINDS.find((kind) => kind.id === id);
}
