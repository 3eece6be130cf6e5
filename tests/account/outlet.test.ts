import { describe, expect, it } from "vitest";
import { Nodes } from "../../src/account/nodes.js";
import { fenceOf, unityOf } from "../../src/account/outlet.js";
import { ONE } from "../../src/numbers/quantity.js";

describe("fenceOf", () => {
  it("finds unity, and leaves a flow without conversion as it is", () => {
    const nodes = new Nodes();
    const unity = unityOf(nodes);
    expect(nodes.list[unity]?.quantity).toBe(ONE);
    expect(
      fenceOf(
        { fence: new Map(), indicators: new Map(), coilSteam: 0, raisedSteam: 0 },
        "ink",
        unity,
      ),
    ).toEqual([{ to: "ink", node: unity }]);
  });
});
