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
    expect(factors({ factorSet, factors: own }).found).toContain("as own values make it");
  });

  it("say which sources are reworded before which are empty", () => {
    const outcome = (sources: object): string => {
      const said: string[] = [];
      checkSources({ ...pack, sources: { ...pack.sources, ...sources } }, SHIPPED, (_, how) => {
        said.push(how);
      });
      return said.join();
    };
    const [key = ""] = Object.keys(pack.sources);
    expect(outcome({})).toBe("pass");
    expect(outcome({ x: { author: " ", title: "x", read: "x" } })).toBe("flag");
    expect(outcome({ [key]: { author: "", title: "", read: "x" } })).toBe("fail");
  });
});
