import { describe, expect, it } from "vitest";
import { sheet } from "../../src/charts/nodes.js";
import { labelColumn } from "../../src/charts/row-labels.js";
import { interWidth } from "../../src/charts/text-width.js";
import { LONG, UNBROKEN } from "./sample-data.js";
import { elements, sound, texts } from "./sound.js";

describe("labels of rows", () => {
  const labels = [
    { name: "Dye", note: "market basis", route: "dye" as const },
    { name: LONG },
    { name: UNBROKEN },
  ];
  const column = labelColumn(labels, interWidth);
  const drawing = sound(() =>
    sheet(
      180,
      labels.flatMap((_, row) => column.draw(row, 30 + row * 60)),
    ),
  );

  it("stay within their column", () => {
    for (const { right } of texts(drawing)) expect(right).toBeLessThan(column.width - 6);
    expect(column.width).toBeLessThan(180);
  });

  it("say how high they are", () => {
    expect(column.heights).toEqual([26, 39, 39]);
  });

  it("show the sample of a route before its name", () => {
    const [name] = texts(drawing).filter(({ text }) => text === "Dye");
    expect(elements(drawing, "rect").map(({ attributes }) => attributes["fill"])).toEqual([
      "#f2c647",
    ]);
    expect(name?.left).toBeGreaterThan(10);
    expect(name?.strong).toBe(true);
  });

  it("are cut to the room given", () => {
    const narrow = labelColumn([{ name: LONG }], interWidth, { width: 96, lines: 2 });
    expect(narrow.heights).toEqual([26]);
    expect(narrow.width).toBeLessThan(110);
  });

  it("are nothing for a row that is not there", () => {
    expect(column.draw(9, 0)).toEqual([]);
  });
});
