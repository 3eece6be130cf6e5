/**
 * Claims of a report: which are asked for, by which policy, and what they come to.
 */

import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { judgeClaim } from "../compare/claims/assess.js";
import { CLAIM_IDS, claimKind, USUAL_CLAIMS } from "../compare/claims/catalogue.js";
import { type ClaimSetting, evidenceOf } from "../compare/claims/evidence.js";
import type { Audience } from "../compare/claims/gates.js";
import { type ClaimPolicy, ClaimPolicySchema, policyChanges } from "../compare/claims/policy.js";
import { LEAST_DIFFERENCE } from "../compare/methods.js";
import { nearest } from "../factors/nearest.js";
import { judgeBy } from "../factors/schema-problems.js";
import { readYaml } from "../factors/yaml-text.js";
import type { MeterMonthSeries } from "../meters/series.js";
import type { Problem } from "../problems/problem.js";
import type { ClaimsInput } from "../report/compose/claims.js";
import { fastnessKnown } from "../report/compose/equivalence.js";
import type { ReportInput } from "../report/compose/input.js";
import { shippedFolder } from "./files.js";
import type { Workspace } from "./workspace.js";

/** Name of a policy file. */
const POLICY = "claim-policy.yaml";

/**
 * Judges the claims of a mill.
 *
 * @param mill - the mill
 * @param input - the report without its claims
 * @param audience - for whom
 * @returns verdicts, or the problems in the list of claims or the policy
 */
export function claimsOf(
  mill: Workspace,
  input: ReportInput,
  audience: Audience,
): { readonly claims?: ClaimsInput; readonly problems: readonly Problem[] } {
  const asked = mill.plant.text.claims ?? USUAL_CLAIMS;
  const unknown = asked.filter((id) => claimKind(id) === undefined);
  if (unknown.length > 0) return { problems: unknown.map(noClaim) };
  const shipped = readPolicy(shippedFolder("templates"));
  const own = existsSync(join(mill.folder, POLICY)) ? readPolicy(mill.folder) : shipped;
  if (shipped.policy === undefined || own.policy === undefined)
    return { problems: [...shipped.problems, ...own.problems] };
  const { policy } = own;
  const setting: ClaimSetting = {
    account: input.account,
    groups: input.groups,
    comparisons: input.comparisons,
    gaps: gapsOf(input.meters),
    fastness: fastnessKnown(input),
    audience,
    review: mill.plant.text.review,
  };
  return {
    claims: {
      verdicts: asked.flatMap((id) => {
        const kind = claimKind(id);
        return kind === undefined
          ? []
          : [judgeClaim(id, evidenceOf(kind, setting), policy, input.days[1])];
      }),
      policy: policy.version,
      least: policy.least_difference ?? LEAST_DIFFERENCE,
      changes: policyChanges(shipped.policy, policy),
    },
    problems: [],
  };
}

/**
 * Policy of a folder: its own, or the shipped one where it has none.
 *
 * @param folder - folder of the plant file
 * @returns policy and whether it is the folder's own, or what is wrong with the file
 */
export function policyOf(folder: string): {
  readonly policy?: ClaimPolicy;
  readonly own: boolean;
  readonly problems: readonly Problem[];
} {
  const own = existsSync(join(folder, POLICY));
  return { ...readPolicy(own ? folder : shippedFolder("templates")), own };
}

function readPolicy(folder: string): {
  readonly policy?: ClaimPolicy;
  readonly problems: readonly Problem[];
} {
  const file = { name: POLICY, text: readFileSync(join(folder, POLICY), "utf8") };
  const yaml = readYaml(file);
  if (yaml.value === undefined) return { problems: yaml.problems };
  const { value, problems } = judgeBy(ClaimPolicySchema, yaml.value);
  return { ...(value === undefined ? {} : { policy: value }), problems };
}

function noClaim(id: string): Problem {
  const near = nearest(id, CLAIM_IDS);
  return {
    code: "claim-unknown",
    severity: "refused",
    file: "plant.yaml",
    key: "claims",
    value: id,
    expected: `one of ${CLAIM_IDS.join(", ")}`,
    remedy: near === undefined ? "Take one of these names." : `Did you mean ${near}?`,
  };
}

// Months that have both a reading and lots.
function gapsOf(series: readonly MeterMonthSeries[]): ClaimSetting["gaps"] {
  const sums = new Map<"water" | "electricity" | "gas", { metered: number; modelled: number }>();
  for (const { quantity, behind, base = 0, months } of series) {
    // A meter of one machine says nothing of the rest of the site.
    if (quantity === "steam" || behind !== undefined) continue;
    const sum = sums.get(quantity) ?? { metered: 0, modelled: 0 };
    for (const { metered, modelled, machines } of months) {
      if (metered === undefined || modelled === undefined) continue;
      sum.metered += metered;
      // Where meters corrected the model, the gap is what the site counts beside its lots and a known base load.
      sum.modelled +=
        machines === undefined
          ? modelled
          : base + [...machines.values()].reduce((all, value) => all + value, 0);
    }
    sums.set(quantity, sum);
  }
  return new Map(
    [...sums].flatMap(([quantity, { metered, modelled }]) =>
      metered > 0 ? [[quantity, (metered - modelled) / metered] as const] : [],
    ),
  );
}
