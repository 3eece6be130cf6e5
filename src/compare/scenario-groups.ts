/**
 * Groups of the ledger as a scenario has them: other arms, and other rejects. What the lots were logged with stays.
 */

import type { LedgerKey } from "../ledger/key.js";
import type { Group } from "../ledger/ledger.js";
import { blendOf } from "../plant/cloth-kind.js";
import { armsOf } from "../plant/counterpart.js";
import { plantUnder } from "../plant/dated.js";
import type { Plant, Scenario } from "../plant/plant.js";
import { AMOUNTS } from "../steps/amounts.js";

const PRINTED = AMOUNTS.findIndex(({ name }) => name === "printed");
const ACCEPTED = AMOUNTS.findIndex(({ name }) => name === "accepted");

/**
 * Groups with the arms that the scenario's counterparts and routes give them. The same lots are compared as at
 * the mill: those without counterpart there have none here, and those with one keep it where the scenario
 * gives none.
 *
 * @param scenario - the house under the scenario, and routes taken instead of others
 * @param groups - groups of the ledger
 * @returns the same groups in the same order
 */
export function armsUnder(
  scenario: Pick<Scenario, "plant" | "instead">,
  groups: readonly Group[],
): readonly Group[] {
  const known = new Map<string, Pick<LedgerKey, "pigment" | "dye">>();
  return groups.map((group) => {
    const { key } = group;
    if (key.pigment === "") return group;
    const text = JSON.stringify([key.settings, key.route, key.blend]);
    let arms = known.get(text);
    if (arms === undefined) known.set(text, (arms = armsOfKey(scenario, key)));
    return { ...group, key: { ...key, ...arms } };
  });
}

function armsOfKey(
  { plant, instead }: Pick<Scenario, "plant" | "instead">,
  key: LedgerKey,
): Pick<LedgerKey, "pigment" | "dye"> {
  const then: Plant = plantUnder(plant, key.settings);
  const route = then.routes[key.route];
  const arms = route === undefined ? undefined : armsOf(then, route, blendOf(key.blend));
  const names =
    arms === undefined || "without" in arms
      ? key
      : { pigment: arms.pigment.name, dye: arms.dye.name };
  const taken = (name: string): string => {
    const other = Object.hasOwn(instead, name) ? instead[name] : undefined;
    return other !== undefined && Object.hasOwn(then.routes, other) ? other : name;
  };
  return { pigment: taken(names.pigment), dye: taken(names.dye) };
}

/**
 * Groups with rejects as a multiple of those logged: accepted = printed − times × (printed − accepted).
 * Reprints and overhead stay as they were: no reprint is invented for a reject that did not happen.
 *
 * @param groups - groups of the ledger
 * @param times - the multiple
 * @returns the same groups in the same order
 */
export function rejectsUnder(groups: readonly Group[], times: number): readonly Group[] {
  if (times === 1) return groups;
  return groups.map((group) => {
    if (group.key.kind !== "production") return group;
    const amounts = Float64Array.from(group.amounts);
    const printed = amounts[PRINTED] ?? 0;
    amounts[ACCEPTED] = printed - times * (printed - (amounts[ACCEPTED] ?? 0));
    return { ...group, amounts };
  });
}

/**
 * Accepted area of the lots compared.
 *
 * @param groups - groups of the ledger
 * @returns area [m²]
 */
export function acceptedOf(groups: readonly Group[]): number {
  return groups
    .filter(({ key }) => key.pigment !== "")
    .reduce((total, { amounts }) => total + (amounts[ACCEPTED] ?? 0), 0);
}
