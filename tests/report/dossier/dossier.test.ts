import { describe, expect, it } from "vitest";
import { composeDossier } from "../../../src/report/dossier/dossier.js";
import { usesOf } from "../../../src/report/dossier/uses.js";
import type { Block, ReportDocument } from "../../../src/report/document.js";
import { SHIPPED } from "../../tools/shipped-factors.js";
import { AS_OF, inputOf } from "../compose/small-mill.js";

const { account, swings } = inputOf();

function dossier(date = AS_OF): ReportDocument {
  return composeDossier({
    factors: SHIPPED,
    shown: [...SHIPPED.factors.values()],
    uses: usesOf(account.program),
    swings,
    house: "Two Route Mill (invented)",
    date,
    version: "0.1.0",
  });
}

const table = (document: ReportDocument, factor: string): ReadonlyMap<string, string> => {
  const found = document.blocks.find(
    (block): block is Extract<Block, { kind: "table" }> =>
      block.kind === "table" && block.caption.startsWith(`${factor}:`),
  );
  return new Map(
    (found?.rows ?? []).map((cells) => {
      const [question = "", answer = ""] = cells.map(({ runs }) =>
        runs.map((run) => (run.kind === "text" ? run.text : "")).join(""),
      );
      return [question, answer];
    }),
  );
};

describe("composeDossier", () => {
  const document = dossier();

  it("has a section, a picture and a table for every factor", () => {
    const count = SHIPPED.factors.size;
    const of = (kind: Block["kind"]): number =>
      document.blocks.filter((block) => block.kind === kind).length;
    expect(of("figure")).toBe(count);
    expect(of("table")).toBe(count);
    expect(
      document.blocks.filter((block) => block.kind === "heading" && block.level === 3),
    ).toHaveLength(count);
  });

  it("gives every section a name of its own", () => {
    const names = document.blocks.flatMap((block) => ("id" in block ? [block.id] : []));
    expect(new Set(names).size).toBe(names.length);
  });

  it("answers what an auditor asks", () => {
    const facts = table(document, "fuel.natural-gas.co2");
    // 2006 IPCC Guidelines, volume 2, table 1.4: 56 100 kg/TJ, 95 % interval 54 300 to 58 300.
    expect(facts.get("Vintages")).toMatch(/^56\d{3} from/);
    expect(facts.get("Spread")).toMatch(/lognormal/);
    expect(facts.get("Source")).toMatch(/IPCC|Guidelines/);
    expect(facts.get("Scores")).toMatch(/reliability \d/);
    expect(facts.get("Used in")).toMatch(/utilities and intensities/);
    expect(facts.get("Doubt it carries")).toMatch(/squared swings/);
  });

  it("says where a factor is not used", () => {
    expect(table(document, "tumbler.load").get("Used in")).toBe("nothing in this mill");
  });

  it("knows no value before it was entered", () => {
    const early = dossier("2020-01-01");
    expect(early.blocks.filter((block) => block.kind === "table")).toEqual([]);
  });
});
