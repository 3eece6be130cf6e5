import { describe, expect, it } from "vitest";
import { judgeClaim } from "../../../src/compare/claims/assess.js";
import type { ClaimsInput } from "../../../src/report/compose/claims.js";
import type { Block } from "../../../src/report/document.js";
import { evidence, POLICY } from "../../compare/claims/made.js";
import { textOf } from "../../tools/tree.js";
import { inputOf } from "./small-mill.js";
import { wholeReport } from "./whole-report.js";

function textsOf(block: Block): string {
  switch (block.kind) {
    case "heading":
      return block.text;
    case "paragraph":
      return block.runs.map((run) => (run.kind === "note-ref" ? "" : run.text)).join("");
    case "list":
      return block.items
        .map((item) => item.map((run) => (run.kind === "note-ref" ? "" : run.text)).join(""))
        .join("\n");
    case "table":
      return [
        block.caption,
        ...block.rows
          .flat()
          .flatMap(({ runs }) => runs.map((run) => (run.kind === "note-ref" ? "" : run.text))),
      ].join("\n");
    case "box":
      return [block.title, ...block.blocks.map(textsOf)].join("\n");
    default:
      return "";
  }
}

function sheet(claims: ClaimsInput): string {
  const input = { ...inputOf(), claims };
  const { blocks } = wholeReport(input, textOf("templates/report.md"));
  const from = blocks.findIndex((block) => block.kind === "heading" && block.id === "claims");
  const after = blocks.slice(from + 1);
  const to = after.findIndex((block) => block.kind === "heading" && block.level === 2);
  return after.slice(0, to).map(textsOf).join("\n");
}

const claim = (id: string, change: Parameters<typeof evidence>[0] = {}): ClaimsInput => ({
  verdicts: [judgeClaim(id, evidence(change), POLICY, "2026-04-21")],
  policy: POLICY.version,
  changes: [],
});

describe("the claims sheet", () => {
  it("words a claim with all that belongs to it, or not at all", () => {
    const said = sheet(claim("less-water", { months: 6 }));
    // Baseline, unit, boundary, period, site, interval, cautious value, conditions, versions, expiry.
    for (const part of [
      "for dye with steam and wash",
      "per accepted m²",
      "gate to gate",
      "2 March 2026 to 21 April 2026",
      "(main)",
      "95 % interval",
      "Measured by meters of the machines: 0 % of pigment; 0 % of dye.",
      "cautiously at least 50",
      "Under these conditions: 6 months",
      POLICY.version,
      "Not independently verified",
      "Holds until 21 April 2027",
    ])
      expect(said.replaceAll("\u00a0", " ").replaceAll("\u202f", " "), part).toContain(part);
  });

  it("words nothing that is not supported, and says what stands in the way", () => {
    const said = sheet(claim("less-water", { gap: 0.14 }));
    expect(said).not.toContain("cautiously");
    expect(said).toContain("Less process water: not supported");
    expect(said).toContain("What would help most: find what the meters count");
  });

  it("says why a claim can never be printed, and what one from elsewhere would need", () => {
    expect(sheet(claim("equivalents"))).toContain("Never printed. Equivalents turn");
    expect(sheet(claim("faster-delivery"))).toContain("would need: times of order and dispatch");
  });

  it("tells of every threshold the house has moved, and which way", () => {
    const said = sheet({
      ...claim("less-water"),
      changes: [{ key: "gap.pass", shipped: 0.05, own: 0.2, looser: true }],
    });
    expect(said).toContain("gap.pass is 0.2 instead of 0.05, which lets claims pass more easily.");
  });

  it("asks the modified test for the least difference that the house has set", () => {
    const asked = (least: number): string => {
      const input = { ...inputOf(), claims: { ...claim("less-water"), least } };
      const { blocks } = wholeReport(input, textOf("templates/report.md"));
      return blocks
        .filter((block) => block.kind === "table" && block.id === "comparison-methods")
        .map(textsOf)
        .join("\n");
    };
    expect(asked(0.2)).toContain("exceeds 0.2 of its standard deviation");
    expect(asked(3)).toContain("exceeds 3.0 of its standard deviation");
    const findings = (text: string): number => text.match(/open/g)?.length ?? 0;
    expect(findings(asked(5))).toBeGreaterThan(findings(asked(0)));
  });
});
