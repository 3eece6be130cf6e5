import { describe, expect, it } from "vitest";
import type { Check } from "../../src/suppliers/check.js";
import { checkFactors, checkSources } from "../../src/suppliers/factor-checks.js";
import { SHIPPED } from "../tools/shipped-factors.js";
import { CODE, packOf } from "./made.js";

const pack = packOf();

function factors(change: object, code = CODE): Pick<Check, "outcome" | "found"> {
  const said: Pick<Check, "outcome" | "found">[] = [];
  checkFactors({ ...pack, ...change }, { shipped: SHIPPED, code }, (_, outcome, found) => {
    said.push({ outcome, found });
  });
  return said[0]!;
}

describe("factors inside a pack", () => {
  it("pass as they are shipped", () => {
    expect(factors({}).outcome).toBe("pass");
  });

  it("may have another digest where values are the supplier's own, or the program is another", () => {
    const factorSet = "0".repeat(64);
    expect(factors({ factorSet }).outcome).toBe("fail");
    expect(factors({ factorSet }, "3".repeat(64)).outcome).toBe("flag");
    const own = pack.factors.map((one, i) => (i === 0 ? { ...one, own: true } : one));
    expect(factors({ factorSet, factors: own })).toMatchObject({ outcome: "flag" });
    expect(factors({ factorSet, factors: own }).found).toContain("are the shipped ones");
    const other = own.map((one, i) => (i === 0 ? { ...one, words: "x", id: "house.own" } : one));
    expect(factors({ factorSet, factors: other }).found).toContain("as own values make it");
  });

  it("say which sources are reworded before which are empty", () => {
    const citing = (sources: object): typeof pack.factors =>
      Object.keys(sources).map((source) => {
        const [one] = pack.factors;
        return { ...one!, id: "house.own", values: [{ ...one!.values[0]!, source }] };
      });
    const outcome = (sources: object, cited = true): string => {
      const said: string[] = [];
      const factors = cited ? [...pack.factors, ...citing(sources)] : pack.factors;
      checkSources({ factors, sources: { ...pack.sources, ...sources } }, SHIPPED, (_, how) => {
        said.push(how);
      });
      return said.join();
    };
    const [key = ""] = Object.keys(pack.sources);
    expect(outcome({})).toBe("pass");
    expect(outcome({ x: { author: " ", title: "x", read: "x" } })).toBe("flag");
    // What nothing cites is there to be read, and to be believed.
    expect(outcome({ x: { author: "a", title: "x", read: "x" } }, false)).toBe("fail");
    expect(outcome({ [key]: { author: "", title: "", read: "x" } })).toBe("fail");
  });
});
