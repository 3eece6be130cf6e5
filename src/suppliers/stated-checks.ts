/**
 * What a pack states and nothing else in it shows: files it was made from, claims that were judged, reprints without
 * rejects, months by vintage. None of it fails a pack; where it does not fit, it is named.
 */

import { USUAL_CLAIMS } from "../compare/claims/catalogue.js";
import type { StandingCheck } from "./standing-checks.js";
import type { Pack } from "./schema.js";

type Finding = readonly [place: string, found: string];

/** Relative difference at which sums count as the same. */
const SAME = 1e-9;

/**
 * Names what is stated and does not fit.
 *
 * @param pack - the pack
 * @returns one check
 */
export function statedCheck(pack: Pack): StandingCheck {
  const found = [
    ...inputFindings(pack),
    ...claimFindings(pack),
    ...reprintFindings(pack),
    ...monthFindings(pack),
  ];
  return found.length === 0
    ? {
        id: "stated",
        outcome: "pass",
        found: "files, claims, reprints and months fit each other",
        places: [],
      }
    : {
        id: "stated",
        outcome: "flag",
        found: found.map(([, words]) => words).join("; "),
        places: found.map(([place]) => place),
      };
}

function inputFindings({ inputs, meters }: Pack): readonly Finding[] {
  const roles = new Set(inputs.map(({ role }) => role));
  return [
    ...(roles.has("log")
      ? []
      : [["/pack/inputs", "no log is named among the files it was made from"] as const]),
    ...(roles.has("meters") && meters.length === 0
      ? [
          [
            "/pack/meters",
            "a file of meters was read, and no reading of a site meter is here",
          ] as const,
        ]
      : []),
  ];
}

function claimFindings({ claims }: Pack): readonly Finding[] {
  const judged = new Set(claims.map(({ id }) => id));
  const left = USUAL_CLAIMS.filter((id) => !judged.has(id));
  return left.length === 0 ? [] : [["/pack/claims", `not judged: ${left.join(", ")}`]];
}

// Reprints that no reject covers are reprints; the rest of the house is not.
function reprintFindings({ totals, strata }: Pack): readonly Finding[] {
  const reprints = strata.reduce(
    (sum, { kind, amounts }) => sum + (kind === "reprint" ? (amounts["printed"] ?? 0) : 0),
    0,
  );
  return totals.uncovered <= reprints * (1 + SAME)
    ? []
    : [
        [
          "/pack/totals/uncovered",
          `${totals.uncovered} m² of reprints without rejects, and strata hold ${reprints} m² of reprints`,
        ],
      ];
}

// Strata stand for months from their first on, up to the first of the next; so do the months' own lots.
function monthFindings({ months, strata }: Pack): readonly Finding[] {
  const starts = [...new Set(strata.map(({ from }) => from))].sort();
  const [first] = months;
  if (first === undefined || starts.length === 0) return [];
  if (starts[0] !== first.month)
    return [["/pack/strata", `strata begin in ${starts[0] ?? ""}, months in ${first.month}`]];
  return starts.flatMap((from, i): readonly Finding[] => {
    const next = starts[i + 1];
    const inMonths = months.reduce(
      (sum, { month, lots }) =>
        sum + (month >= from && (next === undefined || month < next) ? lots : 0),
      0,
    );
    const inStrata = strata.reduce((sum, one) => sum + (one.from === from ? one.lots : 0), 0);
    return inMonths === inStrata
      ? []
      : [["/pack/months", `${inMonths} lots in the months from ${from} on, ${inStrata} in strata`]];
  });
}
