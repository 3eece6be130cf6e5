/** Packs of invented suppliers for the tests. */

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "yaml";
import { type ClaimPolicy, ClaimPolicySchema } from "../../src/compare/claims/policy.js";
import { Ledger } from "../../src/ledger/ledger.js";
import type { Lot } from "../../src/log/lot.js";
import type { Plant } from "../../src/plant/plant.js";
import { makePack, type PackInput } from "../../src/suppliers/make-pack.js";
import type { Pack } from "../../src/suppliers/schema.js";
import type { Given } from "../../src/suppliers/candidate.js";
import { LOTS, lotOf, smallMill } from "../report/compose/small-mill.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { TOP } from "../tools/tree.js";

/** Digest of the program in the tests. */
export const CODE = "c0de".repeat(16);

/** The shipped policy. */
export const POLICY: ClaimPolicy = ClaimPolicySchema.parse(
  parse(readFileSync(join(TOP, "templates", "claim-policy.yaml"), "utf8")),
);

/** What a supplier of the tests may have otherwise. */
export interface SupplierChange {
  /** Name. */
  readonly alias?: string;
  /** The print house. */
  readonly plant?: Plant;
  /** Its lots. */
  readonly lots?: readonly Lot[];
  /** The rest. */
  readonly rest?: Partial<PackInput>;
}

/**
 * What a pack of a small mill is made of.
 *
 * @param change - what it has otherwise
 * @returns the input
 */
export function packInput(change: SupplierChange = {}): PackInput {
  const plant = change.plant ?? smallMill();
  const lots = change.lots ?? LOTS;
  const ledger = new Ledger();
  for (const lot of lots) ledger.add(lot, plant);
  const days = lots.map(({ date }) => date).sort();
  const rows = {
    rows: lots.length,
    accepted: lots.length,
    corrected: 0,
    setAside: 0,
    outside: 0,
  };
  return {
    alias: change.alias ?? "Supplier A",
    plant,
    factors: SHIPPED,
    groups: ledger.settled().groups,
    uncovered: 0,
    fastness: { pigment: false, dye: false },
    days: [days[0] ?? "", days.at(-1) ?? ""],
    log: {
      files: [
        {
          name: "log.csv",
          bytes: 1,
          sha256: "0".repeat(64),
          ...rows,
          unused: [],
          reasons: {},
          filled: {},
        },
      ],
      problems: [],
      counts: new Map(),
      filled: new Map(),
      refused: false,
    },
    inputs: [{ role: "log", bytes: 1, sha256: "0".repeat(64) }],
    meters: [],
    policy: POLICY,
    made: "2026-11-25",
    version: "0.1.0",
    code: CODE,
    draws: 200,
    seed: 1,
    ...change.rest,
  };
}

/**
 * A pack of a small mill.
 *
 * @param change - what it has otherwise
 * @returns the pack
 */
export function packOf(change: SupplierChange = {}): Pack {
  const { value, problems } = makePack(packInput(change));
  if (value === undefined) throw new Error(JSON.stringify(problems));
  return value;
}

/** What sets an invented house apart in the tests of comparing. */
export interface HouseChange {
  /** Lots by pigment, and by dye. */
  readonly lots?: readonly [number, number];
  /** Settings of the site, such as `wash-range` ones by name. */
  readonly settings?: Readonly<Record<string, unknown>>;
  /** Length of a lot. [m] */
  readonly length?: number;
}

/**
 * A supplier with lots in twelve months.
 *
 * @param alias - its name
 * @param change - what sets it apart
 * @returns the supplier as it is given
 */
export function houseOf(alias: string, change: HouseChange = {}): Given {
  const [pigment, dye] = change.lots ?? [12, 12];
  const lots = Array.from({ length: pigment + dye }, (_, i) =>
    lotOf({
      lot: `${alias}-${i}`,
      date: `2026-${String(1 + (i % 10)).padStart(2, "0")}-1${i % 9}`,
      length: (change.length ?? 300) + 10 * (i % 7),
      route: i < pigment ? "pigment-calender" : "reactive",
    }),
  );
  const plant = smallMill(change.settings === undefined ? {} : { settings: change.settings });
  const first = packOf({ alias, plant, lots, rest: { draws: 100 } });
  // Claims hold the gap of the meters, so the pack is made with them.
  const meters = metersOf(first);
  return { alias, pack: packOf({ alias, plant, lots, rest: { draws: 100, meters } }) };
}

/**
 * Readings of site meters that bear a pack out.
 *
 * @param pack - the pack
 * @param times - what they show, in what the lots come to
 * @returns meters of water and electricity
 */
export function metersOf(pack: Pack, times = 1.25): Pack["meters"] {
  const per = (indicator: string): number =>
    pack.figures.find((one) => one.side === "as-printed" && one.indicator === indicator)!.median;
  return (["water", "electricity"] as const).map((quantity) => ({
    quantity,
    unit: quantity === "water" ? "L" : "kWh",
    // No two months alike, and none round.
    months: pack.months.map(({ month, accepted }, i) => ({
      month,
      metered: times * per(quantity) * accepted * (1 + (i % 2 === 0 ? 0.0313 : -0.0313)),
    })),
  }));
}
