import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Block } from "../../src/report/document.js";
import { renderTemplate } from "../../src/report/template.js";
import type { TemplateValues } from "../../src/report/template.js";

const TEMPLATE = `# Water of {{ client }}

:::lead
Per square metre {{ water }} less,
at **{{ client }}**.[^how]
:::

{% for lot in lots %}
- {{ lot.name }}: {{ lot.water }}
{%- endfor %}

::page
## What gets worse {#worse}

::place strip

:::table t-lots Table 1. Lots of {{ client }}
| Lot | Water, L |
| --- | ---: |
{% for lot in lots -%}
| {{ lot.name }} | {{ lot.water }} |
{% endfor -%}
| **All** | {{ water }} |
:::

:::caution Mind this
See [the start](#start) or [the method](https://example.org/method).
:::

[^how]: Ten thousand draws.
`;

const VALUES: TemplateValues = {
  client: "Albers Home",
  water: { figure: "water.saving", text: "41 L" },
  lots: [
    { name: "L-1", water: { figure: "lot.1", text: "12" } },
    { name: "L-2", water: { figure: "lot.2", text: "29" } },
  ],
};

const STRIP: Block = {
  kind: "strip",
  words: "Provenance",
  shares: { measured: 1, allocated: 0, modelled: 0, default: 0 },
};

function render(source: string, values: TemplateValues = VALUES): readonly Block[] {
  return renderTemplate(source, "water.md", values, { strip: [STRIP] });
}

const text = (value: string): object => ({ kind: "text", text: value });
const figure = (id: string, value: string): object => ({
  kind: "figure-ref",
  figure: id,
  text: value,
});

