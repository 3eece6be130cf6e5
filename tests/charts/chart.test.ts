import { describe, expect, it } from "vitest";
import { drawChart } from "../../src/charts/chart.js";
import { drawingFaults } from "../../src/charts/drawing-rules.js";
import { importBars } from "../../src/charts/import-bars.js";

const ROWS = { accepted: 90, corrected: 6, setAside: 4, outside: 0 };

describe("drawChart", () => {
  it("draws what its kind names", () => {
    const drawn = drawChart({ kind: "import-bars", data: ROWS });
    expect(drawn).toEqual(importBars(ROWS));
    expect(drawingFaults(drawn)).toEqual([]);
  });

  it("survives a way through JSON, so that it can be sent elsewhere to be drawn", () => {
    const data = JSON.parse(JSON.stringify(ROWS)) as typeof ROWS;
    expect(drawChart({ kind: "import-bars", data })).toEqual(importBars(ROWS));
  });

  it("complains of what its kind complains of", () => {
    expect(() => drawChart({ kind: "import-bars", data: { ...ROWS, accepted: -1 } })).toThrow(
      thrownBy(() => importBars({ ...ROWS, accepted: -1 })),
    );
  });
});

function thrownBy(act: () => unknown): string {
  try {
    act();
  } catch (error) {
    return (error as Error).message;
  }
  throw new Error("nothing was thrown");
}
