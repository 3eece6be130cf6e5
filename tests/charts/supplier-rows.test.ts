import { describe, expect, it } from "vitest";
import { type SupplierRow, supplierRows } from "../../src/charts/supplier-rows.js";
import { at, elements, sound, texts } from "./sound.js";

const row = (name: string, change: Partial<SupplierRow> = {}): SupplierRow => ({
  name,
  value: 4,
  low: 2,
  high: 6,
  isHollow: false,
  ...change,
});
const draw = (...rows: readonly SupplierRow[]) =>
  sound(() => supplierRows({ quantity: "water", unit: "L/m²", rows }));

describe("picture of suppliers", () => {
  it("places value, ends and what counts on one scale", () => {
    const drawing = draw(row("Brook", { counted: 5, group: 1 }));
    const circle = elements(drawing, "circle").at(-1);
    const line = elements(drawing, "line").find(
      (one) => one.attributes["stroke-width"] === "1.5" && at(one, "y1") === at(circle, "cy"),
    );
    const [low, high] = [at(line, "x1"), at(line, "x2")];
    expect(at(circle, "cx")).toBeCloseTo(low + (high - low) / 2, 1);
    const counted = elements(drawing, "line").at(-1);
    expect(at(counted, "x1")).toBeCloseTo(low + 0.75 * (high - low), 1);
  });

  it("leave room for the rest where a value used for order lies far out", () => {
    const drawing = draw(row("Brook"), row("Eyot", { counted: 90 }));
    expect(JSON.stringify(drawing)).toContain("beyond the axis");
    const ends = elements(drawing, "line").filter(
      (one) => one.attributes["stroke-width"] === "1.5",
    );
    expect(at(ends.at(-1), "x2") - at(ends.at(-1), "x1")).toBeGreaterThan(100);
    expect(JSON.stringify(draw(row("Brook", { counted: 7 })))).not.toContain("beyond the axis");
  });

  it("brackets those that cannot be told apart, and no one alone", () => {
    const drawing = draw(
      row("Brook", { group: 1 }),
      row("Cliff", { group: 1 }),
      row("Ash", { group: 2 }),
    );
    expect(texts(drawing).filter(({ text }) => text === "not told apart")).toHaveLength(2);
    expect(
      texts(draw(row("Brook", { group: 1 }))).filter(({ text }) => text === "not told apart"),
    ).toHaveLength(0);
  });

  it("say in numbers what lies beyond the axis, so that one row does not squeeze the rest", () => {
    const drawing = draw(row("Ash"), row("Brook"), row("Eyot", { high: 90, counted: 480 }));
    const said = texts(drawing).map(({ text }) => text);
    expect(said).toContain("up to 90, for order 480");
    expect(said.some((text) => Number(text) > 60)).toBe(false);
  });

  it("is hollow where little is the supplier's own", () => {
    const fills = elements(draw(row("Brook"), row("Eyot", { isHollow: true })), "circle").slice(-2);
    expect(fills.map(({ attributes }) => attributes["fill"])).toEqual(["#1e2733", "#ffffff"]);
  });

  it("takes fifty suppliers, values far apart and long names", () => {
    draw(
      ...Array.from({ length: 50 }, (_, i) =>
        row(`Supplier ${i} of a long street in a town`, {
          value: 2 ** (i / 5),
          low: 1,
          high: 2000,
          counted: 900,
          group: i,
        }),
      ),
    );
  });

  it("refuses what is no number", () => {
    expect(() =>
      supplierRows({ quantity: "water", unit: "L", rows: [row("a", { value: Number.NaN })] }),
    ).toThrow("picture of suppliers, a");
  });
});
