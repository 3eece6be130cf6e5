/**
 * Checks a pack that came from somebody else, from its bytes to its last figure.
 *
 * A whole and signed pack is not thereby true: digests show that nothing was changed since it was sealed, a
 * signature shows by whom, and working it out again shows that the figures follow from the sums inside. None of
 * them shows that the lots were logged as they were printed.
 */

import type { Program } from "../account/program.js";
import { judgeBy } from "../factors/schema-problems.js";
import { canonicalParts, canonicalText } from "./canonical.js";
import { type Check, type CheckId, CHECKS, type Say, type VerifySetting } from "./check.js";
import { dateFaults } from "./dates.js";
import { firstDifference } from "./differences.js";
import { checkFactors, checkSources } from "./factor-checks.js";
import { pointerAt } from "./pointer-at.js";
import { type SealedPack, SealedSchema } from "./schema.js";
import { checkChain, checkSeal, checkSignature } from "./seal-checks.js";
import { readStrictJson } from "./strict-json.js";
import { standingChecks } from "./standing-checks.js";
import { type SumFault, sumFaults } from "./sums.js";
import { recompute } from "./recompute.js";

/** A pack verified. */
export interface Verified {
  /** Name of the file. */
  readonly file: string;
  /** Checks in order. */
  readonly checks: readonly Check[];
  /** Whether no check failed. */
  readonly sound: boolean;
  /** The pack, where it could be read. */
  readonly sealed?: SealedPack;
  /** Terms of its lots as they were printed, under the factors inside. */
  readonly printed?: Program;
}

/** What every verification must be read with. */
export const NOT_TRUE =
  "Whole and signed does not mean true: these checks show that the pack is as its last sealer left it, by whom where it is signed, and that its figures follow from the sums inside. They do not show that lots, settings and meters are what was run.";

/** Places shown of one check. */
const MOST_PLACES = 8;

/**
 * Verifies a pack.
 *
 * @param file - name of the file
 * @param bytes - the file
 * @param setting - what it is checked against
 * @returns every check with its outcome
 */
export function verifyPack(file: string, bytes: Uint8Array, setting: VerifySetting): Verified {
  const checks = new Map<CheckId, Check>();
  const say: Say = (id, outcome, found, places = []) => {
    checks.set(id, { id, outcome, found, places: places.slice(0, MOST_PLACES) });
  };
  const { sealed, printed } = checked(file, bytes, setting, say);
  const all = CHECKS.map(
    (id): Check =>
      checks.get(id) ?? {
        id,
        outcome: "not present",
        found: "not checked, for an earlier check failed",
        places: [],
      },
  );
  return {
    file,
    checks: all,
    sound: all.every(({ outcome }) => outcome !== "fail"),
    ...(sealed === undefined ? {} : { sealed }),
    ...(printed === undefined ? {} : { printed }),
  };
}

function checked(
  file: string,
  bytes: Uint8Array,
  setting: VerifySetting,
  say: Say,
): Pick<Verified, "sealed" | "printed"> {
  const json = readStrictJson(file, bytes);
  if (json.value === undefined) {
    const { value = "", expected = "JSON", key = "the file" } = json.problems[0] ?? {};
    say("file", "fail", `${value}; expected ${expected}`, [key]);
    return {};
  }
  say("file", "pass", `${bytes.length} bytes of JSON, within the limits of size and depth`);
  const { text, value } = json.value;
  const { value: sealed, problems } = judgeBy(SealedSchema, { name: file, value, lineOf: () => 1 });
  if (sealed === undefined) {
    const [first] = problems;
    say(
      "fields",
      "fail",
      `${problems.length} ${problems.length === 1 ? "field does" : "fields do"} not fit the schema; the first: ${first?.code ?? ""} ${first?.value ?? ""}, expected ${(first?.expected ?? "").slice(0, 200)}`,
      problems.map(({ key = "" }) => (key === "" ? "the whole file" : key)),
    );
    return {};
  }
  say("fields", "pass", "every field is known and has a value it can have");
  const { text: packText, parts } = canonicalParts(sealed.pack);
  const canonical = `{"pack":${packText},"seal":${canonicalText(sealed.seal)}}`;
  const apart = firstDifference(text, canonical);
  if (apart === undefined)
    say("canonical", "pass", "the bytes are the canonical form of what they say");
  else
    say(
      "canonical",
      "fail",
      "the bytes are not the canonical form of what they say: written or changed by hand",
      [`byte ${apart}`, pointerAt(text, apart)],
    );
  checkSeal(sealed, packText, parts, say);
  checkSignature(sealed, packText, setting, say);
  checkChain(sealed.pack, setting.others, say);
  sayFaults(
    "dates",
    dateFaults(sealed.pack, setting.today),
    "days of pack, period and months fit each other",
    say,
  );
  sayFaults(
    "sums",
    sumFaults(sealed.pack),
    "totals follow from strata and months, rows from their fates, bands from mass and area",
    say,
  );
  checkFactors(sealed.pack, setting, say);
  checkSources(sealed.pack, setting.shipped, say);
  for (const { id, outcome, found, places } of standingChecks(
    sealed.pack,
    setting.code,
    setting.policy,
    setting.version,
  ))
    say(id, outcome, found, places);
  const { checks, printed } = recompute(sealed.pack, setting);
  for (const { id, outcome, found, places } of checks) say(id, outcome, found, places);
  return { sealed, ...(printed === undefined ? {} : { printed }) };
}

function sayFaults(id: CheckId, faults: readonly SumFault[], passes: string, say: Say): void {
  if (faults.length === 0) say(id, "pass", passes);
  else
    say(
      id,
      "fail",
      faults
        .slice(0, 3)
        .map(({ place, found }) => `${place}: ${found}`)
        .join("; "),
      faults.map(({ place }) => place),
    );
}
