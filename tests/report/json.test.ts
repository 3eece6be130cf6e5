import { describe, expect, it } from "vitest";
import { wholeReport } from "./compose/whole-report.js";
import type { Figure } from "../../src/report/document.js";
import { reportJson } from "../../src/report/json.js";
import { textOf } from "../tools/tree.js";
import { AS_OF, inputOf } from "./compose/small-mill.js";

interface Written {
  readonly format: string;
  readonly date: string;
  readonly reference: { readonly per: string; readonly units: number };
  readonly period: { readonly from: string; readonly to: string };
  readonly comparisons: Readonly<Record<string, Readonly<Record<string, unknown>>>>;
  readonly figures: Readonly<Record<string, Figure>>;
  readonly swings: Readonly<Record<string, { readonly base: number }>>;
  readonly reasons: Readonly<Record<string, unknown>>;
  readonly files: readonly { readonly sha256: string }[];
}

const input = inputOf();
const document = wholeReport(input, textOf("templates/report.md"));
const text = reportJson(document, input);
const data = JSON.parse(text) as Written;

describe("reportJson", () => {
  it("says what it is, of which lots, from which files and factors", () => {
    expect(data).toMatchObject({
      format: "millrace-report-1",
      title: document.title,
      house: input.plant.house,
      date: AS_OF,
      period: { from: "2026-03-02", to: "2026-04-21" },
      reference: input.reference,
      draws: 200,
      seed: 1,
      factors: input.factors.digest,
      files: input.log.files,
    });
    expect(text.endsWith("}\n")).toBe(true);
  });

  it("holds every figure of the document, with nothing lost on the way", () => {
    expect(data.figures).toEqual(document.figures);
  });

  it("holds every comparison, without its draws", () => {
    expect(Object.keys(data.comparisons)).toEqual([...input.comparisons.keys()]);
    for (const [id, comparison] of input.comparisons) {
      const { draws, ...rest } = comparison;
      expect(data.comparisons[id], id).toEqual(rest);
      if (draws !== undefined) expect(data.comparisons[id]).not.toHaveProperty("draws");
    }
  });

  it("holds swings by indicator", () => {
    expect(Object.keys(data.swings)).toEqual([...input.swings.keys()]);
    expect(data.swings["water"]?.base).toBe(input.swings.get("water")?.base);
  });

  it("names no client and no lot that the document does not name", () => {
    const told = JSON.stringify(document);
    for (const { client, lot } of [
      ...input.sample.map(({ key, lot: name }) => ({ client: key.client, lot: name })),
    ]) {
      if (!told.includes(client)) expect(text).not.toContain(client);
      expect(text).not.toContain(`"${lot}"`);
    }
  });
});
