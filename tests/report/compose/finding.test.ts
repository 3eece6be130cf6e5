import { describe, expect, it } from "vitest";
import { ReportDesk } from "../../../src/report/compose/desk.js";
import { findingBlocks } from "../../../src/report/compose/finding.js";
import { inputOf } from "./small-mill.js";

const input = inputOf();

describe("the finding of a chapter", () => {
  it("gives both routes, the step that takes most, and where the numbers come from", () => {
    const [sentence, strip] = findingBlocks(new ReportDesk(input), "water", "Water withdrawn");
    const text =
      sentence?.kind === "paragraph"
        ? sentence.runs.map((run) => ("text" in run ? run.text : "")).join("")
        : "";
    expect(text).toMatch(/L\/m² on the dye route \(most of it at wash range: \d\d\s%\)/);
    expect(text).toMatch(/95 % interval [\d.]+ to [\d.]+/);
    if (strip?.kind !== "strip") throw new Error("There is no strip.");
    const { measured, allocated, modelled, default: rest } = strip.shares;
    expect(measured + allocated + modelled + rest).toBeCloseTo(1, 12);
    expect(rest).toBeGreaterThan(0);
  });

  it("says of a load that the step adds it, not that it discharges it", () => {
    const [sentence] = findingBlocks(new ReportDesk(input), "cod", "COD load");
    const text =
      sentence?.kind === "paragraph"
        ? sentence.runs.map((run) => ("text" in run ? run.text : "")).join("")
        : "";
    expect(text).toMatch(/on the dye route \((?:most of it|the largest part) added at /);
  });

  it("is absent for an indicator that is not in the report", () => {
    const comparisons = new Map([...input.comparisons].filter(([id]) => id !== "water"));
    expect(findingBlocks(new ReportDesk({ ...input, comparisons }), "water", "Water")).toEqual([]);
  });
});
