/**
 * Makes a pack from what a mill's folder came to, and seals it.
 */

import { USUAL_CLAIMS } from "../compare/claims/catalogue.js";
import type { ClaimPolicy } from "../compare/claims/policy.js";
import type { FactorSet } from "../factors/factor.js";
import type { Group } from "../ledger/ledger.js";
import type { LogAccount } from "../log/log-account.js";
import type { Plant } from "../plant/plant.js";
import type { Judged, Problem } from "../problems/problem.js";
import { canonicalText, digestOf } from "./canonical.js";
import { sha256Hex } from "../numbers/digest.js";
import { factorList, factorSetOf, remembering } from "./factor-list.js";
import { namesWithin, packedPlant, textsOf } from "./redact.js";
import { type Pack, PACK_FORMAT, PARTS, type SealedPack } from "./schema.js";
import { sign } from "./signature.js";
import { groupsOf, placeOf, strataOf, travelling } from "./strata.js";
import { type PackBody, plantOf, programsOf, workOut } from "./work-out.js";

/** What a pack is made of. */
export interface PackInput {
  /** Name of the supplier as it chose it. */
  readonly alias: string;
  /** Digest of the pack before. */
  readonly previous?: string;
  /** The print house. */
  readonly plant: Plant;
  /** Factors in force. */
  readonly factors: FactorSet;
  /** Groups of the ledger, settled. */
  readonly groups: readonly Group[];
  /** Area of reprints that no reject covers. [m²] */
  readonly uncovered: number;
  /** Whether fastness is known by workflow. */
  readonly fastness: Pack["fastness"];
  /** First and last day of the lots. */
  readonly days: readonly [string, string];
  /** Counts of the import. */
  readonly log: LogAccount;
  /** Files read. */
  readonly inputs: Pack["inputs"];
  /** Readings of meters by month. */
  readonly meters: Pack["meters"];
  /** Thresholds for claims. */
  readonly policy: ClaimPolicy;
  /** Day of the pack. */
  readonly made: string;
  /** Version of the tool. */
  readonly version: string;
  /** Digest of the program. */
  readonly code: string;
  /** Number of draws. */
  readonly draws: number;
  /** Seed. */
  readonly seed: number;
}

/**
 * Makes a pack.
 *
 * @param input - what it is made of
 * @returns the pack; or the names of clients that stand in a text of it, or what is wrong with the plant file
 * @throws MissingFactor when a step asks for a factor that is not in force
 */
export function makePack(input: PackInput): Judged<Pack> {
  const body = bodyOf(input);
  if (body.strata.length === 0) return { problems: [tooFew()] };
  const watched = remembering(input.factors);
  const whole = plantOf(body.plant, watched.set);
  if (whole.value === undefined) return { problems: whole.problems };
  const groups = groupsOf(body.strata);
  // What the figures rest on is found by putting all routes together once.
  programsOf(whole.value, watched.set, groups, body.made);
  const months = body.months.map(({ month }) => month);
  const list = factorList(input.factors, watched.asked, months, body.made);
  const factors = factorSetOf({ ...list, factorSet: body.factorSet });
  const { value: plant, problems } = plantOf(body.plant, factors);
  if (plant === undefined) return { problems };
  const worked = workOut(body, plant, factors, input.plant.text.claims ?? USUAL_CLAIMS);
  const pack: Pack = {
    ...body,
    ...list,
    figures: [...worked.figures],
    coverage: [...worked.coverage],
    claims: [...worked.claims],
  };
  const leaks = namesWithin(textsOf({ ...pack, ...ownTexts(pack) }), clientsOf(input.groups));
  return leaks.length > 0 ? { problems: leaks.map(leak) } : { value: pack, problems: [] };
}

