/**
 * What a pack says of itself that no sum can prove: which program made it, by which policy it judges, what it says
 * of fastness. None of it fails a pack but a version that the program of that digest does not have; all of it is
 * named.
 */

import { type ClaimPolicy, policyChanges } from "../compare/claims/policy.js";
import type { Pack } from "./schema.js";
import { statedCheck } from "./stated-checks.js";

/** What was found. */
export interface StandingCheck {
  /** Which. */
  readonly id: "program" | "policy" | "fastness" | "stated";
  /** Outcome. */
  readonly outcome: "pass" | "fail" | "flag" | "not present";
  /** What was found, in words. */
  readonly found: string;
  /** Places, as JSON pointers. */
  readonly places: readonly string[];
}

/**
 * Names what cannot be proved.
 *
 * @param pack - the pack
 * @param code - digest of the reader's own program
 * @param shipped - the shipped policy; not judged when left out
 * @param version - version of the reader's own program; not judged when left out
 * @returns a check each
 */
export function standingChecks(
  pack: Pack,
  code: string,
  shipped: ClaimPolicy | undefined,
  version?: string,
): readonly StandingCheck[] {
  return [
    programCheck(pack, code, version),
    policyCheck(pack, shipped),
    fastnessCheck(pack),
    statedCheck(pack),
  ];
}

function programCheck(
  { generator }: Pack,
  code: string,
  version: string | undefined,
): StandingCheck {
  if (generator.code === code && version !== undefined && generator.version !== version)
    return {
      id: "program",
      outcome: "fail",
      found: `says version ${generator.version}, and the program of this digest is version ${version}`,
      places: ["/pack/generator/version"],
    };
  return generator.code === code
    ? { id: "program", outcome: "pass", found: "made by this program", places: [] }
    : {
        id: "program",
        outcome: "flag",
        found: `says it was made by version ${generator.version}, code ${generator.code.slice(0, 16)}…, which is not this program; that excuses no figure`,
        places: ["/pack/generator/code"],
      };
}

function policyCheck({ policy, claims }: Pack, shipped: ClaimPolicy | undefined): StandingCheck {
  const id = "policy";
  if (shipped === undefined)
    return { id, outcome: "not present", found: "no policy to hold it against", places: [] };
  const changes = policyChanges(shipped, policy);
  if (changes.length === 0 && policy.version === shipped.version)
    return { id, outcome: "pass", found: `thresholds as shipped, ${policy.version}`, places: [] };
  const said = changes.map(
    ({ key, own, shipped: mine, looser }) =>
      `${key} ${own} for ${mine}${looser ? ", loosened" : ", tightened"}`,
  );
  return {
    id,
    outcome: "flag",
    found: `${claims.length} claims judged by ${policy.version}, not as shipped: ${said.length === 0 ? "another name" : said.join("; ")}`,
    places:
      changes.length === 0
        ? ["/pack/policy/version"]
        : changes.map(({ key }) => `/pack/policy/${key.replaceAll(".", "/")}`),
  };
}

function fastnessCheck({ fastness }: Pack): StandingCheck {
  const id = "fastness";
  const said = (["pigment", "dye"] as const).filter((one) => fastness[one]);
  return said.length === 0
    ? { id, outcome: "not present", found: "no grades are said to be known", places: [] }
    : {
        id,
        outcome: "flag",
        found: `grades are said to be known for ${said.join(" and ")}; no grade travels in a pack, so ask for the reports`,
        places: said.map((one) => `/pack/fastness/${one}`),
      };
}

/** What no check can see. */
export const NOT_CHECKED =
  "Not checked, cannot be checked from a pack: whether lots, rejects and coverage were logged as they were printed, and in which of the months with the same factors; on which days of its first and last month the period begins and ends; how many rows lay outside it; whether settings are what was run; meters and the questions on them; what own sources and notes say; whether grades of fastness were found; whether input files are those named; who holds a key.";
