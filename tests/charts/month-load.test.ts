import { describe, expect, it } from "vitest";
import { monthLoad } from "../../src/charts/month-load.js";
import { at, bars, elements, sound, texts } from "./sound.js";

const draw = (capacity: number) =>
  sound(() =>
    monthLoad({
      area: "m² a month",
      capacity,
      months: [
        { month: "26-01", dye: 300, pigment: 500 },
        { month: "26-02", dye: 0, pigment: 900 },
      ],
    }),
  );

describe("picture of a machine's load", () => {
  it("stacks routes, in areas to one scale", () => {
    const pigment = bars(draw(1000), "#2a3f5e").map((bar) => at(bar, "height"));
    expect(Math.max(...pigment) / Math.min(...pigment)).toBeCloseTo(900 / 500, 1);
  });

  it("draws what the machine can do above what is less, and below what is more", () => {
    const line = (capacity: number): number =>
      at(
        elements(draw(capacity), "line")
          .filter((one) => one.attributes["stroke-dasharray"] === "6 4")
          .at(-1),
        "y1",
      );
    const top = (capacity: number): number =>
      Math.min(
        ...bars(draw(capacity), "#2a3f5e")
          .slice(1)
          .map((bar) => at(bar, "y")),
      );
    expect(line(1200)).toBeLessThan(top(1200));
    expect(line(600)).toBeGreaterThan(top(600));
  });

  it("names no route that has no bar", () => {
    const pigment = sound(() =>
      monthLoad({ area: "m²", capacity: 9, months: [{ month: "26-01", dye: 0, pigment: 5 }] }),
    );
    const words = texts(pigment).map(({ text }) => text);
    expect(words).toContain("pigment");
    expect(words).not.toContain("dye");
    expect(texts(draw(1000)).map(({ text }) => text)).toContain("dye");
  });
});
