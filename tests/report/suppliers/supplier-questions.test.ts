import { describe, expect, it } from "vitest";
import { asksOf } from "../../../src/report/suppliers/supplier-questions.js";
import { COMPARED } from "./whole.js";

describe("questions to suppliers", () => {
  it("begin with what is gravest, and each has a fix", () => {
    const asks = asksOf(COMPARED, "Supplier Dell");
    expect(asks[0]?.question).toBe("Route reactive counts no washing. Where is it done?");
    for (const { question, fix } of asks)
      expect([question.length > 10, fix.length > 10]).toEqual([true, true]);
  });

  it("ask for strata that were not printed", () => {
    const [first, ...rest] = COMPARED.results;
    const suppliers = first!.suppliers.map((one) => ({
      ...one,
      cells: one.cells.map((cell, k) => (k === 0 ? { lots: 0, effective: 0, accepted: 0 } : cell)),
    }));
    const asks = asksOf(
      { ...COMPARED, results: [{ ...first!, suppliers }, ...rest] },
      "Supplier Ash",
    );
    expect(asks.map(({ question }) => question).join()).toMatch(
      /Nothing was printed of dye, 60\s% of the mix/,
    );
  });

  it("ask nothing of who is not there", () => {
    expect(asksOf(COMPARED, "Supplier Nobody")).toEqual([]);
  });
});
