import { describe, expect, it } from "vitest";
import { streamFactor, streamMoved, streamSlope } from "../../src/meters/left-share.js";
import { constant, type Leaf } from "../../src/numbers/quantity.js";

const SHARES = [0.02, 0.11, 0.4, 0.8];

describe("streamFactor", () => {
  it("leaves a stream as it is where its lots are", () => {
    for (const share of SHARES) expect(streamFactor(1, share)).toBeCloseTo(1, 12);
  });

  it("gives lots what it takes from the stream, to the last litre, where lots take less", () => {
    for (const share of SHARES)
      for (const by of [0.3, 0.8, 0.99])
        expect(share * streamFactor(by, share) + (1 - share) * by).toBeCloseTo(1, 12);
  });

  it("never takes a stream below 0, however much lots take", () => {
    for (const share of SHARES)
      for (const by of [1.01, 1.5, 4]) {
        expect(streamFactor(by, share)).toBeGreaterThan(0);
        expect(streamFactor(by, share)).toBeLessThan(1);
      }
  });

  it("has the slope that a small step shows, without a kink at 1", () => {
    const step = 1e-6;
    for (const share of SHARES) {
      for (const by of [0.7, 0.9, 1.2]) {
        const rise =
          Math.log(streamFactor(by * Math.exp(step), share) / streamFactor(by, share)) / step;
        expect(streamSlope(by, share) / rise).toBeCloseTo(1, 4);
      }
      expect(streamSlope(1 - 1e-9, share) / streamSlope(1 + 1e-9, share)).toBeCloseTo(1, 6);
    }
  });
});

describe("streamMoved", () => {
  it("is the same as a formula", () => {
    const leaf: Leaf = {
      kind: "leaf",
      id: "stream",
      factor: "stream",
      unit: "1",
      words: "stream",
      spread: { shape: "fixed", value: 22 },
      provenance: "plant",
      source: "made up",
    };
    const by = constant("by", 0.9, "1", "made up");
    const formula = streamMoved("stream, moved", "by hand", by as never, { leaf, total: 200 });
    expect(formula.reads).toHaveLength(2);
    expect(formula.value(0.9, 22)).toBeCloseTo(streamFactor(0.9, 0.11), 12);
  });
});
