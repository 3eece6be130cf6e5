import { describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import {
  askTable,
  boundaryTable,
  evidenceTables,
  flagTable,
  gateTable,
  mixTable,
} from "../../../src/report/suppliers/condition-tables.js";
import { COMPARED } from "./whole.js";

const said = (block: Block): string => JSON.stringify(block);

describe("tables of conditions", () => {
  it("have the same number of cells in every row", () => {
    for (const table of [
      ...[gateTable, mixTable, boundaryTable, flagTable, askTable].map((make) => make(COMPARED)),
      ...evidenceTables(COMPARED),
    ]) {
      if (table.kind !== "table") throw new Error(table.kind);
      for (const row of table.rows) expect(row).toHaveLength(table.head.length);
    }
  });

  it("name who stays out, why and where", () => {
    const gate = {
      ...COMPARED.gate,
      refused: [
        {
          alias: "Supplier Eyot",
          cause: "not verified" as const,
          why: "digest",
          places: ["/pack/strata"],
        },
      ],
    };
    expect(said(gateTable({ ...COMPARED, gate }))).toContain("digest (at /pack/strata)");
  });

  it("show the digest of the mix and the holes of boundaries", () => {
    expect(said(mixTable(COMPARED))).toContain(COMPARED.mix.digest);
    expect(said(boundaryTable(COMPARED))).toContain("out: missing");
  });

  it("ask each question once, under the supplier it is put to", () => {
    const table = askTable(COMPARED);
    if (table.kind !== "table") throw new Error(table.kind);
    const rows = table.rows.map((row) => JSON.stringify(row.slice(0, 2)));
    expect(new Set(rows).size).toBe(rows.length);
    expect(said(flagTable(COMPARED))).not.toContain("?");
  });

  it("say so where there is nothing to ask", () => {
    const quiet = { ...COMPARED, flags: COMPARED.flags.map(() => []) };
    expect(said(flagTable(quiet))).not.toContain("Supplier");
    expect(said(flagTable(COMPARED))).toContain("Supplier");
    expect(evidenceTables(COMPARED).map(said).join()).toContain("not sealed");
  });
});