function bodyOf(input: PackInput): PackBody {
  const { plant, log } = input;
  const groups = travelling(input.groups);
  const strata = strataOf(groups, input.factors);
  const total = (name: string): number => {
    const at = placeOf(name);
    return groupsOf(strata).reduce((sum, { amounts }) => sum + (amounts[at] ?? 0), 0);
  };
  const rows = (of: (file: LogAccount["files"][number]) => number): number =>
    log.files.reduce((sum, file) => sum + of(file), 0);
  return {
    schema: PACK_FORMAT,
    generator: { name: "millrace", version: input.version, code: input.code },
    made: input.made,
    alias: input.alias,
    ...(input.previous === undefined ? {} : { previous: input.previous }),
    period: { from: input.days[0], to: input.days[1] },
    unit: "1 accepted m² of printed cloth, fixed and ready for make-up",
    boundary: {
      words: "gate to gate, from prepared cloth to printed cloth",
      rejects: "what rejected cloth took is counted; its area is not",
      heat: "net calorific value",
      allocation: "none: lots are worked out from amounts and settings, no meter is shared out",
      routes: boundaryOf(plant, [...new Set(strata.map(({ route }) => route))]),
    },
    draws: input.draws,
    seed: input.seed,
    inputs: [...input.inputs],
    counts: {
      rows: rows((file) => file.rows),
      accepted: rows((file) => file.accepted),
      corrected: rows((file) => file.corrected),
      aside: rows((file) => file.setAside),
      outside: rows((file) => file.outside),
    },
    reasons: Object.fromEntries([...log.counts].map(([code, { count }]) => [code, count])),
    months: monthsOf(groups),
    totals: {
      lots: strata.reduce((sum, { lots }) => sum + lots, 0),
      accepted: total("accepted"),
      printed: total("printed"),
      mass: total("mass"),
      uncovered: input.uncovered,
    },
    strata: [...strata],
    meters: [...input.meters],
    fastness: input.fastness,
    policy: input.policy,
    factorSet: input.factors.digest,
    plant: packedPlant(plant.text, input.alias),
  };
}

/**
 * Steps that are counted, by route.
 *
 * @param plant - the print house
 * @param routes - routes that lots took
 * @returns routes with their steps, sorted by name
 */
export function boundaryOf(plant: Plant, routes: readonly string[]): Pack["boundary"]["routes"] {
  return [...routes].sort().flatMap((name) => {
    const route = plant.routes[name];
    if (route === undefined) return [];
    return [
      {
        route: name,
        workflow: route.workflow,
        ...(route.dye === undefined ? {} : { dye: route.dye }),
        steps: route.steps.map(({ role, kind }) => ({
          role,
          kind,
          partner: kind === "outsourced",
        })),
      },
    ];
  });
}

function monthsOf(groups: readonly Group[]): Pack["months"] {
  const at = placeOf("accepted");
  const months = new Map<string, { lots: number; accepted: number }>();
  for (const { key, lots, amounts } of groups) {
    const sum = months.get(key.month) ?? { lots: 0, accepted: 0 };
    months.set(key.month, { lots: sum.lots + lots, accepted: sum.accepted + (amounts[at] ?? 0) });
  }
  return [...months]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([month, { lots, accepted }]) => ({ month, lots, accepted }));
}

function clientsOf(groups: readonly Group[]): readonly string[] {
  return [...new Set(groups.map(({ key }) => key.client))];
}

// Shipped factors and sources name nobody's clients; own ones may.
function ownTexts({ factors, sources }: Pack): Pick<Pack, "factors" | "sources"> {
  const own = factors.filter((factor) => factor.own);
  const cited = new Set(own.flatMap(({ values }) => values.map(({ source }) => source)));
  return {
    factors: own,
    sources: Object.fromEntries(Object.entries(sources).filter(([key]) => cited.has(key))),
  };
}

function tooFew(): Problem {
  return {
    code: "pack-too-few-lots",
    severity: "refused",
    expected: "at least three lots of one cloth on one route, for fewer would show a lot",
    remedy: "Seal a longer period.",
  };
}

function leak({ place, name }: { readonly place: string; readonly name: string }): Problem {
  return {
    code: "pack-names-client",
    severity: "refused",
    key: place,
    value: name,
    expected: "a pack that names no client of the log",
    remedy:
      "Take the name out of the plant file (names of sites, machines and routes, sources of numbers), or choose another alias.",
  };
}

/**
 * Seals a pack.
 *
 * @param pack - the pack
 * @param seed - private key; unsigned when absent
 * @returns the file, canonical JSON
 */
export function sealed(pack: Pack, seed?: Uint8Array): string {
  const text = canonicalText(pack);
  const parts = Object.fromEntries(PARTS.map((part) => [part, digestOf(pack[part])]));
  const file: SealedPack = {
    pack,
    seal: {
      digest: sha256Hex(text),
      parts: parts as SealedPack["seal"]["parts"],
      ...(seed === undefined ? {} : { signature: { algorithm: "Ed25519", ...sign(text, seed) } }),
    },
  };
  return canonicalText(file);
}
