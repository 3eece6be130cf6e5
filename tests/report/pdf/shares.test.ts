import { describe, expect, it } from "vitest";
import { parts } from "../../../src/report/pdf/shares.js";

describe("parts", () => {
  it("fills the longer side of a bar, in order and without gaps", () => {
    const shares = { measured: 0.5, allocated: 0, modelled: 0.25, default: 0.25 };
    const lying = parts({ x: 10, y: 5, width: 100, height: 6 }, shares);
    expect(lying.map(({ name, box }) => [name, box.x, box.width])).toEqual([
      ["measured", 10, 50],
      ["modelled", 60, 25],
      ["default", 85, 25],
    ]);
    const upright = parts({ x: 0, y: 0, width: 4, height: 200 }, shares);
    expect(upright.map(({ box }) => [box.y, box.height])).toEqual([
      [0, 100],
      [100, 50],
      [150, 50],
    ]);
  });
});
