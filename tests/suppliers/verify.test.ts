import fc from "fast-check";
import { describe, expect, it, vi } from "vitest";
import { sha256Hex } from "../../src/numbers/digest.js";
import { canonicalText } from "../../src/suppliers/canonical.js";
import { type Check, type CheckId, CHECKS } from "../../src/suppliers/check.js";
import { sealed } from "../../src/suppliers/make-pack.js";
import type { Pack, SealedPack } from "../../src/suppliers/schema.js";
import { NOT_TRUE, verifyPack } from "../../src/suppliers/verify.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { CODE, packOf } from "./made.js";

const SEED = new Uint8Array(32).fill(7);
const SETTING = { shipped: SHIPPED, code: CODE };
const pack = packOf();
const text = sealed(pack, SEED);
const bytes = new TextEncoder().encode(text);

function check(file: string | Uint8Array, id: CheckId, setting = {}): Check {
  const raw = typeof file === "string" ? new TextEncoder().encode(file) : file;
  const found = verifyPack("a", raw, { ...SETTING, ...setting }).checks.find(
    (one) => one.id === id,
  );
  if (found === undefined) throw new Error(id);
  return found;
}

// Every pack is worked out anew.
vi.setConfig({ testTimeout: 60_000 });

/** A forger's pack: changed and sealed anew, without the supplier's key. */
function forged(change: (pack: Pack) => Pack): string {
  return sealed(change(structuredClone(pack)));
}

