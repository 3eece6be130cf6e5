import { describe, expect, it } from "vitest";
import type { Check, CheckId } from "../../src/suppliers/check.js";
import { canonicalText } from "../../src/suppliers/canonical.js";
import { sealed } from "../../src/suppliers/make-pack.js";
import type { SealedPack } from "../../src/suppliers/schema.js";
import { checkChain, checkSignature } from "../../src/suppliers/seal-checks.js";
import { packOf } from "./made.js";

const pack = packOf();
const signed = JSON.parse(sealed(pack, new Uint8Array(32).fill(7))) as SealedPack;

type Said = Pick<Check, "outcome" | "found"> | undefined;

function signer(keys?: ReadonlyMap<string, string>): Said {
  const said = new Map<CheckId, Said>();
  checkSignature(
    signed,
    canonicalText(pack),
    keys === undefined ? {} : { keys },
    (id, outcome, found) => {
      said.set(id, { outcome, found });
    },
  );
  return said.get("signer");
}

function chain(change: object, before: object | undefined): Said {
  let said: Said;
  checkChain(
    { ...pack, previous: "a".repeat(64), ...change },
    () => new Map(before === undefined ? [] : [["a".repeat(64), { ...pack, ...before }]]),
    (_, outcome, found) => {
      said = { outcome, found };
    },
  );
  return said;
}

describe("the seal", () => {
  it("says who signed where the key is known, and flags a key that is not", () => {
    const { key } = signed.seal.signature!;
    expect(signer(new Map([[key, "mill-7"]]))).toMatchObject({ outcome: "pass" });
    expect(signer(new Map([[key, "mill-7"]]))!.found).toMatch(/^signed by mill-7, key [0-9a-f ]+$/);
    expect(signer(new Map())!.outcome).toBe("flag");
    expect(signer()!.outcome).toBe("not present");
  });

  it("flags a chain that shares meters out otherwise or goes back in time", () => {
    const earlier = { period: { from: "2024-01-01", to: "2024-12-31" } };
    expect(chain({}, earlier)!.outcome).toBe("pass");
    expect(chain({}, undefined)!.outcome).toBe("flag");
    expect(chain({}, {})).toMatchObject({ outcome: "flag" });
    const otherwise = { ...earlier, boundary: { ...pack.boundary, allocation: "by area" } };
    expect(chain({}, otherwise)!.found).toContain("shared out otherwise");
  });
});
