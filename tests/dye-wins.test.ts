import { describe, expect, it } from "vitest";
import { judgeClaim } from "../src/compare/claims/assess.js";
import { claimKind } from "../src/compare/claims/catalogue.js";
import { evidenceOf } from "../src/compare/claims/evidence.js";
import type { Block } from "../src/report/document.js";
import { POLICY } from "./compare/claims/made.js";
import { textOf } from "./tools/tree.js";
import { AS_OF, inputOf, smallMill } from "./report/compose/small-mill.js";
import { wholeReport } from "./report/compose/whole-report.js";

// A house where pigment has everything against it: a calender that holds its heat badly, on electricity, and goods that
// go through pad and stenter once more; and dye that is steamed and washed with care.
const input = inputOf(
  smallMill({
    finish: true,
    settings: {
      "calender.standing": { value: 90, exact: true },
      "calender.idle": { value: 1, exact: true },
      "steamer.flush": { value: 0.05, exact: true },
      "steamer.idle-steam": { value: 1, exact: true },
      "wash-range.fresh-water": { value: 5, exact: true },
    },
  }),
);

function textOfRuns(block: Block | undefined): string {
  if (block?.kind !== "list") return "";
  return block.items
    .map((item) => item.map((run) => (run.kind === "note-ref" ? "" : run.text)).join(""))
    .join("\n");
}

describe("a mill in which dye takes less", () => {
  const { blocks } = wholeReport(input, textOf("templates/report.md"));
  const answers = textOfRuns(blocks.find(({ kind }) => kind === "list"));

  it("is one", () => {
    expect(input.comparisons.get("energy")?.difference.high).toBeLessThan(0);
  });

  it("is told so in the first sentences, in the same words as the other way round", () => {
    expect(answers).toMatch(/Final energy: .*% more \(/);
    expect(answers).not.toMatch(/Final energy: .*% less \(/);
  });

  it("names the rise among what gets worse", () => {
    const worse = blocks.find(
      (block) =>
        block.kind === "paragraph" &&
        block.runs.some((run) => run.kind === "text" && run.text.startsWith("What gets worse")),
    );
    const said =
      worse?.kind === "paragraph"
        ? worse.runs.map((run) => (run.kind === "note-ref" ? "" : run.text)).join("")
        : "";
    expect(said).toMatch(/final energy rises from/);
  });

  it("supports no claim that pigment saves energy, and says that it is the wrong way round", () => {
    const kind = claimKind("less-energy");
    expect(kind).toBeDefined();
    if (kind === undefined) return;
    const evidence = evidenceOf(kind, {
      account: input.account,
      groups: input.groups,
      comparisons: input.comparisons,
      gaps: new Map(),
      fastness: { pigment: true, dye: true },
      audience: "internal",
      review: undefined,
    });
    const { verdict, gates, cautious } = judgeClaim("less-energy", evidence, POLICY, AS_OF);
    expect(verdict).toBe("not-supported");
    expect(cautious).toBeUndefined();
    expect(gates.find(({ gate }) => gate === "interval")).toMatchObject({ why: "rises" });
  });
});
