/**
 * Means of draws by step, by provenance, by group of lots and by lot. Means add up; medians do not.
 */

import type { Group } from "../ledger/ledger.js";
import type { LedgerKey } from "../ledger/key.js";
import { leavesOf } from "../numbers/quantity.js";
import type { Workflow } from "../plant/shipped-routes.js";
import { type Account, type BrokenDown, coefficientsOf } from "./account.js";
import type { ProgramTerm } from "./program.js";

/** Mean of an indicator for one step on both arms. */
export interface StepMean {
  /** Role of the step. */
  readonly role: string;
  /** Mean on the pigment arm. */
  readonly pigment: number;
  /** Mean on the dye arm. */
  readonly dye: number;
}

/**
 * Means by step, in the order in which cloth takes them.
 *
 * @param account - the account
 * @param id - the indicator
 * @returns means that add up to the total means
 */
export function byStep(account: Account, id: BrokenDown): readonly StepMean[] {
  const sums = new Map<string, { pigment: number; dye: number }>();
  for (const role of rolesOf(account)) sums.set(role, { pigment: 0, dye: 0 });
  for (const { term, mean } of account.parts.get(id) ?? []) {
    const sum = sums.get(term.role);
    if (sum !== undefined) sum[term.arm] += mean;
  }
  return [...sums].map(([role, sum]) => ({ role, ...sum }));
}

/**
 * Mean of an indicator for the time in which machines wait: kept hot, warmed up or on standby. It is part of
 * the means by step.
 *
 * @param account - the account
 * @param id - the indicator
 * @returns mean on each arm
 */
export function waitingOf(
  account: Account,
  id: BrokenDown,
): { readonly pigment: number; readonly dye: number } {
  const sum = { pigment: 0, dye: 0 };
  for (const { term, mean } of account.parts.get(id) ?? []) {
    if (term.part === "waiting") sum[term.arm] += mean;
  }
  return sum;
}

/**
 * Roles of all steps, those of both arms interleaved in order.
 *
 * @param account - the account
 * @returns roles, each once
 */
function rolesOf(account: Account): readonly string[] {
  const roles: string[] = [];
  for (const { arms } of account.program.classes) {
    for (const arm of [arms.dye, arms.pigment]) {
      let after = -1;
      for (const { role } of arm.steps) {
        const at = roles.indexOf(role);
        if (at < 0) roles.splice(++after, 0, role);
        else after = at;
      }
    }
  }
  return roles;
}

/** Shares of provenance. */
export interface Shares {
  /** From a lot reading or a meter. */
  readonly measured: number;
  /** From a meter shared between lots. */
  readonly allocated: number;
  /** Worked out with the mill's own settings. */
  readonly modelled: number;
  /** Worked out with shipped defaults. */
  readonly default: number;
}

/**
 * Provenance of an indicator on one arm, weighted by what each term adds. A term that meters correct counts as
 * measured or allocated. Any other counts as modelled by the share of its settings that the mill gave, logged
 * settings included, and as default for the rest.
 *
 * @param account - the account
 * @param id - the indicator
 * @param arm - the arm
 * @returns shares adding to 1
 */
export function provenanceOf(account: Account, id: BrokenDown, arm: Workflow): Shares {
  const known = (what: ProgramTerm["known"]): number =>
    weightedShare(account, id, arm, (term) => (term.known === what ? 1 : 0));
  const [measured, allocated] = [known("measured"), known("allocated")];
  const modelled = weightedShare(account, id, arm, (term) =>
    term.known === undefined ? ownShare(account, term.rate) : 0,
  );
  return {
    measured,
    allocated,
    modelled,
    default: Math.max(0, 1 - measured - allocated - modelled),
  };
}

/**
 * Share of an indicator on one arm that has a property of terms, weighted by what each adds.
 *
 * @param account - the account
 * @param id - the indicator
 * @param arm - the arm
 * @param shareOf - share of a term that has the property; asked for once a rate and kind of knowledge
 * @returns share from 0 to 1; 0 when the arm takes nothing
 */
