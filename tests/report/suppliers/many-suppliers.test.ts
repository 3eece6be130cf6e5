import { describe, expect, it } from "vitest";
import {
  MANY,
  overviewTable,
  sharedBoundaries,
} from "../../../src/report/suppliers/many-suppliers.js";
import { COMPARED } from "./whole.js";

const [water] = COMPARED.results;

describe("many suppliers", () => {
  it("are counted on page one, each count from what the chapters name", () => {
    const table = overviewTable(COMPARED, water!);
    if (table.kind !== "table") throw new Error(table.kind);
    const number = (words: string): string | undefined =>
      table.rows
        .find(([head]) => JSON.stringify(head).includes(words))?.[1]
        ?.runs.map((run) => ("text" in run ? run.text : ""))
        .join("");
    expect(number("compared")).toBe("3");
    expect(number("with a place")).toBe("2");
    expect(number("without a place")).toBe("1");
    expect(number("signed")).toBe("0");
  });

  it("share a row where their boundaries are the same", () => {
    const [row] = COMPARED.gate.boundary;
    const rows = Array.from({ length: MANY }, (_, i) => ({ ...row!, alias: `S ${10 + i}` }));
    expect(sharedBoundaries(rows, MANY).map(({ names }) => names)).toEqual([
      `S 10, S 11, S 12, S 13 and ${MANY - 4} more`,
    ]);
    expect(sharedBoundaries(rows, MANY - 1)).toHaveLength(MANY);
    const other = rows.map((one, i) => (i === 3 ? { ...one, routeClass: "acid" } : one));
    expect(sharedBoundaries(other, MANY)).toHaveLength(2);
  });
});
