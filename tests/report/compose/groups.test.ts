import { describe, expect, it } from "vitest";
import { wholeReport } from "./whole-report.js";
import type { ReportInput } from "../../../src/report/compose/input.js";
import { textOf } from "../../tools/tree.js";
import { inputOf, LOTS, lotOf, smallMill } from "./small-mill.js";

function captionOf(input: ReportInput, table: "by-client" | "by-fabric"): string {
  const document = wholeReport(input, textOf("templates/report.md"));
  const text = JSON.stringify(document);
  return new RegExp(`"id":"${table}","caption":"([^"]*)"`).exec(text)?.[1] ?? "";
}

describe("tables by client and fabric", () => {
  const many = Array.from({ length: 510 }, (_, i) =>
    lotOf({ lot: `M-${i}`, client: `Client ${i}`, width: 1, length: 1, rejected: undefined }),
  );

  it("say nothing of folding where no name was folded", () => {
    const input = inputOf();
    for (const table of ["by-client", "by-fabric"] as const) {
      expect(captionOf(input, table)).toMatch(/per accepted m²/);
      expect(captionOf(input, table)).not.toMatch(/added up/);
    }
  });

  it("say how many clients were folded, with their lots and area, and leave fabrics alone", () => {
    const names = new Set([...LOTS, ...many].map(({ client }) => client)).size;
    const input = inputOf(smallMill(), [...LOTS, ...many]);
    // One m² a lot; those of the small mill are larger and keep their names.
    const folded = names - 499;
    expect(captionOf(input, "by-client")).toContain(
      `The ${folded} clients with the least accepted area (${folded} lots, ${folded} m²) are added up as “other (${folded} clients)”.`,
    );
    expect(captionOf(input, "by-fabric")).not.toMatch(/added up/);
  });
});
