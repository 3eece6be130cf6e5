import { describe, expect, it } from "vitest";
import { addProduct, addScaled, sumProduct } from "../../src/numbers/loops.js";

const a = Float64Array.of(1, 2, 3);
const b = Float64Array.of(10, 20, 30);

describe("loops", () => {
  it("add a multiple to the first numbers alone", () => {
    const into = Float64Array.of(5, 5, 5);
    addScaled(into, a, 2, 2);
    expect([...into]).toEqual([7, 9, 5]);
  });

  it("add products from a place on", () => {
    const into = Float64Array.of(1, 1, 1, 1);
    addProduct(into, 1, a, b, 2);
    expect([...into]).toEqual([1, 11, 41, 1]);
  });

  it("sum products of the first numbers", () => {
    expect(sumProduct(a, b, 3)).toBe(140);
    expect(sumProduct(a, b, 0)).toBe(0);
  });
});
