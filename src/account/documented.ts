/**
 * How much of a quantity rests on something that can be looked up: the mill's own settings, or factors with
 * a published source.
 */

import { leavesOf, type Leaf } from "../numbers/quantity.js";
import type { Workflow } from "../plant/shipped-routes.js";
import type { Account, BrokenDown } from "./account.js";
import { weightedShare } from "./breakdown.js";

/** Sources that are no publication. */
const UNPUBLISHED: ReadonlySet<string> = new Set(["own-estimate", "common-practice"]);

/**
 * Share of an indicator on one arm that is documented, weighted by what each term adds. A term counts by the
 * share of its settings and factors that are documented; one without any multiplies a logged value and
 * counts in full.
 *
 * @param account - the account
 * @param id - the indicator
 * @param arm - the arm
 * @returns share from 0 to 1; 0 when the arm takes nothing
 */
export function documentedOf(account: Account, id: BrokenDown, arm: Workflow): number {
  return weightedShare(account, id, arm, (term) =>
    term.known === "measured" ? 1 : documentedShare(account, term.rate),
  );
}

function documentedShare(account: Account, rate: number): number {
  const quantity = account.program.nodes.list[rate]?.quantity;
  if (quantity === undefined) return 0;
  const leaves = leavesOf(quantity).filter(({ provenance }) => provenance !== "constant");
  return leaves.length === 0 ? 1 : leaves.filter(isDocumented).length / leaves.length;
}

function isDocumented({ provenance, source }: Leaf): boolean {
  return provenance === "plant" || !UNPUBLISHED.has(source);
}
