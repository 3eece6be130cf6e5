import { describe, expect, it } from "vitest";
import type { Block, Cell } from "../../../src/report/document.js";
import { tableHtml } from "../../../src/report/html/tables.js";
import { pageOf, read } from "./made.js";
import { cell, number } from "./sample-page.js";

type Table = Extract<Block, { kind: "table" }>;

const ROWS: readonly (readonly Cell[])[] = [
  [cell("washing", { strong: true }), cell(number("water.dye", "62"), { align: "right" })],
  [cell("printing"), cell(number("water.pigment", "20"), { align: "right" })],
];

function table(rest: Partial<Table> = {}): HTMLElement {
  const block: Table = {
    kind: "table",
    id: "t1",
    caption: "Table 1. Water",
    head: [cell("Step"), cell("Water, L")],
    rows: ROWS,
    ...rest,
  };
  return read(tableHtml(block, pageOf([block])));
}

const many = (row: readonly Cell[]): readonly (readonly Cell[])[] =>
  Array.from({ length: 6 }, () => row);

describe("tableHtml", () => {
  it("names head, rows and table for those who hear it", () => {
    const html = table();
    const heads = [...html.querySelectorAll("th")].map((th) => [
      th.textContent,
      th.getAttribute("scope"),
      th.className,
    ]);
    expect(heads).toEqual([
      ["Step", "col", ""],
      ["Water, L", "col", "number"],
      ["washing", "row", "strong"],
      ["printing", "row", ""],
    ]);
    const box = html.querySelector(".scroll");
    const label = box?.getAttribute("aria-labelledby") ?? "";
    expect(html.querySelector(`#${label}`)?.textContent).toBe("Table 1. Water");
    expect(box?.getAttribute("tabindex")).toBe("0");
    expect(html.querySelector("td.number")?.getAttribute("data-v")).toBe("61.5");
  });

  it("lets the rows of a wide table be read as cards, each value beside its head", () => {
    const head = ["Step", "Pigment, L", "Dye, L", "Less, %", "Status"].map((words) => cell(words));
    const wide = table({ head, rows: [head] });
    expect(wide.querySelector("table")?.className).toBe("cards");
    const labels = [...wide.querySelectorAll("tbody > tr > *")].map((at) =>
      at.getAttribute("data-label"),
    );
    expect(labels).toEqual([null, "Pigment, L", "Dye, L", "Less, %", "Status"]);
    expect(table().querySelector("[data-label]")).toBeNull();
    const spanned = table({ head, rows: [[cell("all", { span: 5 })]] });
    expect(spanned.querySelector("[data-label]")).toBeNull();
  });

  it("makes no head of a cell that says nothing", () => {
    const html = table({
      head: [cell(""), cell("Water, L"), cell(" ")],
      rows: [[cell(""), cell("61"), cell("over")]],
    });
    expect([...html.querySelectorAll("th")].map((th) => th.textContent)).toEqual(["Water, L"]);
    expect(html.querySelectorAll("thead > tr > *")).toHaveLength(3);
  });

  it("keeps the data behind a chart shut", () => {
    const html = table({ behind: true });
    expect(html.querySelector("details.behind:not([open]) > summary")?.textContent).toBe(
      "Table 1. Water",
    );
    expect(html.querySelector("details table")).not.toBeNull();
  });

  it("offers an order only where values can be ordered", () => {
    const water = number("water.dye", "62");
    const sortable = (rows: readonly (readonly Cell[])[]): boolean =>
      table({ rows }).querySelector("table.sortable") !== null;
    expect(sortable(many([cell("a"), cell(water)]))).toBe(true);
    expect(sortable(many([cell("a"), cell(water)]).slice(1))).toBe(false);
    expect(sortable([...many([cell("a"), cell(water)]), [cell("all", { span: 2 })]])).toBe(false);
    expect(
      sortable([...many([cell("a"), cell(water)]), [cell("b"), cell(number("cod.dye", "38"))]]),
    ).toBe(false);
  });

  it("keeps totals apart, spans columns and leaves empty corners without heading", () => {
    const total = [cell("All", { strong: true }), cell("82", { strong: true })];
    const html = table({
      head: [{ runs: [] }, cell("L")],
      rows: [...ROWS, total, [cell("x", { span: 2 })]],
    });
    expect([...html.querySelectorAll("tr.total")].map((row) => row.textContent)).toEqual(["All82"]);
    expect(html.querySelector("[colspan]")?.getAttribute("colspan")).toBe("2");
    expect(html.querySelector("thead tr")?.firstElementChild?.tagName).toBe("TD");
  });
});
