import { describe, expect, it } from "vitest";
import { constant } from "../../src/numbers/quantity.js";
import { amountNamed } from "../../src/steps/amounts.js";
import { substanceTerms } from "../../src/steps/substances.js";
import { flowsOf } from "./context.js";

describe("chemicals of a recipe", () => {
  // Review of urea in reactive print, by stoichiometry: 150 g urea per kg of paste and 0.8 kg of paste
  // per kg of fabric are 120 g of urea per kg of fabric. 224 kg take 26.88 kg.
  it("are content times liquor", () => {
    const terms = substanceTerms(
      [
        { substance: "urea", content: constant("urea", 150, "g/kg") },
        { substance: "alginate", content: constant("alginate", 40, "g/kg") },
      ],
      "cloth",
      amountNamed("mass"),
      constant("paste", 0.8, "kg/kg"),
    );
    const flow = flowsOf(terms);
    expect(flow("urea@cloth")).toBeCloseTo(26880, 9);
    expect(flow("alginate@cloth")).toBeCloseTo(7168, 9);
    expect(terms.map(({ rate }) => rate.unit)).toEqual(["g/kg", "g/kg"]);
  });

  it("are none without a recipe", () => {
    expect(substanceTerms([], "drain", amountNamed("lots"), constant("dump", 5, "kg/lot"))).toEqual(
      [],
    );
  });
});
