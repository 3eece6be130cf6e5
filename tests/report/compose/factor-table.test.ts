import { describe, expect, it } from "vitest";
import { ReportDesk } from "../../../src/report/compose/desk.js";
import { factorBlocks } from "../../../src/report/compose/factor-table.js";
import { SHIPPED } from "../../tools/shipped-factors.js";
import { inputOf } from "./small-mill.js";
import { inputWithYields, share } from "./with-yields.js";

function factorRows(input = inputOf()): {
  readonly caption: string;
  readonly rows: readonly (readonly string[])[];
} {
  const table = factorBlocks(new ReportDesk(input)).find((block) => block.kind === "table");
  if (table?.kind !== "table") throw new Error("There is no table of factors.");
  return {
    caption: table.caption,
    // The key stands last in the first cell, after the words.
    rows: table.rows.map((row) =>
      row.map(({ runs }, at) =>
        (at === 0 ? runs.slice(-1) : runs).map((run) => ("text" in run ? run.text : "")).join(""),
      ),
    ),
  };
}

describe("the table of factors", () => {
  it("marks what was not re-read at its source, and nothing else", () => {
    const { rows, caption } = factorRows();
    const marked = rows.filter((row) => row[4]?.endsWith(", from memory"));
    const shipped = rows.filter(([name = ""]) => SHIPPED.factors.has(name));
    const recalled = shipped.filter(([name = "", , , , source = ""]) => {
      const key = source.replace(", from memory", "");
      return source !== "the mill" && SHIPPED.sources.get(key)?.read === "memory" && name !== "";
    });
    expect(recalled.length).toBeGreaterThan(0);
    expect(marked).toEqual(recalled);
    expect(marked.length).toBeLessThan(rows.length);
    expect(caption).toContain(`${marked.length} of ${rows.length} are marked`);
  });

  it("shows yields by workflow among the settings of the mill", () => {
    const { rows } = factorRows(inputWithYields({ dye: share(0.9, 0.8, 0.95) }));
    const row = rows.find(([name]) => name === "yield.dye @ site main");
    expect(row?.[4]).toBe("the mill: first-quality book of 2025");
    expect(factorRows().rows.some(([name]) => name?.startsWith("yield."))).toBe(false);
  });
});
