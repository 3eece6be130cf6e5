import { describe, expect, it } from "vitest";
import type { Block } from "../../../src/report/document.js";
import type { ContainerName } from "../../../src/report/template/containers.js";
import { closed, isContainer } from "../../../src/report/template/containers.js";

const TEXT: Block = { kind: "paragraph", runs: [{ kind: "text", text: "a" }] };
const TABLE: Block = { kind: "table", id: "", caption: "", head: [], rows: [] };

function close(name: ContainerName, argument: string, blocks: Block[]): readonly Block[] {
  return closed({ name, argument, line: 1, blocks }, (complaint) => {
    throw new Error(complaint);
  });
}

describe("containers", () => {
  it("are known by name", () => {
    expect(isContainer("box")).toBe(true);
    expect(isContainer("page")).toBe(false);
  });

  it("become boxes, toned paragraphs and tables", () => {
    expect(close("box", "A", [TEXT])).toEqual([
      { kind: "box", title: "A", tone: "plain", blocks: [TEXT] },
    ]);
    expect(close("caution", "A", [])).toEqual([
      { kind: "box", title: "A", tone: "caution", blocks: [] },
    ]);
    expect(close("small", "", [TEXT])).toEqual([{ ...TEXT, tone: "small" }]);
    expect(close("table", "t.1 Table 1. A", [TABLE])).toEqual([
      { ...TABLE, id: "t.1", caption: "Table 1. A" },
    ]);
  });

  it.each<[ContainerName, string, Block[], string]>([
    ["box", "", [TEXT], "needs a title"],
    [
      "box",
      "A",
      [{ kind: "box", title: "B", tone: "plain", blocks: [] }],
      "may not stand in a box",
    ],
    ["lead", "A", [TEXT], "takes nothing behind it"],
    ["lead", "", [TABLE], "holds paragraphs only"],
    ["table", "t1", [TABLE], "needs an id and a caption"],
    ["table", "t1 A", [TEXT], "holds one table"],
    ["table", "t1 A", [TABLE, TEXT], "holds one table"],
    ["table", "t1 A", [], "holds one table"],
  ])("refuse %s %j", (name, argument, blocks, complaint) => {
    expect(() => close(name, argument, blocks)).toThrow(complaint);
  });
});
