import { describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import {
  askTable,
  boundaryTable,
  evidenceTable,
  flagTable,
  gateTable,
  mixTable,
} from "../../../src/report/suppliers/condition-tables.js";
import { COMPARED } from "./whole.js";

const said = (block: Block): string => JSON.stringify(block);

describe("tables of conditions", () => {
  it("have the same number of cells in every row", () => {
    for (const table of [
      gateTable,
      mixTable,
      boundaryTable,
      flagTable,
      askTable,
      evidenceTable,
    ].map((make) => make(COMPARED))) {
      if (table.kind !== "table") throw new Error(table.kind);
      for (const row of table.rows) expect(row).toHaveLength(table.head.length);
    }
  });

  it("name who stays out, why and where", () => {
    const gate = {
      ...COMPARED.gate,
      refused: [{ alias: "Supplier Eyot", why: "digest", places: ["/pack/strata"] }],
    };
    expect(said(gateTable({ ...COMPARED, gate }))).toContain("digest (at /pack/strata)");
  });

  it("show the digest of the mix and the holes of boundaries", () => {
    expect(said(mixTable(COMPARED))).toContain(COMPARED.mix.digest);
    expect(said(boundaryTable(COMPARED))).toContain("out: missing");
  });

  it("say so where there is nothing to ask", () => {
    const quiet = { ...COMPARED, flags: COMPARED.flags.map(() => []) };
    expect(said(flagTable(quiet))).toContain("nothing to ask");
    expect(said(evidenceTable(COMPARED))).toContain("not sealed");
  });
});
