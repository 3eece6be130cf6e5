import { describe, expect, it } from "vitest";
import type { Run } from "../../../src/report/document.js";
import { templateMarkdown } from "../../../src/report/template/markdown.js";
import type { Carried } from "../../../src/report/template/marks.js";
import { markLines, valueMark } from "../../../src/report/template/marks.js";
import { runsOf } from "../../../src/report/template/runs.js";

const CARRIED: readonly Carried[] = [
  { kind: "text", text: "Albers" },
  { kind: "figure", figure: "water", text: "41" },
];
const NAME = valueMark(0);
const WATER = valueMark(1);

function runs(source: string): readonly Run[] {
  const inline = templateMarkdown()
    .parse(source, {})
    .find(({ type }) => type === "inline");
  return runsOf(inline?.children ?? [], {
    carried: CARRIED,
    notes: new Set(["n"]),
    fail: (complaint, line) => {
      throw new Error(`${String(line)}: ${complaint}`);
    },
  });
}

const text = (value: string, style?: "bold" | "italic" | "code"): Run =>
  style ? { kind: "text", text: value, style } : { kind: "text", text: value };
const water: Run = { kind: "figure-ref", figure: "water", text: "41" };

describe("runsOf", () => {
  it.each<[string, readonly Run[]]>([
    ["a\nb", [text("a b")]],
    [
      "**a** *b* `c`",
      [text("a", "bold"), text(" "), text("b", "italic"), text(" "), text("c", "code")],
    ],
    [`**${NAME}** and ${NAME}`, [text("Albers", "bold"), text(" and Albers")]],
    [`**so ${WATER} L**`, [text("so ", "bold"), water, text(" L", "bold")]],
    [`\`at ${NAME}\``, [text("at Albers", "code")]],
    [`[to ${NAME}](#a.b-1)`, [{ kind: "link", text: "to Albers", href: "#a.b-1" }]],
    ["a[^n]", [text("a"), { kind: "note-ref", note: "n" }]],
    ["\\*a\\* &amp; b", [text("*a* & b")]],
    ["", []],
  ])("reads %j", (source, expected) => {
    expect(runs(source)).toEqual(expected);
  });

  it.each([
    ["***a***", "bold and italic cannot be set at once"],
    ["a[^m]", 'there is no note "m"'],
    ["[a](mailto:b@example.org)", "is not allowed"],
    ["[a](//example.org)", "is not allowed"],
    [`[a](https://example.org/${NAME})`, "a value may not stand in the address"],
    [`[${WATER}](#a)`, "a figure may not stand inside a link"],
    ["[**a**](#a)", '"strong" cannot be printed in a report inside a link'],
    ["a  \nb", '"hardbreak" cannot be printed'],
    ["![a](b)", '"image" cannot be printed'],
    ["~~a~~", '"s" cannot be printed'],
  ])("refuses %j", (source, complaint) => {
    expect(() => runs(source)).toThrow(complaint);
  });

  it("passes on the line of the template", () => {
    expect(() => runs(markLines("a\nb ~~c~~"))).toThrow("2: ");
  });
});
