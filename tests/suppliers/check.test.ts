import { describe, expect, it } from "vitest";
import { type CheckId, CHECKS, type CheckOutcome } from "../../src/suppliers/check.js";
import { sealed } from "../../src/suppliers/make-pack.js";
import { verifyPack } from "../../src/suppliers/verify.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { CODE, houseOf, POLICY } from "./made.js";

const { pack } = houseOf("Supplier A", { lots: [9, 12] });
const SETTING = { shipped: SHIPPED, code: CODE, policy: POLICY, today: "2026-11-25" };

/** Outcome of a check on a pack that was changed and sealed anew. */
function outcome(change: object, id: CheckId): readonly [CheckOutcome, string] {
  const text = sealed({ ...structuredClone(pack), ...change });
  const found = verifyPack("a", new TextEncoder().encode(text), SETTING).checks;
  const check = found.find((one) => one.id === id)!;
  return [check.outcome, check.places.join(" ")];
}

const first = <T extends object>(list: readonly T[], change: Partial<T>): readonly T[] =>
  list.map((one, i) => (i === 0 ? { ...one, ...change } : one));
const [factor] = pack.factors;
const [stratum, second] = pack.strata;
const half = (spread: object): object =>
  Object.fromEntries(
    Object.entries(spread).map(([key, value]) => [
      key,
      typeof value === "number" ? value / 2 : value,
    ]),
  );
const source = Object.keys(pack.sources)[0]!;
const route = { ...stratum!, route: "__proto__" };

