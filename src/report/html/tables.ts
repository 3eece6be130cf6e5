import { captionParts } from "../caption.js";
import type { Cell, Run } from "../document.js";
import type { Markup } from "./markup.js";
import { element, joined } from "./markup.js";
import type { BlockOf, Page } from "./page.js";
import { figureOf, runsHtml } from "./runs.js";

type Table = BlockOf<"table">;

/** Fewest rows worth putting in another order. */
const FEWEST_SORTED = 6;

/** Fewest columns that a narrow screen cannot show side by side. */
const FEWEST_CARD_COLUMNS = 5;

/**
 * Writes a table in a box that scrolls sideways where the screen is narrow. The browser finds the
 * widths of the columns.
 *
 * @param table - caption, head and rows
 * @param page - anchors and figures
 * @returns markup; the data behind a chart is shut until opened
 */
export function tableHtml(table: Table, page: Page): Markup {
  const anchor = page.places.anchors.get(table) ?? "";
  const caption = `${anchor}-caption`;
  const labels = cardLabels(table);
  const classes = [
    ...(isSortable(table, page) ? ["sortable"] : []),
    ...(labels.length > 0 ? ["cards"] : []),
  ].join(" ");
  const box = element(
    "div",
    { class: "scroll", role: "group", tabindex: 0, "aria-labelledby": caption },
    element(
      "table",
      { class: classes === "" ? undefined : classes, "aria-labelledby": caption },
      element("thead", {}, element("tr", {}, headCells(table, page))),
      element(
        "tbody",
        {},
        table.rows.map((row) => rowHtml(row, labels, page)),
      ),
    ),
  );
  return table.behind === true
    ? element(
        "details",
        { class: "behind", id: anchor },
        element("summary", { id: caption }, captionHtml(table.caption)),
        box,
      )
    : element(
        "figure",
        { class: "table", id: anchor },
        element("figcaption", { id: caption }, captionHtml(table.caption)),
        box,
      );
}

function captionHtml(caption: string): Markup {
  const [name, rest] = captionParts(caption);
  return rest === "" ? joined(name) : joined(name, " ", element("span", { class: "how" }, rest));
}

function headCells(table: Table, page: Page): readonly Markup[] {
  const plain = table.rows.filter((row) => row.length === table.head.length);
  return table.head.map((cell, column) => {
    const right = [cell, ...plain.map((row) => row[column])].some((at) => at?.align === "right");
    const attributes = {
      scope: "col",
      class: right ? "number" : undefined,
      colspan: span(cell),
    };
    return isBlank(cell)
      ? element("td", attributes)
      : element("th", attributes, runsHtml(cell.runs, page));
  });
}

function rowHtml(row: readonly Cell[], labels: readonly string[], page: Page): Markup {
  const total = row.length > 1 && row.every(({ strong }) => strong === true);
  const cells = row.map((cell, column) => {
    const heads = column === 0 && cell.align !== "right" && !isBlank(cell);
    const classes = [
      ...(cell.align === "right" ? ["number"] : []),
      ...(cell.strong === true ? ["strong"] : []),
    ].join(" ");
    return element(
      heads ? "th" : "td",
      {
        class: classes === "" ? undefined : classes,
        scope: heads ? "row" : undefined,
        colspan: span(cell),
        "data-label": heads ? undefined : labels[column],
        "data-v": sortValue(cell.runs, page),
      },
      runsHtml(cell.runs, page),
    );
  });
  return element("tr", { class: total ? "total" : undefined }, cells);
}

// On a narrow screen the rows of a wide table stand below each other as cards, each cell beside the head of its
// column. Heads over several columns have no such place.
function cardLabels({ head, rows }: Table): readonly string[] {
  const isPlain = [head, ...rows].every((row) => row.every((cell) => span(cell) === undefined));
  return isPlain && head.length >= FEWEST_CARD_COLUMNS ? head.map(plainWords) : [];
}

function plainWords({ runs }: Cell): string {
  return runs.map((run) => ("text" in run ? run.text : "")).join("");
}

// A head that says nothing would be read out as one.
function isBlank({ runs }: Cell): boolean {
  return runs.every((run) => run.kind === "text" && run.text.trim() === "");
}

function span({ span: columns }: Cell): number | undefined {
  return columns !== undefined && columns > 1 ? columns : undefined;
}

function sortValue(runs: readonly Run[], page: Page): number | undefined {
  const [run, ...more] = runs;
  return run?.kind === "figure-ref" && more.length === 0
    ? figureOf(run.figure, page).value
    : undefined;
}

// Values of different units have no order.
function isSortable({ head, rows }: Table, page: Page): boolean {
  if (rows.length < FEWEST_SORTED) return false;
  if (rows.some((row) => row.length !== head.length)) return false;
  return head.every((_, column) => {
    const units = rows.flatMap((row) =>
      (row[column]?.runs ?? []).flatMap((run) =>
        run.kind === "figure-ref" ? [figureOf(run.figure, page).unit] : [],
      ),
    );
    return new Set(units).size < 2;
  });
}
