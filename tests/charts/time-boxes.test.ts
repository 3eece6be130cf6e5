import { describe, expect, it } from "vitest";
import { timeBoxes } from "../../src/charts/time-boxes.js";
import { PALE } from "../../src/charts/palette.js";
import { bars, sound, texts, at } from "./sound.js";

const row = (route: "dye" | "pigment", process: number) => ({
  name: `${route} route`,
  route,
  process,
  queue: 2,
  given: 0,
  total: [3, 4, 5, 7, 12],
});

describe("picture of times", () => {
  const draw = () => sound(() => timeBoxes({ rows: [row("dye", 6), row("pigment", 3)] }));

  it("draws hours on machines to one scale", () => {
    const width = (colour: string): number => at(bars(draw(), colour).at(-1), "width");
    expect(texts(draw()).map(({ text }) => text)).toContain("waiting for machines");
    const long = Math.max(...bars(draw(), "#f2c647").map((bar) => at(bar, "width")));
    const short = Math.max(...bars(draw(), "#2a3f5e").map((bar) => at(bar, "width")));
    expect(width("#2a3f5e")).toBeGreaterThan(0);
    expect(long / short).toBeCloseTo(2, 1);
  });

  it("refuses what is no number", () => {
    expect(() => timeBoxes({ rows: [{ ...row("dye", 1), queue: Infinity }] })).toThrow(
      "picture of times",
    );
  });

  it("sets batch and store behind the wait, to the same scale, and names them only then", () => {
    const stored = sound(() => timeBoxes({ rows: [{ ...row("dye", 6), given: 3 }] }));
    const words = (drawing: ReturnType<typeof draw>) => texts(drawing).map(({ text }) => text);
    expect(words(stored)).toContain("batch and store");
    expect(words(draw())).not.toContain("batch and store");
    const wide = (colour: string): number => at(bars(stored, colour).at(-1), "width");
    const [machine, store] = [wide("#f2c647"), wide(PALE)];
    expect(machine / store).toBeCloseTo(2, 1);
  });
});