// Each changes a pack and seals it anew, without the supplier's key; all digests are right.
const FORGERIES: readonly (readonly [string, object, CheckId, CheckOutcome, string])[] = [
  [
    "a digest of other factors",
    { factorSet: "0".repeat(64) },
    "factors",
    "fail",
    "/pack/factorSet",
  ],
  [
    "a factor halved",
    {
      factors: first(pack.factors, {
        values: factor!.values.map((one) => ({ ...one, spread: half(one.spread) })) as never,
      }),
    },
    "factors",
    "fail",
    "/pack/factors/0",
  ],
  [
    "a factor with other words",
    { factors: first(pack.factors, { words: "measured by us" }) },
    "factors",
    "fail",
    "/pack/factors/0",
  ],
  [
    "a factor with scores made good",
    {
      factors: first(pack.factors, {
        values: factor!.values.map((one) => ({
          ...one,
          quality: { ...one.quality, reliability: one.quality.reliability === 1 ? 2 : 1 },
        })),
      }),
    },
    "factors",
    "fail",
    "/pack/factors/0",
  ],
  [
    "a source reworded",
    { sources: { ...pack.sources, [source]: { ...pack.sources[source], title: "A handbook" } } },
    "sources",
    "fail",
    `/pack/sources/${source}`,
  ],
  [
    "a source emptied, which nothing cites",
    { sources: { ...pack.sources, ours: { author: "", title: "", read: "2026" } } },
    "sources",
    "fail",
    "/pack/sources/ours",
  ],
  [
    "a source that nothing cites",
    { sources: { ...pack.sources, award: { author: "A house", title: "Prize", read: "2026" } } },
    "sources",
    "fail",
    "/pack/sources/award",
  ],
  ["a reason of no row", { reasons: { "gsm-odd": 0 } }, "sums", "fail", "/pack/reasons/gsm-odd"],
  [
    "another house in the plant file",
    { plant: { ...pack.plant, house: "Another house" } },
    "sums",
    "fail",
    "/pack/plant/house",
  ],
  [
    "reprints without rejects, more than was printed",
    { totals: { ...pack.totals, uncovered: 2 * pack.totals.printed } },
    "sums",
    "fail",
    "/pack/totals/uncovered",
  ],
  [
    "reprints without rejects where nothing was reprinted",
    { totals: { ...pack.totals, uncovered: pack.totals.accepted } },
    "stated",
    "flag",
    "/pack/totals/uncovered",
  ],
  ["no files it was made from", { inputs: [] }, "stated", "flag", "/pack/inputs"],
  [
    "meters dropped",
    {
      meters: [],
      inputs: [...pack.inputs, { role: "meters", bytes: 1, sha256: "0".repeat(64) }],
    },
    "stated",
    "flag",
    "/pack/meters",
  ],
  ["a claim dropped", { claims: pack.claims.slice(1) }, "stated", "flag", "/pack/claims"],
  [
    "strata moved to later months",
    { strata: pack.strata.map((one) => ({ ...one, from: pack.months[1]!.month })) },
    "stated",
    "flag",
    "/pack/strata",
  ],
  [
    "a pack before it that nobody has",
    { previous: "1".repeat(64) },
    "chain",
    "flag",
    "/pack/previous",
  ],
  [
    "a shipped factor said to be its own",
    { factors: first(pack.factors, { own: true }) },
    "factors",
    "flag",
    "/pack/factors/0",
  ],
  ["a day to come", { made: "2027-01-01" }, "dates", "fail", "/pack/made"],
  ["a pack before its lots", { made: "2026-03-01" }, "dates", "fail", "/pack/made"],
  [
    "a period before its months",
    { period: { from: "2025-01-01", to: pack.period.to } },
    "dates",
    "fail",
    "/pack/period/from",
  ],
  [
    "months out of order",
    { months: [...pack.months].reverse() },
    "dates",
    "fail",
    "/pack/months/1",
  ],
  [
    "a lighter class",
    { strata: first(pack.strata, { weight: "50-100" }) },
    "sums",
    "fail",
    "/pack/strata/0/weight",
  ],
  ["strata out of order", { strata: [second, stratum] }, "sums", "fail", "/pack/strata/1"],
  ["a stratum twice", { strata: [stratum, stratum] }, "sums", "fail", "/pack/strata/1"],
  [
    "rows set aside without a reason",
    { counts: { ...pack.counts, rows: pack.counts.rows + 9, aside: 9 } },
    "sums",
    "fail",
    "/pack/reasons",
  ],
  ["reasons without rows", { reasons: { "gsm-odd": 4 } }, "sums", "fail", "/pack/reasons"],
  [
    "thresholds loosened",
    { policy: { ...pack.policy, blends: 1 } },
    "policy",
    "flag",
    "/pack/policy/blends",
  ],
  [
    "another program",
    { generator: { ...pack.generator, code: "1".repeat(64) } },
    "program",
    "flag",
    "/pack/generator/code",
  ],
  [
    "grades said to be known",
    { fastness: { pigment: true, dye: false } },
    "fastness",
    "flag",
    "/pack/fastness/pigment",
  ],
  ["a route that is no name", { strata: [route] }, "fields", "fail", "pack.strata[0].route"],
  ["a name that turns the line", { alias: "Mill \u202e7" }, "fields", "fail", "pack.alias"],
  ["a name with a mark unseen", { alias: "Mill\u200b7" }, "fields", "fail", "pack.alias"],
  [
    "figures halved by another program",
    {
      generator: { ...pack.generator, code: "1".repeat(64) },
      figures: first(pack.figures, { median: 0 }),
    },
    "figures",
    "fail",
    "/pack/figures/0/median",
  ],
  [
    "areas made larger",
    {
      strata: first(pack.strata, {
        amounts: { ...stratum!.amounts, accepted: (stratum!.amounts["accepted"] ?? 0) * 1.2 },
      }),
    },
    "sums",
    "fail",
    "/pack/totals/accepted",
  ],
];

describe("checks", () => {
  it("have names, each once", () => {
    expect(new Set(CHECKS).size).toBe(CHECKS.length);
  });

  it("pass or leave what was sealed", () => {
    const bytes = new TextEncoder().encode(sealed(pack));
    const { checks, sound } = verifyPack("a", bytes, SETTING);
    expect(sound).toBe(true);
    expect(checks.filter((one) => one.outcome === "flag")).toEqual([]);
  });

  it.each(FORGERIES)("find %s", (_, change, id, expected, place) => {
    const [found, places] = outcome(change, id);
    expect([found, places.split(" ")]).toEqual([expected, expect.arrayContaining([place])]);
  });
});
