import { describe, expect, it } from "vitest";
import { numbered } from "../../../src/report/compose/numbered.js";
import type { Block } from "../../../src/report/document.js";

const figure = (id: string): Block => ({
  kind: "figure",
  id,
  title: id,
  description: "",
  missing: "",
});

describe("numbered", () => {
  it("counts figures as they are read, in boxes too, and leaves the rest", () => {
    const text: Block = { kind: "paragraph", runs: [{ kind: "text", text: "No picture." }] };
    const box: Block = { kind: "box", title: "B", tone: "plain", blocks: [figure("b"), text] };
    const done = numbered([figure("a"), text, box, figure("c")]);
    const titles = done
      .flatMap((block) => (block.kind === "box" ? block.blocks : [block]))
      .map((block) => (block.kind === "figure" ? block.title : block.kind));
    expect(titles).toEqual(["Figure 1. a", "paragraph", "Figure 2. b", "paragraph", "Figure 3. c"]);
  });
});
