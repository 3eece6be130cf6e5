/**
 * What the gates judge by, gathered from an account and its groups of lots.
 */

import { type Account, BROKEN_DOWN, type BrokenDown } from "../../account/account.js";
import { provenanceOf } from "../../account/breakdown.js";
import { documentedOf } from "../../account/documented.js";
import type { IndicatorId } from "../../account/indicators.js";
import type { Group } from "../../ledger/ledger.js";
import type { Workflow } from "../../plant/shipped-routes.js";
import { AMOUNTS } from "../../steps/amounts.js";
import type { Comparison } from "../compare.js";
import type { ClaimKind } from "./catalogue.js";
import type { Audience, ClaimEvidence } from "./gates.js";

/** What is known of a report beside its account. */
export interface ClaimSetting {
  /** The account. */
  readonly account: Account;
  /** Groups of lots in the report. */
  readonly groups: readonly Group[];
  /** Comparisons by indicator. */
  readonly comparisons: ReadonlyMap<IndicatorId, Comparison>;
  /** Gap between meters and lots by quantity, as a share of the meter. */
  readonly gaps: ReadonlyMap<"water" | "electricity" | "gas", number>;
  /** Whether fastness is known for lots of each route. */
  readonly fastness: { readonly pigment: boolean; readonly dye: boolean };
  /** For whom. */
  readonly audience: Audience;
  /** Statement of a review. */
  readonly review: string | undefined;
}

/** Indicators of which a rise must be named. */
export const WATCHED_RISES: readonly IndicatorId[] = [
  "water",
  "discharged",
  "cod",
  "nitrogen",
  "salt",
  "energy",
  "electricity",
  "heat",
  "co2-location",
  "co2-market",
  "carbon-to-air",
  "formaldehyde",
  "paper",
  "cost",
];

/** Meters that say something of an indicator. */
const METERS: Readonly<Partial<Record<IndicatorId, readonly ("water" | "electricity" | "gas")[]>>> =
  {
    water: ["water"],
    energy: ["electricity", "gas"],
    electricity: ["electricity"],
    heat: ["gas"],
    "co2-location": ["electricity", "gas"],
  };

const ACCEPTED = AMOUNTS.findIndex(({ name }) => name === "accepted");

/**
 * Gathers the evidence for a claim.
 *
 * @param kind - the claim
 * @param setting - the report
 * @returns evidence for its gates
 */
export function evidenceOf(kind: ClaimKind, setting: ClaimSetting): ClaimEvidence {
  const { account, groups, comparisons, fastness, audience, review } = setting;
  const compared = groups.filter(({ key }) => key.pigment !== "" && key.kind === "production");
  const lots = (own: Workflow): number =>
    compared.reduce((sum, group) => sum + (group.key.own === own ? group.lots : 0), 0);
  const area = (some: readonly Group[]): number =>
    some.reduce((sum, { amounts }) => sum + (amounts[ACCEPTED] ?? 0), 0);
  const all = area(compared);
  // A dye route of one class colours one fibre of a blend.
  const blends = compared.filter(({ key }) => key.blend.includes(" "));
  const id = kind.indicator;
  const broken = BROKEN_DOWN.find((one): one is BrokenDown => one === id);
  const onArms = (of: (id: BrokenDown, arm: Workflow) => number): ClaimEvidence["measured"] =>
    broken === undefined
      ? { pigment: 0, dye: 0 }
      : { pigment: of(broken, "pigment"), dye: of(broken, "dye") };
  return {
    lots: { pigment: lots("pigment"), dye: lots("dye") },
    months: new Set(compared.map(({ key }) => key.month)).size,
    measured: onArms((one, arm) => {
      const { measured, allocated } = provenanceOf(account, one, arm);
      return measured + allocated;
    }),
    documented: onArms((one, arm) => documentedOf(account, one, arm)),
    gap: widest(setting.gaps, id === undefined ? [] : (METERS[id] ?? [])),
    saving: id === undefined ? undefined : comparisons.get(id)?.saving,
    fastness,
    blends: all > 0 ? area(blends) / all : 0,
    rises: WATCHED_RISES.filter((one) => (comparisons.get(one)?.difference.high ?? 0) < 0),
    audience,
    review,
    banned: [],
  };
}

// All meters that a quantity needs must be there; the widest gap counts.
function widest(
  gaps: ClaimSetting["gaps"],
  needed: readonly ("water" | "electricity" | "gas")[],
): number | undefined {
  if (needed.length === 0) return undefined;
  let most = 0;
  for (const one of needed) {
    const gap = gaps.get(one);
    if (gap === undefined) return undefined;
    most = Math.max(most, Math.abs(gap));
  }
  return most;
}