describe("verification", () => {
  it("passes what was sealed, check by check", () => {
    const { checks, sound } = verifyPack("a", bytes, SETTING);
    expect(sound).toBe(true);
    expect(checks.map(({ id }) => id)).toEqual(CHECKS);
    expect(checks.filter(({ outcome }) => outcome !== "pass").map(({ id }) => id)).toEqual([
      "signer",
      "chain",
      "policy",
      "fastness",
    ]);
  });

  it("says that unchanged and signed does not mean true", () => {
    expect(NOT_TRUE).toMatch(/^Whole and signed does not mean true/);
  });

  it("finds any byte that was changed", () => {
    fc.assert(
      fc.property(fc.nat(bytes.length - 1), fc.integer({ min: 1, max: 255 }), (at, by) => {
        const other = bytes.slice();
        other[at] = other[at]! ^ by;
        expect(verifyPack("a", other, SETTING).sound).toBe(false);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("finds bytes cut off, put in and put behind", () => {
    for (const other of [text.slice(0, -1), ` ${text}`, `${text}\n`, text.replace(":", ": ")])
      expect(verifyPack("a", new TextEncoder().encode(other), SETTING).sound).toBe(false);
  });

  it("places a change that was not sealed", () => {
    const other = text.replace(
      /"lots":(\d+),"own"/,
      (_, lots: string) => `"lots":${Number(lots) + 1},"own"`,
    );
    expect(other).not.toBe(text);
    expect(check(other, "digest").places).toContain("/pack/strata");
    expect(check(other, "digest").found).toContain("in strata");
    expect(check(other, "sums").places[0]).toBe("/pack/totals/lots");
  });

  it("places a figure made better and sealed anew", () => {
    const other = forged((made) => ({
      ...made,
      figures: made.figures.map((figure, i) =>
        i === 2 ? { ...figure, median: figure.median / 2 } : figure,
      ),
    }));
    expect(check(other, "digest").outcome).toBe("pass");
    expect(check(other, "figures")).toMatchObject({
      outcome: "fail",
      places: ["/pack/figures/2/median"],
    });
  });

  it("places amounts, coverage and claims made better and sealed anew", () => {
    const amounts = forged((made) => ({
      ...made,
      strata: made.strata.map((one) => ({
        ...one,
        amounts: { ...one.amounts, mass: (one.amounts["mass"] ?? 0) * 0.8 },
      })),
    }));
    expect(check(amounts, "sums").places).toContain("/pack/totals/mass");
    expect(check(amounts, "figures").outcome).toBe("fail");
    const coverage = forged((made) => ({
      ...made,
      coverage: made.coverage.map((one) => ({ ...one, modelled: 1, default: 0 })),
    }));
    expect(check(coverage, "coverage").outcome).toBe("fail");
    const claims = forged((made) => ({
      ...made,
      claims: made.claims.map((one) => ({ ...one, verdict: "supported" as const })),
    }));
    expect(check(claims, "claims").places).toContain("/pack/claims/0/verdict");
  });

  it("names a factor that is said to be shipped and is not", () => {
    const at = pack.factors.findIndex(({ id }) => id === "grid.PRT.intensity");
    const other = forged((made) => ({
      ...made,
      factors: made.factors.map((factor, i) =>
        i === at
          ? {
              ...factor,
              values: factor.values.map((value) => ({
                ...value,
                spread: { ...value.spread, value: value.spread.value / 2 },
              })),
            }
          : factor,
      ),
    }));
    expect(check(other, "factors")).toMatchObject({
      outcome: "fail",
      places: [`/pack/factors/${at}`],
    });
    expect(check(other, "factors").found).toContain("grid.PRT.intensity");
  });

  it("names fields that no pack has", () => {
    const open = JSON.parse(text) as { pack: Record<string, unknown> };
    open.pack["score"] = 1;
    expect(check(canonicalText(open), "fields")).toMatchObject({
      outcome: "fail",
      places: ["pack.score"],
    });
  });

  it("says so when a boundary is not that of the plant file inside", () => {
    const other = forged((made) => ({
      ...made,
      boundary: {
        ...made.boundary,
        routes: made.boundary.routes.map((route) => ({ ...route, steps: route.steps.slice(1) })),
      },
    }));
    expect(check(other, "boundary").outcome).toBe("fail");
  });

  it("survives what cannot be worked out", () => {
    const other = forged((made) => ({
      ...made,
      strata: made.strata.map((one) => ({ ...one, site: "elsewhere" })),
    }));
    expect(check(other, "figures").found).toContain("There is no site elsewhere");
    const bare = forged((made) => ({ ...made, factors: made.factors.slice(0, 3) }));
    expect(check(bare, "figures").outcome).toBe("fail");
    const weird = forged((made) => ({ ...made, plant: { ...made.plant, routes: {} } }));
    expect(check(weird, "figures").outcome).toBe("fail");
  });

  it("holds the signature against pack and key", () => {
    const unsigned = sealed(pack);
    expect(check(unsigned, "signature").outcome).toBe("not present");
    const file = JSON.parse(text) as SealedPack;
    const key = file.seal.signature!.key;
    expect(check(text, "signer", { key }).outcome).toBe("pass");
    expect(check(text, "signer", { key: "ab".repeat(32) }).outcome).toBe("fail");
    // Stripping the signature does not help where a key is asked for.
    expect(check(unsigned, "signature", { key }).outcome).toBe("fail");
    // The signature of one pack under another.
    const other = packOf({ alias: "Supplier B" });
    const moved = {
      pack: other,
      seal: { ...(JSON.parse(sealed(other)) as SealedPack).seal, signature: file.seal.signature! },
    };
    expect(check(canonicalText(moved), "signature").outcome).toBe("fail");
  });

  it("follows the chain where the pack before is at hand", () => {
    const previous = sha256Hex(canonicalText(pack));
    const next = sealed(packOf({ rest: { previous } }));
    expect(check(next, "chain").outcome).toBe("flag");
    expect(
      check(next, "chain", {
        others: () =>
          new Map([[previous, { ...pack, period: { from: "2024-01-01", to: "2024-12-31" } }]]),
      }).outcome,
    ).toBe("pass");
    expect(check(next, "chain", { others: () => new Map([["0".repeat(64), {}]]) }).outcome).toBe(
      "flag",
    );
  });
});
