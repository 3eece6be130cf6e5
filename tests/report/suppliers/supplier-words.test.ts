import { describe, expect, it } from "vitest";
import {
  capital,
  chanceWords,
  pairsWords,
  signedWords,
  gateWords,
  listed,
  otherWords,
  ownShare,
  verdictWords,
  verifiedWords,
} from "../../../src/report/suppliers/supplier-words.js";
import { COMPARED, GIVEN } from "./whole.js";

describe("words of the comparison", () => {
  it("list things", () => {
    expect([listed([]), listed(["a"]), listed(["a", "b"]), listed(["a", "b", "c"])]).toEqual([
      "",
      "a",
      "a and b",
      "a, b and c",
    ]);
  });

  it("say the verdict and how conditions are met", () => {
    expect(verdictWords("comparable", 3)).toMatch(/^Comparable: all 3/);
    expect(verdictWords("partly comparable", 4, ["Dell"])).toMatch(
      /^Partly comparable: 4 suppliers.* Dell has no value at the mix\.$/,
    );
    expect(capital("water")).toBe("Water");
    expect(verdictWords("not comparable", 1)).toMatch(/^Not comparable/);
    expect(gateWords({ id: "period", outcome: "not met", concerns: ["A", "B"] })).toEqual([
      "Nine months in common",
      "not met by A and B",
    ]);
    expect(gateWords({ id: "unit", outcome: "same", concerns: [] })[1]).toBe("same");
    expect(otherWords("per kg")).toBe("per kg of cloth");
  });

  it("print no chance as never or always", () => {
    for (const sure of [1, 0.9999, 0.991]) expect(chanceWords(sure)).toMatch(/^>\s99\s%$/);
    for (const never of [0, 0.0001, 0.009]) expect(chanceWords(never)).toMatch(/^<\s1\s%$/);
    expect(chanceWords(0.5)).toMatch(/^50\s%$/);
    expect(chanceWords(0.99)).toMatch(/^99\s%$/);
  });

  it("say how evidence was checked", () => {
    const check = (id: "signature" | "signer", outcome: "pass" | "not present") => ({
      id,
      outcome,
      found: `${id} found`,
      places: [],
    });
    const verified = (sound: boolean, ...checks: readonly ReturnType<typeof check>[]) =>
      verifiedWords({ ...GIVEN[0]!, verified: { file: "a", sound, checks } });
    expect(verifiedWords(GIVEN[0]!)).toBe("logs, not sealed");
    expect(verified(false)).toBe("refused");
    expect(verified(true)).toBe("whole, not signed: anyone could have resealed it");
    expect(verified(true, check("signature", "pass"), check("signer", "not present"))).toBe(
      "whole, signature found; whose key it is, is not known",
    );
    expect(verified(true, check("signature", "pass"), check("signer", "pass"))).toBe(
      "whole, signer found",
    );
  });

  it("share what is a supplier's own", () => {
    const share = ownShare(COMPARED.candidates[0]!, "water");
    expect(share).toBeGreaterThan(0.3);
    expect(share).toBeLessThanOrEqual(1);
    expect(ownShare(COMPARED.candidates[0]!, "nothing")).toBe(0);
  });

  it("say how alike two orders are, pair by pair", () => {
    expect(pairsWords(10, 9)).toBe("of ten pairs, nine keep their order");
    expect(pairsWords(6, 1)).toBe("of six pairs, one keeps its order");
    expect(pairsWords(45, 45)).toBe("of 45 pairs, all keep their order");
    expect(pairsWords(1, 0)).toBe("the one pair is turned round");
    expect(pairsWords(0, 0)).toBe("no pair has an order in both");
  });

  it("say in a word or two whether evidence is signed", () => {
    expect(signedWords(GIVEN[0]!)).toBe("not sealed");
  });
});
