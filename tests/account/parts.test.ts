import { describe, expect, it } from "vitest";
import { INDICATOR_IDS } from "../../src/account/indicators.js";
import { withParts } from "../../src/account/parts.js";
import { traceOf } from "../../src/account/trace.js";
import { mean } from "../../src/numbers/quantiles.js";
import { inputOf } from "../report/compose/small-mill.js";

const { account } = inputOf();
const known = INDICATOR_IDS.filter((id) => account.program.indicators.has(id));
const ALL = 100_000;

describe("withParts", () => {
  it.each(known)("breaks %s down into parts that add up to the mean of each arm", (id) => {
    const broken = withParts(account, id);
    for (const arm of ["pigment", "dye"] as const) {
      const total = mean(account.indicators[arm].get(id) ?? new Float64Array(0));
      const lines = traceOf(broken, id, arm, ALL);
      const sum = lines.reduce((all, line) => all + line.mean, 0);
      expect(sum - total).toBeLessThanOrEqual(1e-12 * Math.abs(total));
      expect(total - sum).toBeLessThanOrEqual(1e-12 * Math.abs(total));
      expect(lines.length > 0).toBe(total !== 0);
    }
  });

  it("gives the same parts as the account, where the account has them", () => {
    const bare = { ...account, parts: new Map() };
    for (const id of account.parts.keys()) {
      expect(withParts(account, id)).toBe(account);
      const anew = withParts(bare, id).parts.get(id) ?? [];
      const kept = account.parts.get(id) ?? [];
      expect(anew.map(({ term }) => term)).toEqual(kept.map(({ term }) => term));
      anew.forEach(({ coefficient }, i) => {
        expect(coefficient / (kept[i]?.coefficient ?? NaN)).toBeCloseTo(1, 12);
      });
    }
  });
});
