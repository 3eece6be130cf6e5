import { describe, expect, it } from "vitest";
import { chanceCells } from "../../src/charts/chance-cells.js";
import { elements, sound, texts } from "./sound.js";

const row = (name: string, ...chances: readonly number[]) => ({
  name,
  chances,
  printed: chances.map((chance) => `${Math.round(100 * chance)} %`),
});

describe("picture of chances", () => {
  const drawing = sound(() =>
    chanceCells({
      columns: ["1", "2", "3"],
      across: "place",
      rows: [row("Brook", 1, 0, 0), row("Ash", 0, 0.41, 0.59)],
    }),
  );

  it("prints each chance in its cell", () => {
    expect(texts(drawing).map(({ text }) => text)).toEqual(
      expect.arrayContaining(["100 %", "0 %", "41 %", "59 %", "Brook", "place"]),
    );
  });

  it("is darker the greater the chance", () => {
    const fills = elements(drawing, "rect").map(({ attributes }) =>
      parseInt((attributes["fill"] ?? "").slice(1, 3), 16),
    );
    expect(fills).toHaveLength(6);
    const [certain = 0, none = 0, , , some = 0, more = 0] = fills;
    expect(none).toBe(255);
    expect(some).toBeLessThan(none);
    expect(more).toBeLessThanOrEqual(some);
    expect(certain).toBeLessThan(more);
  });

  it("takes twelve columns on a narrow sheet", () => {
    const chances = Array.from({ length: 12 }, () => 1 / 12);
    sound(() =>
      chanceCells(
        {
          columns: chances.map((_, i) => String(i + 1)),
          across: "place",
          rows: [row("Supplier Brook", ...chances)],
        },
        undefined,
        640,
      ),
    );
  });
});
