import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ownText } from "../../src/log/own-text.js";

setFlagsFromString("--expose-gc");
const collect = runInNewContext("gc") as () => void;

/** Memory held by 40 pieces of 20 letters, each cut from a text of a million. [MB] */
function heldBy(keep: (piece: string) => string): number {
  collect();
  const before = process.memoryUsage().heapUsed;
  const kept = Array.from({ length: 40 }, (_, i) => {
    const long = `${i} of a log `.repeat(1e5);
    return keep(long.slice(100, 120));
  });
  collect();
  const held = (process.memoryUsage().heapUsed - before) / 1e6;
  expect(kept).toHaveLength(40);
  return held;
}

describe("ownText", () => {
  it("is equal to the text, whatever that is", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 40 }), (text) => {
        expect(ownText(text)).toBe(text);
        // Half a pair of code units, as a cut may leave it.
        expect(ownText(text.slice(1))).toBe(text.slice(1));
      }),
      { seed: 1, numRuns: 200 },
    );
  });

  it("lets go of the text it was cut from", () => {
    // Were it not so, the engine would cut by copying and the copy would be needless.
    expect(heldBy((piece) => piece)).toBeGreaterThan(30);
    expect(heldBy(ownText)).toBeLessThan(10);
  });
});
