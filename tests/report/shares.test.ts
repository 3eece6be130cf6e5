import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkShares, percents } from "../../src/report/shares.js";

describe("percents", () => {
  it("adds up to 100 where plain rounding would not", () => {
    const third = 1 / 3;
    expect(percents({ measured: third, allocated: third, modelled: third, default: 0 })).toEqual({
      measured: "34\u00a0%",
      allocated: "33\u00a0%",
      modelled: "33\u00a0%",
      default: "0\u00a0%",
    });
  });

  it("does not print nothing for what is there", () => {
    const printed = percents({ measured: 0.996, allocated: 0.004, modelled: 0, default: 0 });
    expect(printed.allocated).toBe("<\u00a01\u00a0%");
    expect(printed.modelled).toBe("0\u00a0%");
  });

  it("prints nothing but noughts where there is no quantity", () => {
    const printed = percents({ measured: 0, allocated: 0, modelled: 0, default: 0 });
    expect(Object.values(printed)).toEqual(Array.from({ length: 4 }, () => "0\u00a0%"));
  });

  it("always adds up to 100", () => {
    const weight = fc.integer({ min: 0, max: 1000 });
    fc.assert(
      fc.property(weight, weight, weight, fc.integer({ min: 1, max: 1000 }), (a, b, c, d) => {
        const sum = a + b + c + d;
        const printed = percents({
          measured: a / sum,
          allocated: b / sum,
          modelled: c / sum,
          default: d / sum,
        });
        const total = Object.values(printed).reduce(
          (all, text) => all + (text.startsWith("<") ? 0 : Number.parseInt(text, 10)),
          0,
        );
        expect(total).toBe(100);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});

describe("checkShares", () => {
  it("refuses what are no shares", () => {
    const good = { measured: 0.25, allocated: 0.25, modelled: 0.25, default: 0.25 };
    expect(() => checkShares(good)).not.toThrow();
    expect(() => checkShares({ ...good, measured: Number.NaN })).toThrow("provenance.measured");
    expect(() => checkShares({ ...good, default: -0.25 })).toThrow("provenance.default");
    expect(() => checkShares({ ...good, modelled: 0.75 })).toThrow("add up to 1");
  });
});
