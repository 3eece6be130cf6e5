import { describe, expect, it } from "vitest";
import { sectionOf } from "../../../src/report/dossier/section.js";
import { swingShares } from "../../../src/report/dossier/uses.js";
import { shippedFactor } from "../../tools/shipped-factors.js";
import { rowsOf, WHOLE } from "./whole.js";

const shares = swingShares(WHOLE.swings);

function page(id: string, date = WHOLE.date): ReturnType<typeof sectionOf> {
  return sectionOf(shippedFactor(id), true, { ...WHOLE, date }, shares.get(id));
}

function facts(id: string): ReadonlyMap<string, string> {
  const name = `facts-factor-${id.replaceAll(".", "-")}`;
  return new Map(rowsOf(page(id), name).map(([question = "", answer = ""]) => [question, answer]));
}

describe("page of a factor", () => {
  it("answers what an auditor asks", () => {
    const found = facts("fuel.natural-gas.co2");
    // 2006 IPCC Guidelines, volume 2, table 1.4: 56 100 kg/TJ, 95 % interval 54 300 to 58 300.
    expect(found.get("Value")).toMatch(/^56100 .*\(median\).* 95 % from 54\d00 to 58\d00$/);
    expect(found.get("Spread")).toMatch(/^lognormal; stated beside the value; plausible from/);
    expect(found.get("Source")).toMatch(/IPCC Guidelines/);
    expect(found.get("Figures of")).toMatch(/, 2006; read: memory$/);
    expect(found.get("Used in")).toMatch(/^intensities of .*CO₂e/);
    expect(found.get("Its doubt")).toMatch(/squared swings/);
  });

  it("tells steps, flows and number of terms", () => {
    expect(facts("steamer.flush").get("Used in")).toMatch(
      /^reactive · steam \(.*steam\.open.*\): \d+ terms?$/,
    );
  });

  it("carries the attribution that open data ask for, with the year", () => {
    const found = facts("grid.PRT.intensity");
    expect(found.get("Licence")).toMatch(/^CC BY 4\.0\. Attribution: Ember/);
    expect(found.get("Figures of")).toBe("Portugal, 2024; read: 2026-11-25");
  });

  it("says where the mill's own value stands in", () => {
    expect(facts("hall.temperature").get("Replaced")).toMatch(/^by the mill's own value/);
    expect(facts("hall.relative-humidity").has("Replaced")).toBe(false);
  });

  it("says where a factor is not used", () => {
    expect(facts("tumbler.load").get("Used in")).toMatch(/^no term, conversion or intensity/);
    expect(facts("tumbler.load").get("Its doubt")).toBe("none in this mill");
  });

  it("draws the spread of the scores beside a stated one, where they could serve", () => {
    const curves = (id: string): readonly number[] =>
      page(id).flatMap((block) =>
        block.kind === "figure" && block.chart?.kind === "spread-curve"
          ? [block.chart.data.curve.length, block.chart.data.other.length].map(Math.sign)
          : [],
      );
    expect(curves("grid.PRT.intensity")).toEqual([1, 1]);
    expect(curves("wash-range.hot")).toEqual([1, 0]);
    expect(curves("wash-range.recovery")).toEqual([0, 0]);
  });

  it("knows no value before it was entered", () => {
    const blocks = page("grid.PRT.intensity", "2020-01-01");
    expect(blocks.map(({ kind }) => kind)).toEqual(["heading", "paragraph"]);
  });
});