describe("renderTemplate", () => {
  it("turns a template into blocks", () => {
    expect(render(TEMPLATE)).toEqual([
      { kind: "heading", level: 1, text: "Water of Albers Home", id: "water-of-albers-home" },
      {
        kind: "paragraph",
        tone: "lead",
        runs: [
          text("Per square metre "),
          figure("water.saving", "41 L"),
          text(" less, at "),
          { kind: "text", text: "Albers Home", style: "bold" },
          text("."),
          { kind: "note-ref", note: "how" },
        ],
      },
      {
        kind: "list",
        ordered: false,
        items: [
          [text("L-1: "), figure("lot.1", "12")],
          [text("L-2: "), figure("lot.2", "29")],
        ],
      },
      { kind: "heading", level: 2, text: "What gets worse", id: "worse", newPage: true },
      STRIP,
      {
        kind: "table",
        id: "t-lots",
        caption: "Table 1. Lots of Albers Home",
        head: [{ runs: [text("Lot")] }, { runs: [text("Water, L")], align: "right" }],
        rows: [
          [{ runs: [text("L-1")] }, { runs: [figure("lot.1", "12")], align: "right" }],
          [{ runs: [text("L-2")] }, { runs: [figure("lot.2", "29")], align: "right" }],
          [
            { runs: [text("All")], strong: true },
            { runs: [figure("water.saving", "41 L")], align: "right" },
          ],
        ],
      },
      {
        kind: "box",
        title: "Mind this",
        tone: "caution",
        blocks: [
          {
            kind: "paragraph",
            runs: [
              text("See "),
              { kind: "link", text: "the start", href: "#start" },
              text(" or "),
              { kind: "link", text: "the method", href: "https://example.org/method" },
              text("."),
            ],
          },
        ],
      },
      { kind: "notes", notes: [{ id: "how", runs: [text("Ten thousand draws.")] }] },
    ]);
  });

  it.each([
    "# no heading",
    "- no item",
    "1. no item",
    "| no | table |",
    "> no quote",
    "    no code",
    "```",
    "***",
    "::place strip",
    ":::box Mine",
    ":::",
    "[click](https://example.org)",
    "<script>alert(1)</script>",
    "https://example.org",
    "**not bold** _nor italic_ `nor code`",
    "&lt; &amp; \\* \\",
    "{{ water }} {% if x %}",
    "[^how]: no note",
    "Title\n===",
    "",
  ])("prints the value %j as it is", (hostile) => {
    const printed = hostile.trim().replace(/\s+/g, " ");
    const runs = printed === "" ? [text("first second")] : undefined;
    const [only, ...more] = render("first {{ client }} second", { client: hostile.trim() });
    expect(more).toEqual([]);
    if (runs) expect(only).toEqual({ kind: "paragraph", runs: [text("first  second")] });
    else expect(only).toEqual({ kind: "paragraph", runs: [text(`first ${printed} second`)] });
    if (printed !== "") {
      const alone = render("{{ client }}", { client: hostile.trim() });
      expect(alone).toEqual([{ kind: "paragraph", runs: [text(printed)] }]);
    }
  });

  it("lets no value change the shape of the text", () => {
    const shape = JSON.stringify(render(TEMPLATE));
    fc.assert(
      fc.property(fc.string({ unit: "binary", minLength: 1 }), (name) => {
        const printed = `x${name.replace(/[\p{Co}\p{Cs}\p{Cc}\s\p{Zl}\p{Zp}]/gu, "")}x`;
        const blocks = render(TEMPLATE, { ...VALUES, client: printed });
        const back = JSON.stringify(blocks)
          .replaceAll(JSON.stringify(printed).slice(1, -1), "Albers Home")
          .replace(/"id":"water-of-[^"]*"/, '"id":"water-of-albers-home"');
        expect(back).toBe(shape);
      }),
      { seed: 1, numRuns: 100 },
    );
  });

  it("cannot be given a figure by a text", () => {
    const forged = "\ue000\ue010\ue001\ue002\ue011\ue003";
    const blocks = render("{{ water }} {{ client }}", { ...VALUES, client: `a${forged}b` });
    expect(blocks).toEqual([
      { kind: "paragraph", runs: [figure("water.saving", "41 L"), text(" ab")] },
    ]);
  });

  it.each([
    ["one\n\n{{ watr }}", 3, "undefined variable: watr"],
    ["one\n{% if lots[5] %}x{% endif %}", 2, "undefined variable"],
    ["{{ client | shout }}", 1, "undefined filter: shout"],
    ["a\n{% include 'b' %}", 2, 'the tag "include" is not allowed'],
    ["a\nb\n{% render 'b' %}", 3, 'the tag "render" is not allowed'],
    ["{% layout 'b' %}", 1, 'the tag "layout" is not allowed'],
    ["a\n\n::place lots", 3, 'there is no "lots" to place; known: strip'],
    ["a\n\n::place {{ client }}", 3, 'there is no "Albers Home" to place'],
    ["a\n::table", 2, 'unknown directive "::table"'],
    ["a\n\nb\n:::", 4, "no open ::: to close"],
    ["a\n:::box Title\nb", 2, "the :::box opened here is never closed"],
    ["a\n\n![b](https://example.org/b.png)", 3, '"image" cannot be printed'],
    ["a\n\n> b", 3, '"blockquote" cannot be printed'],
    ["a\n\n```\nb\n```", 4, '"fence" cannot be printed'],
    ["a\n\n    b", 3, '"code_block" cannot be printed'],
    ["a\n[b](http://example.org)", 2, "links lead to https://"],
    ["a\n[b](javascript:alert)", 2, "links lead to https://"],
    ["a\n[b](data:text/html,c)", 2, "links lead to https://"],
    ["a\n[b]({{ client }})", 2, "a value may not stand in the address"],
    ["a\n\nb[^c]", 3, 'there is no note "c"'],
    ["a \n| b |\n| --- |", 2, "a table stands between :::table"],
    ["{% for lot in lots %}\n- {{ lot.name }}\n  - b\n{% endfor %}", 3, "an item of a list"],
    ["a\ue000b", 1, "private-use letters"],
  ])("refuses %j in line %d", (source, line, complaint) => {
    const fault = expect.objectContaining({
      name: "TemplateError",
      template: "water.md",
      line,
      message: expect.stringMatching(new RegExp(`^water\\.md, line ${line}: `)),
    });
    expect(() => render(source)).toThrow(fault);
    expect(() => render(source)).toThrow(complaint);
  });
});
