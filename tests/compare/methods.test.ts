import { describe, expect, it } from "vitest";
import { methodsOf } from "../../src/compare/methods.js";

/** Pairs whose differences have a mean of `mean` and a standard deviation of 1, apart from rounding. */
function pairs(count: number, mean: number): readonly [Float64Array, Float64Array] {
  const half = Math.sqrt((count - 1) / count);
  const dye = Float64Array.from(
    { length: count },
    (_, i) => 10 + mean + (i % 2 === 0 ? half : -half),
  );
  return [new Float64Array(count).fill(10), dye];
}

describe("methodsOf", () => {
  // R. Heijungs, P. J. G. Henriksson and J. B. Guinée, Entropy 18 (2016) 361: with a million draws a shift of a
  // hundredth of a standard deviation is significant by t, 0.01 · √10⁶ = 10, and not by the modified test,
  // (0.01 − 0.2) · √10⁶ = −190.
  it("finds a tiny shift by the plain test and not by the modified one", () => {
    const { paired, modified } = methodsOf(...pairs(1e6, 0.01));
    expect(paired.t).toBeCloseTo(10, 6);
    expect(paired.finding).toBe("pigment");
    expect(modified.t).toBeCloseTo(-190, 6);
    expect(modified.finding).toBe("open");
  });

  it("finds a large shift by both, on either side", () => {
    const up = methodsOf(...pairs(1000, 1.5));
    const down = methodsOf(...pairs(1000, -1.5));
    expect([up.paired.finding, up.modified.finding]).toEqual(["pigment", "pigment"]);
    expect([down.paired.finding, down.modified.finding]).toEqual(["dye", "dye"]);
    expect(up.modified.t).toBeCloseTo(1.3 * Math.sqrt(1000), 6);
  });

  it("asks for another least difference when told to", () => {
    const [pigment, dye] = pairs(10_000, 0.3);
    expect(methodsOf(pigment, dye).modified.finding).toBe("pigment");
    expect(methodsOf(pigment, dye, 0.5).modified.finding).toBe("open");
    expect(methodsOf(pigment, dye, 0).modified.t).toBeCloseTo(30, 6);
  });

  // Discernible from 95 % of the draws on: R. Heijungs and R. Kleijn, Int. J. LCA 6 (2001) 141-148, from memory.
  it("calls an order discernible from 95 % of the draws on, however small the difference", () => {
    const pigment = new Float64Array(100).fill(1);
    const by = (less: number) => Float64Array.from(pigment, (_, i) => (i < less ? 1.0001 : 0.5));
    expect(methodsOf(pigment, by(95)).share).toEqual({
      less: 95,
      more: 5,
      count: 100,
      finding: "pigment",
    });
    expect(methodsOf(pigment, by(94)).share.finding).toBe("open");
    expect(methodsOf(pigment, by(5)).share.finding).toBe("dye");
  });

  it("counts draws in which both are alike on neither side", () => {
    const same = new Float64Array(50).fill(2);
    const { share, paired, modified } = methodsOf(same, same);
    expect([share.less, share.more]).toEqual([0, 0]);
    expect([share.finding, paired.finding, modified.finding]).toEqual(["open", "open", "open"]);
  });

  it("leaves all open where a draw is no number, or there is one draw or none", () => {
    const broken = Float64Array.of(1, NaN, 3);
    for (const answer of [
      methodsOf(broken, Float64Array.of(2, 3, 4)),
      methodsOf(new Float64Array(0), new Float64Array(0)),
    ]) {
      expect([answer.paired.finding, answer.modified.finding]).toEqual(["open", "open"]);
    }
    expect(methodsOf(Float64Array.of(1), Float64Array.of(2)).paired.finding).toBe("open");
  });
});
