import { describe, expect, it } from "vitest";
import { turnRows } from "../../src/charts/turn-rows.js";
import { LONG } from "./sample-data.js";
import { elements, sound, texts } from "./sound.js";

describe("picture of turning points", () => {
  const drawing = () =>
    sound(() =>
      turnRows({
        worth: "NPV",
        rows: [
          { name: "ink", at: 112, label: "14.4 EUR/L, today 12.9 EUR/L" },
          { name: LONG, at: 5000, label: "far away, and said so at some length" },
          { name: "water", label: "never" },
        ],
      }),
    );

  it("has a square for each driver that turns, and none for one that never does", () => {
    const squares = elements(drawing(), "rect").filter((box) => box.attributes["width"] === "8");
    // One of them stands in the legend.
    expect(squares).toHaveLength(3);
    expect(texts(drawing()).map(({ text }) => text)).toContain("never");
  });

  it("keeps what lies far away on the sheet", () => {
    for (const box of elements(drawing(), "rect"))
      expect(Number(box.attributes["x"])).toBeLessThan(640);
  });
});
