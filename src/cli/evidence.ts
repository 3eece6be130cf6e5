/**
 * From a mill folder to what a pack is made of: shared by `seal` and `suppliers`.
 */

import { existsSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { amountsByMonth, isCounted } from "../meters/months.js";
import { sha256Hex } from "../numbers/digest.js";
import type { Problem } from "../problems/problem.js";
import { fastnessKnown } from "../report/compose/equivalence.js";
import type { PackInput } from "../suppliers/make-pack.js";
import type { Pack } from "../suppliers/schema.js";
import { policyOf } from "./claims.js";
import { meterFileOf } from "./metering.js";
import { programDigest } from "./program-digest.js";
import { openMill, readMill, type Workspace } from "./workspace.js";

/** Options of commands that read a folder for a pack. */
export interface EvidenceOptions {
  /** Plant file. */
  readonly plant: string;
  /** First day. */
  readonly from?: string;
  /** Last day. */
  readonly to?: string;
  /** Day of the pack. */
  readonly asOf: string;
  /** Site. */
  readonly site?: string;
  /** Number of draws. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
}

/** Version of the tool, as in package.json. */
const VERSION = "0.1.0";

/**
 * Reads a mill folder.
 *
 * @param logs - paths of logs; `log.csv` beside the plant file when empty
 * @param options - what to read
 * @param alias - name of the supplier in the pack
 * @returns what a pack is made of, or what stands in the way
 */
export async function evidenceOf(
  logs: readonly string[],
  options: EvidenceOptions,
  alias: string,
): Promise<{ readonly input?: PackInput; readonly problems: readonly Problem[] }> {
  const { mill, problems: unopened } = openMill(options);
  if (mill === undefined) return { problems: unopened };
  const { policy, own, problems: unruled } = policyOf(mill.folder);
  if (policy === undefined) return { problems: unruled };
  const { reading, problems } = await readMill(mill, logs, { ...options, today: options.asOf });
  if (reading === undefined || reading.account.refused) return { problems };
  if (reading.days === undefined) return { problems: [nothing(options.plant)] };
  const { ledger, account, days } = reading;
  const { groups, uncovered } = ledger.settled();
  const meters = await metersOf(mill, days, options.asOf);
  return {
    input: {
      alias,
      plant: mill.plant,
      factors: mill.factors,
      groups,
      uncovered: uncovered.reduce((sum, { area }) => sum + area, 0),
      fastness: fastnessKnown({ plant: mill.plant, fastness: ledger.fastness() }),
      days,
      log: account,
      inputs: [
        ...account.files.map(({ bytes, sha256 }) => ({ role: "log" as const, bytes, sha256 })),
        fileAt("plant", options.plant),
        ...(existsSync(join(mill.folder, "meters.csv"))
          ? [fileAt("meters", join(mill.folder, "meters.csv"))]
          : []),
        ...(own ? [fileAt("policy", join(mill.folder, "claim-policy.yaml"))] : []),
      ],
      meters: meters.meters,
      policy,
      made: options.asOf,
      version: VERSION,
      code: programDigest(),
      draws: options.draws,
      seed: options.seed,
    },
    problems: [...problems, ...meters.problems],
  };
}

function fileAt(role: Pack["inputs"][number]["role"], path: string): Pack["inputs"][number] {
  return { role, bytes: statSync(path).size, sha256: sha256Hex(readFileSync(path)) };
}

const UNITS = { water: "L", electricity: "kWh", gas: "kWh", steam: "kg" } as const;

// Meters of the whole site, for a buyer looks at the house and not at its machines.
async function metersOf(
  mill: Workspace,
  [from, to]: readonly [string, string],
  asOf: string,
): Promise<{ readonly meters: Pack["meters"]; readonly problems: readonly Problem[] }> {
  const file = await meterFileOf(mill, asOf);
  if (file === undefined) return { meters: [], problems: [] };
  const meters = Object.entries(mill.plant.text.meters ?? {}).flatMap(
    ([name, { covers, quantity, unit }]) => {
      if (covers !== "site" || !isCounted(quantity)) return [];
      const read = amountsByMonth(file.readings.filter(({ meter }) => meter === name));
      const months = [...read]
        .filter(([month]) => month >= from.slice(0, 7) && month <= to.slice(0, 7))
        .map(([month, { amount }]) => ({ month, metered: amount }));
      return [{ quantity, unit: UNITS[quantity], read: unit, months }];
    },
  );
  return { meters, problems: file.problems };
}

function nothing(plant: string): Problem {
  return {
    code: "nothing-to-seal",
    severity: "refused",
    file: plant,
    expected: "at least one lot in the period",
    remedy: "Widen the period, or check the spelling of --site.",
  };
}
