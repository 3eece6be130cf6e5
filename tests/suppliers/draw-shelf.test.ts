import { describe, expect, it } from "vitest";
import { drawsOf } from "../../src/account/draws.js";
import { Nodes } from "../../src/account/nodes.js";
import type { Leaf } from "../../src/numbers/quantity.js";
import { drawShelf } from "../../src/suppliers/draw-shelf.js";

const leaf = (id: string, high = 2): Leaf => ({
  kind: "leaf",
  id,
  factor: id,
  unit: "1",
  words: id,
  spread: { shape: "uniform", low: 1, value: 1.5, high },
  provenance: "default",
  source: "x",
});

describe("a shelf of draws", () => {
  it("gives what was drawn before, and the same as without it", () => {
    let made = 0;
    const shelf = drawShelf(10);
    const make = (): Float64Array => {
      made += 1;
      return new Float64Array([made]);
    };
    expect([...shelf(leaf("a"), 1, 1, make), ...shelf(leaf("a"), 1, 1, make)]).toEqual([1, 1]);
    for (const [other, seed, count] of [
      [leaf("b"), 1, 1],
      [leaf("a", 3), 1, 1],
      [leaf("a"), 2, 1],
      [leaf("a"), 1, 2],
    ] as const)
      shelf(other, seed, count, make);
    expect(made).toBe(5);
    const nodes = new Nodes();
    const at = nodes.number(leaf("a"));
    expect(drawsOf(nodes, 700, 3, drawShelf(10)).of(at)).toEqual(drawsOf(nodes, 700, 3).of(at));
  });

  it("forgets the oldest when it is full, and asks the shelf below for what is not its own", () => {
    const asked: string[] = [];
    const below = drawShelf(10);
    const shelf = drawShelf(1, below, (id) => id.startsWith("own"));
    const take = (id: string): void => {
      shelf(leaf(id), 1, 1, () => {
        asked.push(id);
        return new Float64Array(1);
      });
    };
    for (const id of ["world", "own 1", "own 2", "own 1", "world"]) take(id);
    expect(asked).toEqual(["world", "own 1", "own 2", "own 1"]);
  });
});
