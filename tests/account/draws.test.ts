import { describe, expect, it } from "vitest";
import { drawsOf, leafRange } from "../../src/account/draws.js";
import { Nodes } from "../../src/account/nodes.js";
import { constant, derive, type Leaf } from "../../src/numbers/quantity.js";

function uniformLeaf(id: string, common?: string): Leaf {
  return {
    ...constant(id, 0),
    spread: { shape: "uniform", low: 0, value: 0.5, high: 1 },
    ...(common === undefined ? {} : { common }),
  };
}

function correlation(a: Float64Array, b: Float64Array): number {
  const mean = (x: Float64Array): number => x.reduce((sum, v) => sum + v, 0) / x.length;
  const [ma, mb] = [mean(a), mean(b)];
  let [ab, aa, bb] = [0, 0, 0];
  a.forEach((value, i) => {
    ab += (value - ma) * ((b[i] ?? 0) - mb);
    aa += (value - ma) ** 2;
    bb += ((b[i] ?? 0) - mb) ** 2;
  });
  return ab / Math.sqrt(aa * bb);
}

const A = uniformLeaf("a");
const B = uniformLeaf("b");
const COUNT = 1234;

describe("drawsOf", () => {
  it("[E14] moves no draw when a factor is added", () => {
    const few = new Nodes();
    few.number(A);
    const more = new Nodes();
    more.number(B);
    const at = more.number(A);
    expect(drawsOf(more, COUNT, 3).of(at)).toEqual(drawsOf(few, COUNT, 3).of(0));
  });

  it("begins a longer row of draws with the shorter one, whichever was asked for first", () => {
    const nodes = new Nodes();
    const at = nodes.number(A);
    const short = drawsOf(nodes, 100, 3).of(at);
    const long = drawsOf(nodes, COUNT, 3).of(at);
    const again = drawsOf(nodes, 100, 3).of(at);
    expect([short.length, long.length, again.length]).toEqual([100, COUNT, 100]);
    expect(long.subarray(0, 100)).toEqual(short);
    expect(again).toEqual(short);
  });

  it("visits no more draws than asked for", () => {
    const nodes = new Nodes();
    const at = nodes.number(A);
    const ends: number[] = [];
    drawsOf(nodes, COUNT, 3).each([at], (_, end) => ends.push(end), 700);
    expect(ends).toEqual([500, 700]);
  });

  it("gives other draws under another seed and another name", () => {
    const nodes = new Nodes();
    nodes.number(A);
    nodes.number(B);
    const draws = drawsOf(nodes, COUNT, 3);
    expect(draws.of(0)).not.toEqual(draws.of(1));
    expect(draws.of(0)).not.toEqual(drawsOf(nodes, COUNT, 4).of(0));
  });

  it("works formulas of any number of arguments out, draw by draw and block by block", () => {
    const leaves = Array.from({ length: 9 }, (_, i) => uniformLeaf(`leaf ${i}`));
    for (let n = 0; n <= leaves.length; n++) {
      const nodes = new Nodes();
      const read = leaves.slice(0, n);
      const at = nodes.number(
        derive("weighted", "1", "Σ (i + 1) xᵢ + 5", read, (...x) =>
          x.reduce((sum, value, i) => sum + (i + 1) * value, 5),
        ),
      );
      const draws = drawsOf(nodes, COUNT, 1);
      const parts = read.map((leaf) => draws.of(nodes.number(leaf)));
      const wanted = Float64Array.from({ length: COUNT }, (_, k) =>
        parts.reduce((sum, part, i) => sum + (i + 1) * (part[k] ?? NaN), 5),
      );
      expect(draws.of(at)).toEqual(wanted);
    }
  });

  it("shares half of the doubt between owners of one default", () => {
    const nodes = new Nodes();
    const places = ["x @ one", "x @ two"].map((id) => nodes.number(uniformLeaf(id, "x")));
    const alone = nodes.number(uniformLeaf("x @ three"));
    const draws = drawsOf(nodes, 20_000, 5);
    const [one, two] = places.map((at) => draws.of(at));
    if (one === undefined || two === undefined) throw new Error("no draws");
    // Pearson's correlation of two uniforms whose normals correlate by ½ is (6/π) asin ¼ = 0.483: K. Pearson,
    // On further methods of determining correlation, 1907, from memory. 1/√20000 is 0.007.
    expect(correlation(one, two)).toBeGreaterThan(0.46);
    expect(correlation(one, two)).toBeLessThan(0.505);
    expect(Math.abs(correlation(one, draws.of(alone)))).toBeLessThan(0.03);
    // Mixing leaves each of them uniform: mean ½, variance 1/12.
    const mean = one.reduce((sum, v) => sum + v, 0) / one.length;
    expect(Math.abs(mean - 0.5)).toBeLessThan(0.01);
    const variance = one.reduce((sum, v) => sum + (v - mean) ** 2, 0) / one.length;
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(0.002);
  });

  it("draws bonded numbers together, each within its own spread, and moves no others", () => {
    const bonded = (id: string, weight: number): Leaf => ({
      ...uniformLeaf(id, id),
      bond: { stream: "pair", weight },
    });
    const nodes = new Nodes();
    const places = [bonded("hot", Math.SQRT1_2), bonded("long", -Math.SQRT1_2), A, B].map((leaf) =>
      nodes.number(leaf),
    );
    const draws = drawsOf(nodes, 20_000, 5);
    const [hot, long, a, b] = places.map((at) => draws.of(at));
    if (hot === undefined || long === undefined) throw new Error("no draws");
    // Pearson's correlation of two uniforms whose normals correlate by −½, as above: −0.483. Four standard
    // errors: 4 (1 − ρ²) / √20000.
    expect(Math.abs(correlation(hot, long) + (6 / Math.PI) * Math.asin(0.25))).toBeLessThan(0.022);
    for (const one of [hot, long]) {
      // Largest gap to a uniform distribution, 1 % point of Kolmogorov's statistic: 1.63 / √n, from memory.
      const sorted = one.slice().sort();
      const gap = sorted.reduce(
        (most, v, i) => Math.max(most, Math.abs(v - (i + 0.5) / 20_000)),
        0,
      );
      expect(gap).toBeLessThan(1.63 / Math.sqrt(20_000));
    }
    const alone = new Nodes();
    const without = [A, B].map((leaf) => drawsOf(alone, 20_000, 5).of(alone.number(leaf)));
    expect([a, b]).toEqual(without);
  });

  it("leaves a fixed number alone", () => {
    const nodes = new Nodes();
    nodes.number(constant("six", 6));
    expect([...drawsOf(nodes, 4, 1).of(0)]).toEqual([6, 6, 6, 6]);
  });

  it("visits blocks that cover all draws once", () => {
    const nodes = new Nodes();
    nodes.number(A);
    const seen: number[] = [];
    const draws = drawsOf(nodes, COUNT, 1);
    const all = draws.of(0);
    draws.each([0], (start, end, values) => {
      expect(values[0]?.slice(0, end - start)).toEqual(all.slice(start, end));
      for (let i = start; i < end; i++) seen.push(i);
    });
    expect(seen).toEqual(Array.from({ length: COUNT }, (_, i) => i));
  });
});

describe("leafRange", () => {
  it("gives median and 95 % interval", () => {
    const range = leafRange(A);
    expect(range.median).toBeCloseTo(0.5, 9);
    expect(range.low).toBeCloseTo(0.025, 9);
    expect(range.high).toBeCloseTo(0.975, 9);
  });
});
