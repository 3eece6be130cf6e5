import { describe, expect, it } from "vitest";
import { calendar, monthFoot } from "../../src/charts/months.js";
import { sheet } from "../../src/charts/nodes.js";
import { interWidth } from "../../src/charts/text-width.js";
import { sound, texts } from "./sound.js";

describe("calendar", () => {
  it("fills in the months between, over the turn of the year", () => {
    expect(calendar(["2025-02", "2024-11"])).toEqual(["2024-11", "2024-12", "2025-01", "2025-02"]);
    expect(calendar([])).toEqual([]);
  });

  it.each(["2025-13", "2025-00", "2025-1", "25-01", "2025-01-04"])("refuses %j", (month) => {
    expect(() => calendar([month])).toThrow(`month "${month}": expected one such as 2025-07`);
  });

  it("refuses more than ten years", () => {
    expect(calendar(["2015-01", "2024-12"])).toHaveLength(120);
    expect(() => calendar(["2015-01", "2025-01"])).toThrow("months of a picture = 121");
  });
});

describe("foot of months", () => {
  const draw = (count: number, first: string, figure: string) => {
    const start = Number(first.slice(0, 4)) * 12 + Number(first.slice(5)) - 1 + count - 1;
    const last = `${Math.floor(start / 12)}-${String((start % 12) + 1).padStart(2, "0")}`;
    const months = calendar([first, last]);
    const foot = monthFoot(
      { months, rows: [{ name: "lots", figures: months.map(() => figure) }] },
      (index) => 80 + ((index + 0.5) * 550) / count,
      10,
      70,
      interWidth,
    );
    return sound(() => sheet(10 + foot.height, foot.nodes));
  };
  const printed = (count: number, first: string, figure = "12"): readonly string[] =>
    texts(draw(count, first, figure)).map(({ text }) => text);

  it("names every month of a year", () => {
    expect(printed(12, "2025-01").slice(0, 4)).toEqual(["Jan", "2025", "Feb", "Mar"]);
  });

  it("names every third month of several years", () => {
    const names = printed(40, "2023-05").filter((text) => /^[A-Z]/.test(text));
    expect(names.slice(0, 4)).toEqual(["Jul", "Oct", "Jan", "Apr"]);
  });

  it("names the years alone of ten years", () => {
    const names = printed(120, "2015-01", "").filter((text) => /^(20|[A-Z])/.test(text));
    expect(names).toEqual(Array.from({ length: 10 }, (_, index) => String(2015 + index)));
  });

  it("turns figures upright where they are too long", () => {
    const lying = texts(draw(12, "2025-01", "123")).at(-1);
    const standing = texts(draw(36, "2025-01", "1234")).at(-1);
    const isWide = (text: typeof lying): boolean =>
      (text?.right ?? 0) - (text?.left ?? 0) > (text?.bottom ?? 0) - (text?.top ?? 0);
    expect(isWide(lying)).toBe(true);
    expect(isWide(standing)).toBe(false);
  });
});
