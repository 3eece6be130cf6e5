/**
 * For whom a report is: what it may hold, and what must stand before it is written.
 */

import type { Audience } from "../compare/claims/gates.js";
import type { Group, Ledger } from "../ledger/ledger.js";
import type { Plant } from "../plant/plant.js";
import type { Problem } from "../problems/problem.js";
import type { ReportDocument } from "../report/document.js";
import { BANS } from "../report/wording/bans.js";
import { documentTexts } from "../report/wording/document-texts.js";
import { type AllowedPhrase, judgeWording } from "../report/wording/judge.js";
import { WrongWord } from "./arguments.js";

/** Options that decide what others may read. */
export interface AudienceOptions {
  /** For whom; the mill itself when absent. */
  readonly audience?: Audience;
  /** Client. */
  readonly client?: string;
  /** Order. */
  readonly order?: string;
  /** What-ifs asked for. */
  readonly set?: readonly string[];
}

/**
 * Checks that options fit the audience.
 *
 * @param options - options
 * @throws WrongWord when a client's report is for no client, a public one for a single client, or a what-if
 *   would leave the mill
 */
export function checkAudience(options: AudienceOptions): void {
  const { audience = "internal", client, order, set = [] } = options;
  if (audience === "internal") return;
  if (audience === "client" && client === undefined)
    throw new WrongWord("--audience", "client only beside --client NAME", audience);
  if (audience === "public" && (client !== undefined || order !== undefined))
    throw new WrongWord(
      "--audience",
      "public only without --client and --order, whose names would be printed",
      audience,
    );
  if (set.length > 0)
    throw new WrongWord("--audience", "internal beside --set, which asks for a forecast", audience);
}

/**
 * What stands in the way of a report to an audience.
 *
 * @param plant - the print house
 * @param audience - for whom
 * @returns a problem when the public is to read a comparison that nobody reviewed
 */
export function audienceProblems(plant: Plant, audience: Audience): readonly Problem[] {
  if (audience !== "public" || plant.text.review !== undefined) return [];
  return [
    {
      code: "review-missing",
      severity: "refused",
      file: "plant.yaml",
      key: "review",
      expected:
        "a statement of who reviewed the comparison, when and by which standard, before two routes are compared in public",
      remedy:
        "Have it reviewed by people who did not make it, and name them under `review:`; ISO 14044 asks for a panel.",
    },
  ];
}

/**
 * The print house as others may see it: without prices, and without what-ifs, which are forecasts.
 *
 * @param plant - the print house
 * @param audience - for whom
 * @returns the same house for the mill itself, a copy with less for others
 */
export function plantFor(plant: Plant, audience: Audience): Plant {
  if (audience === "internal") return plant;
  const { versions, scenarios: _scenarios, ...rest } = plant;
  return {
    ...withoutPrices(rest),
    ...(versions === undefined
      ? {}
      : { versions: versions.map((one) => ({ ...one, plant: withoutPrices(one.plant) })) }),
  };
}

function withoutPrices(plant: Plant): Plant {
  const sites = Object.entries(plant.sites).map(([name, site]) => {
    const { tariffs: _tariffs, ...rest } = site;
    return [name, rest] as const;
  });
  return { ...plant, sites: Object.fromEntries(sites) };
}

/** What of a ledger names clients or lots. */
type Named = Pick<ReturnType<Ledger["settled"]>, "groups" | "uncovered"> & {
  readonly sample: ReturnType<Ledger["sample"]>;
};

/**
 * Groups and lots as others may see them: for the public, without names of clients and lots.
 *
 * @param named - what the ledger gives
 * @param audience - for whom
 * @returns the same for the mill and for a client, who asked for its own lots; else a copy without names
 */
export function namesFor<T extends Named>(named: T, audience: Audience): T {
  if (audience !== "public") return named;
  const unnamed = ({ key, ...rest }: Group): Group => ({ ...rest, key: { ...key, client: "" } });
  return {
    ...named,
    groups: named.groups.map(unnamed),
    uncovered: named.uncovered.map((one, i) => ({ ...one, lot: `reprint ${i + 1}`, of: "a lot" })),
    sample: named.sample.map((one, i) => ({
      ...one,
      lot: `lot ${i + 1}`,
      key: { ...one.key, client: "" },
    })),
  };
}

/**
 * Words of a report that may not stand: names of the log and texts of the plant file get into it as they are.
 *
 * @param document - the report
 * @param phrases - phrases that may stand
 * @param audience - for whom; others than the mill get no report with such words
 * @returns a problem for each wording, once
 */
export function wordingProblems(
  document: ReportDocument,
  phrases: readonly AllowedPhrase[],
  audience: Audience,
): readonly Problem[] {
  const problems = new Map<string, Problem>();
  for (const text of new Set(documentTexts(document))) {
    for (const { ban, level, from, to } of judgeWording(text, ["en"], phrases).found) {
      const words = text.slice(from, to);
      if (level !== "refused" || problems.has(words)) continue;
      problems.set(words, {
        code: "wording-refused",
        severity: audience === "internal" ? "warning" : "refused",
        value: words,
        expected: `words that may stand in a report. ${BANS[ban].why} It stands in: ${text.slice(Math.max(0, from - 40), to + 40)}`,
        remedy:
          "Change the name or text it comes from, or allow the phrase under `wording.allow` in plant.yaml with reason and proof.",
      });
    }
  }
  return [...problems.values()];
}