export function weightedShare(
  account: Account,
  id: BrokenDown,
  arm: Workflow,
  shareOf: (term: ProgramTerm) => number,
): number {
  let having = 0;
  let all = 0;
  const shares = new Map<string, number>();
  for (const { term, mean } of account.parts.get(id) ?? []) {
    if (term.arm !== arm) continue;
    const key = `${term.rate}|${term.known ?? ""}`;
    let share = shares.get(key);
    if (share === undefined) shares.set(key, (share = shareOf(term)));
    having += Math.abs(mean) * share;
    all += Math.abs(mean);
  }
  return all > 0 ? having / all : 0;
}

// Constants and world facts (fibres, fuels, steam) are no settings: they count for neither side.
function ownShare(account: Account, rate: number): number {
  const quantity = account.program.nodes.list[rate]?.quantity;
  if (quantity === undefined) return 0;
  const settings = leavesOf(quantity).filter(
    (leaf) =>
      leaf.provenance === "plant" || (leaf.provenance === "default" && leaf.id.includes(" @ ")),
  );
  // A rate without settings multiplies a logged value: all of it is the mill's own.
  if (settings.length === 0) return 1;
  return settings.filter((leaf) => leaf.provenance === "plant").length / settings.length;
}

/** Sums and means of some groups. */
export interface GroupMean {
  /** Lots. */
  readonly lots: number;
  /** Accepted area. [m²] */
  readonly accepted: number;
  /** Mean on the pigment arm. */
  readonly pigment: number;
  /** Mean on the dye arm. */
  readonly dye: number;
  /** Mean of what the mill really did, by the workflow the lots took. */
  readonly actual: { readonly pigment: number; readonly dye: number };
  /** Accepted area by the workflow the lots took. [m²] */
  readonly actualArea: { readonly pigment: number; readonly dye: number };
  /** Lots by the workflow they took. */
  readonly actualLots: { readonly pigment: number; readonly dye: number };
}

/**
 * Means of an indicator by a property of the groups.
 *
 * @param account - the account
 * @param groups - groups of the ledger
 * @param id - the indicator
 * @param by - property to break down by
 * @param accepted - place of the accepted area in the amounts
 * @returns means by value of the property, sorted
 */
export function byGroup(
  account: Account,
  groups: readonly Group[],
  id: BrokenDown,
  by: (key: LedgerKey) => string,
  accepted: number,
): ReadonlyMap<string, GroupMean> {
  const of = coefficientsOf(account, id);
  const sums = new Map<string, GroupMean>();
  for (const group of groups) {
    const lotClass = account.program.classOf(group.key);
    if (lotClass === undefined) continue;
    const pigment = dot(of(lotClass, "pigment"), group.amounts);
    const dye = dot(of(lotClass, "dye"), group.amounts);
    const { own } = group.key;
    const area = group.amounts[accepted] ?? 0;
    const name = by(group.key);
    const before = sums.get(name) ?? EMPTY;
    const mine = own === "pigment" ? pigment : dye;
    sums.set(name, {
      lots: before.lots + group.lots,
      accepted: before.accepted + area,
      pigment: before.pigment + pigment,
      dye: before.dye + dye,
      actual: { ...before.actual, [own]: before.actual[own] + mine },
      actualArea: { ...before.actualArea, [own]: before.actualArea[own] + area },
      actualLots: { ...before.actualLots, [own]: before.actualLots[own] + group.lots },
    });
  }
  return new Map([...sums].sort(([a], [b]) => (a < b ? -1 : 1)));
}

const NONE = { pigment: 0, dye: 0 };
const EMPTY: GroupMean = {
  lots: 0,
  accepted: 0,
  pigment: 0,
  dye: 0,
  actual: NONE,
  actualArea: NONE,
  actualLots: NONE,
};

/**
 * Mean of an indicator for sums of amounts.
 *
 * @param coefficients - mean per unit of each amount
 * @param amounts - the sums
 * @returns the mean
 */
export function dot(coefficients: ArrayLike<number>, amounts: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < amounts.length; i++) sum += (coefficients[i] ?? 0) * (amounts[i] ?? 0);
  return sum;
}
